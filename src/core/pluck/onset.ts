/**
 * Where something begins to sound: for each moment the spectrum just after is held against the one just before, so that steady
 * hum, fans and tones cancel. Works on decimated samples as they come in; a decision waits for about a third of a second.
 */

import { fftPlan, powerOfTwoFrom } from '../math/fft.ts';
import { median, quantile } from '../math/quantile.ts';
import { cosineWindow, energy } from '../spectrum/window.ts';

const FRAME_S = 0.032;
const HOP_S = 0.004;
/** Frames averaged before and after the moment; before ends one whole frame earlier, so that it holds nothing of the ring. */
const FRAMES_BEFORE = 10;
const FRAMES_AFTER = 7;
const FRAME_IN_HOPS = Math.round(FRAME_S / HOP_S);
/** A ring is the largest change within this time around it; plucks that follow faster count as one. */
const ALONE_HOPS = 50;
/** How far back the usual change and the largest change are looked for, and how far back and ahead the noise floor. */
const BACK_HOPS = 500;
const FLOOR_BACK_HOPS = 375;
const FLOOR_AHEAD_HOPS = 25;
/** The floor is renewed this often; it moves slowly, and sorting is what costs. */
const FLOOR_EVERY_HOPS = 50;
const FLOOR_STRIDE = 8;
/** The 15 % quantile of an exponentially distributed power is 0.1625 of its mean. */
const FLOOR_QUANTILE = 0.15;
const FLOOR_QUANTILE_OF_MEAN = 0.1625;
/** Power per sample below which there is nothing but rounding: about a tenth of the noise of 16-bit samples, (2^-15)²/12. */
const ROUNDING_POWER = 1e-11;
/** Change over its own median that a pluck exceeds: steady noise, fans and hum reach 1.4 to 1.9, plucks 2.9 and more. */
const OVER_MEDIAN = 2.4;
/** A pluck changes the sound at least this share as much as the strongest in sight. */
const OF_STRONGEST = 0.25;
/** Least change in absolute terms (sum of natural logarithms over the bins), for digital silence, where the median is zero. */
const LEAST_CHANGE = 8;
const HIGHEST_HZ = 3300;

export interface OnsetFinder {
  /** Takes the next decimated samples; gives the onsets that are certain by now, as sample indices to about 20 ms. */
  push(samples: Float64Array): readonly number[];
  /** Says that the sound ends here. */
  finish(): readonly number[];
  /** Samples after an onset until it is certain to have been given. */
  readonly latency: number;
  /** Most that the sound changed so far, over the usual change; 1 is nothing. */
  readonly largestChange: number;
}

export function createOnsetFinder(rateHz: number): OnsetFinder {
  const frameLength = Math.round(FRAME_S * rateHz);
  const hop = Math.round(HOP_S * rateHz);
  const weights = cosineWindow('hann', frameLength);
  const scale = 1 / energy(weights);
  const plan = fftPlan(powerOfTwoFrom(frameLength));
  const binCount = Math.min(plan.size / 2, Math.floor((HIGHEST_HZ * plan.size) / rateHz)) - 1; // bin 0 is the microphone's offset
  const transform = new Float64Array(2 * plan.size);
  const frame = new Float64Array(frameLength);

  let pending = new Float64Array(0);
  const powers: Float64Array[] = []; // one for each frame from firstKept on
  const changes: number[] = [];
  let firstKept = 0;
  let floor = new Float64Array(binCount);
  let decided = 0;
  let largestChange = 0;

  const framesKnown = () => firstKept + powers.length;
  const powerAt = (index: number) => powers[index - firstKept]!;
  const changeAt = (index: number) => changes[index - firstKept]!;

  function addFrame(samples: Float64Array) {
    for (let t = 0; t < frameLength; t++) frame[t] = samples[t]! * weights[t]!;
    plan.transform(frame, transform);
    const power = new Float64Array(binCount);
    for (let k = 0; k < binCount; k++) power[k] = (transform[2 * k + 2]! ** 2 + transform[2 * k + 3]! ** 2) * scale;
    powers.push(power);
  }

  function renewFloor(at: number, known: number) {
    const from = Math.max(firstKept, at - FLOOR_BACK_HOPS);
    const to = Math.min(known, at + FLOOR_AHEAD_HOPS);
    const column: number[] = [];
    floor = Float64Array.from({ length: binCount }, (_, k) => {
      column.length = 0;
      for (let i = from; i < to; i += FLOOR_STRIDE) column.push(powerAt(i)[k]!);
      return quantile(column, FLOOR_QUANTILE) / FLOOR_QUANTILE_OF_MEAN;
    });
  }

  /** Sums of the frames before and after the moment, moved along with it. */
  const before = frameSum(binCount, powerAt);
  const after = frameSum(binCount, powerAt);

  /** Sum over the bins of ln(1 + rise / before): the log-likelihood gain of a new sound, blind to what was there already. */
  function change(at: number, known: number): number {
    const lastBefore = Math.max(0, at - FRAME_IN_HOPS);
    const beforeCount = before.moveTo(Math.max(0, at - FRAME_IN_HOPS - FRAMES_BEFORE), lastBefore);
    const afterCount = after.moveTo(at, Math.min(known, at + FRAMES_AFTER));
    if (beforeCount < 2) return 0;
    let total = 0;
    for (let k = 0; k < binCount; k++) {
      const was = before.sums[k]! / beforeCount;
      const is = after.sums[k]! / afterCount;
      if (is > was) total += Math.log1p((is - was) / (was + 4 * floor[k]! + ROUNDING_POWER));
    }
    return total;
  }

  /** Changes are computed as soon as their frames are complete, decisions follow once everything ahead is known. */
  function decide(ended: boolean): number[] {
    const known = framesKnown();
    const onsets: number[] = [];
    const changeReady = ended ? known : known - FLOOR_AHEAD_HOPS;
    for (let at = firstKept + changes.length; at < changeReady; at++) {
      if (at % FLOOR_EVERY_HOPS === 0) renewFloor(at, known);
      changes.push(change(at, known));
    }
    const changesKnown = firstKept + changes.length;
    for (; decided < (ended ? changesKnown : changesKnown - ALONE_HOPS); decided++) {
      if (isOnset(decided, changesKnown)) onsets.push(decided * hop);
    }
    while (decided - firstKept > BACK_HOPS + ALONE_HOPS) {
      const surplus = decided - firstKept - BACK_HOPS;
      powers.splice(0, surplus);
      changes.splice(0, surplus);
      firstKept += surplus;
    }
    return onsets;
  }

  function isOnset(at: number, changesKnown: number): boolean {
    const here = changeAt(at);
    const from = Math.max(firstKept, at - BACK_HOPS);
    const to = Math.min(changesKnown, at + ALONE_HOPS);
    for (let i = Math.max(from, at - ALONE_HOPS); i < to; i++) {
      if (changeAt(i) > here || (changeAt(i) === here && i < at)) return false;
    }
    const inSight = changes.slice(from - firstKept, to - firstKept);
    const overMedian = here / Math.max(median(inSight), LEAST_CHANGE / OVER_MEDIAN);
    largestChange = Math.max(largestChange, overMedian);
    return overMedian > OVER_MEDIAN && here > OF_STRONGEST * Math.max(...inSight);
  }

  function push(samples: Float64Array): number[] {
    const all = new Float64Array(pending.length + samples.length);
    all.set(pending);
    all.set(samples, pending.length);
    let start = 0;
    for (; start + frameLength <= all.length; start += hop) addFrame(all.subarray(start, start + frameLength));
    pending = all.slice(start);
    return decide(false);
  }

  return {
    push,
    finish: () => decide(true),
    latency: (ALONE_HOPS + FLOOR_AHEAD_HOPS + FRAME_IN_HOPS + 1) * hop,
    get largestChange() {
      return largestChange;
    },
  };
}

/** Sum of the frames from one index to another that moves on: what comes in is added, what falls out is taken away. */
function frameSum(binCount: number, powerAt: (index: number) => Float64Array) {
  const sums = new Float64Array(binCount);
  let from = 0;
  let to = 0;
  const add = (index: number, sign: number) => {
    const power = powerAt(index);
    for (let k = 0; k < binCount; k++) sums[k] = Math.max(0, sums[k]! + sign * power[k]!);
  };
  return {
    sums,
    /** Moves to the frames `nextFrom` to `nextTo` (not included), neither before where it was; gives their number. */
    moveTo(nextFrom: number, nextTo: number): number {
      for (; to < nextTo; to++) add(to, 1);
      for (; from < nextFrom; from++) add(from, -1);
      return to - from;
    },
  };
}
