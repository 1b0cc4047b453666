import { describe, expect, it } from 'vitest';
import { heardTake } from '../../../../src/core/belt/heard-take.ts';
import { FORCE_SCALE_RELATIVE_U, hungForceN } from '../../../../src/core/belt/hung-load.ts';
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
    const { value, standardUncertainty } = hungForceN({ value: 1, standardUncertainty: 0.002 }, 'hang');
    expect(value).toBeCloseTo(9.80665, 9);
    expect(standardUncertainty).toBeCloseTo(0.002 * 9.80665, 9);
  });

  // Gravity at sea level runs from 9.780 to 9.832 m/s² (WGS84, equator and pole): even between, 0.15 %
  it('shares local gravity among all weights', () => {
    expect(FORCE_SCALE_RELATIVE_U).toBeGreaterThan(0.0015);
    expect(FORCE_SCALE_RELATIVE_U).toBeLessThan(0.002);
  });

  it('is less sure over a roller', () => {
    const mass = { value: 0.8, standardUncertainty: 0.0008 };
    expect(hungForceN(mass, 'roller').standardUncertainty).toBeGreaterThan(5 * hungForceN(mass, 'hang').standardUncertainty);
  });
});
