/** NIST Statistical Reference Datasets, nonlinear regression: certified parameters and standard deviations, eleven significant digits. */
import { describe, expect, it } from 'vitest';
import { nonlinearSets } from '../../shared/nonlinear-sets.ts';
import { nonlinearLeastSquares } from '../../src/core/math/nonlinear-least-squares.ts';

type Model = (x: number, b: readonly number[]) => { value: number; slopes: readonly number[] };

/** The models as the sets state them, with their derivatives by hand. */
const MODELS: Readonly<Record<string, Model>> = {
  Misra1b: (x, [b1, b2]) => {
    const u = 1 + (b2! * x) / 2;
    return { value: b1! * (1 - u ** -2), slopes: [1 - u ** -2, b1! * x * u ** -3] };
  },
  Thurber: (x, b) => {
    const top = b[0]! + b[1]! * x + b[2]! * x ** 2 + b[3]! * x ** 3;
    const below = 1 + b[4]! * x + b[5]! * x ** 2 + b[6]! * x ** 3;
    return {
      value: top / below,
      slopes: [0, 1, 2, 3].map((k) => x ** k / below).concat([1, 2, 3].map((k) => (-top * x ** k) / below ** 2)),
    };
  },
  MGH09: (x, [b1, b2, b3, b4]) => {
    const top = x * x + b2! * x;
    const below = x * x + b3! * x + b4!;
    return {
      value: (b1! * top) / below,
      slopes: [top / below, (b1! * x) / below, (-b1! * top * x) / below ** 2, (-b1! * top) / below ** 2],
    };
  },
};

function fitted(set: (typeof nonlinearSets)[number], start: readonly number[]) {
  const model = MODELS[set.name]!;
  return nonlinearLeastSquares({
    start,
    residualsAt: (parameters) => {
      const at = set.data.map(({ x }) => model(x, Array.from(parameters)));
      return {
        values: Float64Array.from(set.data, ({ y }, i) => at[i]!.value - y),
        slopes: Float64Array.from(at.flatMap(({ slopes }) => slopes)),
      };
    },
  });
}

/** Eleven significant digits are printed; half of the last is the tolerance. */
const halfLastDigit = (printed: number): number => 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(printed))) - 10);

describe('certified nonlinear sets', () => {
  for (const set of nonlinearSets) {
    set.starts.forEach((start, which) => {
      it(`${set.name} from start ${which + 1}`, () => {
        const fit = fitted(set, start)!;
        expect(fit.degreesOfFreedom).toBe(set.degreesOfFreedom);
        const variance = fit.sumOfSquares / fit.degreesOfFreedom;
        const n = start.length;
        set.certified.forEach(({ value, standardDeviation }, j) => {
          expect(Math.abs(fit.parameters[j]! - value)).toBeLessThanOrEqual(halfLastDigit(value));
          const found = Math.sqrt(fit.covariance![j * n + j]! * variance);
          expect(Math.abs(found - standardDeviation)).toBeLessThanOrEqual(halfLastDigit(standardDeviation));
        });
        expect(Math.abs(fit.sumOfSquares - set.residualSumOfSquares)).toBeLessThanOrEqual(halfLastDigit(set.residualSumOfSquares));
      });
    });
  }
});
