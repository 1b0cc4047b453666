import { describe, expect, it } from 'vitest';
import { inverseOfPositiveDefinite, solvePositiveDefinite } from '../../../../src/core/math/linear-solve.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';

// Hilbert matrix 1/(i + j − 1) of order 4 and its inverse, which is known in whole numbers (Choi, Amer. Math. Monthly 90 (1983) 301).
const HILBERT_4 = Float64Array.from({ length: 16 }, (_, i) => 1 / ((i % 4) + Math.floor(i / 4) + 1));
const INVERSE_4 = [16, -120, 240, -140, -120, 1200, -2700, 1680, 240, -2700, 6480, -4200, -140, 1680, -4200, 2800];

describe('inverseOfPositiveDefinite', () => {
  it('inverts the Hilbert matrix of order 4', () => {
    const inverse = inverseOfPositiveDefinite(HILBERT_4, 4)!;
    inverse.forEach((value, i) => {
      expect(Math.abs(value / INVERSE_4[i]! - 1)).toBeLessThan(1e-11);
    });
  });

  it('reads the lower triangle and changes nothing', () => {
    const matrix = HILBERT_4.map((value, i) => (i % 4 > Math.floor(i / 4) ? Number.NaN : value));
    const before = matrix.slice();
    expect(inverseOfPositiveDefinite(matrix, 4)![0]).toBeCloseTo(16, 8);
    expect(matrix).toEqual(before);
  });

  it.each([
    ['singular', [1, 1, 1, 1]],
    ['indefinite', [1, 2, 2, 1]],
    ['negative', [-1, 0, 0, 1]],
    ['empty of information', [0, 0, 0, 0]],
    ['not finite', [Number.NaN, 0, 0, 1]],
  ])('gives nothing for a %s matrix', (_, matrix) => {
    expect(inverseOfPositiveDefinite(Float64Array.from(matrix), 2)).toBeUndefined();
    expect(solvePositiveDefinite(Float64Array.from(matrix), Float64Array.of(1, 2))).toBeUndefined();
  });

  it('takes units as they come: a hertz beside a billionth', () => {
    const [a, b, c] = [4e-18, 1e-9, 1]; // correlation 0.5
    const inverse = inverseOfPositiveDefinite(Float64Array.of(a, b, b, c), 2)!;
    expect(inverse[0]! * (a * c - b * b)).toBeCloseTo(c, 12);
    expect((inverse[3]! * (a * c - b * b)) / a).toBeCloseTo(1, 12);
  });
});

describe('solvePositiveDefinite', () => {
  it.each([1, 2, 5, 12])('finds the x that was multiplied, %d unknowns', (n) => {
    const random = createRandom(n);
    const root = Array.from({ length: n + 3 }, () => Array.from({ length: n }, () => random.gaussian()));
    const matrix = Float64Array.from({ length: n * n }, (_, i) =>
      root.reduce((sum, row) => sum + row[i % n]! * row[Math.floor(i / n)]!, 0),
    );
    const x = Array.from({ length: n }, () => random.gaussian());
    const right = Float64Array.from(x, (_, i) => x.reduce((sum, value, j) => sum + matrix[i * n + j]! * value, 0));
    const before = right.slice();
    const solved = solvePositiveDefinite(matrix, right)!;
    x.forEach((value, i) => {
      expect(Math.abs(solved[i]! - value)).toBeLessThan(1e-10);
    });
    expect(right).toEqual(before);
  });
});
