/** Doubts that the sound itself raises: each figure of the evidence against its threshold. All thresholds of the sound stand here. */

import type { Grade, PluckSound, Reason, ReasonFigures } from '../outcome.ts';
import type { SoundProcessing } from '../samples/recording.ts';
import { gradeOfRatio, worstGrade } from './grade.ts';

/** What stood between the pluck and the samples. */
export interface SoundSource {
  readonly processing?: SoundProcessing | undefined;
  readonly sampleRateHz: number;
}

/**
 * From the first value on a pluck is doubtful, from the second on it decides nothing. Set where simulated plucks of every difficulty began to
 * be read wrongly (`npm run bench -- coverage` counts how often each was raised rightly): what only makes a frequency less sharp is in its
 * uncertainty already and needs no second penalty.
 */
const LIMITS = {
  /** f τ: down to 1.6 the frequency lay within its own uncertainty; below 2 (Q of 6) room and finger ring as long as the belt. 0.8 is a thud. */
  cycles: { doubtful: 2, unusable: 0.8 },
  /** f τ: belts of rubber and cord stay below 70 (Q of 220); bells, glasses and sung vowels do not. Never alone a proof. */
  mostCycles: { doubtful: 100, unusable: Infinity },
  /** A partial 12 dB over the noise in its own band is where a detector of one in a few hundred false alarms begins to see it. */
  levelDb: { doubtful: 14, unusable: 8 },
  /** Cut tops leave the frequency alone as long as most of the ring is whole: plucks with a fifth of it cut were read right. */
  clippedShare: { doubtful: 0.2, unusable: 0.4 },
  /** Taking 3 to 5 % of frequency back left up to 0.6 % of it open, always inside its uncertainty. Beyond 8 % the law of the small glide ends. */
  glide: { doubtful: 0.05, unusable: 0.08 },
  /** Natural log of the likelihood ratio: 2 is 7 to 1, 0.5 next to even odds. */
  lead: { doubtful: 2, unusable: 0.5 },
  /**
   * The same where the rival lies near half of the answer: then the answer may be the second partial of a span whose first this microphone does not
   * hear, and silence is a weak witness. Of nine plucks with a lead of 2 to 4 three were so, of thirteen above 4 none.
   */
  leadOverHalf: { doubtful: 4, unusable: 0.5 },
  /** Share of the ring that the span's own partials explain: no pluck of several partials above a half was read an octave off. */
  ownShare: { doubtful: 0.5, unusable: 0.35 },
} as const;

/** A strong partial of another span so near to the first one can be taken for it; further off it counts only by the share it takes. */
const NEIGHBOUR_RATIO = 1.34;
/** With others ringing along, this share must still be the span's own: two to one, so that none of them is taken for it. */
const OWN_SHARE_BESIDE_OTHERS = 0.65;
/** And so many partials must say which of the spans it is: a loud neighbour was once taken for the span by two. */
const PARTIALS_BESIDE_OTHERS = 3;
/** Of 33 takes altered so that had them, none was read wrongly. */
const PARTIALS_THROUGH_ALTERING = 3;
/** The third partial of a stiff span lies this far up: without it the octave has one witness less. */
const PARTIALS_NEEDED_UP_TO = 3.2;

const grade = (value: number, limits: { doubtful: number; unusable: number }): Grade => {
  const sign = limits.unusable > limits.doubtful ? 1 : -1;
  if (sign * value >= sign * limits.unusable) return 'unusable';
  return sign * value >= sign * limits.doubtful ? 'doubtful' : 'trusted';
};

/** What one pluck's sound makes doubtful; what only explains comes with `holdsAt` trusted. */
export function soundReasons(sound: PluckSound, source: SoundSource): Reason[] {
  const { evidence } = sound;
  const frequencyHz = sound.frequencyHz.value;
  const reasons: Reason[] = [];
  const raise = (holdsAt: Grade, figures: ReasonFigures): number => reasons.push({ about: 'sound', holdsAt, ...figures });
  const raiseIf = (holdsAt: Grade, figures: ReasonFigures): void => {
    if (holdsAt !== 'trusted') raise(holdsAt, figures);
  };

  const byLead = evidence.rivalHz === undefined ? 'trusted' : grade(evidence.leadOverRival, leadLimits(sound));
  raiseIf(isAlone(sound) ? worstGrade([byLead, 'doubtful']) : byLead, {
    id: 'octave-not-certain',
    frequencyHz,
    rivalHz: evidence.rivalHz ?? frequencyHz / 2,
  });
  raiseIf(...foreignReason(sound));
  raiseIf(grade(evidence.cyclesToDecay, LIMITS.cycles), { id: 'too-few-cycles', cycles: evidence.cyclesToDecay });
  raiseIf(grade(evidence.cyclesToDecay, LIMITS.mostCycles), { id: 'rings-too-long', cycles: evidence.cyclesToDecay });
  raiseIf(grade(evidence.levelOverBackgroundDb, LIMITS.levelDb), {
    id: 'noisy',
    levelOverBackgroundDb: evidence.levelOverBackgroundDb,
  });
  raiseIf(grade(evidence.clippedShare, LIMITS.clippedShare), { id: 'clipped', clippedShare: evidence.clippedShare });
  raiseIf(grade(evidence.glideRelative, LIMITS.glide), { id: 'plucked-too-hard', glideRelative: evidence.glideRelative });

  const lowest = sound.partials[0]?.number ?? 1; // the partial that the frequency hangs on most
  const { humOn, toneOn } = evidence;
  if (humOn?.partialNumber === lowest) raise('doubtful', { id: 'hum-on-partial', ...humOn });
  if (toneOn?.partialNumber === lowest) raise('doubtful', { id: 'tone-on-partial', ...toneOn });
  if (!evidence.firstPartialHeard) {
    // Two higher partials and their spacing give the first one; one alone leaves its number to the search's bounds.
    raise(sound.partials.length >= 2 || evidence.numberingTested ? 'trusted' : 'doubtful', { id: 'first-partial-not-heard', frequencyHz });
  }
  if (evidence.touchMissed) raise('doubtful', { id: 'touch-not-heard' }); // that it was let go, and not played, cannot be told
  if (source.processing === 'altered') raise(bearsAltering(sound) ? 'trusted' : 'doubtful', { id: 'sound-altered', certain: true });
  if (source.processing === 'unknown') raise('trusted', { id: 'sound-altered', certain: false });
  if (evidence.bandwidthHz < PARTIALS_NEEDED_UP_TO * frequencyHz) {
    raise('doubtful', { id: 'sample-rate-too-low', sampleRateHz: source.sampleRateHz });
  }
  return reasons;
}

/** Half of the answer, as far as stiffness moves it. Once a finger on the middle has told the number, silence is not the witness. */
const NEAR_HALF = { low: 0.42, high: 0.53 } as const;

function leadLimits({ evidence, frequencyHz }: PluckSound): typeof LIMITS.lead | typeof LIMITS.leadOverHalf {
  const ratio = (evidence.rivalHz ?? 0) / frequencyHz.value;
  const isHalf = ratio > NEAR_HALF.low && ratio < NEAR_HALF.high && !evidence.numberingTested;
  return isHalf ? LIMITS.leadOverHalf : LIMITS.lead;
}

/** A first partial without another has no witness: of 52 such plucks one was the third partial of a span whose first was faint. */
const isAlone = ({ partials, evidence }: PluckSound): boolean =>
  partials.length === 1 && partials[0]!.number === 1 && !evidence.numberingTested;

/** Gain control and noise suppression change how loud a partial is and how long it seems to ring, never where it lies: so many of one span, the first among them, bear it. */
const bearsAltering = ({ partials, evidence }: PluckSound): boolean =>
  evidence.firstPartialHeard && partials.length >= PARTIALS_THROUGH_ALTERING;

/** A frequency so unsure that the force would miss the tolerance by it alone: force goes with its square. */
export function sharpnessReason(frequency: { value: number; u95: number }, toleranceRelative: number): Reason[] {
  const relativeU95 = frequency.u95 / frequency.value;
  const holdsAt = gradeOfRatio((2 * relativeU95) / toleranceRelative);
  return holdsAt === 'trusted' ? [] : [{ about: 'sound', holdsAt, id: 'frequency-not-sharp', relativeU95 }];
}

/** Partials that were left out of the force. One that is left alone can no longer be checked by another. */
export function misfitReason(leftOut: readonly number[], keptCount: number): Reason[] {
  if (leftOut.length === 0) return [];
  const partialNumbers = leftOut.toSorted((a, b) => a - b);
  return [{ about: 'sound', holdsAt: keptCount > 1 ? 'trusted' : 'doubtful', id: 'partials-do-not-fit', partialNumbers }];
}

/** What rings but does not belong: another span near by, where there is one, else only that the partials do not fit. */
function foreignReason({ evidence, frequencyHz: { value: frequencyHz }, partials }: PluckSound): [Grade, ReasonFigures] {
  const { ownShare, foreignHz } = evidence;
  const byShare = grade(ownShare, LIMITS.ownShare);
  const otherHz = foreignHz.find((hz) => hz < frequencyHz * NEIGHBOUR_RATIO && hz > frequencyHz / NEIGHBOUR_RATIO);
  if (otherHz === undefined) return [byShare, { id: 'not-one-span', ownShare }];
  const beside = ownShare < OWN_SHARE_BESIDE_OTHERS || partials.length < PARTIALS_BESIDE_OTHERS ? 'doubtful' : 'trusted';
  return [byShare === 'trusted' ? beside : byShare, { id: 'other-span-rings', otherHz }];
}
