/** Figures of force standards, and fits against general libraries and published data. */

import { PolynomialRegression } from 'ml-regression-polynomial';
import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { type Calibration, calibrate } from '../../src/core/gauge/calibration.ts';
import { fitCurve } from '../../src/core/gauge/fit.ts';
import { localGravity } from '../../src/core/gauge/gravity.ts';
import { nistData } from '../support/nist-file.ts';

const proved = (
  rows: readonly { reading: number; forceN: number; series?: string; direction?: 'up' | 'down' }[],
  more = {},
): Calibration => {
  const found = calibrate({ rows: rows.map((row, i) => ({ row: i + 1, ...row })), toleranceRelative: 0.2, ...more });
  if (found.kind !== 'calibration') throw new Error(found.why);
  return found;
};

describe('ISO 376 (definitions from memory)', () => {
  // X1, X2 in one position, X3 and X5 in others; rising by 100 a load so that a reading's share is a force's share.
  const runs: Readonly<Record<string, readonly [number, number, number, number]>> = {
    100: [100.02, 100.05, 100.08, 99.97],
    200: [200.02, 200.03, 200.04, 200.01],
    300: [300.01, 300.07, 300.13, 299.95],
  };
  const rows = Object.entries(runs).flatMap(([force, [x1, x2, x3, x5]]) => [
    { reading: x1, forceN: Number(force), series: '0°' },
    { reading: x2, forceN: Number(force), series: '0°' },
    { reading: x3, forceN: Number(force), series: '120°' },
    { reading: x5, forceN: Number(force), series: '240°' },
  ]);
  const { figures } = proved(rows, { kind: 'line' });

  it('b′ = |X2 − X1| / mean(X1, X2) and b = (max − min of X1, X3, X5) / mean: 0.02999 % and 0.10997 % at 100', () => {
    // Per load: b′ 0.029990 %, 0.005, 0.019997; b 0.109974 %, 0.015, 0.059994. As shares of the force the slope's 1.0001 and the
    // difference of reading and force enter, 0.05 % of the figure.
    expect(figures.repeatabilityRelative).toBeCloseTo(0.0002999, 6);
    expect(figures.reproducibilityRelative).toBeCloseTo(0.00109974, 6);
  });

  it('v = |X′ − X| / X: readings going down 0.5 % above those going up', () => {
    const both = [10, 20, 30].flatMap((forceN) => [
      { reading: forceN, forceN, direction: 'up' as const },
      { reading: forceN * 1.005, forceN, direction: 'down' as const },
    ]);
    expect(proved(both, { kind: 'line', throughOrigin: true }).figures.reversibilityRelative).toBeCloseTo(0.005 / 1.0025, 6);
  });

  it('zero and what was never run', () => {
    const { figures: plain } = proved([0, 10, 20, 30].map((forceN) => ({ reading: 0.02 + forceN, forceN })));
    expect(plain.zeroReading).toBe(0.02);
    expect(plain.reversibilityRelative).toBeUndefined();
    expect(plain.reproducibilityRelative).toBeUndefined();
  });
});

describe('fits by other libraries', () => {
  const rows = nistData('Pontius').map(({ x, y }, i) => ({ row: i + 1, forceN: x, reading: y }));

  it('a line through Pontius: a good R² hides a fit ten times worse', () => {
    const fit = fitCurve({ kind: 'line', rows })!;
    const theirs = linearRegression(rows.map(({ forceN, reading }) => [forceN, reading]));
    expect(fit.curve.parameters[0]!).toBeCloseTo(theirs.b, 12);
    expect(fit.curve.parameters[1]! / theirs.m).toBeCloseTo(1, 12);
    // Refitted in exact rational arithmetic: residual deviation 2.17127259605675e-3, of the quadratic 2.05177424076185e-4.
    expect(fit.residualStandardDeviation / 2.17127259605675e-3).toBeCloseTo(1, 12);
    expect(proved(rows).fit.curve.kind).toBe('quadratic');
  });

  it('a quadratic as another library has it', () => {
    const x = [2, 4, 7, 9, 13, 16];
    const y = [0.61, 1.1, 1.93, 2.4, 3.3, 3.91];
    const fit = fitCurve({ kind: 'quadratic', rows: x.map((forceN, i) => ({ row: i, forceN, reading: y[i]! })) })!;
    const theirs = new PolynomialRegression(x, y, 2).coefficients;
    for (const [j, value] of fit.curve.parameters.entries()) expect(value).toBeCloseTo(theirs[j]!, 9);
  });

  it('the saturating law through the origin on the rates of an enzyme', () => {
    // Treloar (1974), in Bates & Watts, Nonlinear Regression Analysis (1988), the treated cells; fit as R's manual of nls prints it, from
    // memory: Vm 212.7 (6.947), K 0.06412 (0.008281), residual deviation 10.93 with 10 degrees of freedom.
    const x = [0.02, 0.02, 0.06, 0.06, 0.11, 0.11, 0.22, 0.22, 0.56, 0.56, 1.1, 1.1];
    const y = [76, 47, 97, 107, 123, 139, 159, 152, 191, 201, 207, 200];
    const fit = fitCurve({ kind: 'saturating', throughOrigin: true, rows: x.map((forceN, i) => ({ row: i, forceN, reading: y[i]! })) })!;
    const [R, Fh] = fit.curve.parameters;
    const deviation = (j: number) => fit.residualStandardDeviation * Math.sqrt(fit.inverse[j * 2 + j]!);
    expect(R).toBeCloseTo(212.7, 1);
    expect(Fh).toBeCloseTo(0.06412, 5);
    expect(deviation(0)).toBeCloseTo(6.947, 2);
    expect(deviation(1)).toBeCloseTo(0.008281, 5);
    expect(fit.residualStandardDeviation).toBeCloseTo(10.93, 2);
    expect(fit.degreesOfFreedom).toBe(10);
  });
});

describe('normal gravity', () => {
  // WGS84, Somigliana's closed form, as articles on theoretical gravity print its constants.
  it.each([
    [0, 9.7803253359],
    [30, 9.7932472692],
    [45, 9.8061977694],
    [60, 9.8191769531],
    [90, 9.8321849379],
    [-45, 9.8061977694],
  ])('at %d° %d m/s²', (latitudeDeg, gravity) => {
    expect(localGravity({ latitudeDeg }).value).toBeCloseTo(gravity, 9);
  });

  it('falls by 0.003086 m/s² a kilometre (free air, from memory), and is doubtful where no place is told', () => {
    expect(localGravity({ latitudeDeg: 45, heightM: 1000 }).value).toBeCloseTo(9.8061977694 - 0.003086, 6);
    expect(localGravity(undefined).standardUncertainty).toBeCloseTo(0.0259 / Math.sqrt(3), 6);
  });
});
