/**
 * General ways to a pitch, for comparison: three libraries by five methods, and two plain baselines. All get the friendliest fair treatment:
 * what is above the range of spans filtered away, level normalised, the place of the onset told, the answer taken as the median over
 * several frames, and each method's own best frame.
 */

import aubio from 'aubiojs';
import * as pitchfinder from 'pitchfinder';
import { PitchDetector } from 'pitchy';
import { hannSpectrum } from '../support/corpus/fourier.ts';

/** Frame to hertz; undefined where the method gives none. */
export type FrameMethod = (frame: Float32Array) => number | undefined;

export interface Peer {
  readonly name: string;
  /** Lengths to choose from. */
  readonly framesS: readonly number[];
  /** Made once for each rate and frame length. */
  create(sampleRateHz: number, frameLength: number): FrameMethod;
}

/** Bounds that every method's answers are held to; the corpus lies well inside. */
const LOWEST_HZ = 18;
const HIGHEST_HZ = 1000;
/** From the onset on: the first moments are the finger's. */
const FIRST_FRAME_S = 0.012;
const FRAME_STEP_S = 0.04;
const FRAME_COUNT = 4;

const FRAMES_S = [0.045, 0.09, 0.18] as const;

const { Pitch } = await aubio();

export const PEERS: readonly Peer[] = [
  {
    name: 'pitchy (McLeod)',
    framesS: FRAMES_S,
    create: (sampleRateHz, frameLength) => {
      const detector = PitchDetector.forFloat32Array(frameLength);
      return (frame) => {
        const [hertz, clarity] = detector.findPitch(frame, sampleRateHz);
        return clarity > 0.5 ? hertz : undefined;
      };
    },
  },
  {
    name: 'pitchfinder YIN',
    framesS: FRAMES_S,
    create: (sampleRate) => {
      const detect = pitchfinder.YIN({ sampleRate, threshold: 0.15, probabilityThreshold: 0.1 });
      return (frame) => detect(frame) ?? undefined;
    },
  },
  {
    name: 'pitchfinder ACF2+',
    framesS: FRAMES_S,
    create: (sampleRate) => {
      const detect = pitchfinder.ACF2PLUS({ sampleRate });
      return (frame) => detect(frame) ?? undefined;
    },
  },
  {
    name: 'pitchfinder dynamic wavelet',
    framesS: FRAMES_S,
    create: (sampleRate) => {
      const detect = pitchfinder.DynamicWavelet({ sampleRate });
      return (frame) => detect(frame) ?? undefined;
    },
  },
  {
    name: 'aubiojs YIN-FFT',
    framesS: FRAMES_S,
    create: (sampleRateHz, frameLength) => {
      const size = 2 ** Math.round(Math.log2(frameLength)); // its transform needs a power of two
      const pitch = new Pitch('yinfft', size, size, sampleRateHz);
      const padded = new Float32Array(size);
      return (frame) => {
        padded.fill(0);
        padded.set(frame.subarray(0, size));
        return pitch.do(padded) || undefined;
      };
    },
  },
  { name: 'highest peak', framesS: [0.1, 0.2, 0.4], create: (sampleRateHz) => (frame) => highestPeakHz(frame, sampleRateHz) },
  { name: 'harmonic product', framesS: [0.1, 0.2, 0.4], create: (sampleRateHz) => (frame) => harmonicProductHz(frame, sampleRateHz) },
];

/** Bins no wider than a third of a hertz. */
const paddedSize = (sampleRateHz: number): number => 2 ** Math.ceil(Math.log2(3 * sampleRateHz));

function highestPeakHz(frame: Float32Array, sampleRateHz: number): number | undefined {
  const size = paddedSize(sampleRateHz);
  return peakHz(hannSpectrum(frame, size), size, sampleRateHz);
}

const PRODUCT_OF = 4;

/** Product of the spectrum with itself compressed 2, 3 and 4 times. */
function harmonicProductHz(frame: Float32Array, sampleRateHz: number): number | undefined {
  const size = paddedSize(sampleRateHz);
  const spectrum = hannSpectrum(frame, size);
  const product = Float64Array.from({ length: Math.ceil((HIGHEST_HZ * size) / sampleRateHz) + 2 }, (_, bin) => {
    let value = 1;
    for (let harmonic = 1; harmonic <= PRODUCT_OF; harmonic++) value *= spectrum[harmonic * bin] ?? 0;
    return value;
  });
  return peakHz(product, size, sampleRateHz);
}

function peakHz(spectrum: Float64Array, size: number, sampleRateHz: number): number | undefined {
  const last = Math.min(spectrum.length - 2, Math.floor((HIGHEST_HZ * size) / sampleRateHz));
  let best = Math.ceil((LOWEST_HZ * size) / sampleRateHz);
  for (let bin = best; bin <= last; bin++) if (spectrum[bin]! > spectrum[best]!) best = bin;
  if (!(spectrum[best]! > 0)) return undefined;
  const [left, middle, right] = [spectrum[best - 1]!, spectrum[best]!, spectrum[best + 1]!].map((value) => Math.log(value + 1e-30)) as [
    number,
    number,
    number,
  ];
  const bend = left - 2 * middle + right;
  const offset = bend < 0 ? (0.5 * (left - right)) / bend : 0;
  return ((best + Math.max(-0.5, Math.min(0.5, offset))) * sampleRateHz) / size;
}

const methods = new Map<string, FrameMethod>();

/** Rates are brought down to about this: noise above it only hurts, and methods that compare every lag take a ninth of the time. */
const RATE_HZ = 16_000;
const REACH = 12;

/** Low-passed by a windowed sinc and taken every n-th sample; what is slow enough stays as it is. */
export function broughtDown(sound: { readonly samples: Float32Array; readonly sampleRateHz: number }): {
  samples: Float32Array;
  sampleRateHz: number;
} {
  const every = Math.max(1, Math.round(sound.sampleRateHz / RATE_HZ));
  if (every === 1) return sound;
  const half = REACH * every;
  const taps = Float64Array.from({ length: 2 * half + 1 }, (_, index) => {
    const x = (0.85 * (index - half)) / every;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    return (sinc * (0.5 + 0.5 * Math.cos((Math.PI * (index - half)) / (half + 1))) * 0.85) / every;
  });
  const samples = new Float32Array(Math.floor(sound.samples.length / every));
  for (let index = 0; index < samples.length; index++) {
    let sum = 0;
    for (let tap = 0; tap < taps.length; tap++) sum += taps[tap]! * (sound.samples[index * every + tap - half] ?? 0);
    samples[index] = sum;
  }
  return { samples, sampleRateHz: sound.sampleRateHz / every };
}

/** One method's answer to a take: the median over frames that begin soon after the onset. */
export function peerAnswer(
  peer: Peer,
  take: { readonly samples: Float32Array; readonly sampleRateHz: number; readonly onsetS: number; readonly frameS: number },
): number | undefined {
  const { samples, sampleRateHz, onsetS, frameS } = take;
  const frameLength = Math.round(frameS * sampleRateHz);
  const key = `${peer.name}/${sampleRateHz}/${frameLength}`;
  const method = methods.get(key) ?? peer.create(sampleRateHz, frameLength);
  methods.set(key, method);
  const found: number[] = [];
  for (let count = 0; count < FRAME_COUNT; count++) {
    const from = Math.max(0, Math.round((onsetS + FIRST_FRAME_S + count * FRAME_STEP_S) * sampleRateHz));
    if (from + frameLength > samples.length) break;
    const hertz = method(normalised(samples.subarray(from, from + frameLength)));
    if (hertz !== undefined && hertz >= LOWEST_HZ && hertz <= HIGHEST_HZ) found.push(hertz);
  }
  // As many frames as not must have an answer; of an even number the later of the middle two.
  if (found.length < 2) return undefined;
  found.sort((a, b) => a - b);
  return found[Math.floor(found.length / 2)];
}

function normalised(frame: Float32Array): Float32Array {
  let loudest = 0;
  for (const value of frame) loudest = Math.max(loudest, Math.abs(value));
  return loudest === 0 ? frame : frame.map((value) => (0.9 * value) / loudest);
}

/** Where something loud begins, for sounds of which nobody says where: the steepest rise of the level. */
export function loudestOnsetS({ samples, sampleRateHz }: { readonly samples: Float32Array; readonly sampleRateHz: number }): number {
  const step = Math.round(0.01 * sampleRateHz);
  const levels: number[] = [];
  for (let from = 0; from + step <= samples.length; from += step) {
    let sum = 1e-12;
    for (let index = from; index < from + step; index++) sum += samples[index]! ** 2;
    levels.push(sum);
  }
  const latest = levels.length - Math.round(0.35 / 0.01);
  let best = 0;
  for (let index = 2; index < latest; index++) {
    if (levels[index]! - levels[index - 2]! > levels[best]! - (levels[best - 2] ?? 0)) best = index;
  }
  return best * 0.01;
}
