import { describe, expect, it } from 'vitest';
import { beltById } from '../../../../shared/belts.ts';
import { beltKnowledge } from '../../../../src/core/belt/catalogue.ts';
import { whatToDo } from '../../../../src/core/machine/improve.ts';
import { bestSecond, pays, plannedSecond } from '../../../../src/core/machine/second-position.ts';
import { twoPositions } from '../../../../src/core/machine/two-positions.ts';
import { createRandom } from '../../../../src/core/math/random.ts';
import { type SpanSetup, UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { drawTwoTakes } from '../../../support/two-takes.ts';

const REACH = { fromM: 0.04, toM: 0.4 };
const catalogued: SpanSetup = { belt: beltKnowledge(beltById('curvilinear-2mm-6mm')!), ends: UNKNOWN_ENDS };
const weighed: SpanSetup = {
  ...catalogued,
  belt: { ...catalogued.belt!, linearDensityKgPerM: { value: 0.0079, standardUncertainty: 0.00004 }, densityFrom: 'weighed' },
};
const asking = (setup: SpanSetup, forceN = 5) => ({ setup, forceN: { lowN: forceN, highN: forceN }, lowestHz: 20 });

describe('whatToDo on a span of 60 mm', () => {
  const { now, ranked, bestHere } = whatToDo(asking(catalogued), { spanLengthM: 0.06, reach: REACH })!;

  it('ranks every way, narrowest first, and says which of them help', () => {
    const widths = ranked.map(({ forceU95Relative }) => forceU95Relative);
    expect(widths.toSorted((a, b) => a - b)).toEqual(widths);
    for (const { helps, forceU95Relative } of ranked) expect(helps).toBe(forceU95Relative < 0.95 * now.forceU95Relative!);
    expect(new Set(ranked.map(({ kind }) => kind)).size).toBe(ranked.length);
    expect(ranked.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['weighed', 'pressed', 'gauge', 'all-known']));
  });

  it('names the best that leaves the carriage where it is', () => {
    expect(['second-position', 'longer-span']).not.toContain(bestHere!.kind);
    expect(bestHere).toBe(ranked.filter(({ kind }) => kind !== 'second-position' && kind !== 'longer-span')[0]);
  });

  it('presses with a weight that bends the span a little and says what that adds', () => {
    const { press } = ranked.find(({ kind }) => kind === 'pressed')!;
    expect(press!.deflectionM).toBeGreaterThan(0.0001);
    expect(press!.deflectionM).toBeLessThan(0.06 * 0.06);
    expect(press!.riseRelative).toBeGreaterThan(0);
  });

  it('has no room for a gauge on a span shorter than its base, and nothing to say without a belt', () => {
    const short = whatToDo(asking(catalogued), { spanLengthM: 0.045, reach: REACH })!;
    expect(short.ranked.map(({ kind }) => kind)).not.toContain('gauge');
    expect(whatToDo(asking({ ends: UNKNOWN_ENDS }), { spanLengthM: 0.06, reach: REACH })).toBeUndefined();
  });
});

describe('a second position', () => {
  it('pays for a weighed belt with unknown ends, and not while its density is the trouble', () => {
    const second = plannedSecond(asking(weighed, 8), { firstM: 0.08, secondM: 0.24 }, 8)!;
    expect(pays(second)).toBe(true);
    expect(second.together).toBeLessThan(0.5 * second.firstAlone);
    expect(pays(plannedSecond(asking(catalogued, 8), { firstM: 0.08, secondM: 0.24 }, 8)!)).toBe(false);
  });

  it('is looked for among the lengths within reach', () => {
    const found = bestSecond(asking(weighed, 8), 0.1, 8, REACH)!;
    expect(found.secondM).toBeLessThanOrEqual(REACH.toM);
    expect(bestSecond(asking(weighed, 8), 0.1, 8, { fromM: 0.09, toM: 0.11 })).toBeUndefined();
  });

  it('gains about what seeded belts then gain', () => {
    const gains = Array.from({ length: 25 }, (_, seed) => {
      const { takes } = drawTwoTakes(createRandom(seed, 9), { spansM: [0.15, 0.3], forceFactor: 1 });
      const found = twoPositions(takes);
      if (found.kind !== 'combined') return [];
      const question = { setup: takes[0].setup, forceN: { lowN: 1, highN: 1 }, lowestHz: 20 };
      const planned = plannedSecond(question, { firstM: 0.15, secondM: 0.3 }, found.forceN.value);
      return planned ? [found.forceN.u95! / found.forceN.value / planned.together] : [];
    }).flat();
    const median = gains.toSorted((a, b) => a - b)[gains.length >> 1]!;
    expect(gains.length).toBeGreaterThan(18);
    expect(median).toBeGreaterThan(0.85);
    expect(median).toBeLessThan(1.15);
  });
});
