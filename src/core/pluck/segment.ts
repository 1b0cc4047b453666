/** One pluck cut out of the take: from the touch to the next pluck, the room's steady tones taken away, the room's noise beside it. */

import { powerOfTwoFrom } from '../math/fft.ts';
import { type BinGrid, binGrid } from '../spectrum/damped-sinusoid.ts';
import { type Background, backgroundOf } from './background.ts';
import { type MovingTone, withoutMoving } from './moving-tones.ts';
import { withoutLines } from './steady-lines.ts';

export interface PluckSegment {
  /** Index 0 is the touch; Float64Array [n], decimated, without the room's steady lines. */
  readonly samples: Float64Array;
  /** The same with the lines, as it was heard. */
  readonly heard: Float64Array;
  readonly rateHz: number;
  /** Time of the touch from the start of the take. */
  readonly startS: number;
  readonly background: Background;
  /** The take began inside the ring. */
  readonly touchMissed?: boolean | undefined;
}

/** Longest stretch of ring that is used: beyond it a belt is silent, and a longer one only adds noise. */
const LONGEST_S = 0.6;
/** The hand comes back before the next pluck is heard. */
const CLEAR_OF_NEXT_S = 0.025;
/** Stretch before the touch that the room is learnt from, and the least of it that serves. */
const ROOM_S = 0.7;
const ROOM_AT_LEAST_S = 0.03;
const RING_AT_LEAST_S = 0.06;
/** Kept clear of the finger before the touch. */
const CLEAR_OF_TOUCH_S = 0.004;
/** The room is not learnt from what rings within this time of the pluck before. */
const PLUCK_BEFORE_S = 0.5;
/** Below this much room of its own a pluck takes over the room that the one before it heard. */
const OWN_ROOM_AT_LEAST_S = 0.15;
/** Highest frequency that matters, Hz. */
const HIGHEST_HZ = 3200;

/** A glide bends: so much of its sweep to either side may be touched too. */
const PATH_MARGIN = 0.25;
/** Decay time of the shortest window that looks for partials. */
const SHORTEST_WINDOW_S = 0.03;

/** Time after the touch in which another onset still shortens a segment; then a pluck is heard out. */
export const HEARD_OUT_S = LONGEST_S + CLEAR_OF_NEXT_S;

/**
 * @param samples         decimated take, Float64Array; not modified
 * @param options.touch   index of the touch
 * @param options.next    index of the next onset, if any
 * @param options.before  the segment before with the index of its touch, if any
 * @param options.originS time of sample 0 in the take
 * @returns undefined where there is too little sound before or after the touch
 */
export function cutSegment(
  samples: Float64Array,
  options: {
    readonly touch: number;
    readonly next?: number | undefined;
    readonly before?: { readonly touch: number; readonly segment: PluckSegment } | undefined;
    readonly rateHz: number;
    readonly originS: number;
  },
): PluckSegment | undefined {
  const { touch, next, before, rateHz } = options;
  const count = (seconds: number) => Math.round(seconds * rateHz);
  const end = Math.min(next === undefined ? samples.length : next - count(CLEAR_OF_NEXT_S), touch + count(LONGEST_S));
  if (end - touch < count(RING_AT_LEAST_S)) return undefined;
  const heard = samples.slice(touch, end);
  const ring = withoutOffset(heard.slice());
  const common = { heard, rateHz, startS: options.originS + touch / rateHz };
  const roomEnd = touch - count(CLEAR_OF_TOUCH_S);
  const roomStart = Math.max(0, roomEnd - count(ROOM_S), before ? before.touch + count(PLUCK_BEFORE_S) : 0);
  if (before && roomEnd - roomStart < count(OWN_ROOM_AT_LEAST_S)) {
    // its lines are too long ago to be taken away in phase: they stay in the samples, and in the noise with all their power
    return { ...common, samples: ring, background: { ...before.segment.background, lineRemains: 1 } };
  }
  if (roomEnd - roomStart < count(ROOM_AT_LEAST_S)) return undefined;
  const background = backgroundOf(withoutOffset(samples.slice(roomStart, roomEnd)), rateHz);
  const standing = withoutLines(ring, { lines: background.lines, rateHz, startIndex: touch - roomStart });
  const all = withoutMoving(standing, { tones: background.moving, rateHz, startS: (touch - roomEnd) / rateHz });
  return { ...common, samples: all, background };
}

/** Where a take begins inside a ring, the room is what is left when it has died: from this time on, this much of it. */
const DEAD_AFTER_S = 0.5;
const ROOM_AFTER_S = 0.45;

/** Sound that must be known before a ring at the very start of a take can be cut out. */
export const START_HEARD_S = DEAD_AFTER_S + ROOM_AFTER_S;

/** The take's start as a pluck whose touch was missed: nothing of the room before it is known, so it is learnt from what follows. */
export function cutStart(
  samples: Float64Array,
  options: { readonly next?: number | undefined; readonly rateHz: number },
): PluckSegment | undefined {
  const { rateHz, next } = options;
  const count = (seconds: number) => Math.round(seconds * rateHz);
  const known = Math.min(next === undefined ? samples.length : next - count(CLEAR_OF_NEXT_S), count(START_HEARD_S));
  const roomStart = Math.min(count(DEAD_AFTER_S), Math.floor(0.7 * known));
  if (known - roomStart < count(RING_AT_LEAST_S)) return undefined;
  const background = backgroundOf(withoutOffset(samples.slice(roomStart, known)), rateHz);
  const heard = samples.slice(0, Math.min(known, count(LONGEST_S)));
  const ring = withoutLines(withoutOffset(heard.slice()), { lines: background.lines, rateHz, startIndex: -roomStart });
  return { samples: ring, heard, rateHz, startS: 0, background, touchMissed: true };
}

/** In place: the samples less their mean, which is the converter's and no sound. */
function withoutOffset(samples: Float64Array): Float64Array {
  const mean = samples.reduce((sum, x) => sum + x, 0) / samples.length;
  for (let t = 0; t < samples.length; t++) samples[t]! -= mean;
  return samples;
}

/** A stretch of a segment with its transform's bins and the noise to expect at each of them. */
export interface Stretch {
  readonly samples: Float64Array;
  readonly grid: BinGrid;
  /** Power per sample, Float64Array [grid.binCount]: room, what remains of its lines, and a floor below which no model is exact. */
  readonly noise: Float64Array;
  /** Uint8Array [grid.binCount]: 1 near a steady tone of the room, 2 on the path of a moving one. */
  readonly room: Uint8Array;
}

/**
 * @param options.fromS           start of the stretch after the touch
 * @param options.modelFloor      share of the stretch's mean power that the model cannot explain anyway
 */
export function stretchOf(segment: PluckSegment, options: { readonly fromS: number; readonly modelFloor: number }): Stretch {
  const { rateHz, background } = segment;
  const samples = segment.samples.subarray(Math.min(Math.round(options.fromS * rateHz), segment.samples.length));
  const grid = gridFor(rateHz, samples.length);
  const floor = (options.modelFloor * samples.reduce((sum, x) => sum + x * x, 0)) / Math.max(1, samples.length);
  const noise = Float64Array.from({ length: grid.binCount }, (_, k) => background.noiseAt(k * grid.binWidthHz) + floor);
  const lengthS = samples.length / rateHz;
  const room = new Uint8Array(grid.binCount);
  for (const line of background.lines) {
    const wanderHz = Math.max(LINE_WANDERS.leastHz, LINE_WANDERS.share * line.frequencyHz);
    mark(room, STANDS, { grid, lowHz: line.frequencyHz - wanderHz, highHz: line.frequencyHz + wanderHz });
    const remaining = (background.lineRemains * (line.re ** 2 + line.im ** 2) * samples.length) / 4;
    for (let k = 0; k < grid.binCount; k++) {
      const offBins = Math.abs(k * grid.binWidthHz - line.frequencyHz) * lengthS;
      noise[k]! += offBins < 1.3 ? remaining : remaining / (2 * (Math.PI * offBins) ** 2);
    }
  }
  for (const tone of background.moving) addPath({ noise, room }, tone, { grid, fromS: options.fromS, lengthS });
  return { samples, grid, noise, room };
}

export const STANDS = 1;
export const MOVES = 2;
/** A tone of a fan is not where it was. */
const LINE_WANDERS = { leastHz: 2.5, share: 0.01 };

function mark(room: Uint8Array, as: number, at: { readonly grid: BinGrid; readonly lowHz: number; readonly highHz: number }): void {
  const { grid } = at;
  for (let k = Math.max(0, Math.ceil(at.lowHz / grid.binWidthHz)); k <= at.highHz / grid.binWidthHz && k < room.length; k++) room[k] = as;
}

/**
 * The noise along the path that a gliding tone will take, and a margin for a bend in the path. Over the whole stretch its power is spread
 * over what it sweeps; a short window, as the search for damped sinusoids uses, holds less of the sweep and more of it in each bin.
 */
function addPath(
  { noise, room }: Pick<Stretch, 'noise' | 'room'>,
  tone: MovingTone,
  at: { readonly grid: BinGrid; readonly fromS: number; readonly lengthS: number },
): void {
  const { grid, lengthS } = at;
  const slope = tone.slopeHzPerS;
  const startHz = tone.frequencyHz + slope * at.fromS;
  const sweepHz = slope * lengthS;
  const marginHz = PATH_MARGIN * Math.abs(sweepHz) + 1.3 / lengthS;
  const lowHz = Math.min(startHz, startHz + sweepHz) - marginHz;
  const highHz = Math.max(startHz, startHz + sweepHz) + marginHz;
  mark(room, MOVES, { grid, lowHz, highHz });
  const whole = ((tone.re ** 2 + tone.im ** 2) * grid.length) / 4;
  const swept = whole / Math.max(1, Math.abs(sweepHz) * lengthS);
  for (let k = 0; k < grid.binCount; k++) {
    const hz = k * grid.binWidthHz;
    if (hz >= lowHz && hz <= highHz) {
      const reachedS = Math.min(lengthS, Math.max(0, (hz - startHz) / slope));
      noise[k]! += swept * Math.max(1, lengthS / Math.max(Math.E * reachedS, SHORTEST_WINDOW_S / 2));
    } else {
      const offBins = (hz < lowHz ? lowHz - hz : hz - highHz) * lengthS + 1;
      noise[k]! += Math.min(swept, whole / (2 * (Math.PI * offBins) ** 2)); // its beginning and its end are sudden
    }
  }
}

const grids = new Map<string, BinGrid>();
const MOST_GRIDS = 16;

/** Grids are kept: their tables cost as much as a transform, and plucks of one take share them. */
function gridFor(rateHz: number, length: number): BinGrid {
  const key = `${rateHz} ${length}`;
  let grid = grids.get(key);
  if (!grid) {
    if (grids.size >= MOST_GRIDS) grids.clear();
    grid = binGrid({ rateHz, length, size: powerOfTwoFrom(length), highestHz: Math.min(HIGHEST_HZ, 0.42 * rateHz) });
    grids.set(key, grid);
  }
  return grid;
}
