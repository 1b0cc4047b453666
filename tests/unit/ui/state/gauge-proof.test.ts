/** A kept gauge as the reckoning takes it. Readings and rigs are invented. */

import { describe, expect, it } from 'vitest';
import { type KeptGauge, type KeptGaugeReading, type KeptWeight, keptGaugeSchema } from '../../../../shared/document/gauge.ts';
import { EMPTY_DOCUMENT, type KeptDocument } from '../../../../shared/document.ts';
import { ceilingFrom } from '../../../../src/ui/state/gauge-build.ts';
import { crossLines } from '../../../../src/ui/state/gauge-cross.ts';
import { demoGauges } from '../../../../src/ui/state/gauge-new.ts';
import { chartName, gradeOf, proofOf, toleranceOf } from '../../../../src/ui/state/gauge-proof.ts';
import { machineSpans, riseIn } from '../../../../src/ui/state/gauge-rise.ts';
import { gaugesEn } from '../../../../src/words/gauges-en.ts';
import { exampleDocument } from '../../../support/kept-example.ts';

const when = { at: '2026-03-02T08:15:00.000Z', zone: 'Europe/Lisbon' };
const MASSES_KG = [0.4, 0.6, 0.8, 1, 1.2, 1.4];
const weights: KeptWeight[] = MASSES_KG.map((massKg, k) => ({ id: `w${k}`, name: `jar ${k + 1}`, massKg }));
const reading = (k: number, value: number, more: Partial<KeptGaugeReading> = {}): KeptGaugeReading => ({
  id: `r${k}-${value}`,
  weightId: `w${k}`,
  how: 'inserted',
  series: 'A',
  reading: value,
  at: when,
  ...more,
});
const force = (k: number): number => MASSES_KG[k]! * 9.80665;
const readings = MASSES_KG.flatMap((_, k) => [-0.01, 0, 0.01].map((off) => reading(k, Number((0.2 + 0.25 * force(k) + off).toFixed(3)))));
const gauge: KeptGauge = {
  id: 'lever',
  made: when,
  changedAt: when.at,
  name: 'Wooden lever',
  targetForceN: { lowN: 6, highN: 9 },
  weights,
  readings,
};

const calibrated = (one: KeptGauge) => {
  const { calibration, ...rest } = proofOf(one);
  if (calibration.kind !== 'calibration') throw new Error(calibration.why);
  return { calibration, ...rest };
};

describe('proof of a kept gauge', () => {
  it('fits the schema, is computed once, and stands under standard gravity where no place is told', () => {
    expect(keptGaugeSchema.safeParse(gauge).success).toBe(true);
    expect(proofOf(gauge)).toBe(proofOf(gauge));
    const { calibration, rows } = calibrated(gauge);
    expect(rows[0]!.forceN).toBeCloseTo(force(0), 9);
    expect(calibration.fit.curve.kind).toBe('line');
    expect(calibration.fit.curve.parameters[1]).toBeCloseTo(0.25, 3);
    expect(gradeOf(gauge, proofOf(gauge))).toBe('trusted');
    expect(toleranceOf(gauge)).toBeCloseTo(0.2, 12);
  });

  it('leaves out what its owner dropped, and counts rows as they stand', () => {
    const dropped = { ...gauge, readings: readings.map((one, k) => (k === 0 ? { ...one, dropped: true as const } : one)) };
    expect(calibrated(dropped).rows.map(({ row }) => row)).toEqual(readings.slice(1).map((_, k) => k + 2));
    expect(chartName(dropped)).not.toBe(chartName(gauge));
  });

  it('brackets the roller at one load, and lets it widen all of them', () => {
    const rig = { kind: 'roller' as const, scaleStepKg: 0.001, scaleRelativeU: 0.001 };
    const middle = 0.2 + 0.25 * force(3);
    const eased = [
      reading(3, middle + 0.05, { how: 'eased', series: 'eased', direction: 'down' }),
      reading(3, middle - 0.05, { how: 'eased', series: 'eased', direction: 'up' }),
    ];
    const proof = calibrated({ ...gauge, rig, readings: [...readings, ...eased] });
    // 0.05 divisions at 0.25 a newton are 0.2 N of 9.8 N.
    expect(proof.friction).toBeCloseTo(0.2 / force(3), 3);
    expect(proof.rows).toHaveLength(readings.length);
    expect(proof.rows[0]!.forceUN! / force(0)).toBeGreaterThan(proof.friction! / 2);
  });

  it('takes a wire for a load, and a sag for its force', () => {
    const wire: KeptWeight = { id: 'wire', name: 'wire', massKg: 0, knownN: { value: 20, standardUncertainty: 0.5 } };
    const withWire = { ...gauge, weights: [...weights, wire], readings: [...readings, reading(0, 5.2, { weightId: 'wire' })] };
    expect(calibrated(withWire).rows.at(-1)).toMatchObject({ forceN: 20, forceUN: 0.5 });
    const rig = { kind: 'mid-span' as const, scaleStepKg: 0.001, scaleRelativeU: 0.001, halfDistanceM: 0.2 };
    const sagging = { ...gauge, rig, weights: weights.map((one) => ({ ...one, sagM: 0.02 })) };
    const off = proofOf(sagging).rows[0]!.forceN;
    expect(off).toBeCloseTo((force(0) * Math.hypot(0.2, 0.02)) / 0.04, 6);
    const on = proofOf({ ...sagging, baseM: 0.06, deflectionM: { value: 0.001, standardUncertainty: 0 } }).rows[0]!.forceN;
    expect(on / off - 1).toBeCloseTo(0.0083, 3); // 2 d²/b off the two legs of 201 mm
  });

  it('has a ceiling by its build, which ends the range and refuses the chart above it', () => {
    const build = { reachM: 0.004, travelM: 0.003, springNPerM: 600, restReading: 0.2, readingPerM: 1000 };
    const built = { ...gauge, baseM: 0.06, build };
    expect(ceilingFrom(built)).toEqual({ reading: 3.2, forceN: expect.closeTo((600 * 0.003 * 0.06) / (4 * 0.001), 9) });
    expect(ceilingFrom({ ...built, ceilingReading: 3 })?.reading).toBe(3);
    expect(ceilingFrom(gauge)).toBeUndefined();
    const { verified } = calibrated(built).calibration;
    expect(verified).toMatchObject({ highEnds: 'ceiling' });
  });
});

describe('gauge and belt', () => {
  const take = exampleDocument.takes[0]!;
  const document: KeptDocument = { ...EMPTY_DOCUMENT, takes: [take], machines: exampleDocument.machines };

  it('are compared on a kept take, with the rise taken off', () => {
    const sound = take.now.answer.forceN!;
    const at = 0.2 + 0.25 * (sound.value + 0.5);
    const crossed = {
      ...gauge,
      crossChecks: [{ id: 'c', at: when, reading: at, takeId: take.id, riseN: { value: 0.5, standardUncertainty: 0.1 } }],
    };
    const [line] = crossLines(crossed, proofOf(crossed), document);
    expect(line).toMatchObject({ check: { agrees: true } });
    expect(line!.check!.differenceN).toBeCloseTo(0, 1);
    expect(
      crossLines({ ...crossed, crossChecks: [{ id: 'c', at: when, reading: 99, takeId: take.id }] }, proofOf(crossed), document)[0],
    ).toMatchObject({ why: 'gauge' });
    expect(
      crossLines({ ...crossed, crossChecks: [{ id: 'c', at: when, reading: at, takeId: 'gone' }] }, proofOf(crossed), document)[0],
    ).toMatchObject({ why: 'take' });
  });

  it('a belt of a machine gives over its span, or over its whole length', () => {
    const lengths = machineSpans(document);
    expect(lengths.map(({ lengthM }) => lengthM)).toEqual([0.18, 1.62, 0.18, 1.62]);
    expect(riseIn(gauge, { axialStiffnessN: 14_000, givingLengthM: 0.18 })).toBeUndefined();
  });
});

describe('demo gauges', () => {
  it('are kept as any other, and show a good one, a rough one, and one at its stop', () => {
    const demo = demoGauges(gaugesEn.demo);
    expect(demo.map((one) => keptGaugeSchema.safeParse(one).success)).toEqual([true, true, true]);
    expect(demo.map((one) => gradeOf(one, proofOf(one)))).toEqual(['trusted', 'trusted', 'doubtful']);
    const proofs = demo.map(calibrated);
    expect(proofs.flatMap(({ calibration, suspicions }) => [...calibration.slips, ...suspicions])).toEqual([]);
    expect(proofs.map(({ calibration }) => calibration.stop?.reading)).toEqual([undefined, undefined, 4.1]);
  });
});
