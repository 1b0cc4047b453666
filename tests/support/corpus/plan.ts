/** Everything that one take of the corpus is made of, drawn before any sound exists; each kind of difficulty is a change of a plan. */

import type { Random } from '../../../src/core/synthesis/random.ts';
import type { Room } from '../../../src/core/synthesis/room.ts';
import type { Alteration } from './alter.ts';
import { type DrawnBelt, drawBelt } from './belt.ts';
import { happens, logBetween, oneOf } from './chance.ts';
import type { Oddity } from './normal-modes.ts';
import type { CorpusMicrophone, CorpusPluck } from './pluck-shape.ts';

/** Levels end in Db and count from the ring's power over its first tenth of a second, unless said otherwise. */
export interface TakePlan {
  readonly belt: DrawnBelt;
  readonly oddity?: Oddity | undefined;
  readonly damping: Damping;
  /** Relative rise of the first partial at the first pluck's amplitude. */
  readonly glideRelative: number;
  readonly plucks: readonly PlannedPluck[];
  readonly microphone: CorpusMicrophone;
  readonly corner: Corner;
  readonly sampleRateHz: number;
  /** From the start of the recording to the first release, and from the last release to the end. Negative: begins inside the ring. */
  readonly leadS: number;
  readonly tailS: number;
  /** Peak of the plucked sound at the microphone's output, before it is altered. */
  readonly peakDbfs: number;
  /** Peak relative to that of the ring. */
  readonly scrape: { readonly peakDb: number; readonly decayS: number; readonly leadS: number };
  readonly room?: Room | undefined;
  readonly whiteDb: number;
  readonly pinkDb: number;
  readonly hum?: { readonly mainsHz: number; readonly harmonicsDb: readonly number[] } | undefined;
  readonly motors?: readonly MotorTone[] | undefined;
  readonly neighbour?:
    | { readonly ratio: number; readonly levelDb: number; readonly decayRatio: number; readonly buildUpS: number }
    | undefined;
  readonly torsion?: { readonly ratio: number; readonly levelDb: number; readonly decayRatio: number } | undefined;
  readonly contact?:
    | { readonly placeShare: number; readonly gapShare: number; readonly hardness: number; readonly knockDb: number }
    | undefined;
  readonly frame?: { readonly modes: readonly { readonly ratio: number; readonly decayS: number }[]; readonly levelDb: number } | undefined;
  readonly alterations: readonly Alteration[];
}

export interface PlannedPluck extends CorpusPluck {
  /** From the release before to this one; not used of the first. */
  readonly afterS: number;
  /** The finger lies on the belt this long before it lets go, and stills what rang. */
  readonly touchS: number;
}

/** 1/τ_n = (1 − a − b + a r + b r²)/τ_1 with r = f_n/f_1, each partial scattered by a factor of its own. */
export interface Damping {
  readonly decayS: number;
  readonly linear: number;
  readonly square: number;
  readonly scatter: number;
}

/** High-pass of the microphone; or the one that leaves the first partial so far below the strongest; or none of the first partial at all. */
export type Corner =
  | { readonly kind: 'at'; readonly cornerHz: number; readonly order: 1 | 2 | 4 }
  | { readonly kind: 'first partial down'; readonly downDb: number; readonly order: 2 | 4 }
  | { readonly kind: 'first partial absent' };

/** A tone with harmonics that wanders or glides: f(t) = f0 exp(glide t) (1 + wander × a slow random walk). */
export interface MotorTone {
  readonly frequencyHz: number;
  readonly harmonicsDb: readonly number[];
  readonly wander: number;
  readonly glidePerS: number;
}

/** Decay times of real use: the span swings at least this often before it has fallen to 1/e of its amplitude, and not for ever. */
export function drawDecayS(random: Random, fundamentalHz: number, quality: { low: number; high: number } = { low: 14, high: 220 }): number {
  const shortest = Math.max(0.01, quality.low / (Math.PI * fundamentalHz));
  const longest = Math.min(0.35, quality.high / (Math.PI * fundamentalHz));
  return logBetween(random, Math.min(shortest, longest), longest);
}

export function drawPluck(random: Random, spanLengthM: number): PlannedPluck {
  const inMiddle = happens(random, 0.4);
  const share = inMiddle ? random.between(0.36, 0.64) : random.between(0.1, 0.36);
  return {
    placeShare: !inMiddle && happens(random, 0.5) ? 1 - share : share,
    heightM: spanLengthM * logBetween(random, 0.002, 0.015),
    fingerWidthM: Math.min(random.between(0.003, 0.012), 0.12 * spanLengthM),
    letGoS: logBetween(random, 0.0002, 0.0018),
    afterS: random.between(0.5, 1),
    touchS: random.between(0.03, 0.1),
  };
}

/** An ordinary take in a quiet room. */
export function drawPlan(random: Random, belt: DrawnBelt = drawBelt(random)): TakePlan {
  return {
    belt,
    damping: {
      decayS: drawDecayS(random, belt.fundamentalHz),
      linear: random.between(0.05, 0.6),
      square: logBetween(random, 0.004, 0.1),
      scatter: 0.12,
    },
    glideRelative: logBetween(random, 2e-5, 5e-3),
    plucks: [drawPluck(random, belt.spanLengthM)],
    microphone: { placeShare: random.between(0.15, 0.85), distanceM: logBetween(random, 0.008, 0.08), twistShare: 0.3 },
    corner: { kind: 'at', cornerHz: random.between(15, 50), order: 1 },
    sampleRateHz: oneOf(random, [44_100, 48_000, 48_000]),
    leadS: random.between(0.3, 0.8),
    tailS: random.between(0.9, 1.3),
    peakDbfs: random.between(-26, -4),
    scrape: { peakDb: random.between(-30, -10), decayS: random.between(0.0015, 0.005), leadS: random.between(0.001, 0.006) },
    whiteDb: random.between(-60, -42),
    pinkDb: random.between(-56, -38),
    alterations: [],
  };
}
