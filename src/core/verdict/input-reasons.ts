/** Doubts that come from what is known of span and belt, not from the sound: they ask for a ruler, a scale or another place to pluck. */

import type { PartialEvidence } from '../force/heard-partials.ts';
import { AIR_LOAD_RELATIVE_U, centralSpan, type KnownSpan } from '../force/known-span.ts';
import { relativeUncertainty } from '../math/measured.ts';
import type { BudgetLine, ForceN, Grade, Reason, ReasonFigures } from '../outcome.ts';
import { ASSUMED_UNCERTAINTY, type SpanSetup } from '../setup.ts';
import { gradeOfInterval, toleranceOf } from './grade.ts';
import { trustedFromM } from './trusted-from.ts';

/** Below this many tooth pitches teeth and shear count, which no beam knows (our judgement). */
const SHORTEST_PITCHES = 20;
/** Of the belts that this tool is for, the finest. */
const TOOTH_PITCH_IF_NOT_TOLD_M = 0.002;
/** Sag is worth a word from the first on; from the second on its correction rests too much on an axial stiffness that nobody measured. */
const SAG = { named: 0.01, doubtful: 0.1 } as const;
/** sqrt(EI/(T L²)) above which the stiffness holds the span as much as the force does. */
const SLACK_ABOVE = 0.1;

/**
 * sqrt(EI/(T L²)) above which ends told by their kind carry the reading: were the kind wrong, hardly an interval would hold the force, and no
 * partial would show it.
 */
const KIND_CARRIES_ABOVE = 0.05;

export interface JudgedForce {
  readonly setup: SpanSetup;
  readonly span: KnownSpan;
  /** Those that the force rests on. */
  readonly partials: readonly Omit<PartialEvidence, 'frequencyHz'>[];
  /** Relative standard uncertainty that moves all of them alike. */
  readonly sharedRelativeU: number;
  /** Missing where the sound leaves no room for a force. */
  readonly forceN?: ForceN | undefined;
  readonly budget: readonly BudgetLine[];
  /** Of a span that lies flat, what its sag adds to the force that its first partial tells, relative; 0 on edge. */
  readonly rise?: number | undefined;
  /** The search for a longer span to trust is left out: a plan looks at them itself, and of a pluck among others the reading tells it. */
  readonly skipsLonger?: boolean | undefined;
}

/** Input reasons of one force; those that explain a missed tolerance name the input with the largest share. */
export function inputReasons(judged: JudgedForce): Reason[] {
  const { setup, span, forceN, rise = 0 } = judged;
  const interval = gradeOfInterval(forceN, toleranceOf(setup));
  const reasons: Reason[] = [];
  const raise = (holdsAt: Grade, figures: ReasonFigures): number => reasons.push({ about: 'inputs', holdsAt, ...figures });
  const belt = setup.belt;

  if (interval !== 'trusted') reasons.push(...explanations(judged, interval));
  else if (span.spanLengthM < shortestM(setup) || isCarriedByKind(judged)) raise('doubtful', shortSpan(judged));
  if (belt?.densityFrom === 'catalogue') {
    // Where nothing else explains the width of the interval, it is the density's.
    const holdsAt = interval !== 'trusted' && reasons.length === 0 ? interval : 'doubtful';
    raise(holdsAt, { id: 'density-from-catalogue', relativeUncertainty: relativeUncertainty(belt.linearDensityKgPerM) });
  }
  if (forceN === undefined) return reasons;
  if (belt?.ratedForceN !== undefined && forceN.value > belt.ratedForceN) {
    raise('doubtful', { id: 'over-rated-force', forceN: forceN.value, ratedForceN: belt.ratedForceN });
  }
  if (rise >= SAG.named) raise(rise < SAG.doubtful ? 'trusted' : 'doubtful', { id: 'span-sags', riseRelative: rise });
  const expected = setup.expectedForceN;
  if (expected !== undefined && ((forceN.low ?? 0) > expected.highN || (forceN.high ?? Infinity) < expected.lowN)) {
    raise('doubtful', { id: 'outside-expected', forceN: forceN.value });
  }
  return reasons;
}

/** Why an interval is too wide, and for whom to mend it. Ends and stiffness act as a product: they are one cause. */
function explanations(judged: JudgedForce, holdsAt: Grade): Reason[] {
  const { setup, span, forceN, budget } = judged;
  const share = (...inputs: readonly BudgetLine['input'][]): number =>
    budget.filter((line) => inputs.includes(line.input)).reduce((sum, line) => sum + line.share, 0);
  const bending = share('end fixity', 'bending stiffness');
  const others = budget.filter((line) => line.input !== 'end fixity' && line.input !== 'bending stiffness');
  const largest = others.toSorted((one, two) => two.share - one.share)[0];
  const reasons: ReasonFigures[] = [];
  const bendingDecides = forceN?.low === undefined || largest === undefined || bending >= largest.share;

  if (bendingDecides || span.spanLengthM < shortestM(setup)) {
    if (isSlack(judged)) reasons.push({ id: 'belt-too-slack', forceHighN: forceN?.high });
    reasons.push(shortSpan(judged));
  }
  if (bendingDecides) {
    if (isOpen(setup) && budget.length > 0) reasons.push({ id: 'ends-and-stiffness-unknown', share: bending });
  } else if (!(largest.input === 'linear density' && setup.belt?.densityFrom === 'catalogue')) {
    reasons.push({ id: 'input-decides', input: largest.input, share: largest.share });
  }
  return reasons.map((figures) => ({ about: 'inputs', holdsAt, ...figures }));
}

function shortSpan(judged: JudgedForce): ReasonFigures {
  const { setup, span, forceN, partials, sharedRelativeU, skipsLonger } = judged;
  const onceWeighed = setup.belt?.densityFrom === 'catalogue';
  const weighedU = Math.hypot(ASSUMED_UNCERTAINTY.linearDensityRelative, AIR_LOAD_RELATIVE_U);
  if (skipsLonger) return { id: 'span-too-short', spanLengthM: span.spanLengthM, onceWeighed };
  const from =
    forceN &&
    trustedFromM({
      span: onceWeighed ? { ...span, linearDensityRelativeU: Math.min(span.linearDensityRelativeU, weighedU) } : span,
      forceN: forceN.value,
      partials,
      sharedRelativeU,
      toleranceRelative: toleranceOf(setup),
      atLeastM: shortestM(setup),
    });
  return { id: 'span-too-short', spanLengthM: span.spanLengthM, trustedFromM: from, onceWeighed };
}

/** What teeth and shear do on a short span was part of what was fitted where the belt was proved on weights. */
const shortestM = ({ belt }: SpanSetup): number =>
  belt?.provedOnWeights === true ? 0 : SHORTEST_PITCHES * (belt?.toothPitchM ?? TOOTH_PITCH_IF_NOT_TOLD_M);

/** Whether better knowledge of ends or stiffness is to be had at all. */
const isOpen = (setup: SpanSetup): boolean =>
  setup.ends.some((end) => end.kind !== 'known') || setup.belt?.bendingStiffnessNm2.kind === 'range';

const isSlack = (judged: JudgedForce): boolean => judged.forceN?.low === undefined || slackness(judged) > SLACK_ABOVE;

/** Ends of which nothing is told are taken in all their kinds, and their interval shows it; ends that were measured are what they are. */
function isCarriedByKind(judged: JudgedForce): boolean {
  const { ends, belt } = judged.setup;
  const isToldByKind = ends.some((end) => end.kind === 'between');
  const isHalfKnown = ends.some((end) => end.kind === 'known') && belt?.bendingStiffnessNm2.kind === 'range';
  return (isToldByKind || isHalfKnown) && slackness(judged) > KIND_CARRIES_ABOVE;
}

const slackness = ({ span, forceN }: JudgedForce): number =>
  Math.sqrt(centralSpan(span).bendingStiffnessNm2 / (forceN?.value ?? 0)) / span.spanLengthM;
