/** Agreement of two methods, E_n, and analysis of variance, on published data. */

import { describe, expect, it } from 'vitest';
import { agreementPlot, type Pair } from '../../src/core/gauge/agreement-plot.ts';
import { crossCheck } from '../../src/core/gauge/cross-check.ts';
import { gaugeStudy, oneWay } from '../../src/core/gauge/gauge-study.ts';
import { digitsAgreeing, nistColumns } from '../support/nist-file.ts';

// Bland & Altman, Lancet 327 (1986) 307: peak expiratory flow, l/min, 17 people, large and mini meter, each twice.
const LARGE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const LARGE_2 = [490, 397, 512, 401, 470, 611, 415, 431, 638, 429, 420, 633, 275, 492, 165, 372, 421];
const MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
const MINI_2 = [525, 415, 508, 444, 500, 625, 460, 390, 642, 432, 420, 605, 227, 467, 268, 370, 443];

describe('Bland and Altman 1986', () => {
  const plot = agreementPlot(
    LARGE.map((gaugeN, i) => ({ gaugeN, soundN: MINI[i]! })),
    'newtons',
  )!;

  it('bias −2.1, deviation 38.8, limits −78 and 74', () => {
    expect(plot.count).toBe(17);
    expect(plot.bias.value).toBeCloseTo(-2.1176, 4);
    expect(plot.deviation).toBeCloseTo(38.7651, 4);
    // ±1.96 deviations: −78.0973 to 73.8620 (the paper has ±2: −79.7 to 75.5).
    expect(plot.lower.value).toBeCloseTo(-78.0973, 4);
    expect(plot.upper.value).toBeCloseTo(73.862, 3);
  });

  it('intervals: bias −22.0 to 17.8; half width of a limit 2.12 × 16.28', () => {
    expect(plot.bias.low).toBeCloseTo(-22.0488, 3);
    expect(plot.bias.high).toBeCloseTo(17.8135, 3);
    expect(plot.lower.high - plot.lower.value).toBeCloseTo(2.119905 * 16.284612, 3);
  });

  it('does not count repeats of one person as independent', () => {
    const repeated: Pair[] = LARGE.flatMap((gaugeN, i) => [
      { gaugeN, soundN: MINI[i]!, belt: `person ${i}` },
      { gaugeN: LARGE_2[i]!, soundN: MINI_2[i]!, belt: `person ${i}` },
    ]);
    const both = agreementPlot(repeated, 'newtons')!;
    expect(both.count).toBe(17);
    // Of the 17 differences of means and of repeats, by the paper's own recipe (Bland & Altman 1999, 5.2): variance of the means' differences
    // plus half of the repeats' variance.
    const d = LARGE.map((large, i) => [large - MINI[i]!, LARGE_2[i]! - MINI_2[i]!] as const);
    const means = d.map(([a, b]) => (a + b) / 2);
    const middle = means.reduce((sum, m) => sum + m, 0) / 17;
    const between = means.reduce((sum, m) => sum + (m - middle) ** 2, 0) / 16;
    const within = d.reduce((sum, [a, b]) => sum + (a - b) ** 2 / 2, 0) / 17;
    expect(both.deviation).toBeCloseTo(Math.sqrt(between + within / 2), 9);
    expect(both.bias.value).toBeCloseTo(middle, 9);
  });

  it('goes over to ratios where the spread grows with the size', () => {
    const pairs = Array.from({ length: 14 }, (_, i) => ({ gaugeN: (i + 2) * (i % 2 === 0 ? 1.1 : 0.9), soundN: i + 2 }));
    expect(agreementPlot(pairs)!.scale).toBe('ratio');
    expect(plot.scale).toBe('newtons');
    expect(agreementPlot(LARGE.map((gaugeN, i) => ({ gaugeN, soundN: MINI[i]! })))!.scale).toBe('newtons');
  });
});

describe('E_n', () => {
  it('x 50.3, X 50.0, U 0.4 and 0.3 give 0.6', () => {
    // E_n = (x − X)/√(U_x² + U_X²), ISO 13528 (from memory); 0.3/0.5.
    const found = crossCheck({ valueN: 50.3, lowN: 49.9, highN: 50.7 }, { valueN: 50, lowN: 49.7, highN: 50.3 });
    expect(found.en).toBeCloseTo(0.6, 12);
    expect(found.agrees).toBe(true);
  });

  it('NIST Dataplot, EN SCORE: 1.006, 0.996, 0.998 against 1 give 0.393, −0.262, −0.131', () => {
    // https://www.itl.nist.gov/div898/software/dataplot/refman2/auxillar/enscore.htm; the printed U of both are rounded, 0.0087 and 0.0126
    // reproduce its three figures.
    const en = (x: number) =>
      crossCheck({ valueN: x, lowN: x - 0.0087, highN: x + 0.0087 }, { valueN: 1, lowN: 1 - 0.0126, highN: 1 + 0.0126 }).en;
    expect(en(1.006)).toBeCloseTo(0.393, 2);
    expect(en(0.996)).toBeCloseTo(-0.262, 2);
    expect(en(0.998)).toBeCloseTo(-0.131, 2);
  });

  it('takes the halves that face each other, and what is shared out of the difference', () => {
    const gauge = { valueN: 10, lowN: 9, highN: 14 };
    const sound = { valueN: 8, lowN: 3, highN: 9.5 };
    expect(crossCheck(gauge, sound).differenceU95N).toBeCloseTo(Math.hypot(1, 1.5), 12);
    expect(crossCheck(gauge, sound, 0.8).differenceU95N).toBeCloseTo(Math.sqrt(1 + 2.25 - 2 * 0.64), 12);
    expect(crossCheck(sound, gauge).differenceU95N).toBeCloseTo(Math.hypot(1, 1.5), 12);
  });
});

describe('analysis of variance', () => {
  it('SiRstvt: sums of squares, F and residual deviation to 12 digits', () => {
    // NIST StRD, analysis of variance: https://www.itl.nist.gov/div898/strd/anova/SiRstv.html
    const columns = nistColumns('SiRstvt');
    expect(columns.map(({ length }) => length)).toEqual([5, 5, 5, 5, 5]);
    const { between, within, ratio } = oneWay(columns);
    expect(digitsAgreeing(between.sumOfSquares, 5.11462616e-2)).toBeGreaterThan(11);
    expect(digitsAgreeing(within.sumOfSquares, 2.1663656e-1)).toBeGreaterThan(11);
    expect(digitsAgreeing(ratio, 1.18046237440255)).toBeGreaterThan(11);
    expect(digitsAgreeing(Math.sqrt(within.meanSquare), 1.04076068334656e-1)).toBeGreaterThan(12);
    expect([between.degreesOfFreedom, within.degreesOfFreedom]).toEqual([4, 20]);
  });

  it('three people, ten parts, three trials', () => {
    // AIAG, Measurement Systems Analysis, 4th edition, the worked gauge study; analysis of variance recomputed from its data.
    const DATA: Readonly<Record<string, readonly (readonly number[])[]>> = {
      A: [
        [0.29, -0.56, 1.34, 0.47, -0.8, 0.02, 0.59, -0.31, 2.26, -1.36],
        [0.41, -0.68, 1.17, 0.5, -0.92, -0.11, 0.75, -0.2, 1.99, -1.25],
        [0.64, -0.58, 1.27, 0.64, -0.84, -0.21, 0.66, -0.17, 2.01, -1.31],
      ],
      B: [
        [0.08, -0.47, 1.19, 0.01, -0.56, -0.2, 0.47, -0.63, 1.8, -1.68],
        [0.25, -1.22, 0.94, 1.03, -1.2, 0.22, 0.55, 0.08, 2.12, -1.62],
        [0.07, -0.68, 1.34, 0.2, -1.28, 0.06, 0.83, -0.34, 2.19, -1.5],
      ],
      C: [
        [0.04, -1.38, 0.88, 0.14, -1.46, -0.29, 0.02, -0.46, 1.77, -1.49],
        [-0.11, -1.13, 1.09, 0.2, -1.07, -0.67, 0.01, -0.56, 1.45, -1.77],
        [-0.15, -0.96, 0.67, 0.11, -1.45, -0.49, 0.21, -0.49, 1.87, -2.16],
      ],
    };
    const readings = Object.entries(DATA).flatMap(([person, trials]) =>
      trials.flatMap((trial) => trial.map((value, part) => ({ person, load: String(part), value }))),
    );
    const study = gaugeStudy({ readings, window: 10 })!;
    expect(study.load.sumOfSquares).toBeCloseTo(88.361934, 5);
    expect(study.person.sumOfSquares).toBeCloseTo(3.167262, 5);
    expect(study.interaction.sumOfSquares).toBeCloseTo(0.358982, 5);
    expect(study.within.sumOfSquares).toBeCloseTo(2.758933, 5);
    expect(study.isPooled).toBe(true);
    expect(study.repeatability ** 2).toBeCloseTo(0.039973, 5);
    expect(study.reproducibility ** 2).toBeCloseTo(0.051455, 5);
    expect(study.loads ** 2).toBeCloseTo(1.086447, 5);
    expect(study.shareOfSpread).toBeCloseTo(0.27861, 4);
    expect(study.shareOfWindow).toBeCloseTo((6 * study.gauge) / 10, 12);
    expect(gaugeStudy({ readings: readings.slice(1) })).toBeUndefined();
  });
});
