import { describe, expect, test } from 'vitest';
import { beamPhase, type EndFixities, guessedWaveNumber } from '../../../../src/core/vibration/beam-phase.ts';

/** Determinant of a 4 × 4 matrix by elimination with pivots. */
function determinant(matrix: readonly (readonly number[])[]): number {
  const rows = matrix.map((row) => [...row]);
  let product = 1;
  for (let k = 0; k < rows.length; k++) {
    const best = rows.slice(k).reduce((at, row, i) => (Math.abs(row[k]!) > Math.abs(rows[at]![k]!) ? k + i : at), k);
    if (best !== k) {
      [rows[k], rows[best]] = [rows[best]!, rows[k]!];
      product = -product;
    }
    const pivot = rows[k]!;
    product *= pivot[k]!;
    for (const row of rows.slice(k + 1)) {
      const share = row[k]! / pivot[k]!;
      row.forEach((value, j) => {
        row[j] = value - share * pivot[j]!;
      });
    }
  }
  return product;
}

/**
 * The four end conditions themselves, for y = c1 sin bx + c2 cos bx + c3 exp(−ax) + c4 exp(−a(1−x)) on 0..1: no deflection, and
 * (1−φ) y″ = ± φ ξ y′, a spring of φ/(1−φ) sqrt(EI T) per radian in lengths of the span.
 */
function endConditions(b: number, xi: number, [φ1, φ2]: EndFixities): number {
  const a = Math.hypot(xi, b);
  const [e, s, c] = [Math.exp(-a), Math.sin(b), Math.cos(b)];
  const held = (φ: number, sign: number, slopes: readonly number[], bends: readonly number[]) =>
    bends.map((bend, i) => (1 - φ) * bend - sign * φ * xi * slopes[i]!);
  return determinant([
    [0, 1, 1, e],
    [s, c, e, 1],
    held(φ1, 1, [b, 0, -a, a * e], [0, -b * b, a * a, a * a * e]),
    held(φ2, -1, [b * c, -b * s, -a * e, a], [-b * b * s, -b * b * c, a * a * e, a * a]),
  ]);
}

/** The first modes, by looking for sign changes from b = 0 on and halving them. */
function modes(count: number, xi: number, fixity: EndFixities): number[] {
  const found: number[] = [];
  const step = 0.01;
  for (let b = step; found.length < count; b += step) {
    let [low, high] = [b, b + step];
    if (endConditions(low, xi, fixity) * endConditions(high, xi, fixity) > 0) continue;
    for (let i = 0; i < 50; i++) {
      const middle = (low + high) / 2;
      if (endConditions(low, xi, fixity) * endConditions(middle, xi, fixity) <= 0) high = middle;
      else low = middle;
    }
    found.push((low + high) / 2);
  }
  return found;
}

const ENDS: readonly EndFixities[] = [
  [0, 0],
  [0, 1],
  [1, 1],
  [0.3, 0.9],
  [0.5, 0.5],
  [0.999, 0.001],
];

describe.each([0.3, 3, 20, 90])('at ξ = %d the phase is zero where the end conditions are met', (xi) => {
  test.each(ENDS)('ends %d and %d, modes 1 to 5', (...fixity) => {
    modes(5, xi, fixity).forEach((b, i) => {
      const at = { b, a: Math.hypot(xi, b), xi, fixity };
      expect(Math.abs(beamPhase({ ...at, number: i + 1 }).value)).toBeLessThan(1e-8);
    });
  });

  test.each(ENDS)('ends %d and %d: only its own mode, and rising through it', (...fixity) => {
    const [first, second, third] = modes(3, xi, fixity) as [number, number, number];
    const value = (b: number, number: number) => beamPhase({ b, a: Math.hypot(xi, b), xi, fixity, number }).value;
    expect(Math.abs(value(second, 1))).toBeGreaterThan(1);
    expect(Math.abs(value(second, 3))).toBeGreaterThan(1);
    expect(value((first + second) / 2, 2)).toBeLessThan(0);
    expect(value((second + third) / 2, 2)).toBeGreaterThan(0);
  });
});

test('hinged ends leave b − n π and nothing else', () => {
  for (const number of [1, 2, 7]) {
    const phase = beamPhase({ b: 5, a: 13, xi: 12, fixity: [0, 0], number });
    expect(phase.value).toBeCloseTo(5 - number * Math.PI, 14);
    expect([phase.perB, phase.perA, phase.perXi]).toEqual([1, expect.closeTo(0, 14), expect.closeTo(0, 14)]);
  }
});

test.each([
  { b: 3.3, a: 4, xi: 2.5, fixity: [0.4, 0.7], number: 1 },
  { b: 6.9, a: 14, xi: 12, fixity: [0.9, 0.2], number: 2 },
  { b: 4.6, a: 5, xi: 2, fixity: [0.95, 0.97], number: 1 },
  { b: 9.8, a: 61, xi: 60, fixity: [0.5, 1], number: 3 },
] as const)('derivatives are those of the value: %o', (at) => {
  const h = 1e-5;
  const difference = (change: (d: number) => Partial<Parameters<typeof beamPhase>[0]>) =>
    (beamPhase({ ...at, ...change(h) }).value - beamPhase({ ...at, ...change(-h) }).value) / (2 * h);
  const [φ1, φ2] = at.fixity;
  const phase = beamPhase(at);
  expect(phase.perB).toBeCloseTo(
    difference((d) => ({ b: at.b + d })),
    7,
  );
  expect(phase.perA).toBeCloseTo(
    difference((d) => ({ a: at.a + d })),
    7,
  );
  expect(phase.perXi).toBeCloseTo(
    difference((d) => ({ xi: at.xi + d })),
    7,
  );
  expect(phase.perFixity[0]).toBeCloseTo(
    difference((d) => ({ fixity: [φ1 + d, φ2] })),
    7,
  );
  expect(phase.perFixity[1]).toBeCloseTo(
    difference((d) => ({ fixity: [φ1, φ2 + d] })),
    7,
  );
});

test.each([1e-6, 1, 700, 800, 1e5])('stays a number where cosh does not: ξ = %d', (xi) => {
  for (const fixity of ENDS) {
    const phase = beamPhase({ b: 3.2, a: Math.hypot(xi, 3.2), xi, fixity, number: 1 });
    for (const value of [phase.value, phase.perB, phase.perA, phase.perXi, ...phase.perFixity]) expect(Number.isFinite(value)).toBe(true);
  }
});

describe('the first guess', () => {
  test('is the mode itself between hinges, and the same whichever end is which', () => {
    expect(guessedWaveNumber({ b: 2 * Math.PI, xi: 9, fixity: [0, 0], number: 2 })).toBe(2 * Math.PI);
    const guess = (fixity: EndFixities) => guessedWaveNumber({ b: Math.PI, xi: 9, fixity, number: 1 });
    expect(guess([0.2, 0.8])).toBeCloseTo(guess([0.8, 0.2]), 14);
  });

  // P. M. Morse, Vibration and Sound, section 16: between clamps f_n = n f_0 (1 + 2/ξ + (4 + n²π²/2)/ξ²), and f_n = f_0 a b/(ξ π).
  test.each([1, 2, 3])('of mode %d between clamps is that of a long span to the first order', (number) => {
    for (const xi of [200, 1000]) {
      const b = guessedWaveNumber({ b: number * Math.PI, xi, fixity: [1, 1], number });
      const ratio = (Math.hypot(xi, b) * b) / (xi * Math.PI * number);
      expect(Math.abs(ratio - (1 + 2 / xi))).toBeLessThan((4 + (number * Math.PI) ** 2 / 2 + 1) / xi ** 2);
    }
  });

  test.each(ENDS)('is near enough for modes 1 to 4, ends %d and %d', (...fixity) => {
    for (const xi of [3, 20, 90]) {
      modes(4, xi, fixity).forEach((b, i) => {
        expect(Math.abs(guessedWaveNumber({ b: (i + 1) * Math.PI, xi, fixity, number: i + 1 }) - b)).toBeLessThan(0.3);
      });
    }
  });
});
