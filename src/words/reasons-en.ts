/** Each doubt in words: its name, what is so in this case, and how to mend it. Page, command line and report all speak by this table. */

import { assertNever, type BudgetInput, type NothingWhy, type Reason, type ReasonFigures, type ReasonId } from '../core/outcome.ts';
import { ENGLISH, formatNumber, formatPercent, formatQuantity, type NumberFormat } from '../core/quantity.ts';

const NAMES: Readonly<Record<ReasonId, string>> = {
  'span-too-short': 'span too short',
  'belt-too-slack': 'belt too slack',
  'too-few-cycles': 'too few cycles',
  'rings-too-long': 'rings too long',
  'first-partial-not-heard': 'below this microphone',
  'touch-not-heard': 'begins inside the ring',
  noisy: 'noisy',
  clipped: 'clipped',
  'hum-on-partial': 'hum on a partial',
  'tone-on-partial': 'steady tone on a partial',
  'octave-not-certain': 'octave not certain',
  'not-one-span': 'not one span',
  'partials-do-not-fit': 'partials do not fit one span',
  'other-span-rings': 'another span rings',
  'plucked-too-hard': 'plucked too hard',
  'plucks-disagree': 'plucks disagree',
  'pluck-left-out': 'pluck left out',
  'frequency-not-sharp': 'frequency not sharp',
  'over-rated-force': 'over the rated force',
  'density-from-catalogue': 'density from the catalogue',
  'ends-and-stiffness-unknown': 'ends and stiffness not known',
  'input-decides': 'one input decides',
  'sound-altered': 'sound altered',
  'sample-rate-too-low': 'sample rate too low',
  'span-sags': 'span sags',
  'not-heard-here': 'not heard here',
  'outside-expected': 'outside what was expected',
};

/** Short name of a doubt, lower case, for lists and headings. */
export const reasonName = (reason: { readonly id: ReasonId }): string => NAMES[reason.id];

const hertz = (value: number, format: NumberFormat): string =>
  formatQuantity(value, 'Hz', value < 99.5 ? { atMostDigits: 2, format } : { atMostDigits: 3, format });
const millimetres = (metres: number, format: NumberFormat): string => formatQuantity(1000 * metres, 'mm', { atMostDigits: 3, format });
const newtons = (value: number, format: NumberFormat): string => formatQuantity(value, 'N', { atMostDigits: 2, format });
/** Whole percent; with one decimal where a whole one would say too little. */
const percent = (fraction: number, format: NumberFormat): string =>
  formatPercent(Math.abs(fraction), { decimals: Math.abs(fraction) < 0.0095 ? 1 : 0, format });
const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** A length that is worth moving a carriage for: up to the next 5 mm. */
const STEP_M = 0.005;
const roundedUp = (metres: number): number => Math.ceil(metres / STEP_M - 1e-6) * STEP_M;

/** One sentence on what is so, with the figures of this case. */
export function reasonSentence(reason: Reason | ReasonFigures, format: NumberFormat = ENGLISH): string {
  switch (reason.id) {
    case 'span-too-short':
      return `On ${millimetres(reason.spanLengthM, format)} the ends and the stiffness of the belt count too much beside the force.`;
    case 'belt-too-slack':
      return reason.forceHighN === undefined
        ? 'So little force leaves the stiffness in charge.'
        : `At ${newtons(reason.forceHighN, format)} or less the stiffness is in charge, not the force.`;
    case 'too-few-cycles':
      return `It died after ${formatNumber(reason.cycles, { decimals: reason.cycles < 1.95 ? 1 : 0, format })} swings.`;
    case 'rings-too-long':
      return `It swung ${formatNumber(reason.cycles, { decimals: 0, format })} times before it had died down; belts do not.`;
    case 'first-partial-not-heard':
      return `The first partial, ${hertz(reason.frequencyHz, format)}, was not heard. It follows from the higher ones.`;
    case 'touch-not-heard':
      return 'The recording begins while the span rings already, so the room before it is not known.';
    case 'noisy':
      return `The belt stands only ${formatQuantity(reason.levelOverBackgroundDb, 'dB', { decimals: 0, format })} above the room.`;
    case 'clipped':
      return 'The sound was cut off at the top.';
    case 'hum-on-partial':
      return `Mains hum at ${hertz(reason.humHz, format)} lies on partial ${reason.partialNumber}.`;
    case 'tone-on-partial':
      return `A steady tone at ${hertz(reason.toneHz, format)} lies on partial ${reason.partialNumber}.`;
    case 'octave-not-certain':
      return `${hertz(reason.frequencyHz, format)} and ${hertz(reason.rivalHz, format)} both fit.`;
    case 'not-one-span':
      return 'The partials do not belong to one span.';
    case 'partials-do-not-fit': {
      const numbers = reason.partialNumbers;
      return numbers.length === 1
        ? `Partial ${numbers[0]} does not fit the others and was left out of the force.`
        : `Partials ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)} do not fit the others and were left out of the force.`;
    }
    case 'other-span-rings':
      return `A second span rings at ${hertz(reason.otherHz, format)}.`;
    case 'plucked-too-hard':
      return `The frequency fell by ${percent(reason.glideRelative, format)} as it died.`;
    case 'plucks-disagree': {
      const side = reason.differenceRelative > 0 ? 'above' : 'below';
      const lies = `Pluck ${reason.pluckNumber} lies ${percent(reason.differenceRelative, format)} ${side} the others`;
      return reason.leftOut ? `${lies} and was left out.` : `${lies}, too much to be one force.`;
    }
    case 'pluck-left-out':
      return `Pluck ${reason.pluckNumber} was left out: ${NAMES[reason.because]}.`;
    case 'frequency-not-sharp':
      return `The sound leaves ${percent(reason.relativeU95, format)} of the frequency open.`;
    case 'over-rated-force':
      return `${newtons(reason.forceN, format)} is above the ${newtons(reason.ratedForceN, format)} this belt is made for.`;
    case 'density-from-catalogue':
      return 'Nobody has weighed this belt; tables differ by a fifth.';
    case 'ends-and-stiffness-unknown':
      return `How the ends are held and how stiff the belt is make ${percent(reason.share, format)} of the doubt.`;
    case 'input-decides':
      return `${capital(reason.input)} makes ${percent(reason.share, format)} of the doubt.`;
    case 'sound-altered':
      return reason.certain
        ? 'The browser filters the sound and cannot be told not to.'
        : 'The browser does not say whether it filters the sound.';
    case 'sample-rate-too-low':
      return `At ${formatQuantity(reason.sampleRateHz / 1000, 'kHz', { atMostDigits: 3, format })} the higher partials are missing.`;
    case 'span-sags':
      return `The belt lies flat and hangs through; that lifts what it seems to hold by up to ${percent(reason.riseRelative, format)}.`;
    case 'not-heard-here':
      return 'The frequency was told; what rang, and how clearly, is not known here.';
    case 'outside-expected':
      return `${newtons(reason.forceN, format)} lies outside the range that was expected.`;
    default:
      return assertNever(reason);
  }
}

/** What to do about it. */
export function reasonRemedy(reason: Reason | ReasonFigures, format: NumberFormat = ENGLISH): string {
  switch (reason.id) {
    case 'span-too-short': {
      if (reason.trustedFromM === undefined) return 'Move the carriage, so that the span gets longer.';
      const from = millimetres(roundedUp(reason.trustedFromM), format);
      return reason.onceWeighed
        ? `Move the carriage. From ${from} on, this belt can be trusted once it is weighed.`
        : `Move the carriage. From ${from} on, this belt can be trusted.`;
    }
    case 'belt-too-slack':
      return 'Tighten until it rings, then read again.';
    case 'too-few-cycles':
      return 'Pluck with a fingernail; lift anything that touches the belt.';
    case 'rings-too-long':
      return 'See that it was the belt that rang, and read again.';
    case 'first-partial-not-heard':
      return 'Take a shorter span or another microphone.';
    case 'touch-not-heard':
      return 'Start the recording a second before you pluck.';
    case 'noisy':
      return 'Stop the fan, come closer.';
    case 'clipped':
      return 'Pluck softer, or move the microphone away.';
    case 'hum-on-partial':
      return 'Move away from chargers and lamps, or change the span a little.';
    case 'tone-on-partial':
      return 'Switch off what hums, then read again.';
    case 'octave-not-certain':
      return 'Touch the middle lightly and pluck at a quarter: only the even partials remain.';
    case 'not-one-span':
    case 'partials-do-not-fit':
      return 'Hold the other belts still.';
    case 'other-span-rings':
      return 'Lay a finger on it.';
    case 'plucked-too-hard':
      return 'Pluck about half as far.';
    case 'plucks-disagree':
      return 'Pluck twice more.';
    case 'pluck-left-out':
      return 'Pluck once more.';
    case 'frequency-not-sharp':
      return 'Pluck again, near the microphone, and let it ring until it is silent.';
    case 'over-rated-force':
      return 'Loosen before anything else.';
    case 'density-from-catalogue':
      return 'Weigh a metre of it.';
    case 'ends-and-stiffness-unknown':
      return 'Tell how the ends are held, or take a longer span.';
    case 'input-decides':
      return inputRemedy(reason.input);
    case 'sound-altered':
      return 'Use another browser, or open a recording.';
    case 'sample-rate-too-low':
      return 'Choose another microphone.';
    case 'span-sags':
      return 'Turn the machine so that the belt stands on edge, or take a shorter span.';
    case 'not-heard-here':
      return 'Record a pluck, to have its sound judged too.';
    case 'outside-expected':
      return 'See that the right span was plucked and its length is right.';
    default:
      return assertNever(reason);
  }
}

function inputRemedy(input: BudgetInput): string {
  switch (input) {
    case 'span length':
      return 'Measure the span again, from tangent point to tangent point.';
    case 'linear density':
      return 'Weigh a longer piece of the belt.';
    case 'end fixity':
      return 'Tell how the ends are held, or take a longer span.';
    case 'bending stiffness':
      return 'Take a longer span.';
    case 'frequency':
      return 'Come closer, and let it ring until it is silent.';
    case 'repeatability':
      return 'Pluck more often, always in the middle.';
    case 'amplitude':
      return 'Pluck about half as far.';
    default:
      return assertNever(input);
  }
}

/** Why nothing was heard, and what to do. */
export function nothingText(why: NothingWhy): string {
  switch (why) {
    case 'silence':
      return 'There is no sound at all. See that the right microphone is chosen and not muted.';
    case 'no-onset':
      return 'There is sound, but nothing begins in it. Pluck the belt, after a quiet second.';
    case 'not-a-span':
      return 'Something began, but no span rang. Pluck the belt itself, and bring the microphone within a hand’s width.';
    case 'too-quiet':
      return 'Something moved, too faint to measure. Come closer, or pluck a little harder.';
    case 'too-short':
      return 'There is too little sound for one pluck. Let it ring for a second.';
    default:
      return assertNever(why);
  }
}
