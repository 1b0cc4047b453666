/** What stands between the microphone and the samples: rails, gain control, noise suppression, few bits, a narrow line. */

import { filtered, secondOrderHighPass } from '../../../src/core/synthesis/filter.ts';
import { amplitudeOf } from '../../../src/core/synthesis/level.ts';
import { fourier } from './fourier.ts';

export type Alteration =
  /** Rails: what is louder is cut off; the softer kind bends before. */
  | { readonly kind: 'gain'; readonly gainDb: number; readonly soft: boolean }
  /** Gain that falls within the attack when it is loud and comes back slowly. */
  | {
      readonly kind: 'gain control';
      readonly aimDbfs: number;
      readonly mostGainDb: number;
      readonly attackS: number;
      readonly releaseS: number;
    }
  /** Spectral subtraction in short frames with a slowly learnt background: it eats what holds still, rings included. */
  | { readonly kind: 'noise suppression'; readonly deepestDb: number; readonly learnS: number }
  | { readonly kind: 'few bits'; readonly bits: number }
  /** A band that begins at a corner, companded to 8 bits, then brought to a higher rate. */
  | { readonly kind: 'narrow line'; readonly cornerHz: number; readonly times: number };

export interface Sound {
  readonly samples: Float64Array;
  readonly sampleRateHz: number;
}

export function altered(sound: Sound, alteration: Alteration): Sound {
  const { samples, sampleRateHz } = sound;
  switch (alteration.kind) {
    case 'gain': {
      const gain = amplitudeOf(alteration.gainDb);
      return {
        ...sound,
        samples: samples.map((value) => (alteration.soft ? Math.tanh(gain * value) : Math.max(-1, Math.min(1, gain * value)))),
      };
    }
    case 'gain control':
      return { ...sound, samples: gainControlled(sound, alteration) };
    case 'noise suppression':
      return { ...sound, samples: suppressed(sound, alteration) };
    case 'few bits': {
      const steps = 2 ** (alteration.bits - 1);
      return { ...sound, samples: samples.map((value) => Math.max(-1, Math.min(1, Math.round(value * steps) / steps))) };
    }
    case 'narrow line': {
      const band = filtered(samples, secondOrderHighPass(alteration.cornerHz, sampleRateHz));
      return { samples: upsampled(band.map(companded), alteration.times), sampleRateHz: sampleRateHz * alteration.times };
    }
  }
}

function gainControlled({ samples, sampleRateHz }: Sound, at: Extract<Alteration, { kind: 'gain control' }>): Float64Array {
  const out = new Float64Array(samples.length);
  const [up, down] = [Math.exp(-1 / (at.attackS * sampleRateHz)), Math.exp(-1 / (at.releaseS * sampleRateHz))];
  const [aim, most] = [amplitudeOf(at.aimDbfs), amplitudeOf(at.mostGainDb)];
  let level = aim / most;
  for (let index = 0; index < samples.length; index++) {
    const now = Math.abs(samples[index]!);
    level = now > level ? up * level + (1 - up) * now : down * level + (1 - down) * now;
    out[index] = samples[index]! * Math.min(most, aim / Math.max(level, 1e-9));
  }
  return out;
}

const FRAME_S = 0.02;

function suppressed({ samples, sampleRateHz }: Sound, at: Extract<Alteration, { kind: 'noise suppression' }>): Float64Array {
  const size = 2 ** Math.round(Math.log2(FRAME_S * sampleRateHz));
  const hop = size / 2;
  const window = Float64Array.from({ length: size }, (_, index) => Math.sin((Math.PI * (index + 0.5)) / size));
  const background = new Float64Array(size);
  const gains = new Float64Array(size).fill(1);
  const floor = amplitudeOf(-at.deepestDb);
  const keep = Math.exp(-hop / (at.learnS * sampleRateHz));
  const out = new Float64Array(samples.length);
  for (let from = 0, frame = 0; from + size <= samples.length; from += hop, frame++) {
    const re = window.map((weight, index) => weight * samples[from + index]!);
    const im = new Float64Array(size);
    fourier(re, im);
    for (let bin = 0; bin < size; bin++) {
      const power = re[bin]! ** 2 + im[bin]! ** 2;
      const known = background[bin]!;
      // Falls are learnt at once, rises slowly, as of a minimum follower.
      background[bin] =
        frame === 0 || power < known ? (frame === 0 ? power : 0.7 * known + 0.3 * power) : keep * known + (1 - keep) * power;
      const wanted = Math.max(floor, 1 - (2 * background[bin]!) / (power + 1e-30));
      gains[bin] = 0.5 * gains[bin]! + 0.5 * wanted;
      re[bin]! *= gains[bin]!;
      im[bin]! *= gains[bin]!;
    }
    fourier(re, im, true);
    for (let index = 0; index < size; index++) out[from + index]! += window[index]! * re[index]!;
  }
  return out;
}

const COMPANDING = 255;

/** Logarithmic companding to 8 bits and back. */
function companded(value: number): number {
  const held = Math.max(-1, Math.min(1, value));
  const code = Math.round(127 * Math.sign(held) * (Math.log1p(COMPANDING * Math.abs(held)) / Math.log1p(COMPANDING)));
  return (Math.sign(code) * Math.expm1((Math.abs(code) / 127) * Math.log1p(COMPANDING))) / COMPANDING;
}

const REACH = 16;

/** Raised to a multiple of the rate by a windowed sinc. */
function upsampled(samples: Float64Array, times: number): Float64Array {
  const kernel = Float64Array.from({ length: 2 * REACH * times + 1 }, (_, index) => {
    const x = (index - REACH * times) / times;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    return sinc * (0.5 + 0.5 * Math.cos((Math.PI * x) / REACH));
  });
  const out = new Float64Array(samples.length * times);
  for (let index = 0; index < out.length; index++) {
    const middle = Math.floor(index / times);
    let sum = 0;
    for (let from = Math.max(0, middle - REACH); from <= Math.min(samples.length - 1, middle + REACH); from++) {
      const tap = index - from * times + REACH * times;
      if (tap >= 0 && tap < kernel.length) sum += samples[from]! * kernel[tap]!;
    }
    out[index] = sum;
  }
  return out;
}
