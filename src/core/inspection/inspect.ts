/** What one pluck was read from, laid open: its sound over time and frequency, each partial as heard beside its fit, and what the fit leaves. */

import type { PluckSound } from '../outcome.ts';
import { createDecimator } from '../samples/decimate.ts';
import { levelDbfs } from '../spectrum/spectrum.ts';
import { cosineWindow } from '../spectrum/window.ts';
import { explained } from './explained.ts';
import { type Ringing, ringingPartials } from './ringing.ts';
import { type Spectrogram, spectrogramOf } from './spectrogram.ts';

export interface Inspection {
  readonly spectrogram: Spectrogram;
  /** End of the sound, s from the touch. */
  readonly untilS: number;
  /** Level of the whole sound over time. */
  readonly whole: Trace;
  /** Missing where the sound was no pluck of a span. */
  readonly fit?: InspectedFit | undefined;
}

/** Levels at times after the touch, dB relative to full scale. */
export type Trace = readonly { readonly atS: number; readonly levelDbfs: number }[];

export interface InspectedFit {
  readonly fromS: number;
  readonly toS: number;
  readonly partials: readonly InspectedPartial[];
  /** Level of what is left when all partials and steady tones are taken away, over the stretch of the fit. */
  readonly residual: Trace;
  /** Share of the stretch's power that the partials and steady tones make up, 0 to 1. */
  readonly explainedShare: number;
}

export interface InspectedPartial {
  readonly number: number;
  readonly frequencyHz: number;
  readonly decayS: number;
  /** Of the fit, at the touch. */
  readonly atTouchDbfs: number;
  /** As the sound has it: the level in a band of its own. */
  readonly heard: Trace;
}

/** A clip of sound with what was made of it. */
export interface InspectedSound {
  /** Float32Array [n], full scale = 1; not modified. */
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  /** When the ring began, from the first sample. */
  readonly touchS: number;
  /** Missing where it was no pluck. */
  readonly sound?: PluckSound | undefined;
  /** Tones of the room that were left out, Hz. */
  readonly steadyHz: readonly number[];
}

/** The picture ends above the highest partial, between these. */
const HIGHEST_HZ = { least: 600, most: 3000, overPartials: 1.15 } as const;
const TRACE_STEP_S = 0.012;
const WHOLE_S = 0.024;
/** A partial's band is as long as it takes to part it from its neighbours, two periods of the first partial and a little, between these. */
const BAND_S = { least: 0.024, most: 0.12, periods: 2.2 } as const;
/** Of a fit without a word on it: behind the finger's noise, and as long as the longest that is looked at. */
const USUAL_WINDOW = { fromS: 0.012, toS: 0.63 } as const;

export function inspected(given: InspectedSound): Inspection {
  const { sound, touchS, steadyHz } = given;
  const decimator = createDecimator(given.sampleRateHz);
  const samples = joined(decimator.push(given.samples), decimator.finish());
  const { rateHz } = decimator;
  const heard = { samples, rateHz, touchS };
  const highest = Math.max(0, ...(sound?.partials.map(({ frequencyHz }) => frequencyHz.value) ?? [HIGHEST_HZ.most]));
  const highestHz = Math.min(HIGHEST_HZ.most, Math.max(HIGHEST_HZ.least, HIGHEST_HZ.overPartials * highest));
  const untilS = samples.length / rateHz - touchS;
  return {
    spectrogram: spectrogramOf(heard, highestHz),
    untilS,
    whole: powerTrace(heard, WHOLE_S),
    ...(sound ? { fit: fitOf(heard, sound, { untilS, steadyHz }) } : {}),
  };
}

interface Heard {
  readonly samples: Float64Array;
  readonly rateHz: number;
  readonly touchS: number;
}

function fitOf(heard: Heard, sound: PluckSound, at: { readonly untilS: number; readonly steadyHz: readonly number[] }): InspectedFit {
  const { rateHz, touchS } = heard;
  const window = sound.window ?? USUAL_WINDOW;
  const [fromS, toS] = [window.fromS, Math.min(window.toS, at.untilS)];
  const from = Math.round((touchS + fromS) * rateHz);
  const samples = withoutMean(heard.samples.slice(from, Math.round((touchS + toS) * rateHz)));
  const ringing = ringingPartials(sound);
  const stretchS = from / rateHz - touchS;
  const { residual, amplitudes, share } = explained({ samples, rateHz, fromS: stretchS, steadyHz: at.steadyHz }, ringing);
  const bandS = Math.min(BAND_S.most, Math.max(BAND_S.least, BAND_S.periods / sound.frequencyHz.value));
  return {
    fromS,
    toS,
    explainedShare: share,
    residual: powerTrace({ samples: residual, rateHz, touchS: -stretchS }, WHOLE_S),
    partials: sound.partials.map(({ number, frequencyHz, decayS }, i) => ({
      number,
      frequencyHz: frequencyHz.value,
      decayS,
      atTouchDbfs: levelDbfs(amplitudes[i]!),
      heard: bandTrace(heard, ringing[i]!, bandS),
    })),
  };
}

/** Level of the sound in frames, as that of a sine of the same power. */
function powerTrace({ samples, rateHz, touchS }: Heard, frameS: number): Trace {
  const length = Math.round(frameS * rateHz);
  const step = Math.round(TRACE_STEP_S * rateHz);
  const count = Math.max(0, Math.floor((samples.length - length) / step) + 1);
  return Array.from({ length: count }, (_, i) => {
    const frame = withoutMean(samples.slice(i * step, i * step + length));
    const power = frame.reduce((sum, x) => sum + x * x, 0) / length;
    return { atS: (i * step + length / 2) / rateHz - touchS, levelDbfs: levelDbfs(Math.sqrt(2 * power)) };
  });
}

/** Level of one partial over time: the sound turned back by the partial's own angle, and what then stands still. */
function bandTrace({ samples, rateHz, touchS }: Heard, { angleAt }: Ringing, bandS: number): Trace {
  const length = Math.round(bandS * rateHz);
  const step = Math.round(TRACE_STEP_S * rateHz);
  const weights = cosineWindow('hann', length);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const trace: { atS: number; levelDbfs: number }[] = [];
  for (let start = Math.max(0, Math.round(touchS * rateHz)); start + length <= samples.length; start += step) {
    let re = 0;
    let im = 0;
    for (let t = 0; t < length; t++) {
      const angle = angleAt((start + t) / rateHz - touchS);
      re += weights[t]! * samples[start + t]! * Math.cos(angle);
      im += weights[t]! * samples[start + t]! * Math.sin(angle);
    }
    trace.push({ atS: (start + length / 2) / rateHz - touchS, levelDbfs: levelDbfs((2 * Math.hypot(re, im)) / total) });
  }
  return trace;
}

/** In place. */
function withoutMean(samples: Float64Array): Float64Array {
  const mean = samples.reduce((sum, x) => sum + x, 0) / Math.max(1, samples.length);
  for (let t = 0; t < samples.length; t++) samples[t]! -= mean;
  return samples;
}

function joined(one: Float64Array, other: Float64Array): Float64Array {
  const all = new Float64Array(one.length + other.length);
  all.set(one);
  all.set(other, one.length);
  return all;
}
