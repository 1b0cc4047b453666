/** Ten or more belts measured both ways: bias and limits of agreement with their intervals, by the method of Bland and Altman. */

import { coverageFactorOf } from '../math/propagation.ts';

export interface Pair {
  readonly gaugeN: number;
  readonly soundN: number;
  /** Pairs of one belt in one state are no independent evidence: their means count once. */
  readonly belt?: string | undefined;
}

export interface Limits {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface AgreementPlot {
  /** `newtons`: differences. `ratio`: natural logarithms of gauge over sound, where the spread grows with the force. */
  readonly scale: 'newtons' | 'ratio';
  readonly count: number;
  readonly points: readonly { readonly meanN: number; readonly difference: number }[];
  readonly bias: Limits;
  readonly deviation: number;
  readonly lower: Limits;
  readonly upper: Limits;
}

/** Below this many independent pairs limits say too little. */
export const FEWEST_PAIRS = 10;
/** Correlation of |difference| and mean from which on the spread is taken to grow (one-sided 5 %, by its t). */
const GROWS = 0.05;
const LIMIT = 1.96;

/** @param scale  chosen by the data where it is not told */
export function agreementPlot(pairs: readonly Pair[], scale?: AgreementPlot['scale'] | undefined): AgreementPlot | undefined {
  const belts = independent(pairs);
  if (belts.length < 3) return undefined;
  const chosen = scale ?? (spreadGrows(belts) && belts.every(({ gaugeN, soundN }) => gaugeN > 0 && soundN > 0) ? 'ratio' : 'newtons');
  const points = belts.map(({ gaugeN, soundN, within }) => ({
    meanN: (gaugeN + soundN) / 2,
    difference: chosen === 'ratio' ? Math.log(gaugeN / soundN) : gaugeN - soundN,
    within: chosen === 'ratio' ? within / ((gaugeN + soundN) / 2) ** 2 : within,
  }));
  const n = points.length;
  const bias = points.reduce((sum, { difference }) => sum + difference, 0) / n;
  const ofMeans = points.reduce((sum, { difference }) => sum + (difference - bias) ** 2, 0) / (n - 1);
  // A single new pair also has the scatter of repeats that the means of a belt have lost (Bland & Altman 1999, 5.2).
  const lost = points.reduce((sum, { within }) => sum + within, 0) / n;
  const deviation = Math.sqrt(ofMeans + lost);
  const t = coverageFactorOf(n - 1, 0.95);
  const around = (value: number, u: number): Limits => ({ value, low: value - t * u, high: value + t * u });
  const limitU = deviation * Math.sqrt(3 / n);
  return {
    scale: chosen,
    count: n,
    points: points.map(({ meanN, difference }) => ({ meanN, difference })),
    bias: around(bias, Math.sqrt(ofMeans / n)),
    deviation,
    lower: around(bias - LIMIT * deviation, limitU),
    upper: around(bias + LIMIT * deviation, limitU),
  };
}

/** Means of each belt's pairs, and the variance of a difference that the mean has lost. */
function independent(pairs: readonly Pair[]) {
  const groups = new Map<string, Pair[]>();
  for (const [index, pair] of pairs.entries()) {
    const key = pair.belt ?? `pair ${index}`;
    groups.set(key, [...(groups.get(key) ?? []), pair]);
  }
  return [...groups.values()].map((group) => {
    const mean = (of: (pair: Pair) => number): number => group.reduce((sum, pair) => sum + of(pair), 0) / group.length;
    const middle = mean(({ gaugeN, soundN }) => gaugeN - soundN);
    const variance =
      group.length > 1 ? group.reduce((sum, { gaugeN, soundN }) => sum + (gaugeN - soundN - middle) ** 2, 0) / (group.length - 1) : 0;
    return { gaugeN: mean(({ gaugeN }) => gaugeN), soundN: mean(({ soundN }) => soundN), within: variance * (1 - 1 / group.length) };
  });
}

function spreadGrows(belts: readonly { readonly gaugeN: number; readonly soundN: number }[]): boolean {
  const n = belts.length;
  const middle = belts.reduce((sum, { gaugeN, soundN }) => sum + gaugeN - soundN, 0) / n;
  const x = belts.map(({ gaugeN, soundN }) => (gaugeN + soundN) / 2);
  const y = belts.map(({ gaugeN, soundN }) => Math.abs(gaugeN - soundN - middle));
  const [mx, my] = [x, y].map((values) => values.reduce((sum, value) => sum + value, 0) / n) as [number, number];
  const sxy = x.reduce((sum, value, i) => sum + (value - mx) * (y[i]! - my), 0);
  const [sxx, syy] = [x.reduce((sum, value) => sum + (value - mx) ** 2, 0), y.reduce((sum, value) => sum + (value - my) ** 2, 0)];
  if (!(sxx > 0 && syy > 0)) return false;
  const r = sxy / Math.sqrt(sxx * syy);
  return r > 0 && r * Math.sqrt((n - 2) / Math.max(1e-12, 1 - r * r)) > coverageFactorOf(n - 2, 1 - 2 * GROWS);
}
