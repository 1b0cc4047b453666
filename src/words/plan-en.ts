/** Where to park, in words: of the command `plan` and of the planner's page. What a plan says of a doubt lies ahead, not behind. */

import type { Grade, Reason, ReasonFigures } from '../core/outcome.ts';
import { ENGLISH, formatNumber, formatPercent, formatQuantity, type NumberFormat } from '../core/quantity.ts';
import { DEFAULT_TOLERANCE_RELATIVE } from '../core/setup.ts';
import { reasonRemedy, reasonSentence } from './reasons-en.ts';

export const millimetresText = (metres: number, format: NumberFormat = ENGLISH): string =>
  formatQuantity(1000 * metres, 'mm', { atMostDigits: metres < 0.0995 ? 3 : 4, format });

/** 'Hz' once, behind both. */
export const betweenText = (low: number, high: number, unit: string, format: NumberFormat = ENGLISH): string => {
  const one = formatNumber(low, { decimals: 0, format });
  const other = formatQuantity(high, unit, { decimals: 0, format });
  return other.startsWith(one) && other.length - one.length <= unit.length + 1 ? other : `${one} to ${other}`;
};

const hertz = (value: number, format: NumberFormat): string => formatQuantity(value, 'Hz', { decimals: 0, format });

/** One sentence on what would be so. @param lowestHz  what the microphone hears from */
export function plannedSentence(reason: Reason | ReasonFigures, lowestHz: number, format: NumberFormat = ENGLISH): string {
  switch (reason.id) {
    case 'first-partial-not-heard':
      return `Partial 1, ${hertz(reason.frequencyHz, format)}, lies below the ${hertz(lowestHz, format)} that this microphone hears.`;
    case 'too-few-cycles':
      return `It would die after ${formatNumber(reason.cycles, { decimals: reason.cycles < 1.95 ? 1 : 0, format })} swings.`;
    default:
      return reasonSentence(reason, format);
  }
}

/** The same of a whole zone of lengths, so without the figures of one. */
export function zoneSentence(reason: Reason | ReasonFigures, lowestHz: number, format: NumberFormat = ENGLISH): string {
  switch (reason.id) {
    case 'span-too-short':
      return 'The ends and the stiffness of the belt count too much beside the force.';
    case 'belt-too-slack':
      return 'So little force leaves the stiffness in charge.';
    case 'first-partial-not-heard':
      return `Partial 1 lies below the ${hertz(lowestHz, format)} that this microphone hears.`;
    case 'too-few-cycles':
      return 'It would die after a few swings.';
    case 'ends-and-stiffness-unknown':
      return 'How the ends are held and how stiff the belt is make most of the doubt.';
    default:
      return plannedSentence(reason, lowestHz, format);
  }
}

/** What to do about it. Which span would do is the plan's own answer. */
export const plannedRemedy = (reason: Reason | ReasonFigures, format: NumberFormat = ENGLISH): string =>
  reason.id === 'too-few-cycles' || reason.id === 'first-partial-not-heard'
    ? 'Take a shorter span or another microphone.'
    : reason.id === 'span-too-short' || reason.id === 'belt-too-slack'
      ? 'Take a longer span.'
      : reasonRemedy(reason, format);

export const planCliEn = {
  columns: { span: 'Span', frequency: 'Partial 1', cycles: 'Swings', doubt: 'Doubt', grade: 'Grade' },
  unbounded: 'no bound',
  shortest: (span: string): string => `Trusted from ${span} on.`,
  none: 'No span between these lengths can be trusted.',
  zone: (from: string, to: string, grade: Grade): string => `${from} to ${to}: ${grade}.`,
  doubt: (share: number): string => `± ${formatPercent(share)}`,
};

/** What --help prints. */
export function planHelp(belts: readonly { readonly id: string; readonly label: string }[]): string {
  const width = Math.max(...belts.map(({ id }) => id.length));
  return `Says on which span lengths a force could be told by sound, before anything is plucked.

  npm run --silent plan -- --belt ID --force 6N..9N [options]

  --force 6N..9N       the forces that are to be told, or one force (N, kN, lbf, kgf, ozf)
  --belt ID            a belt of the catalogue below
  --density 8.4g/m     mass of the belt for each metre; beats the belt's own
  --stiffness 1.2e-4   bending stiffness in N m²; beats the belt's own
  --fixity 0.5         how the ends are held, as for measure
  --lie edge|flat      how the wide face of the belt lies, as for measure
  --tolerance 10%      the doubt that still serves; ${formatPercent(DEFAULT_TOLERANCE_RELATIVE)} unless told
  --span 180mm+-0.2mm  a length to be answered too, and how well lengths are known
  --lowest-hz 80       what the microphone hears from; lower partials are not counted on
  --json               one JSON object on one line
  --help               this text

Each length is graded as a reading of three light plucks near the middle would be, with the same budget and
rules: at the low and at the high force, and the worse of the two stands. Swings are those until the ring has
fallen to a third.

With --json: {"shortestTrustedSpanM":0.12,"spans":[{"spanM":0.05,"frequencyHz":[at the low force, at the high],
"forceU95Relative":0.31,"grade":"unusable","reasons":[{"id","text","remedy"}]}]}. null stands where no span is to
be trusted, and where the interval has no bound. Exit status: 0 answered, 2 the command was not understood.

Belts:
${belts.map(({ id, label }) => `  ${id.padEnd(width)}  ${label}`).join('\n')}
`;
}
