import { expect, it } from 'vitest';
import { covarianceOf, independentState, observed, restarted, sdOf, shifted } from '../../../../src/core/math/gaussian-state.ts';
import { solvePositiveDefinite } from '../../../../src/core/math/linear-solve.ts';

it('combines a prior and a reading as inverse variances do', () => {
  const state = observed(independentState([{ mean: 10, sd: 2 }]), { index: 0, value: 14, variance: 1 });
  // weights 1/4 and 1/1: (10/4 + 14)/(1/4 + 1) = 13.2, variance 1/(1/4 + 1) = 0.8
  expect(state.mean[0]).toBeCloseTo(13.2, 12);
  expect(sdOf(state, 0) ** 2).toBeCloseTo(0.8, 12);
});

it('learns a slope from moves and readings as least squares with the same priors does', () => {
  // Unknowns: position x and slope s; moves of 2 and −1, readings after each.
  let state = independentState([
    { mean: 5, sd: 3 },
    { mean: 1, sd: 2 },
  ]);
  const readings = [
    { move: 0, value: 6, variance: 0.5 },
    { move: 2, value: 11, variance: 0.25 },
    { move: -1, value: 8, variance: 0.5 },
  ];
  for (const { move, value, variance } of readings) {
    state = shifted(state, [{ index: 0, by: state.mean[1]! * move, slopes: [[1, move]], variance: 0 }]);
    state = observed(state, { index: 0, value, variance });
  }
  // Normal equations in (start, slope): reading k sees start + slope × (sum of moves so far).
  const rows = [
    { a: [1, 0], y: 5, variance: 9 },
    { a: [0, 1], y: 1, variance: 4 },
    { a: [1, 0], y: 6, variance: 0.5 },
    { a: [1, 2], y: 11, variance: 0.25 },
    { a: [1, 1], y: 8, variance: 0.5 },
  ];
  const matrix = new Float64Array(4);
  const right = new Float64Array(2);
  for (const { a, y, variance } of rows) {
    for (let i = 0; i < 2; i++) {
      right[i]! += (a[i]! * y) / variance;
      for (let k = 0; k < 2; k++) matrix[2 * i + k]! += (a[i]! * a[k]!) / variance;
    }
  }
  const [start, slope] = solvePositiveDefinite(matrix, right)!;
  expect(state.mean[1]).toBeCloseTo(slope!, 10);
  expect(state.mean[0]).toBeCloseTo(start! + slope!, 10);
});

it('forgets what one unknown said of the others when it is known anew', () => {
  const moved = shifted(
    independentState([
      { mean: 1, sd: 1 },
      { mean: 1, sd: 1 },
    ]),
    [{ index: 0, by: 1, slopes: [[1, 1]], variance: 0.5 }],
  );
  expect(covarianceOf(moved, 0, 0)).toBeCloseTo(2.5, 12);
  expect(covarianceOf(moved, 0, 1)).toBeCloseTo(1, 12);
  const anew = restarted(moved, { index: 0, value: 7, sd: 0.1 });
  expect([anew.mean[0], sdOf(anew, 0), covarianceOf(anew, 0, 1), sdOf(anew, 1)]).toEqual([7, 0.1, 0, 1]);
});
