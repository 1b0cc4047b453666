/** Sound against hanging weights: bias, spread, and how often the interval of the sound held the weight's force. */

import { expandedUncertainty } from '../math/propagation.ts';
import type { Grade } from '../outcome.ts';
import type { KnownForceTake } from './known-take.ts';
import { type CauseReport, likelyCause } from './likely-cause.ts';

export interface Share {
  readonly count: number;
  readonly of: number;
  /** Wilson's 95 % interval, 0 to 1. */
  readonly low: number;
  readonly high: number;
}

/** A take that counts: it gave a force that decides something. */
export interface ComparedTake {
  readonly name: string;
  readonly knownN: number;
  readonly heardN: number;
  /** ln(heard / known): relative for what is small, and the same size both ways. */
  readonly logRatio: number;
  /** The weight's force lies in the sound's 95 % interval, the weight's own doubt allowed for. */
  readonly isInside: boolean;
  readonly grade: Grade;
}

export interface Agreement {
  readonly compared: readonly ComparedTake[];
  /** Names of takes without a force, and of unusable ones: refusing is an answer, and no disagreement. */
  readonly refused: readonly string[];
  readonly inside: Share;
  /** Of the trusted ones alone. */
  readonly insideTrusted: Share;
  /** Mean of the differences, relative, with half its 95 % interval; missing below two takes. */
  readonly bias?: { readonly value: number; readonly u95: number } | undefined;
  /** Standard deviation of the differences, relative. */
  readonly spread?: number | undefined;
  /** Between these 95 % of single differences lie (Bland & Altman, Lancet 327 (1986) 307). */
  readonly limits?: { readonly low: number; readonly high: number } | undefined;
  readonly cause?: CauseReport | undefined;
}

const Z95 = 1.959964;

export function agreementOf(takes: readonly KnownForceTake[]): Agreement {
  const usable = takes.filter(({ heard }) => heard && heard.grade !== 'unusable');
  const compared = usable.map(comparedTake);
  const refused = takes.filter((take) => !usable.includes(take)).map(({ name }) => name);
  const isInside = ({ isInside: held }: ComparedTake) => held;
  const trusted = compared.filter(({ grade }) => grade === 'trusted');
  return {
    compared,
    refused,
    inside: wilson(compared.filter(isInside).length, compared.length),
    insideTrusted: wilson(trusted.filter(isInside).length, trusted.length),
    ...differences(compared),
    cause: likelyCause(usable),
  };
}

function comparedTake({ name, knownForceN, heard }: KnownForceTake): ComparedTake {
  const { forceN, grade } = heard!;
  const { value, low = 0, high = Number.POSITIVE_INFINITY } = forceN;
  const known = knownForceN.value;
  // The weight's own doubt widens the side on which it lies: uncertainties of the two are independent.
  const room = Math.hypot(known < value ? value - low : high - value, Z95 * knownForceN.standardUncertainty);
  return {
    name,
    knownN: known,
    heardN: value,
    logRatio: Math.log(value / known),
    isInside: Math.abs(known - value) <= room,
    grade,
  };
}

function differences(compared: readonly ComparedTake[]): Pick<Agreement, 'bias' | 'spread' | 'limits'> {
  const n = compared.length;
  if (n < 2) return {};
  const mean = compared.reduce((sum, { logRatio }) => sum + logRatio, 0) / n;
  const spread = Math.sqrt(compared.reduce((sum, { logRatio }) => sum + (logRatio - mean) ** 2, 0) / (n - 1));
  const u95 = expandedUncertainty({ standardUncertainty: spread / Math.sqrt(n), degreesOfFreedom: n - 1 }, 0.95);
  return { bias: { value: mean, u95 }, spread, limits: { low: mean - Z95 * spread, high: mean + Z95 * spread } };
}

/** Wilson's interval of a share (Wilson, J. Am. Stat. Assoc. 22 (1927) 209). */
export function wilson(count: number, of: number): Share {
  if (of === 0) return { count, of, low: 0, high: 1 };
  const part = count / of;
  const scale = 1 + Z95 ** 2 / of;
  const middle = (part + Z95 ** 2 / (2 * of)) / scale;
  const half = (Z95 / scale) * Math.sqrt((part * (1 - part)) / of + Z95 ** 2 / (4 * of * of));
  return { count, of, low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}
