/** The agreement report in English: how sound and weights agree, and what the likely cause is where they do not. For page and command line alike. */

import { ENGLISH, formatMeasured, formatNumber, formatPercent, type NumberFormat } from '../core/quantity.ts';
import type { Agreement, Share } from '../core/validation/agreement.ts';
import type { CauseId } from '../core/validation/causes.ts';
import type { CauseReport, WeighedCause } from '../core/validation/likely-cause.ts';

const NAMES: Readonly<Record<CauseId | 'none', string>> = {
  density: 'the linear density',
  'span-length': 'the span length',
  ends: 'how the ends are held',
  weights: 'the weights',
  'forgotten-weight': 'a weight that was left out',
  none: 'chance alone',
};

const NEXT: Readonly<Record<NonNullable<CauseReport['next']>, string>> = {
  'another-span': 'Take a few plucks on a span of another length, half or twice as long; that tells them apart.',
  'another-force': 'Take a few plucks under another weight, five times as much or as little; that tells them apart.',
  'more-takes': 'Take more plucks; so few leave it open.',
};

/** '2.1 %' with its sign, as people say a bias. */
const signed = (share: number, format: NumberFormat): string =>
  `${share > 0 ? '+' : ''}${formatPercent(share, { decimals: Math.abs(share) < 0.0995 ? 1 : 0, format })}`;

const shareText = ({ count, of, low, high }: Share, format: NumberFormat): string =>
  `${count} of ${of}, ${formatPercent(count / Math.max(1, of), { format })} (${formatNumber(100 * low, { decimals: 0, format })} to ${formatPercent(high, { format })})`;

/** What the size of a cause means, with what was told: '8.58 g/m was told, these takes want 7.80 ± 0.06 g/m'. */
function sizeText({ id, size }: WeighedCause, toldDensityKgPerM: number | undefined, format: NumberFormat): string {
  if (!size || id === 'none') return '';
  const { value, u95 } = size;
  switch (id) {
    case 'density': {
      if (toldDensityKgPerM === undefined) return `Told ${signed(value, format)} off.`;
      const wanted = toldDensityKgPerM * Math.exp(-value) * 1000;
      const told = formatNumber(toldDensityKgPerM * 1000, { significantDigits: 3, format });
      return `${told}\u00a0g/m was told, ${signed(Math.exp(value) - 1, format)} off; these takes want ${formatMeasured({ value: wanted, u95: wanted * u95, unit: 'g/m', format })}.`;
    }
    case 'span-length':
      return `Told too ${value > 0 ? 'long' : 'short'} by ${formatMeasured({ value: Math.abs(value) * 1000, u95: u95 * 1000, unit: 'mm', format })}.`;
    case 'ends':
      return `Held ${value > 0 ? 'more' : 'less'} firmly than was assumed.`;
    case 'weights':
      return `They weigh ${formatMeasured({ value: 100 * Math.abs(value), u95: 100 * u95, unit: '%', format })} ${value > 0 ? 'more' : 'less'} than was told.`;
    default:
      return `Something of ${formatMeasured({ value: Math.abs(value), u95, unit: 'N', format })} ${value > 0 ? 'hung there too' : 'was counted that did not hang there'}, such as a hook or a pan.`;
  }
}

const CHECK: Readonly<Record<CauseId | 'none', string>> = {
  density: 'Weigh a metre of this very belt.',
  'span-length': 'Measure again from tangent point to tangent point.',
  ends: 'Say how each end is held, or take longer spans and more force.',
  weights: 'Put them on another scale.',
  'forgotten-weight': 'Weigh hook, pan and clip, and count them in.',
  none: '',
};

/** One paragraph each; the first says how they agree, the last what to do. */
export function agreementSentences(
  { compared, refused, inside, insideTrusted, bias, spread, limits, cause }: Agreement,
  { toldDensityKgPerM, format = ENGLISH }: { toldDensityKgPerM?: number | undefined; format?: NumberFormat | undefined } = {},
): readonly string[] {
  if (compared.length === 0) return [agreementEn.nothing];
  const lines: string[] = [];
  if (bias && spread !== undefined && limits) {
    lines.push(
      `Sound reads ${signed(Math.expm1(bias.value), format)} against the weights (± ${formatPercent(bias.u95, { decimals: 1, format })}), with a spread of ${formatPercent(spread, { decimals: 1, format })}; 95 % of single takes lie between ${signed(Math.expm1(limits.low), format)} and ${signed(Math.expm1(limits.high), format)}.`,
    );
  }
  lines.push(`The sound’s own 95 % interval holds the weight in ${shareText(inside, format)}.`);
  if (insideTrusted.of > 0 && insideTrusted.of < inside.of) lines.push(`Of the trusted ones, in ${shareText(insideTrusted, format)}.`);
  if (refused.length > 0) lines.push(agreementEn.refused(refused.length));
  if (cause) lines.push(...causeSentences(cause, toldDensityKgPerM, format));
  return lines;
}

function causeSentences({ causes, likely, next }: CauseReport, density: number | undefined, format: NumberFormat): readonly string[] {
  if (likely?.id === 'none') return ['No single cause is needed: what is left is scatter.'];
  if (likely) {
    const { id } = likely;
    if (likely.isWithinTold)
      return [`What is left goes with ${NAMES[id]}, within the doubt that was told of it. ${sizeText(likely, density, format)}`];
    return [[`Likely cause: ${NAMES[id]}.`, sizeText(likely, density, format), CHECK[id]].filter(Boolean).join(' ')];
  }
  const open = causes.filter(({ probability }) => probability >= 0.1);
  const names = open.map(({ id, probability }) => `${NAMES[id]} (${formatPercent(probability, { format })})`);
  return [`These takes cannot tell apart: ${names.join(', ')}.${next ? ` ${NEXT[next]}` : ''}`];
}

export const agreementEn = {
  title: 'Sound against weights',
  nothing: 'No take gave a force to compare.',
  refused: (count: number) => `${count === 1 ? 'One take was' : `${count} takes were`} refused, which is an answer and counts neither way.`,
  columns: { name: 'Take', known: 'By weight', heard: 'By sound', difference: 'Difference', held: 'Held', grade: 'Grade' },
  held: (isInside: boolean) => (isInside ? 'inside' : 'outside'),
  refusedCell: 'refused',
  difference: (logRatio: number, format: NumberFormat = ENGLISH) => signed(Math.exp(logRatio) - 1, format),
  withoutForce: (count: number) =>
    `${count === 1 ? 'One recording has' : `${count} recordings have`} no force beside ${count === 1 ? 'it' : 'them'} and ${count === 1 ? 'was' : 'were'} left out.`,
  leftOut: (name: string, why: string) => `${name}: left out. ${why}`,
  why: {
    'no-truth': 'There is no JSON file of that name beside it.',
    'not-json': 'The JSON file beside it cannot be read as JSON.',
    'no-force': 'The JSON file beside it names no force.',
    'bad-truth': (path: string) => `In the JSON file beside it, ${path} is missing or not a value that it can have.`,
  },
} as const;

export const agreementHelp = `Compares the force by sound with the force by weight in a folder of takes.

  npm run --silent agreement -- [--json] FOLDER

For each recording NAME.wav the folder holds NAME.json with what was known of it:
  forceN                 the force by the weight; forceUN its standard uncertainty, 0.3 % unless told
  spanLengthM            tangent point to tangent point; spanLengthUM, 0.5 mm unless told
  linearDensityKgPerM    of this belt; linearDensityUKgPerM, 2 % unless told
  densityFrom            catalogue, stated or weighed; ends: two of unknown, pulley, idler, clip
  description, source, licence
The force never helps the sound. Recordings without a force beside them are left out and named on standard error.

Exit status: 0 compared, 1 some recording could not be read or none could be compared, 2 the command was not understood.
`;
