/** Whether a sound was a plucked span at all: physical vetoes, each one that speech, chords, held tones or knocks fail. */

import type { PluckSegment } from '../pluck/segment.ts';
import { amplitude, decayS } from '../spectrum/damped-sinusoid.ts';
import { type Fundamental, leadOver } from './fundamental.ts';
import type { LaterFit } from './glide.ts';
import type { FittedPartial } from './refine.ts';

/** Least evidence for a numbered series; noise and clutter reach about 2. */
const LEAST_EVIDENCE = 3;
/** Where most of the sound belongs to something else, a series needs more: a knock has enough modes for some of them to line up. */
const AMONG_STRANGERS = { evidence: 5.5, ownShare: 0.47 };
const AMONG_STRANGERS_UNTOLD = { evidence: 5, ownShare: 0.4 };
/** So short a ring is a knock, unless the series explains most of it. */
const KNOCK = { decayS: 0.025, ownShare: 0.8, ownShareAlone: 0.9, evidence: 6.2, evidenceUntold: 6 };
/** One or two partials among strangers are no series: a glass has as many. */
const FEW = { partials: 2, ownShare: 0.55 };
/** Two numberings this close to even odds are no numbering, where no span was told that could decide. */
const LEAST_LEAD_UNTOLD = 1;
/** A span is loudest when it is let go; what swells afterwards is played, spoken or blown. */
const MOST_SWELL_DB = 0.6;
/** With this much evidence, beating partials may make a span swell a little more. */
const OVERWHELMING = { score: 8, unexplained: 2.5, swellDb: 1.2 };
/** A span dies: it has lost at least this much by the second look; what has not is held. */
const LEAST_LOSS_DB = 2;
const DYING = { evidence: 6, evidenceDrowned: 5, decayS: 0.5, decayMisfitDb: 4 };
/** Belts ring with decay times of 0.01 to 0.35 s. A gain control or clipping stretches the strongest partial, never all of them. */
const LONGEST = { strongestS: 0.5, shortestS: 0.25, held: 2 };
/** A partial that rings longer than this is held. */
const HELD_S = 1;
/** Of a belt the higher partial dies sooner; beats and rooms blur that, but not by this factor, or the larger where the series is beyond doubt. */
const MOST_OUTLIVES = { usual: 1.9, whereSure: 3, sureFrom: 12 };
/** Belts are damped by rubber and cord: f τ of the first partial stays below 70, and the others die sooner. Bells and glasses ring on. A gain control may stretch it. */
const MOST_CYCLES = { usual: 100, sureFrom: 11.5, sureFromUntold: 8 };
/** A partial of this share of the loudest counts for it. */
const HEARD_SHARE = 0.18;
/** Partials fainter than this say nothing about damping. */
const FAINT_SHARE = 0.25;
/** What a fit makes shorter than this is the finger's noise. */
const SHORTEST_PARTIAL_S = 0.006;
/** Many narrow partials that fit no series and die slowly are a chord. */
const CHORD = { unexplained: 3, ownShare: 0.62, lossDb: 8 };
/** A tone of which no partial dies is held, whatever plays it. */
const HELD_DECAY_S = 1.5;

/** The figures that the vetoes look at. */
export interface Likeness {
  /** Score of the numbering, the same with half its lead over the rival, and that lead. */
  readonly score: number;
  readonly evidence: number;
  readonly lead: number;
  /** Number of partials heard. */
  readonly partials: number;
  /** Weight of narrow sinusoids that fit no partial, and the share of all weight that fits. */
  readonly unexplained: number;
  readonly ownShare: number;
  /** Level of 40–90 ms over that of 10–40 ms, and of 10–50 ms over that of 200–300 ms. */
  readonly swellDb: number;
  readonly lossDb: number;
  /** The room is so loud that the level says nothing. */
  readonly isDrowned: boolean;
  /** How far the partials depart from one exponential each, dB, mean over those heard again later, weighted by their strength. */
  readonly decayMisfitDb: number;
  /** Decay time of the strongest partial, and the shortest of all. */
  readonly decayS: number;
  readonly shortestDecayS: number;
  /** Cycles of partial 1 within the longest decay time of a partial that is not faint. */
  readonly longestCycles: number;
  /** Number of partials that are held rather than die. */
  readonly heldPartials: number;
  /** Largest decay time of a partial over the longest of those below it: damping grows with frequency, so it stays near or below 1. */
  readonly outlives: number;
}

export type Unlike = 'no-series' | 'knock' | 'swells' | 'uneven-decay' | 'does-not-die' | 'many-sources';

export function likenessOf(
  segment: PluckSegment,
  ring: { readonly fundamental: Fundamental; readonly fitted: readonly FittedPartial[]; readonly later: readonly LaterFit[] },
): Likeness {
  const { best, rival, evidence } = ring.fundamental;
  const strongest = ring.fitted.reduce((a, b) => (amplitude(b.sinusoid) > amplitude(a.sinusoid) ? b : a));
  return {
    score: best.score,
    evidence,
    lead: leadOver(best, rival),
    partials: best.heard.size,
    unexplained: best.unexplained,
    ownShare: best.ownShare,
    swellDb: levelDb(segment, 0.04, 0.09) - levelDb(segment, 0.01, 0.04),
    lossDb: levelDb(segment, 0.01, 0.05) - levelDb(segment, 0.2, 0.3, LEAST_OF_ROOM),
    isDrowned: isDrownedFrom(segment, 0.01, 0.05),
    decayMisfitDb: decayMisfitDb(ring.fitted, ring.later),
    longestCycles: longestCycles(ring.fitted, best.series.firstHz),
    decayS: decayS(strongest.sinusoid),
    outlives: outlivesLower(ring.fitted, ring.fundamental),
    heldPartials: ring.fitted.filter(({ sinusoid }) => decayS(sinusoid) > HELD_S).length,
    shortestDecayS: Math.min(...ring.fitted.map(({ sinusoid }) => decayS(sinusoid))),
  };
}

function outlivesLower(fitted: readonly FittedPartial[], { best }: Fundamental): number {
  const loudest = Math.max(...fitted.map(({ sinusoid }) => amplitude(sinusoid)));
  let longestBelow = 0;
  let most = 0;
  for (const { number, sinusoid } of fitted) {
    if (!best.heard.has(number) || amplitude(sinusoid) < FAINT_SHARE * loudest) continue;
    if (decayS(sinusoid) < SHORTEST_PARTIAL_S) continue;
    if (longestBelow > 0) most = Math.max(most, decayS(sinusoid) / longestBelow);
    longestBelow = Math.max(longestBelow, decayS(sinusoid));
  }
  return most;
}

/** How the amplitudes of the same partials go on, against the exponentials that the first stretch promised. */
function decayMisfitDb(fitted: readonly FittedPartial[], later: readonly LaterFit[]): number {
  let weightSum = 0;
  let misfit = 0;
  for (const { laterS, partials } of later) {
    for (const after of partials) {
      const before = fitted.find(({ number }) => number === after.number);
      if (!before) continue;
      const promised = amplitude(before.sinusoid) * Math.exp(-before.sinusoid.decayPerS * laterS);
      const weight = amplitude(before.sinusoid);
      misfit += weight * Math.abs(20 * Math.log10((amplitude(after.sinusoid) + 1e-12) / (promised + 1e-12)));
      weightSum += weight;
    }
  }
  return weightSum > 0 ? misfit / weightSum : 0;
}

/** Cycles of partial 1 within the longest decay time of a partial that is not faint. */
function longestCycles(fitted: readonly FittedPartial[], firstHz: number): number {
  const loudest = Math.max(...fitted.map(({ sinusoid }) => amplitude(sinusoid)));
  const clear = fitted.filter(({ sinusoid }) => amplitude(sinusoid) > HEARD_SHARE * loudest);
  return firstHz * Math.max(...clear.map(({ sinusoid }) => decayS(sinusoid)));
}

/**
 * Why the sound is not a plucked span; undefined where nothing speaks against it.
 *
 * @param spanTold  without a span only what no plucked string does is refused: strings of other instruments swell and ring long
 */
export function unlikeSpan(likeness: Likeness, spanTold: boolean): Unlike | undefined {
  const { evidence, ownShare, decayS: ringS } = likeness;
  if (evidence < LEAST_EVIDENCE) return 'no-series';
  const strangers = spanTold ? AMONG_STRANGERS : AMONG_STRANGERS_UNTOLD;
  if (evidence < strangers.evidence && ownShare < strangers.ownShare) return 'no-series';
  if (ringS < KNOCK.decayS && evidence < KNOCK.evidence && ownShare < (likeness.partials === 1 ? KNOCK.ownShareAlone : KNOCK.ownShare))
    return 'knock';
  if (likeness.partials <= FEW.partials && ownShare < FEW.ownShare) return 'no-series';
  return spanTold ? unlikeBelt(likeness) : unlikeString(likeness);
}

function unlikeBelt(likeness: Likeness): Unlike | undefined {
  const { score, evidence, unexplained, ownShare, swellDb, lossDb, outlives } = likeness;
  const overwhelming = score >= OVERWHELMING.score && unexplained <= OVERWHELMING.unexplained;
  if (swellDb > (overwhelming ? OVERWHELMING.swellDb : MOST_SWELL_DB)) return 'swells';
  if (outlives > (evidence >= MOST_OUTLIVES.sureFrom ? MOST_OUTLIVES.whereSure : MOST_OUTLIVES.usual)) return 'uneven-decay';
  if (lossDb < LEAST_LOSS_DB && !diesByItsPartials(likeness)) return 'does-not-die';
  if (likeness.heldPartials >= LONGEST.held) return 'does-not-die';
  if (likeness.longestCycles > MOST_CYCLES.usual && evidence < MOST_CYCLES.sureFrom) return 'does-not-die';
  if (likeness.decayS > LONGEST.strongestS && likeness.shortestDecayS > LONGEST.shortestS) return 'does-not-die';
  if (unexplained > CHORD.unexplained && ownShare < CHORD.ownShare && lossDb < CHORD.lossDb) return 'many-sources';
  return undefined;
}

/** Beside a fan or behind a gain control the level says little; well-numbered partials that keep their exponentials say more. */
const diesByItsPartials = ({ evidence, isDrowned, decayS: ringS, decayMisfitDb }: Likeness): boolean =>
  evidence >= (isDrowned ? DYING.evidenceDrowned : DYING.evidence) && ringS <= DYING.decayS && decayMisfitDb <= DYING.decayMisfitDb;

function unlikeString({ evidence, lead, shortestDecayS, longestCycles: cycles, decayS: ringS }: Likeness): Unlike | undefined {
  if (lead < LEAST_LEAD_UNTOLD) return 'no-series';
  if (cycles > MOST_CYCLES.usual && evidence < MOST_CYCLES.sureFromUntold) return 'does-not-die';
  if (ringS < KNOCK.decayS && evidence < KNOCK.evidenceUntold) return 'knock';
  return shortestDecayS > HELD_DECAY_S ? 'does-not-die' : undefined;
}

/**
 * Mean power over a time after the touch less the room's own, dB; very low where nothing is left.
 *
 * @param floorOfRoom  share of the room's power that the rest is not told apart from: the room is not known better than that
 */
function levelDb({ samples, rateHz, background }: PluckSegment, fromS: number, toS: number, floorOfRoom = 0): number {
  const part = samples.subarray(Math.round(fromS * rateHz), Math.min(samples.length, Math.round(toS * rateHz)));
  if (part.length === 0) return NOTHING_DB;
  const power = part.reduce((sum, x) => sum + x * x, 0) / part.length;
  const room = roomPower(background, rateHz);
  const isDrowned = power - room < floorOfRoom * room;
  return 10 * Math.log10(Math.max(power - room, 1e-3 * power, isDrowned ? DROWNED_OF_ROOM * room : 0) + 1e-20);
}

/** Whether what sounds over a time after the touch is hardly more than the room. */
function isDrownedFrom({ samples, rateHz, background }: PluckSegment, fromS: number, toS: number): boolean {
  const part = samples.subarray(Math.round(fromS * rateHz), Math.min(samples.length, Math.round(toS * rateHz)));
  return part.reduce((sum, x) => sum + x * x, 0) / Math.max(1, part.length) < (1 + LEAST_OF_ROOM) * roomPower(background, rateHz);
}

const NOTHING_DB = -200;
/** Below this share of the room's power a ring's rest is somewhere between nothing and the second share: the second is told. */
const LEAST_OF_ROOM = 0.7;
const DROWNED_OF_ROOM = 0.3;

/** Variance of the room's noise, the mean of its power per sample from 0 to half the rate, with the tones that could not be taken away. */
function roomPower({ noiseAt, moving }: PluckSegment['background'], rateHz: number): number {
  const steps = 64;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += noiseAt(((i + 0.5) / steps) * (rateHz / 2));
  return sum / steps + moving.reduce((power, { re, im }) => power + (re ** 2 + im ** 2) / 2, 0);
}
