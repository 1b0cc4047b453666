/** From what the plucks said by their sound to what is told a person: each pluck by itself, and the reading of them all. */

import { budgetSum, forceBudget, widenedForFew } from './force/budget.ts';
import { type FittingForce, fittingForce } from './force/fitting-force.ts';
import type { FrequencyDoubt } from './force/force.ts';
import { heardPartials, type PartialEvidence } from './force/heard-partials.ts';
import { centralOfCells, type KnownSpan, knownSpan } from './force/known-span.ts';
import { MODEL_ERROR_EACH } from './force/partial-nodes.ts';
import { settledSag } from './force/sag.ts';
import { type CombinedPlucks, combinedPlucks, REPEATABILITY_PRIOR } from './frequency/combine.ts';
import { searchBounds } from './frequency/search-bounds.ts';
import { settledByTouch } from './frequency/touched-middle.ts';
import type { Measured } from './math/measured.ts';
import type { PluckReading, PluckSound, Reading, Reason } from './outcome.ts';
import type { SpanSetup } from './setup.ts';
import { gradeOfInterval, gradeOfReasons, toleranceOf, worstGrade } from './verdict/grade.ts';
import { inputReasons } from './verdict/input-reasons.ts';
import { misfitReason, type SoundSource, sharpnessReason, soundReasons } from './verdict/reasons.ts';
import { agreementReasons, sharedReasons } from './verdict/take-reasons.ts';

export interface Take extends SoundSource {
  /** Every pluck that was heard, in order of time. */
  readonly sounds: readonly PluckSound[];
  /** Plucks made with a finger on the middle of the span: they tell which numbering is right, and nothing of the force. */
  readonly touched?: readonly PluckSound[] | undefined;
  readonly setup: SpanSetup;
}

export interface Answers {
  /** One for each sound, in the same order. */
  readonly plucks: readonly PluckReading[];
  /** `undefined` only where there was no pluck. */
  readonly reading: Reading | undefined;
}

/** A sound this much below the loudest pluck is no source of its own: the last bit of coarse samples, an echo. */
const FAINT_DB = 30;

/**
 * Whether a recording is of something else, such as speech, of which a syllable now and then rings like a span: at least two sounds in
 * three were none. For recordings; who listens live sees each sound as it comes.
 *
 * @param heard.sounds      the plucks
 * @param heard.othersDbfs  level of each sound that was no pluck
 */
export function isMostlyOtherSounds(heard: { readonly sounds: readonly PluckSound[]; readonly othersDbfs: readonly number[] }): boolean {
  const { sounds, othersDbfs } = heard;
  const loudestDbfs = Math.max(...sounds.flatMap(({ partials }) => partials.map(({ levelDbfs }) => levelDbfs)));
  const others = othersDbfs.filter((levelDbfs) => levelDbfs > loudestDbfs - FAINT_DB).length;
  return others >= 2 && others >= 2 * sounds.length;
}

/** How much of the frequency's glide may be left after it was taken to small amplitude: a tenth, standard uncertainty (our judgement). */
const GLIDE_LEFT = 0.1;

/** Answers for a take under one setup; does no sound analysis. A pluck that was judged under this setup before is not judged again. */
export function answerOf(take: Take): Answers {
  const heard = heardTake(take);
  if (heard.length === 0) return { plucks: [], reading: undefined };
  const choice = chosenPlucks(heard);
  const plucks = heard.map((pluck, i) => ({ ...judgedPluck(pluck, take), used: choice.chosen.includes(i) }));
  return { plucks, reading: readingFrom(heard, choice, take.setup) };
}

/** The reading alone, for questions that ask for nothing else: each pluck by itself is not reckoned. */
export function readingOf(take: Take): Reading | undefined {
  const heard = heardTake(take);
  return heard.length === 0 ? undefined : readingFrom(heard, chosenPlucks(heard), take.setup);
}

/** The plucks as they are read: in the light of those that were made with a finger on the middle. */
export const heardSounds = (take: Take): readonly PluckSound[] => heardTake(take).map(({ sound }) => sound);

/** What the force of a take rests on; undefined without a pluck, and where span or density was not told. */
export function forceBasis(take: Take): ForceBasis | undefined {
  const span = knownSpan(take.setup);
  const heard = heardTake(take);
  if (heard.length === 0 || span === undefined) return undefined;
  const { combined, chosen } = chosenPlucks(heard);
  return basisOf({ combined, sounds: chosen.map((i) => heard[i]!.sound), setup: take.setup, span });
}

/** A pluck with what its sound alone says. */
interface HeardPluck {
  readonly sound: PluckSound;
  readonly ownReasons: readonly Reason[];
  /** Its frequency as that of a take of one. */
  readonly alone: CombinedPlucks;
  /** Whether its sound is worth nothing. */
  readonly isWorthless: boolean;
}

function heardTake(take: Take): readonly HeardPluck[] {
  const { sounds, touched = [], setup } = take;
  const bounds = touched.length > 0 ? searchBounds(setup) : undefined;
  const toleranceRelative = toleranceOf(setup);
  return sounds.map((asHeard) => {
    const sound = bounds ? settledByTouch(asHeard, touched, bounds) : asHeard;
    const ownReasons = soundReasons(sound, take);
    const alone = combinedPlucks([sound.frequencyHz]);
    const isWorthless = gradeOfReasons([...ownReasons, ...sharpnessReason(alone.frequencyHz, toleranceRelative)]) === 'unusable';
    return { sound, ownReasons, alone, isWorthless };
  });
}

interface JudgedBefore extends SoundSource {
  readonly setup: SpanSetup;
  readonly pluck: PluckReading;
}
/** A page asks for all plucks again with each one that comes. */
const judgedBefore = new WeakMap<PluckSound, JudgedBefore>();

/** One pluck by itself. */
function judgedPluck({ sound, ownReasons, alone }: HeardPluck, { setup, processing, sampleRateHz }: Take): PluckReading {
  const before = judgedBefore.get(sound);
  if (before?.setup === setup && before.processing === processing && before.sampleRateHz === sampleRateHz) return before.pluck;
  const { frequencyHz, forceN, grade, soundGrade, reasons } = judge({
    sounds: [sound],
    combined: alone,
    reasons: ownReasons,
    setup,
    skipsLonger: true,
  });
  const pluck: PluckReading = { frequencyHz, forceN, grade, soundGrade, reasons, sound, used: true };
  judgedBefore.set(sound, { setup, processing, sampleRateHz, pluck });
  return pluck;
}

interface Choice {
  /** Plucks whose sound is worth something, by index; all where none is. */
  readonly candidates: readonly number[];
  /** Those of them that agree. */
  readonly chosen: readonly number[];
  readonly combined: CombinedPlucks;
}

/** Which plucks make the reading, and what their frequencies come to. */
function chosenPlucks(heard: readonly HeardPluck[]): Choice {
  // A pluck whose sound is worth nothing takes no part as long as another's is worth something.
  const isAnyOfWorth = heard.some(({ isWorthless }) => !isWorthless);
  const candidates = heard.flatMap(({ isWorthless }, i) => (isAnyOfWorth && isWorthless ? [] : [i]));
  const combined = combinedPlucks(candidates.map((i) => heard[i]!.sound.frequencyHz));
  return { candidates, combined, chosen: candidates.filter((_, k) => combined.used[k]) };
}

function readingFrom(heard: readonly HeardPluck[], { candidates, chosen, combined }: Choice, setup: SpanSetup): Reading {
  const reasons = [
    ...sharedReasons(chosen.map((i) => heard[i]!.ownReasons)),
    ...agreementReasons(
      combined,
      candidates.map((i) => i + 1),
    ),
    ...heard.flatMap((pluck, i) => (candidates.includes(i) ? [] : leftOut(pluck, i + 1))),
  ];
  const judged = judge({ sounds: chosen.map((i) => heard[i]!.sound), combined, reasons, setup });
  return { kind: 'reading', ...judged, pluckCount: chosen.length };
}

/**
 * The reading of a frequency that another instrument showed: force with interval and reasons, nothing of the sound. It repeats as plucks do.
 *
 * @param told.frequencyHz  first partial, > 0, with the standard uncertainty that its teller gives it
 */
export function answerOfFrequency(told: { readonly frequencyHz: Measured; readonly setup: SpanSetup }): Reading {
  const combined = combinedPlucks([told.frequencyHz]);
  const reasons: Reason[] = [{ about: 'sound', holdsAt: 'trusted', id: 'not-heard-here' }];
  return { kind: 'reading', ...judge({ sounds: [], combined, reasons, setup: told.setup }), pluckCount: 0 };
}

/**
 * The reading that plucks would make if all of them were used: what a plan grades a span by, with the rules of a real reading and none of
 * its own. From where on a span could be trusted is left open, since the plan itself is the answer to that.
 *
 * @param take.sounds  at least one, none of them so poor that a reading would leave it out
 */
export function plannedReading(take: Take): Reading {
  const { sounds, setup } = take;
  const combined = combinedPlucks(sounds.map(({ frequencyHz }) => frequencyHz));
  const reasons = sharedReasons(sounds.map((sound) => soundReasons(sound, take)));
  return { kind: 'reading', ...judge({ sounds, combined, reasons, setup, skipsLonger: true }), pluckCount: sounds.length };
}

/** Force, grade and reasons for a frequency that stands; `reasons` are those of its sound. */
function judge(given: {
  readonly sounds: readonly PluckSound[];
  readonly combined: CombinedPlucks;
  readonly reasons: readonly Reason[];
  readonly setup: SpanSetup;
  readonly skipsLonger?: boolean | undefined;
}): Omit<Reading, 'kind' | 'pluckCount'> {
  const { combined, setup } = given;
  const { frequencyHz } = combined;
  const toleranceRelative = toleranceOf(setup);
  const byEar = [...given.reasons, ...sharpnessReason(frequencyHz, toleranceRelative)];
  const span = knownSpan(setup);
  if (span === undefined) {
    const soundGrade = gradeOfReasons(byEar);
    return { frequencyHz, grade: soundGrade, soundGrade, reasons: byEar, budget: [] };
  }

  const { doubt, partials, sharedRelativeU, fit, rise } = basisOf({ combined, sounds: given.sounds, setup, span });
  const { cells, numbers, leftOut } = fit;
  const central = centralOfCells(span, cells);
  const budget = fit.forceN === undefined ? [] : forceBudget({ forceN: fit.forceN.value, span, doubt, central });
  const forceN = fit.forceN && widenedForFew(fit.forceN, budget);
  const ofSound = [...byEar, ...misfitReason(leftOut, numbers.length)];
  const soundGrade = gradeOfReasons(ofSound);
  const reasons = [
    ...ofSound,
    ...inputReasons({
      setup,
      span,
      partials: partials.filter(({ number }) => numbers.includes(number)),
      sharedRelativeU,
      forceN,
      budget,
      rise,
      skipsLonger: given.skipsLonger,
    }),
  ];
  const grade = worstGrade([gradeOfInterval(forceN, toleranceRelative), gradeOfReasons(reasons)]);
  return { frequencyHz, forceN, grade, soundGrade, reasons, budget, ...(forceN ? { budgetSum: budgetSum(budget, forceN) } : {}) };
}

/** What a force is reckoned from. */
export interface ForceBasis {
  readonly span: KnownSpan;
  readonly doubt: FrequencyDoubt;
  /** As heard, those that the fit leaves out among them. */
  readonly partials: readonly PartialEvidence[];
  readonly sharedRelativeU: number;
  readonly fit: FittingForce;
  /** Of the first partial squared, by sag; 0 on edge. */
  readonly rise: number;
}

function basisOf(given: { combined: CombinedPlucks; sounds: readonly PluckSound[]; setup: SpanSetup; span: KnownSpan }): ForceBasis {
  const { combined, sounds, setup, span } = given;
  const doubt = doubtOf(combined, sounds);
  const partials = heardPartials(sounds, combined.frequencyHz.value, combined.withinRelative);
  const sharedRelativeU = Math.hypot(doubt.repeatabilityRelative, doubt.amplitudeRelative);
  return { span, doubt, partials, sharedRelativeU, ...fitOnItsSide(setup.lie === 'flat', partials, span, sharedRelativeU) };
}

/** Only a belt that lies flat hangs through in the direction in which it swings. */
function fitOnItsSide(isFlat: boolean, partials: readonly PartialEvidence[], span: KnownSpan, sharedRelativeU: number) {
  const forceOf = (heard: readonly PartialEvidence[]): FittingForce => fittingForce({ partials: heard, sharedRelativeU }, span);
  return isFlat ? settledSag(partials, span, forceOf) : { fit: forceOf(partials), rise: 0 };
}

function doubtOf(combined: CombinedPlucks, sounds: readonly PluckSound[]): FrequencyDoubt {
  const glide = sounds.reduce((sum, sound) => sum + Math.abs(sound.evidence.glideRelative), 0) / Math.max(1, sounds.length);
  return {
    withinRelative: combined.withinRelative,
    repeatabilityRelative: combined.repeatabilityRelative,
    repeatabilityDegreesOfFreedom: REPEATABILITY_PRIOR.degreesOfFreedom + Math.max(0, sounds.length - 1),
    amplitudeRelative: GLIDE_LEFT * glide,
    modelRelative: MODEL_ERROR_EACH,
  };
}

/** Why a pluck whose own sound decides nothing took no part. */
function leftOut({ ownReasons }: HeardPluck, pluckNumber: number): Reason[] {
  const because = ownReasons.find((reason) => reason.holdsAt === 'unusable')?.id ?? 'frequency-not-sharp';
  return [{ about: 'sound', holdsAt: 'trusted', id: 'pluck-left-out', pluckNumber, because }];
}
