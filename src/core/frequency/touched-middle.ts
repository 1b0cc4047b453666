/**
 * Which of two numberings of a span's partials is right, told by an experiment: with a finger on the middle, plucked at a quarter, only the
 * even partials of a span ring on, and the second of them is the strongest that there is.
 */

import type { HeardPartial, PluckSound } from '../outcome.ts';
import { partialRatio } from '../partials/series.ts';
import { firstPartialOf } from './refine.ts';
import type { SearchBounds } from './search-bounds.ts';

/** Place of a heard partial: a finger pulls on the belt, and a partial is not read better than this beside a knuckle. */
const PLACE_WITHIN = 0.02;
/** Numbers looked at; a span under a finger is not heard above. */
const HIGHEST_NUMBER = 12;
/**
 * What the sound of a touched span is made of, as shares of its power: its even partials; its odd ones, from a finger that missed the middle;
 * something else. Our judgement: one pluck in a hundred is made as if there were no finger.
 */
const POWER_SHARE = { even: 0.97, odd: 0.01, other: 0.02 } as const;
/** Partial 2 is missing though it should be the strongest: where the microphone heard that place before, and where it is not known to hear it. */
const SECOND_MISSING = { heardBefore: 0.02, notKnown: 0.3 } as const;
/** No single pluck is worth more than this, natural log: a hundred to one. */
const MOST_LEAD = Math.log(100);
/** Where less than this of the sound belongs to one span, the touched pluck tells nothing. */
const LEAST_OWN_SHARE = 0.5;
/** Nor where less than this share of its power lies at even partials of either numbering. */
const LEAST_EVEN_SHARE = 0.5;

/** A numbering as one partial with its number: all others follow from how stiff a span with such a first partial may be. */
interface Numbering {
  readonly frequencyHz: number;
  readonly number: number;
  readonly firstHz: number;
  readonly low: number;
  readonly high: number;
}

/**
 * A sound read in the light of touched plucks: the numbering that they leave likelier, with the lead that it has then; the sound as it is
 * where it has no rival, or where the rival does not share its strongest partial.
 *
 * @param touched  plucks of the same span with a finger on its middle, made at a quarter
 */
export function settledByTouch(sound: PluckSound, touched: readonly PluckSound[], bounds: SearchBounds): PluckSound {
  const [own, rival] = numberings(sound, bounds) ?? [];
  if (!own || !rival) return sound;
  const gained = touched.map((one) => leadFromTouch(one, { own, rival, before: sound.partials }));
  if (gained.every((lead) => lead === 0)) return sound;
  const lead = gained.reduce((sum, one) => sum + one, sound.evidence.leadOverRival);
  if (lead >= 0) return { ...sound, evidence: { ...sound.evidence, leadOverRival: lead, numberingTested: true } };
  const other = renumbered(sound, rival, bounds);
  if (!other) return sound;
  const rivalHz = sound.frequencyHz.value;
  return { ...other, evidence: { ...other.evidence, rivalHz, leadOverRival: -lead, numberingTested: true } };
}

/** The same sound with its partials numbered as its rival has them; undefined where there is none that shares its strongest partial. */
export function readAsRival(sound: PluckSound, bounds: SearchBounds): PluckSound | undefined {
  const [, rival] = numberings(sound, bounds) ?? [];
  return rival && renumbered(sound, rival, bounds);
}

function numberings(sound: PluckSound, bounds: SearchBounds): readonly [Numbering, Numbering] | undefined {
  const { rivalHz } = sound.evidence;
  const strongest = strongestOf(sound.partials);
  if (rivalHz === undefined || !strongest) return undefined;
  const frequencyHz = strongest.frequencyHz.value;
  const own = { frequencyHz, number: strongest.number, firstHz: sound.frequencyHz.value, ...stiffnessAt(sound.frequencyHz.value, bounds) };
  const stiffness = stiffnessAt(rivalHz, bounds);
  // A rival is known by its first partial alone: roughly, where its stiffness is not known.
  const number = numbersUpTo().find(
    (n) => frequencyHz > rivalHz * partialRatio(n, stiffness.low) * 0.94 && frequencyHz < rivalHz * partialRatio(n, stiffness.high) * 1.06,
  );
  return number === undefined ? undefined : [own, { frequencyHz, number, firstHz: rivalHz, ...stiffness }];
}

/** What a touched pluck says for the own numbering and against the rival, natural log; negative for the rival. */
function leadFromTouch(
  touched: PluckSound,
  of: { readonly own: Numbering; readonly rival: Numbering; readonly before: readonly HeardPartial[] },
): number {
  if (touched.evidence.ownShare < LEAST_OWN_SHARE) return 0;
  const [own, rival] = [of.own, of.rival].map((numbering) => judged(touched, numbering, of.before)) as [Judged, Judged];
  if (Math.max(own.evenShare, rival.evenShare) < LEAST_EVEN_SHARE) return 0;
  const lead = Math.log(own.likelihood / rival.likelihood);
  return Math.max(-MOST_LEAD, Math.min(MOST_LEAD, lead));
}

interface Judged {
  readonly likelihood: number;
  /** Share of the power that lies at even partials, 0 to 1. */
  readonly evenShare: number;
}

function judged(touched: PluckSound, numbering: Numbering, before: readonly HeardPartial[]): Judged {
  let total = 0;
  let even = 0;
  let explained = 0;
  for (const { frequencyHz, levelDbfs } of touched.partials) {
    const power = 10 ** (levelDbfs / 10);
    const number = numbersUpTo().find((n) => isAt(frequencyHz.value, numbering, n));
    const isEven = number !== undefined && number % 2 === 0;
    total += power;
    even += isEven ? power : 0;
    explained += power * (number === undefined ? POWER_SHARE.other : isEven ? POWER_SHARE.even : POWER_SHARE.odd);
  }
  const hasSecond = touched.partials.some(({ frequencyHz }) => isAt(frequencyHz.value, numbering, 2));
  const wasHeard = before.some(({ frequencyHz }) => isAt(frequencyHz.value, numbering, 2));
  const second = hasSecond ? 1 : wasHeard ? SECOND_MISSING.heardBefore : SECOND_MISSING.notKnown;
  return { likelihood: (second * explained) / total, evenShare: even / total };
}

function isAt(heardHz: number, { frequencyHz, number, low, high }: Numbering, wanted: number): boolean {
  const at = (b: number): number => (frequencyHz * partialRatio(wanted, b)) / partialRatio(number, b);
  const [one, other] = [at(low), at(high)];
  return heardHz > Math.min(one, other) * (1 - PLACE_WITHIN) && heardHz < Math.max(one, other) * (1 + PLACE_WITHIN);
}

/** Partials that lie at no place of the new numbering are left out; of two at one place the stronger stays. */
function renumbered(sound: PluckSound, rival: Numbering, bounds: SearchBounds): PluckSound | undefined {
  const byNumber = new Map<number, HeardPartial>();
  for (const partial of sound.partials) {
    const number = numbersUpTo().find((n) => isAt(partial.frequencyHz.value, rival, n));
    const there = number === undefined ? undefined : byNumber.get(number);
    if (number !== undefined && !(there && there.levelDbfs >= partial.levelDbfs)) byNumber.set(number, { ...partial, number });
  }
  const partials = [...byNumber.values()].toSorted((a, b) => a.number - b.number);
  if (partials.length === 0) return undefined;
  const { low, high } = stiffnessAt(rival.firstHz, bounds);
  const stiffness = { value: (low + high) / 2, standardUncertainty: Math.max(1e-5, (high - low) / 2) };
  const { firstHz, inharmonicity } = firstPartialOf(partials, { firstHz: rival.firstHz, inharmonicity: stiffness.value }, stiffness);
  const first = partials.find(({ number }) => number === 1);
  const ringsS = first?.decayS ?? Math.max(...partials.map(({ decayS }) => decayS));
  return {
    ...sound,
    frequencyHz: firstHz,
    partials,
    inharmonicity: partials.length > 1 ? inharmonicity : undefined,
    evidence: { ...sound.evidence, cyclesToDecay: firstHz.value * ringsS, firstPartialHeard: first !== undefined },
  };
}

const stiffnessAt = (firstHz: number, bounds: SearchBounds): { low: number; high: number } => bounds.inharmonicityAt(firstHz);

const strongestOf = (partials: readonly HeardPartial[]): HeardPartial | undefined =>
  partials.reduce<HeardPartial | undefined>((top, one) => (top && top.levelDbfs >= one.levelDbfs ? top : one), undefined);

const numbersUpTo = (): number[] => Array.from({ length: HIGHEST_NUMBER }, (_, index) => index + 1);
