/** Sentences on gauges and their calibration, for page, chart and command line alike. */

import type { Calibration, NoCalibration } from '../core/gauge/calibration.ts';
import type { Choice } from '../core/gauge/choose.ts';
import type { Refusal } from '../core/gauge/convert.ts';
import type { Curve, CurveKind } from '../core/gauge/curve.ts';
import type { SlipGuess } from '../core/gauge/slip-guess.ts';
import type { Suspicion } from '../core/gauge/suspicions.ts';
import type { EndOfRange, Verified } from '../core/gauge/verified.ts';
import { assertNever } from '../core/outcome.ts';
import { formatNumber, formatPercent, formatQuantity, STANDARD_GRAVITY_M_PER_S2 } from '../core/quantity.ts';

const CURVES: Readonly<Record<CurveKind, string>> = {
  line: 'straight line',
  quadratic: 'quadratic',
  saturating: 'curve with a ceiling',
  spline: 'spline',
};

export const curveName = (kind: CurveKind): string => CURVES[kind];

/** The law of a curve in the letters of its coefficients. */
export function modelText({ kind, names }: Curve): string {
  switch (kind) {
    case 'line':
    case 'quadratic':
      return `reading = ${names.map((name) => (name === 'b0' ? name : name === 'b1' ? 'b1 F' : 'b2 F^2')).join(' + ')}`;
    case 'saturating':
      return names.includes('r0') ? 'reading = r0 + R F/(F + Fh)' : 'reading = R F/(F + Fh)';
    case 'spline':
      return 'reading = cubic spline through r(F) at the forces named, never turning back';
    default:
      return assertNever(kind);
  }
}

/** A chance as it is written in a sentence. */
const chanceText = (chance: number): string => (chance < 0.001 ? 'below 0.001' : formatNumber(chance, { significantDigits: 2 }));

export function chosenByText({ why, chosen }: Choice): string {
  const kind = curveName(chosen.fit.curve.kind);
  switch (why.kind) {
    case 'asked':
      return `asked for: ${kind}`;
    case 'only-one':
      return `the only curve that these rows can carry: ${kind}`;
    case 'bend':
      return `F test: a line does not explain the readings (p ${chanceText(why.chance)})`;
    case 'straight':
      return `F test: no bend is needed (p ${chanceText(why.chance)})`;
    case 'criterion':
      return `information criterion (AICc): ${formatNumber(why.lead, { significantDigits: 2 })} better than the ${curveName(why.over)}`;
    default:
      return assertNever(why);
  }
}

const digitsOf = (step: number): { decimals: number } | { significantDigits: number } =>
  step > 0 ? { decimals: Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)) } : { significantDigits: 4 };

/** A reading to the digits that the gauge shows. */
export const readingText = (reading: number, step: number): string => formatNumber(reading, digitsOf(step));

const GUESSES: Readonly<Record<SlipGuess, string>> = {
  'digits-swapped': 'Two digits may have been swapped.',
  'digit-misread': 'One digit may have been misread.',
  short: 'The gauge may have slipped or stuck.',
  beyond: 'The gauge may have been knocked, or another weight hung.',
};

export const slipText = ({
  reading,
  expected,
  guess,
  step,
}: {
  reading: number;
  expected: number;
  guess: SlipGuess;
  step: number;
}): string => `reads ${readingText(reading, step)} where the other rows let one expect ${readingText(expected, step)}. ${GUESSES[guess]}`;

export function refusalText(why: Refusal, { verified, stop, step }: Pick<Calibration, 'verified' | 'stop' | 'step'>): string {
  const range = verified.kind === 'verified' ? ` Verified from ${rangeText(verified)}.` : '';
  switch (why) {
    case 'below-loads':
      return `Less than under the smallest load that was hung.${range}`;
    case 'above-loads':
      return `More than under the largest load that was hung.${range}`;
    case 'at-stop':
      return stop
        ? `The gauge stops following near ${readingText(stop.reading, step)}: there a reading says nothing.${range}`
        : `The gauge may be at its stop.${range}`;
    case 'at-ceiling':
      return `By its build the gauge cannot show this.${range}`;
    case 'too-doubtful':
      return `The doubt is more than the tolerance there.${range}`;
    case 'nowhere':
      return 'Nowhere is the doubt within the tolerance.';
    default:
      return assertNever(why);
  }
}

const LOW_ENDS: Readonly<Record<EndOfRange, string>> = {
  load: 'the smallest load hung',
  tolerance: 'below it the doubt exceeds the tolerance',
  stop: 'the stop',
  ceiling: 'the ceiling of its build',
};
const HIGH_ENDS: Readonly<Record<EndOfRange, string>> = {
  load: 'the largest load hung',
  tolerance: 'above it the doubt exceeds the tolerance',
  stop: 'above it the gauge is held at a stop',
  ceiling: 'above it the build of the gauge lets it go no further',
};

const RANGE_DIGITS = 3;

/** Both ends of a verified range: '3.9 to 24.5 N'. */
export const rangeText = ({ forceLowN, forceHighN }: { forceLowN: number; forceHighN: number }): string =>
  `${formatNumber(forceLowN, { atMostDigits: RANGE_DIGITS })} to ${formatQuantity(forceHighN, 'N', { atMostDigits: RANGE_DIGITS })}`;

export function verifiedText(verified: Verified, toleranceRelative: number): string {
  if (verified.kind === 'nowhere')
    return `Verified nowhere: no reading is good to ${formatPercent(toleranceRelative, { decimals: percentDigits(toleranceRelative) })}.`;
  return `Verified from ${rangeText(verified)}: ${LOW_ENDS[verified.lowEnds]}; ${HIGH_ENDS[verified.highEnds]}.`;
}

const percentDigits = (fraction: number): number => (fraction < 0.01 ? 2 : 0);

export function noCalibrationText(why: NoCalibration['why']): string {
  switch (why) {
    case 'too-few-rows':
      return 'There are fewer than three readings. Hang at least three loads, better six, each three times.';
    case 'one-force':
      return 'All readings are under one force. Hang at least two, better six.';
    case 'all-alike':
      return 'All readings are alike: the gauge did not follow the force. It may be stuck or at its stop.';
    case 'too-few-for-curve':
      return 'There are too few readings, or too few different forces, for this curve. Hang more loads or choose a line.';
    case 'turns-back':
      return 'The curve turns back between the loads, so that one reading would stand for two forces. Look for a slip, or choose another curve.';
    case 'beyond-gauges':
      return 'A force or a reading is far beyond what a gauge can show. Look for a slip in the table, and for the unit of its columns.';
    case 'forces-too-close':
      return 'Two forces differ by next to nothing. If they are one load, write the same number for both.';
    default:
      return assertNever(why);
  }
}

const size = (value: number, u: number): string =>
  formatNumber(Math.abs(value), { decimals: Math.max(0, -Math.floor(Math.log10(Math.max(u, 1e-9)))) });
const grams = (forceN: number): string =>
  formatQuantity((1000 * Math.abs(forceN)) / STANDARD_GRAVITY_M_PER_S2, 'g', { significantDigits: 2 });

/** What may have gone wrong at the rig, with its size. */
export function suspicionText(suspicion: Suspicion): string {
  switch (suspicion.kind) {
    case 'unweighed': {
      const { forceN, uN } = suspicion;
      return forceN > 0
        ? `Every load reads as if ${size(forceN, uN)} N (${grams(forceN)}) more had hung than was entered: was the hook, the string or the vessel weighed?`
        : `Every load reads as if ${size(forceN, uN)} N (${grams(forceN)}) less had hung than was entered: was the vessel counted though the scale was tared with it?`;
    }
    case 'series-offset':
      return `Series ${suspicion.series} reads as if ${size(suspicion.forceN, suspicion.uN)} N (${grams(suspicion.forceN)}) ${suspicion.forceN > 0 ? 'more' : 'less'} had hung than in the others: was the tare taken, and the same hook used?`;
    case 'series-scale':
      return `Series ${suspicion.series} reads ${suspicion.relative > 0 ? 'high' : 'low'} by ${formatPercent(Math.abs(suspicion.relative), { decimals: 1 })} of the force against the others: was the gauge set elsewhere on the span?`;
    case 'friction':
      return `Coming down reads ${formatPercent(suspicion.relative, { decimals: 1 })} of the force more than going up (${formatQuantity(suspicion.forceN, 'N', { significantDigits: 2 })} at the largest load): the belt may hold on to the roller, or it is the gauge’s own friction. Ease one load from either side to tell.`;
    case 'wrong-weight':
      return `All rows under ${formatQuantity(suspicion.forceN, 'N', { atMostDigits: 4 })} lie as if ${formatQuantity(Math.abs(suspicion.offN), 'N', { significantDigits: 2 })} (${grams(suspicion.offN)}) ${suspicion.offN > 0 ? 'more' : 'less'} had hung: weigh that weight again.`;
    default:
      return assertNever(suspicion);
  }
}
