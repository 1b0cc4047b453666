/** Reasons, budget, plucks and improvements as texts; ruler in words. */

import { describe, expect, it } from 'vitest';
import { counselOf } from '../../../../src/core/counsel.ts';
import { Figures } from '../../../../src/ui/format.ts';
import { doubtGroups, pluckRows, wordedReasons } from '../../../../src/ui/screens/evidence-view.ts';
import { mostUseful } from '../../../../src/ui/screens/improvements.ts';
import { readingView } from '../../../../src/ui/screens/reading-view.ts';
import { remedyActs, remedyView } from '../../../../src/ui/screens/remedy-view.ts';
import { rulerView } from '../../../../src/ui/screens/ruler-view.ts';
import { OWN_BELT } from '../../../../src/ui/state/span-setup.ts';
import { type AppEvent, type AppState, initialState, reduce } from '../../../../src/ui/state/state.ts';
import { soundsOf } from '../../../../src/ui/state/take.ts';
import { pluckEvent } from '../../../support/heard-plucks.ts';

const figures = new Figures('en');
const heard = (frequencyHz: number): AppEvent => ({ kind: 'heard', event: pluckEvent(frequencyHz) });

/** Three plucks of a catalogue belt on 180 mm, wanted at 6 to 9 N. */
function plucked(change: Partial<AppState['entered']> = {}): AppState {
  const events: AppEvent[] = [
    { kind: 'setup-entered', change: { spanLength: '180', targetFrom: '6', targetTo: '9', ...change } },
    { kind: 'listening-began', source: 'microphone', sampleRateHz: 48_000, processing: 'untouched' },
    heard(88),
    heard(88.05),
    heard(87.95),
  ];
  return events.reduce(reduce, initialState());
}

const counselFor = ({ take, understood }: Pick<AppState, 'take' | 'understood'>) => counselOf(soundsOf(take!, understood.setup));

describe('what holds a reading below trusted', () => {
  it('is told worst first, each with name, sentence and remedy', () => {
    const reasons = wordedReasons(plucked().answer.reading!);
    expect(reasons.map(({ id }) => id)).toContain('density-from-catalogue');
    for (const { name, sentence, remedy } of reasons) expect([name, sentence, remedy]).not.toContain('');
    const order = reasons.map(({ grade }) => grade);
    expect(order).toEqual([...order].sort((a, b) => (a === b ? 0 : a === 'unusable' ? -1 : 1)));
  });
});

describe('what the doubt is made of', () => {
  it('stands under inputs and sound, the largest first, in the digits of the whole and one more', () => {
    const { reading } = plucked().answer;
    const groups = doubtGroups(reading!, figures);
    expect(groups[0]?.name).toBe('Inputs');
    expect(groups[0]?.lines[0]?.name).toBe('linear density'); // 10 % of the force, standard, for a belt that nobody weighed
    const values = groups[0]!.lines.map(({ valueN }) => valueN);
    expect(values).toEqual([...values].sort((a, b) => b - a));
    for (const { figure } of groups.flatMap(({ lines }) => lines)) expect(figure).toMatch(/^±\s\d+\.\d+\sN$/u);
  });

  it('is empty where there is no force', () => {
    expect(doubtGroups(plucked({ spanLength: '' }).answer.reading!, figures)).toEqual([]);
  });
});

describe('what would help most', () => {
  it('is to weigh the belt where nobody has, and says by how much', () => {
    const { take, understood, answer } = plucked();
    const [first] = mostUseful(counselFor({ take, understood }).improvements, answer.reading?.forceN, figures);
    expect(first?.what).toBe('Weigh a metre of the belt');
    const [, before, after] = /^±\s([\d.]+) → ±\s([\d.]+)\sN$/u.exec(first!.becomes)!;
    expect(Number(after)).toBeLessThan(0.8 * Number(before));
  });

  it('is nothing where there is no force', () => {
    const { take, understood, answer } = plucked({ spanLength: '' });
    expect(mostUseful(counselFor({ take, understood }).improvements, answer.reading?.forceN, figures)).toEqual([]);
  });
});

describe('what each remedy would give', () => {
  const viewOf = ({ take, understood, answer }: AppState) =>
    remedyView({ remedies: counselFor({ take, understood }).remedies, setup: understood.setup, now: answer.reading! }, figures);

  it('has a row for what is and one for each remedy, with grade and figure, and the same as a table', () => {
    const { title, rows, table } = viewOf(plucked({ spanLength: '60' }))!;
    expect(title).toMatch(/^What each would give, near [\d.]+\sN$/u);
    expect(rows.map(({ isNow }) => isNow === true)).toEqual([true, ...rows.slice(1).map(() => false)]);
    expect(rows[0]?.name).toMatch(/^60\smm, as it is now$/u);
    for (const row of rows.slice(1)) expect(row.figure).toMatch(/^±\s[\d.]+\sN$/u);
    expect(table.rows.map(([name]) => name)).toEqual(rows.map(({ name }) => name));
    expect(table.rows[1]?.[1]).toMatch(/^[\d.]+ to [\d.]+\sN$/u);
  });

  it('is nothing where there is no force', () => {
    expect(viewOf(plucked({ spanLength: '' }))).toBeUndefined();
  });

  it('can be taken up where it is to be had here: weighing before all else', () => {
    expect(remedyActs(plucked())[0]).toBe('weigh');
    expect(remedyActs(plucked({ spanLength: '45' }))).toEqual(expect.arrayContaining(['weigh', 'change-span']));
    const weighed = { beltId: OWN_BELT, linearDensity: '7.8 ± 0.02', spanLength: '30', spanKnownTo: '3' };
    expect(remedyActs(plucked(weighed))[0]).toBe('change-span');
    expect(remedyActs(plucked({ spanLength: '' }))).toEqual([]);
  });
});

describe('each pluck', () => {
  it('has its row', () => {
    const rows = pluckRows(plucked().answer.plucks, figures);
    expect(rows).toHaveLength(3);
    expect(rows[0]![0]).toBe('1');
    expect(rows[0]![1]).toMatch(/^88\.\d+\sHz\s±/u);
    expect(rows[0]![2]).toMatch(/N\s±/u);
    expect(rows[0]![4]).toMatch(/^1: 88\sHz, 2: 176\sHz, 3: 264\sHz$/u);
  });
});

describe('the ruler', () => {
  it('says in words all that it shows', () => {
    const state = plucked();
    const { label, plucks, boundsOnly, targetLabel } = rulerView(state, readingView(state, figures), figures);
    expect(targetLabel).toMatch(/^target 6 to 9\sN$/u);
    expect(plucks.map((pluck) => pluck.label)).toEqual(['pluck 1', 'pluck 2', 'pluck 3']);
    expect(boundsOnly).toBe(false);
    expect(label).toMatch(/Target 6 to 9\sN\. Pluck 1: .* Pluck 3: .* Together: [\d.]+\sN\s±/u);
  });

  it('shows plucks by their frequency where there is no force, and bounds where there is no value', () => {
    const without = plucked({ spanLength: '' });
    expect(rulerView(without, readingView(without, figures), figures).plucks[0]?.label).toMatch(/^pluck 1, 88\.\d+\sHz/u);
    const short = plucked({ spanLength: '30', spanKnownTo: '3' });
    const view = rulerView(short, readingView(short, figures), figures);
    expect(view.boundsOnly).toBe(true);
    expect(view.reading?.valueN).toBeUndefined();
  });
});
