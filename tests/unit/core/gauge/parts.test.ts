/** Rigs, chart, check piece, causes, comparison: each on cases whose answer is seen at once. */

import { describe, expect, it } from 'vitest';
import { type Calibration, calibrate } from '../../../../src/core/gauge/calibration.ts';
import { chartRows, evenStep } from '../../../../src/core/gauge/chart.ts';
import { controlChart } from '../../../../src/core/gauge/check-piece.ts';
import { comparedGauges } from '../../../../src/core/gauge/compare.ts';
import { rankedCauses } from '../../../../src/core/gauge/cross-check.ts';
import { directionOf } from '../../../../src/core/gauge/curve.ts';
import { bracketedFriction, loadedReadings, type Rig, rigForce } from '../../../../src/core/gauge/rig.ts';
import { slipGuess } from '../../../../src/core/gauge/slip-guess.ts';
import { splineCurve } from '../../../../src/core/gauge/spline-curve.ts';
import { stepOfReadings } from '../../../../src/core/gauge/step-of-readings.ts';

const SCALE = { stepKg: 0.001, relativeU: 0.002, offsetKg: 0.002 };
const known = (value: number, standardUncertainty = 0) => ({ value, standardUncertainty });

describe('rigs', () => {
  it('straight: weight, hanger and the belt below the gauge, by local gravity', () => {
    const rig: Rig = {
      kind: 'straight',
      scale: SCALE,
      hangerKg: known(0.05, 0.001),
      beltBelowM: 0.4,
      linearDensityKgPerM: 0.01,
      place: { latitudeDeg: 45 },
    };
    const { forceN, ownUN, shared } = rigForce(rig, { massKg: 1 });
    expect(forceN).toBeCloseTo((1 + 0.05 + 0.004) * 9.8061977694, 9);
    expect(ownUN).toBeCloseTo((0.001 / Math.sqrt(12)) * 9.8062, 6);
    expect(shared.relative).toBeGreaterThan(0.002);
    expect(shared.offsetN).toBeGreaterThan(0.002 * 9.8);
  });

  it('over a roller: friction widens each load', () => {
    const rig = { kind: 'roller', scale: SCALE } as const;
    expect(rigForce({ ...rig, rollerFrictionShare: 0.03 }, { massKg: 1 }).ownUN).toBeGreaterThan(0.03 * 5);
    // Eased down to 10 N it reads 2.1, eased up to it 1.9, at 0.2 divisions a newton: half a newton of friction either way.
    const eased = [
      { reading: 2.1, from: 'down' },
      { reading: 1.9, from: 'up' },
    ] as const;
    expect(bracketedFriction({ eased, slopePerN: 0.2, forceN: 10 })).toBeCloseTo(0.05, 12);
    expect(bracketedFriction({ eased: eased.slice(0, 1), slopePerN: 0.2, forceN: 10 })).toBeUndefined();
  });

  it('mid-span: a deeper sag is a smaller force; sag errs most', () => {
    const rig: Rig = { kind: 'mid-span', scale: SCALE, halfDistanceM: known(0.2, 0.0005) };
    const shallow = rigForce(rig, { massKg: 0.1, sagM: known(0.01, 0.0005) });
    const deep = rigForce(rig, { massKg: 0.1, sagM: known(0.02, 0.0005) });
    expect(shallow.forceN).toBeCloseTo((0.1 * 9.80665 * Math.hypot(0.2, 0.01)) / 0.02, 9);
    expect(deep.forceN).toBeLessThan(shallow.forceN);
    expect(shallow.ownUN / shallow.forceN).toBeCloseTo(0.05, 2);
    expect(() => rigForce(rig, { massKg: 0.1 })).toThrow(RangeError);
  });

  it('a run of readings keeps what all loads share apart', () => {
    const { rows, shared } = loadedReadings({ kind: 'straight', scale: SCALE }, [{ row: 1, reading: 2, massKg: 1, series: 'a' }]);
    expect(rows).toEqual([{ row: 1, reading: 2, series: 'a', forceN: 9.80665, forceUN: expect.any(Number) }]);
    expect(shared.offsetN).toBeCloseTo(0.002 * 9.80665, 9);
  });
});

describe('readings', () => {
  it('tell their step', () => {
    expect(stepOfReadings([1.2, 1.4, 2.8, 3, 3.6, 4.4])).toBeCloseTo(0.1, 12); // six even ones may be chance
    expect(stepOfReadings([1.2, 1.4, 2.8, 3, 3.6, 4.4, 5, 5.2, 6.4, 7])).toBeCloseTo(0.2, 12);
    expect(stepOfReadings([15, 20, 35, 50, 65, 80])).toBe(5);
    expect(stepOfReadings([1.2, 1.4])).toBe(0);
    expect(stepOfReadings([1.1234567891, 2, 3, 4, 5, 6])).toBe(0);
  });

  it.each([
    [4.91, 4.19, 'digits-swapped'],
    [5.19, 4.19, 'digit-misread'],
    [3.7, 4.19, 'short'],
    [4.6, 4.19, 'beyond'],
  ])('%d instead of %d: %s', (reading, expected, guess) => {
    expect(slipGuess({ reading, expected, step: 0.01, direction: 1, deviation: 0.01 })).toBe(guess);
  });
});

describe('spline', () => {
  it('takes any cubic as it is, and never turns back', () => {
    const cubic = (x: number) => 1 + x + 0.05 * x ** 3;
    const knots = [0, 1, 2.5, 4, 6];
    const curve = splineCurve(knots, knots.map(cubic));
    for (const x of [0.5, 1.7, 3.3, 5.5]) expect(curve.reading(x)).toBeCloseTo(cubic(x), 9);
    const stepped = splineCurve(knots, [0, 0.1, 4, 4.05, 9]);
    expect(directionOf(stepped, { lowN: 0, highN: 6 })).toBe(1);
    const slope = (stepped.reading(3.0001) - stepped.reading(2.9999)) / 0.0002;
    expect(stepped.slope(3)).toBeCloseTo(slope, 5);
  });
});

const gauge = (law: (forceN: number) => number, loads = [2, 5, 8, 11, 14, 17, 20], scatter = 0.01): Calibration => {
  const rows = loads
    .flatMap((forceN) => [-1, 0, 1].map((k) => ({ reading: law(forceN) + k * scatter, forceN })))
    .map((row, i) => ({ row: i + 1, ...row }));
  const found = calibrate({ rows, toleranceRelative: 0.2 });
  if (found.kind !== 'calibration') throw new Error(found.why);
  return found;
};

describe('chart', () => {
  it('has even readings inside the verified range', () => {
    const calibration = gauge((F) => 0.25 * F);
    const rows = chartRows(calibration);
    const { verified } = calibration;
    if (verified.kind !== 'verified') throw new Error('nowhere');
    expect(rows.length).toBeGreaterThan(6);
    expect(rows.length).toBeLessThan(16);
    expect(rows[0]!.reading).toBeGreaterThanOrEqual(verified.readingLow);
    expect(rows.at(-1)!.reading).toBeLessThanOrEqual(verified.readingHigh);
    for (const { reading, force } of rows) expect(force.forceN).toBeCloseTo(reading / 0.25, 1);
    expect([evenStep(7, 14), evenStep(6.9, 10), evenStep(3.1, 14)]).toEqual([0.5, 1, 0.25]);
  });
});

describe('check piece', () => {
  const atCalibration = [5, 5.1, 4.9, 5, 5];
  const chart = (...readings: number[]) =>
    controlChart({ atCalibration, step: 0.1, later: readings.map((reading, at) => ({ at, reading })), toleranceReading: 0.6 })!;

  it('few readings make wide limits: t for four degrees of freedom', () => {
    // NIST TN 1297, table B.1: t95(4) = 2.78.
    const deviation = Math.sqrt((0.1 ** 2 + 0.1 ** 2) / 4);
    expect(chart().warning.high - 5).toBeCloseTo(2.78 * deviation * Math.sqrt(1.2), 2);
    expect(controlChart({ atCalibration: [5, 5], step: 0.1, later: [] })).toBeUndefined();
  });

  it.each([
    [[], { kind: 'no-later-readings' }],
    [[5, 5.1, 4.9], { kind: 'steady' }],
    [[5, 5.9], { kind: 'recalibrate', why: 'action' }],
    [[5.25, 5, 5.25], { kind: 'recalibrate', why: 'two-warnings' }],
    [[5.1, 5.1, 5.1, 5.1, 5.1, 5.1, 5.1, 5.1], { kind: 'recalibrate', why: 'drift' }],
  ])('%j', (readings, verdict) => {
    expect(chart(...readings).verdict).toEqual(verdict);
  });
});

describe('causes', () => {
  const setup = {
    forceN: 8,
    rise: known(1.6, 0.4),
    riseCorrected: false,
    densityRelativeU: 0.1,
    spanLengthM: known(0.18, 0.0005),
    bendingStiffnessNm2: 1.2e-4,
    fixityU: 0.15,
    repeatN: 0.1,
  };

  it('stand by size, those first that can explain the difference with its sign', () => {
    const causes = rankedCauses(setup, 1.2);
    expect(causes[0]).toMatchObject({ cause: 'insertion-rise', sizeN: 1.6, explains: true });
    expect(causes[1]).toMatchObject({ cause: 'density', explains: true });
    expect(causes.find(({ cause }) => cause === 'slip')).toMatchObject({ explains: false });
    expect(rankedCauses(setup, -1.2)[0]!.cause).toBe('density');
    expect(rankedCauses({ ...setup, riseCorrected: true }, 1.2)[0]!.cause).toBe('density');
  });

  it('sizes follow T = 4 μ L² f²: 2 % a percent of the span, 1 % a percent of the density', () => {
    const sizes = Object.fromEntries(rankedCauses(setup, 1).map(({ cause, sizeN }) => [cause, sizeN]));
    expect(sizes.density).toBeCloseTo(2 * 0.1 * 8, 12);
    expect(sizes.span).toBeCloseTo(2 * 2 * (0.0005 / 0.18) * 8, 12);
    // Both ends from hinged to clamped would shorten by 2 √(EI/T) and so raise the force by 4 √(EI/T)/L; 0.15 of it, twice.
    expect(sizes.ends).toBeCloseTo(2 * 0.15 * 4 * (Math.sqrt(1.2e-4 / 8) / 0.18) * 8, 12);
  });
});

describe('comparison', () => {
  const wanted = { target: { lowN: 6, highN: 9 }, toleranceRelative: 0.2, spansM: [0.06, 0.1, 0.2] };
  const fine = { id: 'fine', name: 'Fine', calibration: gauge((F) => 0.25 * F), needsSpanM: 0.09 };
  const rough = { id: 'rough', name: 'Rough', calibration: gauge((F) => 0.25 * F, undefined, 0.15), needsSpanM: 0.05 };
  const stopped = { id: 'stopped', name: 'Stopped', calibration: gauge((F) => Math.min(0.25 * F, 1.9)) };
  const chart = [1, 5].map((reading) => ({ reading, forceN: reading * 4 * 1.3 }));

  it('puts the best first and says what is wrong with the others', () => {
    const found = comparedGauges([stopped, rough, { ...fine, id: 'own', name: 'Own chart', chart }, fine], wanted);
    expect(found.map(({ id, grade }) => `${id} ${grade}`)).toEqual(['fine trusted', 'own doubtful', 'stopped unusable', 'rough unusable']);
    expect(found[0]).toMatchObject({ biasRelative: 0, fits: { count: 2, of: 3 } });
    expect(found.find(({ id }) => id === 'own')!.biasRelative).toBeCloseTo(0.3, 2);
    expect(found.find(({ id }) => id === 'stopped')).toMatchObject({ why: 'stop-in-target' });
    expect(found[0]!.linearityRelative).toBeLessThan(0.02);
  });
});
