import { describe, expect, it } from 'vitest';
import { beltById } from '../../../../shared/belts.ts';
import { beltKnowledge } from '../../../../src/core/belt/catalogue.ts';
import { LOWEST_HEARD_HZ, plannedSpan, setupAt } from '../../../../src/core/machine/plan.ts';
import { lengthsOver, spanPlan } from '../../../../src/core/machine/zones.ts';
import type { SpanSetup } from '../../../../src/core/setup.ts';
import { FIXITY_OF_END, UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { simulatedReading } from './simulated-reading.ts';

const catalogued = (id: string) => beltKnowledge(beltById(id)!);
function weighed(id: string) {
  const belt = catalogued(id);
  const { value } = belt.linearDensityKgPerM;
  return { ...belt, linearDensityKgPerM: { value, standardUncertainty: 0.01 * value }, densityFrom: 'weighed' as const };
}
const one = (forceN: number) => ({ lowN: forceN, highN: forceN });
const KNOWN_ENDS: SpanSetup['ends'] = [FIXITY_OF_END.clamp, FIXITY_OF_END['toothed pulley']];

const BELTS: readonly (readonly [string, SpanSetup])[] = [
  ['weighed, 2 mm pitch', { belt: weighed('curvilinear-2mm-6mm'), ends: UNKNOWN_ENDS }],
  ['weighed, 3 mm pitch', { belt: weighed('curvilinear-g-3mm-9mm'), ends: UNKNOWN_ENDS }],
  ['catalogue, 2 mm pitch', { belt: catalogued('curvilinear-2mm-6mm'), ends: UNKNOWN_ENDS }],
  ['weighed, ends told by kind', { belt: weighed('curvilinear-2mm-9mm'), ends: KNOWN_ENDS, toleranceRelative: 0.1 }],
];
const SPANS_M = [0.045, 0.075, 0.12, 0.2, 0.4];
const FORCES_N = [4, 12];
/** The simulated microphone loses nothing; below this no fundamental is looked for. */
const NOTHING_LOST_HZ = 12;

/** Beyond half of the force the interval is a matter of chance, and the reading decides nothing anyway. */
const TOLD_UP_TO = 0.5;

describe('plannedSpan', () => {
  it.each(BELTS)('says beforehand what a simulated reading says afterwards: %s', (_, setup) => {
    let compared = 0;
    for (const spanLengthM of SPANS_M) {
      for (const forceN of FORCES_N) {
        const plan = plannedSpan({ setup, forceN: one(forceN), lowestHz: NOTHING_LOST_HZ }, spanLengthM)!.worst;
        const reading = simulatedReading(setupAt({ setup }, spanLengthM), forceN, 100 + compared)!;
        const where = `${1000 * spanLengthM} mm, ${forceN} N`;
        expect(reading.grade, where).toBe(plan.grade);
        if (plan.forceU95Relative === undefined || plan.forceU95Relative > TOLD_UP_TO) continue;
        const ratio = reading.forceN!.u95! / reading.forceN!.value / plan.forceU95Relative;
        expect(ratio, where).toBeGreaterThan(0.9);
        expect(ratio, where).toBeLessThan(1.1);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(6);
  });

  it('refuses 45 mm of a 2 mm pitch belt at 4 N as its reading does, for the same reasons', () => {
    const setup: SpanSetup = { belt: catalogued('curvilinear-2mm-6mm'), ends: UNKNOWN_ENDS };
    const plan = plannedSpan({ setup, forceN: one(4), lowestHz: LOWEST_HEARD_HZ }, 0.045)!.worst;
    const reading = simulatedReading(setupAt({ setup }, 0.045), 4, 5)!;
    expect(plan.grade).toBe('unusable');
    expect(reading.grade).toBe('unusable');
    expect(plan.reasons.map(({ id }) => id)).toEqual(reading.reasons.map(({ id }) => id));
    expect(reading.forceN!.u95! / reading.forceN!.value / plan.forceU95Relative!).toBeCloseTo(1, 1);
    // Force-notes of the beam: weighed belts at 40 to 50 mm and 3 to 5 N are doubtful at best; unweighed ones unusable.
    expect(plan.forceU95Relative).toBeGreaterThan(0.4);
  });

  it('takes the worse of both forces, and knows nothing without a belt', () => {
    const setup: SpanSetup = { belt: weighed('curvilinear-2mm-6mm'), ends: UNKNOWN_ENDS };
    const span = plannedSpan({ setup, forceN: { lowN: 6, highN: 9 }, lowestHz: LOWEST_HEARD_HZ }, 0.08)!;
    expect(span.worst).toBe(span.atLow);
    expect(span.atHigh.frequencyHz).toBeGreaterThan(span.atLow.frequencyHz);
    expect(plannedSpan({ setup: { ends: UNKNOWN_ENDS }, forceN: one(4), lowestHz: 20 }, 0.08)).toBeUndefined();
  });

  it('says that a force above what the belt is made for would be doubtful on any span', () => {
    const setup: SpanSetup = { belt: weighed('curvilinear-2mm-6mm'), ends: UNKNOWN_ENDS };
    const span = plannedSpan({ setup, forceN: one(30), lowestHz: LOWEST_HEARD_HZ }, 0.2)!;
    expect(span.worst.reasons.map(({ id }) => id)).toContain('over-rated-force');
    expect(span.worst.grade).toBe('doubtful');
  });
});

describe('spanPlan', () => {
  const setup: SpanSetup = { belt: weighed('curvilinear-2mm-6mm'), ends: UNKNOWN_ENDS };
  const question = { setup, forceN: { lowN: 6, highN: 9 }, lowestHz: LOWEST_HEARD_HZ };

  it('finds the shortest trusted span to a millimetre, with worse spans below', () => {
    const { shortestTrustedM, zones } = spanPlan(question)!;
    expect(plannedSpan(question, shortestTrustedM!)!.worst.grade).toBe('trusted');
    expect(plannedSpan(question, shortestTrustedM! - 0.001)!.worst.grade).toBe('doubtful');
    expect(zones.map(({ grade }) => grade)).toEqual(['doubtful', 'trusted']);
    expect(zones[0]!.because.map(({ id }) => id)).toContain('span-too-short');
    expect(zones[1]!.because).toEqual([]);
    expect(zones[0]!.toM).toBe(zones[1]!.fromM);
  });

  it('wants a longer span for a finer tolerance, a lesser force and a belt that nobody weighed', () => {
    const reach = { fromM: 0.05, toM: 0.25 };
    const shortest = (change: Partial<typeof question>) => spanPlan({ ...question, ...change }, reach)!.shortestTrustedM ?? Infinity;
    const plain = shortest({});
    expect(shortest({ setup: { ...setup, toleranceRelative: 0.1 } })).toBeGreaterThan(1.5 * plain);
    expect(shortest({ forceN: one(3) })).toBeGreaterThan(plain);
    expect(shortest({ setup: { ...setup, belt: catalogued('curvilinear-2mm-6mm') } })).toBe(Infinity);
    expect(shortest({ setup: { ...setup, ends: KNOWN_ENDS, toleranceRelative: 0.1 } })).toBeLessThan(
      shortest({ setup: { ...setup, toleranceRelative: 0.1 } }),
    );
  });

  it('ends the trusted zone where the microphone no longer hears enough partials', () => {
    const { zones } = spanPlan({ ...question, lowestHz: 150 })!;
    const last = zones.at(-1)!;
    expect(zones.map(({ grade }) => grade)).toContain('trusted');
    expect(last.grade).not.toBe('trusted');
    expect(last.because.map(({ id }) => id)).toContain('first-partial-not-heard');
    const lost = plannedSpan({ ...question, lowestHz: 5000 }, 0.2)!.worst;
    expect(lost).toMatchObject({ grade: 'unusable', soundGrade: 'unusable' });
    expect(lost.interval).toBeUndefined();
  });

  it('counts on less where the belt lies flat and hangs through', () => {
    const at = (lie: 'edge' | 'flat') => plannedSpan({ ...question, forceN: one(5), setup: { ...setup, lie } }, 0.6)!.worst;
    expect(at('flat').forceU95Relative).toBeGreaterThan(at('edge').forceU95Relative!);
    expect(at('flat').interval!.value).toBeCloseTo(5, 0);
    expect(at('flat').reasons.map(({ id }) => id)).toContain('span-sags');
  });
});

describe('lengthsOver', () => {
  it('goes from end to end in equal steps', () => {
    const lengths = lengthsOver({ fromM: 0.04, toM: 0.6 });
    expect(lengths[0]).toBe(0.04);
    expect(lengths.at(-1)).toBe(0.6);
    expect(Math.max(...lengths.slice(1).map((length, i) => length / lengths[i]!))).toBeLessThan(1.09);
    expect(() => lengthsOver({ fromM: 0, toM: 1 })).toThrow(/got 0 and 1/u);
  });
});
