import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../../../src/core/math/least-squares.ts';
import { nonlinearLeastSquares } from '../../../../src/core/math/nonlinear-least-squares.ts';

/** y = a e^(−b t) at t = 0, 1, 2, 3. */
function decay(truth: { a: number; b: number }, bounds: { lowest?: number[]; highest?: number[] } = {}) {
  const times = [0, 1, 2, 3];
  return nonlinearLeastSquares({
    start: [1, 1],
    ...bounds,
    residualsAt: ([a, b]) => ({
      values: Float64Array.from(times, (t) => a! * Math.exp(-b! * t) - truth.a * Math.exp(-truth.b * t)),
      slopes: Float64Array.from(times.flatMap((t) => [Math.exp(-b! * t), -a! * t * Math.exp(-b! * t)])),
    }),
  });
}

describe('leastSquares', () => {
  it('fits a line exactly, with the textbook covariance σ² (XᵀX)⁻¹', () => {
    const fit = leastSquares({ rows: 3, columns: 2, values: Float64Array.from([1, 0, 1, 1, 1, 2]) }, Float64Array.from([1, 3, 5]))!;
    expect(Array.from(fit.solution).map((x) => Number(x.toFixed(12)))).toEqual([1, 2]);
    expect(fit.inverseNormal[0]).toBeCloseTo(5 / 6, 12);
    expect(fit.inverseNormal[1]).toBeCloseTo(-1 / 2, 12);
    expect(fit.inverseNormal[3]).toBeCloseTo(1 / 2, 12);
  });

  it('says when two columns are one', () => {
    const values = Float64Array.from([1, 2, 1, 2, 1, 2]);
    expect(leastSquares({ rows: 3, columns: 2, values }, new Float64Array(3))).toBeUndefined();
    expect(() => leastSquares({ rows: 1, columns: 2, values }, new Float64Array(1))).toThrow('at least as many rows');
  });
});

describe('nonlinearLeastSquares', () => {
  it('comes to rest on data without doubt', () => {
    const fit = decay({ a: 3, b: 0.4 })!;
    expect(fit.parameters[0]).toBeCloseTo(3, 12);
    expect(fit.parameters[1]).toBeCloseTo(0.4, 12);
    expect(fit.isAtBound).toEqual([false, false]);
  });

  it('stops at a bound, names it, and counts what it holds as known', () => {
    const fit = decay({ a: 3, b: 0.4 }, { lowest: [0, 0.5] })!;
    expect(fit.parameters[1]).toBe(0.5);
    expect(fit.isAtBound).toEqual([false, true]);
    expect(fit.covariance![3]).toBe(0);
    expect(fit.covariance![0]).toBeCloseTo(1 / [0, 1, 2, 3].reduce((sum, t) => sum + Math.exp(-t), 0), 10);
  });

  it('leaves a bound again when the start lies on it', () => {
    const fit = decay({ a: 3, b: 0.4 }, { lowest: [0, 0], highest: [10, 1] })!;
    expect(fit.parameters[1]).toBeCloseTo(0.4, 12);
  });

  it('holds a parameter between two equal bounds', () => {
    const fit = decay({ a: 3, b: 0.4 }, { lowest: [-Infinity, 0.7], highest: [Infinity, 0.7] })!;
    expect(fit.parameters[1]).toBe(0.7);
    expect(fit.isAtBound[1]).toBe(true);
  });

  it('takes no step to where the model has no value', () => {
    // ln x = −1: a plain step from 3 leads below nought
    const fit = nonlinearLeastSquares({
      start: [3],
      residualsAt: ([x]) => (x! > 0 ? { values: Float64Array.of(Math.log(x!) + 1), slopes: Float64Array.of(1 / x!) } : undefined),
    })!;
    expect(fit.parameters[0]).toBeCloseTo(Math.exp(-1), 10);
    expect(nonlinearLeastSquares({ start: [-1], residualsAt: () => undefined })).toBeUndefined();
  });

  it('says that the data leave a parameter open', () => {
    const fit = nonlinearLeastSquares({
      start: [1, 1],
      residualsAt: ([a, b]) => ({ values: Float64Array.of(a! + b! - 3, 2 * (a! + b!) - 6), slopes: Float64Array.of(1, 1, 2, 2) }),
    })!;
    expect(fit.sumOfSquares).toBeLessThan(1e-20);
    expect(fit.covariance).toBeUndefined();
  });
});
