/** A calibration as a page of text for people. */

import type { Calibration } from '../core/gauge/calibration.ts';
import { chartRows, decimalsOfStep } from '../core/gauge/chart.ts';
import { convert } from '../core/gauge/convert.ts';
import type { ConvertedForce } from '../core/gauge/prediction.ts';
import { formatInterval, formatMeasured, formatNumber, formatPercent, formatQuantity } from '../core/quantity.ts';
import { gaugeCliEn as words } from '../words/gauge-cli-en.ts';
import { chosenByText, modelText, readingText, refusalText, verifiedText } from '../words/gauge-en.ts';
import type { Named } from './gauge-json.ts';

const WIDTHS = { label: 16, reading: 12, force: 20 };

const block = (title: string, lines: readonly string[]): string =>
  lines.length === 0 ? '' : `\n${title}\n${lines.map((line) => `  ${line}\n`).join('')}`;

const forceLine = (reading: string, { forceN, u95N, lowN, highN }: ConvertedForce): string =>
  `${reading.padStart(WIDTHS.reading)}  ${formatMeasured({ value: forceN, u95: u95N, unit: 'N' }).padEnd(WIDTHS.force)}  ${formatInterval({ low: lowN, high: highN, unit: 'N' })}`;

export function gaugeTable(
  calibration: Calibration,
  asked: readonly number[],
  outliers: readonly Named[],
  notes: readonly string[],
): string {
  const { fit, choice, verified, figures, toleranceRelative, step } = calibration;
  const { curve, inverse, residualStandardDeviation: s, degreesOfFreedom } = fit;
  const p = curve.parameters.length;
  const label = (text: string): string => text.padEnd(WIDTHS.label);
  const coefficients = curve.parameters.map((value, j) => {
    const u = s * Math.sqrt(inverse[j * p + j]!);
    return `${label(curve.names[j]!)}${u > 0 ? formatMeasured({ value, u95: u, unit: '' }) : formatNumber(value, { significantDigits: 6 })}`;
  });
  const scatter = Number.isFinite(s) ? formatNumber(s, { significantDigits: 2 }) : words.notTold;
  const percent = (share: number | undefined): string => (share === undefined ? words.notTold : formatPercent(share, { decimals: 1 }));
  const { names } = words;
  const converted = asked.map((reading) => {
    const found = convert(calibration, reading);
    const text = formatNumber(reading, { atMostDigits: 6 });
    return found.kind === 'converted'
      ? forceLine(text, found.force)
      : `${text.padStart(WIDTHS.reading)}  ${refusalText(found.why, calibration)}`;
  });
  const head = `${words.reading.padStart(WIDTHS.reading)}  ${words.force.padEnd(WIDTHS.force)}  ${words.interval}`;
  const chart = chartRows(calibration);
  return [
    `${verifiedText(verified, toleranceRelative)}\n\n`,
    `${label(words.curve)}${modelText(curve)}\n${label('')}${chosenByText(choice)}\n`,
    `${label(words.scatter)}${words.scatterText(scatter, degreesOfFreedom)}\n`,
    ...coefficients.map((line) => `${line}\n`),
    block(
      words.chart,
      chart.length > 0 ? [head, ...chart.map(({ reading, force }) => forceLine(readingText(reading, chartStep(chart, step)), force))] : [],
    ),
    block(words.asked, converted.length > 0 ? [head, ...converted] : []),
    block(words.figures, [
      `${label(names.repeatabilityRelative)}${percent(figures.repeatabilityRelative)}`,
      `${label(names.reproducibilityRelative)}${percent(figures.reproducibilityRelative)}`,
      `${label(names.reversibilityRelative)}${percent(figures.reversibilityRelative)}`,
      `${label(names.interpolationErrorRelative)}${percent(figures.interpolationErrorRelative)}`,
      `${label(names.zeroReading)}${figures.zeroReading === undefined ? words.notTold : readingText(figures.zeroReading, step)}`,
      `${label(names.lowestForceN)}${figures.lowestForceN === undefined ? words.notTold : formatQuantity(figures.lowestForceN, 'N', { significantDigits: 2 })}`,
    ]),
    block(
      words.outliers,
      outliers.map(({ row, text }) => words.row(row, text)),
    ),
    block(words.notes, notes),
  ].join('');
}

/** Readings of the chart are round; they need no more digits than their own step. */
const chartStep = (rows: readonly { readonly reading: number }[], step: number): number =>
  rows.length > 1 ? 10 ** -decimalsOfStep(rows[1]!.reading - rows[0]!.reading) : step;
