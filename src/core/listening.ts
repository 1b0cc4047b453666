/** A take as it comes in, block by block; offline a recording is one block. Gives what it heard, in order. */

import { plotSpectrum } from './frequency/plot-spectrum.ts';
import { soundOfPluck } from './frequency/pluck-sound.ts';
import { searchBounds } from './frequency/search-bounds.ts';
import type { Likeness, Unlike } from './frequency/span-likeness.ts';
import type { NothingWhy, PlotSpectrum, PluckSound } from './outcome.ts';
import { createOnsetFinder } from './pluck/onset.ts';
import { cutSegment, cutStart, HEARD_OUT_S, type PluckSegment, START_HEARD_S } from './pluck/segment.ts';
import { touchIndex } from './pluck/touch.ts';
import { createDecimator } from './samples/decimate.ts';
import { createRailCounter } from './samples/rails.ts';
import type { SpanSetup } from './setup.ts';
import { levelDbfs } from './spectrum/spectrum.ts';

export type ListeningEvent =
  /** The room has been heard long enough; from now on a pluck can be told from it. */
  | { readonly kind: 'ready'; readonly atS: number }
  /** Something began to sound; what it was follows when it has been heard out. */
  | { readonly kind: 'onset'; readonly atS: number }
  | { readonly kind: 'pluck'; readonly sound: PluckSound; readonly spectrum: PlotSpectrum; readonly likeness: Likeness }
  | {
      readonly kind: 'no-pluck';
      readonly atS: number;
      readonly why: NothingWhy;
      /** How loud it began, root mean square as the level of a sine; where nothing was there is none. */
      readonly levelDbfs?: number | undefined;
      /** What spoke against a plucked span, with the figures. */
      readonly unlike?: Unlike | undefined;
      readonly likeness?: Likeness | undefined;
    };

export interface Listening {
  /** Takes the next samples, any number of them: Float32Array [n], full scale = 1, copied. */
  push(samples: Float32Array): readonly ListeningEvent[];
  /** Says that no more will come; gives what was still waiting. */
  finish(): readonly ListeningEvent[];
}

export interface ListeningOptions {
  readonly sampleRateHz: number;
  /** Bounds the search. */
  readonly setup: SpanSetup;
}

/** Room to hear before a pluck can be told from it. */
const READY_S = 0.7;
/** Kept of the past: the longest segment with the room before it, and what onsets still wait for. */
const KEPT_S = 3;
/** A ring at the start of a take: an onset within the first of these times is that ring's own, and the power over the second falls so much. */
const ONSET_OF_ITS_OWN_S = 0.1;
const START_LOOK_S = 0.05;
/** An onset later than this has room before it. */
const LED_IN_BY_S = 0.15;
const START_FALLS_BY = 8;
/** Below this much sound nothing can be said. */
const SHORTEST_S = 0.15;
/** Root mean square below which a take is silent: less than a tenth of the last bit of 16. */
const SILENT_RMS = 3e-6;
const LEVEL_OVER_S = 0.05;

/** Plucks are decided on fixed counts of decimated samples, so that they do not depend on the size of the blocks; `ready` is told with the block it falls in. */
export function createListening({ sampleRateHz, setup }: ListeningOptions): Listening {
  const decimator = createDecimator(sampleRateHz);
  const { rateHz } = decimator;
  const onsetFinder = createOnsetFinder(rateHz);
  const rails = createRailCounter(decimator.factor);
  const bounds = searchBounds(setup);
  const heardOut = Math.round(HEARD_OUT_S * rateHz) + onsetFinder.latency;
  let kept = new Float64Array(0);
  let origin = 0; // index of kept[0] in the take
  let before: { touch: number; segment: PluckSegment } | undefined;
  let waiting: number[] = []; // onsets not yet heard out
  let isReady = false;
  let isStartHeard = false;
  let anyOnset = false;
  let energy = 0;

  const known = () => origin + kept.length;

  function append(samples: Float64Array) {
    const surplus = Math.max(0, Math.min(kept.length, (waiting[0] ?? known()) - Math.round(KEPT_S * rateHz) - origin));
    const longer = new Float64Array(kept.length - surplus + samples.length);
    longer.set(kept.subarray(surplus));
    longer.set(samples, kept.length - surplus);
    kept = longer;
    origin += surplus;
    for (const x of samples) energy += x * x;
  }

  function analyse(onset: number, next: number | undefined): ListeningEvent {
    const touch = touchIndex(kept, { onset: onset - origin, rateHz });
    const segment = cutSegment(kept, {
      touch,
      next: next === undefined ? undefined : next - origin,
      before: before && { touch: before.touch - origin, segment: before.segment },
      rateHz,
      originS: origin / rateHz,
    });
    if (!segment) {
      // too little room before it: the take began as the span did, so the room is learnt from what follows
      const start = onset < LED_IN_BY_S * rateHz && origin === 0 ? cutStart(kept, { next, rateHz }) : undefined;
      return start ? told(start, 0) : { kind: 'no-pluck', atS: onset / rateHz, why: 'too-short' };
    }
    before = { touch: origin + touch, segment };
    return told(segment, origin + touch);
  }

  function told(segment: PluckSegment, touch: number): ListeningEvent {
    const clippedShare = rails.share(touch, touch + segment.samples.length);
    const answer = soundOfPluck(segment, { bounds, clippedShare, bandwidthHz: sampleRateHz / 2 });
    if ('why' in answer) return { kind: 'no-pluck', atS: segment.startS, levelDbfs: levelOf(segment), ...answer };
    return { kind: 'pluck', ...answer, spectrum: plotSpectrum(segment) };
  }

  /** A take that begins inside a ring has no onset there; what falls by this much from its first moment on is looked at all the same. */
  function startHeard(): ListeningEvent[] {
    const first = waiting[0];
    if (before) return [];
    if (first !== undefined && first < ONSET_OF_ITS_OWN_S * rateHz) return [];
    const power = (fromS: number, toS: number) => {
      const part = kept.subarray(Math.round(fromS * rateHz), Math.round(toS * rateHz));
      return part.reduce((sum, x) => sum + x * x, 0) / Math.max(1, part.length);
    };
    const endS = Math.min(kept.length, first ?? kept.length) / rateHz;
    const fall = power(0, START_LOOK_S) / (power(endS - START_LOOK_S, endS) + 1e-12);
    if (endS < 4 * START_LOOK_S || fall < START_FALLS_BY) return [];
    const segment = cutStart(kept, { next: first, rateHz });
    if (!segment) return [];
    const event = told(segment, 0);
    if (event.kind !== 'pluck') return [];
    anyOnset = true;
    before = { touch: 0, segment };
    return [event];
  }

  function heard(onsets: readonly number[], ended: boolean): ListeningEvent[] {
    const events: ListeningEvent[] = [];
    for (const onset of onsets) {
      events.push({ kind: 'onset', atS: onset / rateHz });
      waiting.push(onset);
      anyOnset = true;
    }
    if (!isStartHeard && (ended || known() >= START_HEARD_S * rateHz + onsetFinder.latency)) {
      isStartHeard = true;
      events.push(...startHeard());
    }
    while (waiting.length > 0 && (ended || known() >= waiting[0]! + heardOut)) {
      const [onset, ...others] = waiting as [number, ...number[]];
      waiting = others;
      events.push(analyse(onset, others[0]));
    }
    return events;
  }

  function pushStep(samples: Float32Array): ListeningEvent[] {
    rails.push(samples);
    const decimated = decimator.push(samples);
    append(decimated);
    const events = heard(onsetFinder.push(decimated), false);
    if (!isReady && known() >= READY_S * rateHz) {
      isReady = true;
      events.unshift({ kind: 'ready', atS: known() / rateHz });
    }
    return events;
  }

  return {
    push(samples) {
      const events: ListeningEvent[] = [];
      for (let from = 0; from < samples.length; from += LARGEST_BLOCK)
        events.push(...pushStep(samples.subarray(from, from + LARGEST_BLOCK)));
      return events;
    },
    finish() {
      const last = decimator.finish();
      append(last);
      const events = heard([...onsetFinder.push(last), ...onsetFinder.finish()], true);
      if (!anyOnset) events.push({ kind: 'no-pluck', atS: 0, why: whyNothing() });
      return events;
    },
  };

  function whyNothing(): NothingWhy {
    if (known() < SHORTEST_S * rateHz) return 'too-short';
    return Math.sqrt(energy / known()) < SILENT_RMS ? 'silence' : 'no-onset';
  }
}

/** Of the first moments after the touch. */
function levelOf({ heard, rateHz }: PluckSegment): number {
  const part = heard.subarray(0, Math.round(LEVEL_OVER_S * rateHz));
  return levelDbfs(Math.sqrt((2 * part.reduce((sum, x) => sum + x * x, 0)) / Math.max(1, part.length)));
}

/** Longer blocks are taken apart, so that memory stays bounded whatever is pushed at once. */
const LARGEST_BLOCK = 65_536;
