/** One piece of advice on the next pluck: every way to pluck better is tried on the sounds that were heard, and the one that gains most is told. */

import { readingOf, type Take } from './answer.ts';
import type { ForceN, Grade, HeardPartial, PluckSound, Reading } from './outcome.ts';
import { isWorse } from './verdict/grade.ts';

export type AdviceKind = 'softer' | 'nearer-middle' | 'closer' | 'damp-neighbour' | 'wait-for-quiet' | 'longer-silence';

export interface Advice {
  readonly kind: AdviceKind;
  /** What the same plucks would have given, made so. */
  readonly forceN?: ForceN | undefined;
  readonly grade: Grade;
}

/** A gain below this share of the uncertainty is not worth a word; a better grade always is. */
const WORTH_RELATIVE = 0.08;
/** A pluck half as far glides a quarter as much, and is 6 dB fainter. */
const HALF_AS_FAR = { glide: 1 / 4, levelDb: -6 } as const;
/** Half the distance brings 6 dB over the room. */
const HALF_AS_NEAR_DB = 6;
/** Above this the room hardly counts any more, and coming closer gains nothing that can be promised. */
const CLOSE_ENOUGH_DB = 35;
/** A first partial so far below the strongest was plucked or heard far from the middle. */
const WEAK_FIRST_DB = 10;
/** A fan that stopped or a charger that was pulled takes this much of the room along. */
const QUIET_DB = 10;
/** Of the uncertainty of a frequency no more than this share is lost to noise that a remedy takes away. */
const LEAST_RELATIVE_U = 0.0002;
/** What is left of strangers behind a finger. */
const DAMPED_OWN_SHARE = 0.95;
/** A ring that was cut off before this many decay times told less than it could. */
const RUNG_OUT_DECAYS = 2.5;

/** Changes one sound to what it would have been; undefined where the advice does not fit it. */
type Change = (sound: PluckSound, next: PluckSound | undefined) => PluckSound | undefined;

/** @param reading  of the take; undefined where nothing would help enough */
export function adviceOn(take: Take, reading: Reading): Advice | undefined {
  const last = take.sounds.length - 1;
  const tried = KINDS.flatMap((kind): Advice[] => {
    // The last pluck is what the person remembers; the plucks before it are taken to have the same cause.
    const about = kind === 'longer-silence' ? last - 1 : last;
    if (about < 0 || !CHANGES[kind](take.sounds[about]!, take.sounds[about + 1])) return [];
    const sounds = take.sounds.map((sound, i) => CHANGES[kind](sound, take.sounds[i + 1]) ?? sound);
    const then = readingOf({ ...take, sounds });
    return then ? [{ kind, forceN: then.forceN, grade: then.grade }] : [];
  });
  return tried
    .filter((one) => isWorthwhile(one, reading))
    .reduce<Advice | undefined>((best, one) => (best && !gainsMore(one, best) ? best : one), undefined);
}

const KINDS: readonly AdviceKind[] = ['softer', 'nearer-middle', 'closer', 'damp-neighbour', 'wait-for-quiet', 'longer-silence'];

const relativeU95 = ({ forceN }: Pick<Reading, 'forceN'>): number =>
  forceN?.u95 === undefined ? Number.POSITIVE_INFINITY : forceN.u95 / forceN.value;

function isWorthwhile(then: Advice, now: Reading): boolean {
  if (isWorse(then.grade, now.grade)) return false;
  return isWorse(now.grade, then.grade) || relativeU95(then) < (1 - WORTH_RELATIVE) * relativeU95(now);
}

const gainsMore = (one: Advice, than: Advice): boolean =>
  one.grade === than.grade ? relativeU95(one) < relativeU95(than) : isWorse(than.grade, one.grade);

const CHANGES: Readonly<Record<AdviceKind, Change>> = {
  softer: (sound) => {
    const { glideRelative, clippedShare, levelOverBackgroundDb } = sound.evidence;
    if (!(glideRelative > 0) && !(clippedShare > 0)) return undefined;
    return sharper(
      changed(sound, {
        glideRelative: glideRelative * HALF_AS_FAR.glide,
        clippedShare: 0,
        levelOverBackgroundDb: levelOverBackgroundDb + HALF_AS_FAR.levelDb,
      }),
      glideShareLeft(sound),
    );
  },
  'nearer-middle': (sound) => {
    const first = sound.partials.find(({ number }) => number === 1);
    const strongest = sound.partials.reduce<HeardPartial | undefined>(
      (top, one) => (top && top.levelDbfs >= one.levelDbfs ? top : one),
      undefined,
    );
    if (!first || !strongest || first.levelDbfs > strongest.levelDbfs - WEAK_FIRST_DB) return undefined;
    const relative = Math.min(
      first.frequencyHz.standardUncertainty / first.frequencyHz.value,
      strongest.frequencyHz.standardUncertainty / strongest.frequencyHz.value,
    );
    const better = {
      ...first,
      levelDbfs: strongest.levelDbfs,
      frequencyHz: { ...first.frequencyHz, standardUncertainty: relative * first.frequencyHz.value },
    };
    return { ...sound, partials: sound.partials.map((partial) => (partial === first ? better : partial)) };
  },
  closer: (sound) => louder(sound, HALF_AS_NEAR_DB),
  'damp-neighbour': (sound) => {
    const { foreignHz, ownShare } = sound.evidence;
    if (foreignHz.length === 0 || ownShare >= DAMPED_OWN_SHARE) return undefined;
    return changed(sound, { foreignHz: [], ownShare: DAMPED_OWN_SHARE });
  },
  'wait-for-quiet': (sound) => {
    const { humOn, toneOn } = sound.evidence;
    if (!humOn && !toneOn) return undefined;
    const quiet = changed(sound, { humOn: undefined, toneOn: undefined });
    return louder(quiet, QUIET_DB) ?? quiet;
  },
  'longer-silence': (sound, next) => {
    if (sound.evidence.touchMissed) return changed(sound, { touchMissed: undefined });
    if (!next) return undefined;
    const decayS = Math.max(...sound.partials.map((partial) => partial.decayS));
    const heardDecays = (next.startS - sound.startS) / decayS;
    // What is told of a frequency grows with the energy heard and the square of the time that it was heard over.
    return heardDecays < RUNG_OUT_DECAYS ? sharper(sound, (1 - Math.exp(-2 * heardDecays)) ** 1.5) : undefined;
  },
};

const changed = (sound: PluckSound, evidence: Partial<PluckSound['evidence']>): PluckSound => ({
  ...sound,
  evidence: { ...sound.evidence, ...evidence },
});

/** More of the belt over the room; undefined where the room hardly counts, and where the sound is too loud already. */
function louder(sound: PluckSound, byDb: number): PluckSound | undefined {
  const { levelOverBackgroundDb, clippedShare } = sound.evidence;
  if (levelOverBackgroundDb > CLOSE_ENOUGH_DB || clippedShare > 0) return undefined;
  return sharper(changed(sound, { levelOverBackgroundDb: levelOverBackgroundDb + byDb }), 10 ** (-byDb / 20));
}

/** Every frequency of the sound known better by a factor. */
function sharper(sound: PluckSound, factor: number): PluckSound {
  const known = <Of extends PluckSound['frequencyHz']>(of: Of): Of => ({
    ...of,
    standardUncertainty: Math.min(of.standardUncertainty, Math.max(LEAST_RELATIVE_U * of.value, of.standardUncertainty * factor)),
  });
  return {
    ...sound,
    frequencyHz: known(sound.frequencyHz),
    partials: sound.partials.map((partial) => ({ ...partial, frequencyHz: known(partial.frequencyHz) })),
  };
}

/** What a quarter of the glide leaves of the frequency's uncertainty, most of which a hard pluck's glide makes. */
function glideShareLeft({ frequencyHz, evidence }: PluckSound): number {
  const relative = frequencyHz.standardUncertainty / frequencyHz.value;
  const fromGlide = Math.min(relative, GLIDE_DOUBT * evidence.glideRelative);
  return Math.sqrt(Math.max(0, relative ** 2 - (1 - HALF_AS_FAR.glide ** 2) * fromGlide ** 2)) / relative;
}

/** Doubt that taking a glide back leaves of the frequency, share of the glide: what the corrections of hard plucks carry. */
const GLIDE_DOUBT = 0.05;
