/** Figure, mark, reasons, doubt, meter and span: each says what it is told, to eye and ear, and fits the narrowest page. */

import { describe, expect, it } from 'vitest';
import '../../../src/ui/parts/answer-figure.ts';
import '../../../src/ui/parts/doubt-bars.ts';
import '../../../src/ui/parts/grade-mark.ts';
import '../../../src/ui/parts/level-meter.ts';
import '../../../src/ui/parts/reasons-list.ts';
import '../../../src/ui/parts/span-drawing.ts';
import { objections } from './axe.ts';
import { all, boxIn, figure, mounted, one, settled, texts, textsOutside } from './mount.ts';
import { budget, reasons } from './samples.ts';

const spoken = (text: string | null | undefined) => (text ?? '').replace(/[\s\u00a0\u202f]+/g, ' ').trim();
const NARROW_PX = 288;

describe('answer-figure', () => {
  const value = { kind: 'value', value: '7.2', unit: 'N', doubt: '0.5' } as const;
  const frequency = { value: '81.5', unit: 'Hz', doubt: '0.3' };

  it('reads as one phrase', async () => {
    const part = await mounted('answer-figure', { figure: value, frequency });
    expect(spoken(one(part, '.answer').textContent)).toBe('7.2 N ± 0.5 N 81.5 Hz ± 0.3 Hz');
    part.figure = { kind: 'range', text: '2.3 to 5.7', unit: 'N' };
    part.frequency = undefined;
    await settled(part);
    expect(spoken(part.renderRoot.textContent)).toBe('2.3 to 5.7 N');
    part.figure = { kind: 'sentence', text: 'Pluck the span' };
    await settled(part);
    expect(spoken(part.renderRoot.textContent)).toBe('Pluck the span');
  });

  it('stands the frequency beside the force when wide, below when narrow', async () => {
    const wide = await mounted('answer-figure', { figure: value, frequency }, 760);
    expect(boxIn(wide, one(wide, '.frequency')).left).toBeGreaterThan(boxIn(wide, one(wide, '.force')).right);
    const narrow = await mounted('answer-figure', { figure: value, frequency }, NARROW_PX);
    expect(boxIn(narrow, one(narrow, '.frequency')).top).toBeGreaterThan(boxIn(narrow, one(narrow, '.value')).top + 20);
  });

  it.each(['7.2', '124.7', '1 234.5'])('never breaks a number from its unit, nor leaves the page, with %s', async (number) => {
    const part = await mounted('answer-figure', { figure: { ...value, value: number, doubt: '12.5' }, frequency }, NARROW_PX);
    expect(textsOutside(part)).toEqual([]);
    for (const piece of all(part, '.part')) expect(piece.getClientRects()).toHaveLength(1);
  });
});

describe('grade-mark', () => {
  it('has a shape of its own for each grade, and always a word', async () => {
    const shapes = new Set<string>();
    for (const grade of ['trusted', 'doubtful', 'unusable', 'nothing'] as const) {
      const part = await mounted('grade-mark', { grade, word: `word for ${grade}` });
      shapes.add(one(part, 'svg').innerHTML.replace(/<!--.*?-->/g, ''));
      expect(spoken(part.renderRoot.textContent)).toBe(`word for ${grade}`);
      const bare = await mounted('grade-mark', { grade, word: `word for ${grade}`, bare: true });
      expect(one(bare, 'svg[role=img]').getAttribute('aria-label')).toBe(`word for ${grade}`);
    }
    expect(shapes.size).toBe(4);
    expect(await objections()).toEqual([]);
  });
});

describe('reasons-list', () => {
  it('gives name, sentence and remedy of each reason with its grade', async () => {
    const part = await mounted('reasons-list', { items: reasons, label: 'Why, and what to do' }, NARROW_PX);
    expect(texts(part, 'h3')).toEqual(reasons.map(({ name }) => name));
    expect(texts(part, '.sentence')).toEqual(reasons.map(({ sentence }) => sentence));
    expect(texts(part, '.remedy')).toEqual(reasons.map(({ remedy }) => remedy));
    expect(one(part, 'a').getAttribute('href')).toBe('#/belts');
    expect(one(part, 'ul').getAttribute('aria-label')).toBe('Why, and what to do');
    expect(textsOutside(part)).toEqual([]);
    expect(await objections()).toEqual([]);
  });
});

describe('doubt-bars', () => {
  it('is a table whose bars are as long as their newtons, the two longest in ink', async () => {
    const part = await mounted('doubt-bars', { groups: budget, label: 'Doubt', nameHeading: 'From', figureHeading: 'Force' }, 460);
    const lines = budget.flatMap((group) => group.lines);
    const bars = all(part, 'rect').map((bar) => boxIn(part, bar).width);
    lines.forEach(({ valueN }, index) => {
      expect(bars[index]! / bars[0]!).toBeCloseTo(valueN / 0.29, 2);
    });
    expect(texts(part, '.long th')).toEqual(['end fixity', 'span length']);
    expect(texts(part, '.figure')).toEqual(lines.map((line) => line.figure));
    expect(texts(part, 'th[scope=rowgroup]')).toEqual(['Inputs', 'Sound']);
    expect(await objections()).toEqual([]);
  });

  it('fits the narrowest page with its note, and draws no bar where there is no doubt', async () => {
    const none = [{ name: 'Sound', lines: [{ name: 'between plucks', valueN: 0, figure: '± 0.00 N' }] }];
    const part = await mounted('doubt-bars', { groups: [...budget.slice(0, 1), ...none], note: 'Expanded, k = 2.' }, NARROW_PX);
    expect(textsOutside(part)).toEqual([]);
    expect(texts(part, 'p')).toEqual(['Expanded, k = 2.']);
    expect(figure(all(part, 'rect').at(-1)!, 'width')).toBe(0);
    part.groups = none;
    await settled(part);
    expect(figure(one(part, 'rect'), 'width')).toBe(0);
  });
});

describe('level-meter', () => {
  it('stands level and room on one scale from −72 to 0', async () => {
    const part = await mounted('level-meter', { peakDbfs: -18, roomDbfs: -60, label: 'Sound level', clipsLabel: 'clips' }, 264);
    expect(figure(one(part, '.level'), 'width')).toBeCloseTo(75, 6);
    const minus60 = all(part, 'text').find((text) => text.textContent === '−60')!;
    expect(one(part, '.room').getAttribute('x1')).toBe(minus60.getAttribute('x'));
    expect(one(part, '[role=meter]').getAttribute('aria-valuenow')).toBe('-18');
    expect(all(part, '[aria-live], [role=status]')).toHaveLength(0);
    expect(await objections()).toEqual([]);
  });

  it('follows the sound, through silence and clipping', async () => {
    const part = await mounted('level-meter', { label: 'Sound level' }, 264);
    expect(figure(one(part, '.level'), 'width')).toBe(0);
    expect(all(part, '.room')).toHaveLength(0);
    part.showLevel(3, -55, true);
    await settled(part);
    expect(figure(one(part, '.level'), 'width')).toBe(100);
    expect(all(part, '.room, .cut-off')).toHaveLength(2);
    part.showLevel(Number.NEGATIVE_INFINITY, undefined, false);
    await settled(part);
    expect(figure(one(part, '.level'), 'width')).toBe(0);
    expect(all(part, '.room, .cut-off')).toHaveLength(0);
  });

  it('is without figures when compact', async () => {
    const part = await mounted('level-meter', { peakDbfs: -30, compact: true, label: 'Sound level' }, 200);
    expect(texts(part)).toEqual([]);
    expect(part.offsetHeight).toBeLessThan(20);
  });
});

describe('span-drawing', () => {
  const words = { length: '180 mm', pluckLabel: 'pluck here, lightly', tangentLabel: 'tangent point', label: 'A span of 180 mm' };

  it('measures from tangent point to tangent point, above the pulleys', async () => {
    const part = await mounted('span-drawing', { ...words, variant: 'big', spanLengthM: 0.18 }, 560);
    const [left, right] = all(part, '.pulley')
      .filter((_, index) => index % 2 === 0)
      .map((circle) => figure(circle, 'cx'));
    const span = one(part, '.span');
    expect(Math.abs(figure(span, 'x1') - left!)).toBeLessThan(2);
    expect(Math.abs(figure(span, 'x2') - right!)).toBeLessThan(2);
    expect(texts(part)).toEqual(expect.arrayContaining(['180 mm', 'pluck here, lightly', 'tangent point']));
  });

  it.each([0.02, 0.06, 0.12, 0.18])('keeps the place to pluck clear of the dimension, on %f m', async (spanLengthM) => {
    for (const width of [430, 560]) {
      const part = await mounted('span-drawing', { ...words, variant: 'big', spanLengthM }, width);
      const rightLine = boxIn(part, all(part, '.pulley')[2]!).left + boxIn(part, all(part, '.pulley')[2]!).width / 2;
      const label = all(part, 'text').filter(
        (text) => words.pluckLabel.includes(text.textContent!.trim()) && text.textContent!.trim() !== '',
      );
      expect(label.length).toBeGreaterThan(0);
      for (const line of label) expect(boxIn(part, line).right).toBeLessThan(rightLine);
    }
  });

  it('rings only when told, and big shows where to pluck', async () => {
    const part = await mounted('span-drawing', { ...words, variant: 'small' }, 216);
    expect(all(part, '.swing, .pluck')).toHaveLength(0);
    part.ringing = true;
    await settled(part);
    expect(all(part, '.swing')).toHaveLength(1);
    part.variant = 'big';
    await settled(part);
    expect(all(part, '.pluck')).toHaveLength(1);
  });

  it.each([200, 288, 358, 560, 900])('keeps its texts inside %i px', async (width) => {
    for (const variant of ['small', 'big'] as const) {
      const part = await mounted('span-drawing', { ...words, variant, spanLengthM: 0.06 }, width);
      expect(textsOutside(part)).toEqual([]);
    }
    expect(await objections()).toEqual([]);
  });
});
