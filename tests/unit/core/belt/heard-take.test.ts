import { describe, expect, it } from 'vitest';
import { heardTake } from '../../../../src/core/belt/heard-take.ts';
import { hungForceN } from '../../../../src/core/belt/hung-load.ts';
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
  // Standard gravity 9.80665 m/s², exact (CGPM 1901); air takes 0.015 to 0.12 % off weights of iron to water
  it('is mass times gravity, less what the air bears', () => {
    const { value, standardUncertainty } = hungForceN({ value: 1, standardUncertainty: 0 }, 'hang');
    expect(value).toBeGreaterThan(9.80665 * 0.9988);
    expect(value).toBeLessThan(9.80665 * 0.99985);
    expect(standardUncertainty / value).toBeLessThan(0.0005);
  });

  it('is less sure over a roller', () => {
    const mass = { value: 0.8, standardUncertainty: 0.0008 };
    expect(hungForceN(mass, 'roller').standardUncertainty).toBeGreaterThan(5 * hungForceN(mass, 'hang').standardUncertainty);
  });
});
