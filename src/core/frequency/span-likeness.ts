/** Whether a sound was a plucked span at all: physical vetoes, each one that speech, chords, held tones or knocks fail. */

import type { PluckSegment } from '../pluck/segment.ts';
import type { Fundamental } from './fundamental.ts';

/** Least evidence for a numbered series; noise and clutter reach about 2. */
const LEAST_EVIDENCE = 3;
/** A span is loudest when it is let go; what swells afterwards is played, spoken or blown. Decibels from 10–40 ms to 40–90 ms. */
const MOST_SWELL_DB = 0.8;
/** A span has lost this much from 10–50 ms to 200–300 ms; what has not is held. */
const LEAST_LOSS_DB = 1.5;
/** With this much evidence beating partials may make a span swell; then it must still die. */
const OVERWHELMING = { evidence: 8, unexplained: 2.5, lossDb: 0.7 };
/** Many narrow partials that fit no series are a chord. */
const CHORD = { unexplained: 3, ownShare: 0.62 };

export type Unlike = 'no-series' | 'swells' | 'does-not-die' | 'many-sources';

/** Why the sound is not a plucked span; undefined where nothing speaks against it. */
export function unlikeSpan(segment: PluckSegment, fundamental: Fundamental, spanTold: boolean): Unlike | undefined {
  const { best, evidence } = fundamental;
  if (evidence < LEAST_EVIDENCE) return 'no-series';
  const overwhelming = best.score >= OVERWHELMING.evidence && best.unexplained <= OVERWHELMING.unexplained;
  const early = levelDb(segment, 0.01, 0.04);
  const late = levelDb(segment, 0.2, 0.3);
  const swell = levelDb(segment, 0.04, 0.09) - early;
  if (!spanTold) return undefined;
  if (swell > MOST_SWELL_DB && !overwhelming) return 'swells';
  const loss = levelDb(segment, 0.01, 0.05) - late;
  if (loss < (overwhelming ? OVERWHELMING.lossDb : LEAST_LOSS_DB)) return 'does-not-die';
  if (best.unexplained > CHORD.unexplained && best.ownShare < CHORD.ownShare) return 'many-sources';
  return undefined;
}

/** Mean power over a time after the touch less the room's own, dB; very low where nothing is left. */
function levelDb({ samples, rateHz, background }: PluckSegment, fromS: number, toS: number): number {
  const part = samples.subarray(Math.round(fromS * rateHz), Math.min(samples.length, Math.round(toS * rateHz)));
  if (part.length === 0) return -200;
  const power = part.reduce((sum, x) => sum + x * x, 0) / part.length;
  return 10 * Math.log10(Math.max(power - roomPower(background.noiseAt, rateHz), 1e-3 * power) + 1e-20);
}

/** Variance of the room's noise: the mean of its power per sample from 0 to half the rate. */
function roomPower(noiseAt: (hz: number) => number, rateHz: number): number {
  const steps = 64;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += noiseAt(((i + 0.5) / steps) * (rateHz / 2));
  return sum / steps;
}
