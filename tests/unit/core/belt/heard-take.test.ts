import { describe, expect, it } from 'vitest';
import { heardTake } from '../../../../src/core/belt/heard-take.ts';
import { forceScaleRelativeU, hungForceN } from '../../../../src/core/belt/hung-load.ts';
import { heardPluck } from '../../../support/heard.ts';

describe('heardTake', () => {
  it('takes the partials of all plucks together', () => {
    const take = heardTake([heardPluck(100), heardPluck(100.1), heardPluck(99.9)])!;
    expect(take.pluckCount).toBe(3);
    expect(take.partials.map(({ number }) => number)).toEqual([1, 2, 3]);
    expect(take.partials[1]!.frequencyHz.value).toBeCloseTo(200, 0);
    expect(take.sharedRelativeU).toBeGreaterThan(0.0003);
  });

  it('shares a glide that is left over among all partials', () => {
    const calm = heardTake([heardPluck(100, { glideRelative: 0 })])!;
    const hard = heardTake([heardPluck(100, { glideRelative: 0.05 })])!;
    expect(hard.sharedRelativeU ** 2 - calm.sharedRelativeU ** 2).toBeCloseTo(0.005 ** 2, 9);
  });

  it('is nothing without a pluck', () => {
    expect(heardTake([])).toBeUndefined();
  });
});

describe('hungForceN', () => {
  // Standard gravity 9.80665 m/s², exact (CGPM 1901)
  it('is mass times gravity, as sure as the mass', () => {
    const { value, standardUncertainty } = hungForceN({ value: 1, standardUncertainty: 0.002 }, { rig: 'hang' });
    expect(value).toBeCloseTo(9.80665, 9);
    expect(standardUncertainty).toBeCloseTo(0.002 * 9.80665, 9);
  });

  // Gravity at sea level runs from 9.780 to 9.832 m/s² (WGS84, equator and pole): even between, 0.15 %
  it('shares local gravity among all weights', () => {
    expect(forceScaleRelativeU()).toBeGreaterThan(0.0015);
    expect(forceScaleRelativeU()).toBeLessThan(0.002);
  });

  it('is less sure over a roller', () => {
    const mass = { value: 0.8, standardUncertainty: 0.0008 };
    expect(hungForceN(mass, { rig: 'roller' }).standardUncertainty).toBeGreaterThan(
      5 * hungForceN(mass, { rig: 'hang' }).standardUncertainty,
    );
  });

  // Normal gravity at 45 degrees is 9.80619920 m/s² (WGS84, as tabled beside its formula); free air takes 0.003086 m/s² in a kilometre
  it('knows gravity where the place is told', () => {
    const place = { latitudeDeg: 45, heightM: 1000 };
    expect(hungForceN({ value: 1, standardUncertainty: 0 }, { rig: 'hang', place }).value).toBeCloseTo(9.8061992 - 0.003086, 5);
    expect(forceScaleRelativeU(place)).toBeLessThan(forceScaleRelativeU() / 2);
  });

  // By hand: (0.3 + 0.025 + 0.4 · 0.008) kg · 9.80665 m/s²
  it('counts hook and belt below, and doubts them with it', () => {
    const hang = {
      rig: 'hang',
      hangerKg: { value: 0.025, standardUncertainty: 0.001 },
      beltBelowM: 0.4,
      linearDensityKgPerM: 0.008,
    } as const;
    const { value, standardUncertainty } = hungForceN({ value: 0.3, standardUncertainty: 0.0006 }, hang);
    expect(value).toBeCloseTo(3.21854, 5);
    expect(standardUncertainty).toBeGreaterThan(9.80665 * Math.hypot(0.0006, 0.001) * 0.999);
    expect(standardUncertainty).toBeLessThan(9.80665 * 0.0015);
  });
});
