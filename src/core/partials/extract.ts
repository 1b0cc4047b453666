/** Damped sinusoids in one stretch of ring, strongest evidence first: each is found, refined, taken away, and the next looked for. */

import { fftPlan } from '../math/fft.ts';
import { MOVES, STANDS, type Stretch } from '../pluck/segment.ts';
import {
  addSpectrumOf,
  amplitude,
  type DampedSinusoid,
  decayEnergySamples,
  halfWidthHz,
  qualityFactor,
} from '../spectrum/damped-sinusoid.ts';
import { decayWindow, energy } from '../spectrum/window.ts';
import { binsAround, fitSinusoids } from './fit.ts';

/** A damped sinusoid that was heard, with what it is worth as evidence. */
export interface HeardSinusoid extends DampedSinusoid {
  readonly frequencyU: number;
  /** Energy over the noise in its own band, a² Σexp(−2st) / (4 N); 1 is nothing. */
  readonly overNoise: number;
  /** Weight as evidence, 0 to 1: strong, clear of the noise, exactly placed. */
  readonly weight: number;
  /** It may well be a tone of the room: it moves with one that glides, or stands where one stood and does not die. */
  readonly isOfRoom: boolean;
}

/** Decay times of the matched filters. The short one joins when the strong narrow partials are gone, or it would swallow several at once. */
const FIRST_FILTERS_S = [0.05, 0.2];
const ALL_FILTERS_S = [0.015, 0.05, 0.2];
const FIRST_PASS_TO = 1e-3;
const MOST = 12;
const MOST_TRIALS = 30;
/** Log-likelihood ratio that counts as heard: noise alone exceeds it in one bin of nine million. */
const LEAST_OVER_NOISE = 16;
const LOWEST_HZ = 15;
/** What falls faster is a knock, not a partial. */
const SHORTEST_DECAY_S = 0.008;
const LEAST_Q = 3.5;
/** What rings longer where a tone stood before is that tone. */
const HELD_S = 0.4;

export function extractSinusoids(stretch: Stretch): HeardSinusoid[] {
  const { samples, grid, noise } = stretch;
  if (samples.length === 0) return [];
  const plan = fftPlan(grid.size);
  const rest = plan.transform(samples);
  const filters = ALL_FILTERS_S.map((decayS) => {
    const window = decayWindow({ length: samples.length, decaySamples: decayS * grid.rateHz });
    const spectrum = plan.transform(samples.map((x, t) => x * window[t]!));
    return { decayS, spectrum, energy: energy(window), blocked: new Uint8Array(grid.binCount) };
  });
  const found: HeardSinusoid[] = [];
  let strongest = 0;
  let firstPass = true;
  for (let trial = 0; trial < MOST_TRIALS && found.length < MOST; trial++) {
    const active = filters.filter(({ decayS }) => !firstPass || FIRST_FILTERS_S.includes(decayS));
    const peak = highestPeak(active, stretch);
    if (!peak || peak.ratio < Math.max(LEAST_OVER_NOISE, firstPass ? FIRST_PASS_TO * strongest : 0)) {
      if (!firstPass) break;
      firstPass = false;
      continue;
    }
    strongest = Math.max(strongest, peak.ratio);
    const guess = { frequencyHz: peak.frequencyHz, decayPerS: 1 / peak.filter.decayS, re: 0, im: 0 };
    const withinHz = Math.max(9, 2.5 * halfWidthHz(guess));
    const bins = binsAround(grid, [{ frequencyHz: guess.frequencyHz, withinHz }]);
    const fit = fitSinusoids({ grid, spectrum: rest, noise }, [guess], bins);
    const sinusoid = fit.sinusoids[0]!;
    if (isRefused(sinusoid, found)) {
      block(peak.filter, grid.binWidthHz, peak.frequencyHz);
      continue;
    }
    addSpectrumOf(sinusoid, { grid, spectrum: rest, factor: -1 });
    for (const { decayS, spectrum } of filters) addSpectrumOf(sinusoid, { grid, spectrum, factor: -1, extraDecayPerS: 1 / decayS });
    found.push({ ...sinusoid, frequencyU: fit.frequencyU[0]!, overNoise: overNoise(sinusoid, stretch), weight: 0, isOfRoom: false });
  }
  return weighted(found, stretch);
}

interface Filter {
  readonly decayS: number;
  readonly spectrum: Float64Array;
  readonly energy: number;
  readonly blocked: Uint8Array;
}

/** Largest |X|² / (N Σw²) over filters and bins, refined between bins by a parabola through the logarithms. */
function highestPeak(filters: readonly Filter[], { grid, noise }: Stretch) {
  let best: { ratio: number; bin: number; filter: Filter } | undefined;
  const first = Math.max(1, Math.ceil(LOWEST_HZ / grid.binWidthHz));
  for (const filter of filters) {
    for (let k = first; k < grid.binCount - 1; k++) {
      if (filter.blocked[k]) continue;
      const ratio = power(filter.spectrum, k) / (noise[k]! * filter.energy);
      if (ratio > (best?.ratio ?? 0)) best = { ratio, bin: k, filter };
    }
  }
  if (!best) return undefined;
  const [a, b, c] = [-1, 0, 1].map((offset) => Math.log(power(best.filter.spectrum, best.bin + offset) + Number.MIN_VALUE)) as [
    number,
    number,
    number,
  ];
  const curvature = a - 2 * b + c;
  const shift = curvature < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (a - c)) / curvature)) : 0;
  return { ratio: best.ratio, frequencyHz: (best.bin + shift) * grid.binWidthHz, filter: best.filter };
}

const power = (spectrum: Float64Array, k: number) => spectrum[2 * k]! ** 2 + spectrum[2 * k + 1]! ** 2;

function block(filter: Filter, binWidthHz: number, frequencyHz: number) {
  const centre = Math.round(frequencyHz / binWidthHz);
  const half = Math.max(1, Math.round(0.5 / (2 * Math.PI * filter.decayS) / binWidthHz));
  for (let k = Math.max(0, centre - half); k <= centre + half && k < filter.blocked.length; k++) filter.blocked[k] = 1;
}

function isRefused(sinusoid: DampedSinusoid, found: readonly DampedSinusoid[]): boolean {
  if (!(amplitude(sinusoid) > 0) || sinusoid.frequencyHz < LOWEST_HZ) return true;
  if (1 / sinusoid.decayPerS < SHORTEST_DECAY_S || qualityFactor(sinusoid) < LEAST_Q) return true;
  return found.some((other) => Math.abs(other.frequencyHz - sinusoid.frequencyHz) < Math.max(2, 0.3 * halfWidthHz(sinusoid)));
}

export function overNoise(sinusoid: DampedSinusoid, { grid, noise }: Stretch): number {
  const bin = Math.max(1, Math.min(grid.binCount - 1, Math.round(sinusoid.frequencyHz / grid.binWidthHz)));
  const length = decayEnergySamples({ decayPerS: sinusoid.decayPerS, rateHz: grid.rateHz, length: grid.length });
  return (amplitude(sinusoid) ** 2 * length) / (4 * noise[bin]!);
}

/** Sets the weights; drops what is left over beside a much stronger sinusoid whose frequency glides. */
function weighted(found: readonly HeardSinusoid[], { grid, room }: Stretch): HeardSinusoid[] {
  const strongest = Math.max(...found.map(amplitude));
  const clamp01 = (x: number) => Math.max(0, Math.min(1, x));
  return found
    .map((sinusoid) => {
      const levelDb = 20 * Math.log10(amplitude(sinusoid) / strongest);
      const loud = clamp01(1 + levelDb / 40);
      const clear = clamp01(Math.log(sinusoid.overNoise / 8) / Math.log(100));
      const exact = 1 / (1 + (sinusoid.frequencyU / sinusoid.frequencyHz / 0.01) ** 2);
      const nearBounds = sinusoid.decayPerS > 0.8 / SHORTEST_DECAY_S || qualityFactor(sinusoid) < 1.25 * LEAST_Q ? 0.4 : 1;
      const at = room[Math.round(sinusoid.frequencyHz / grid.binWidthHz)];
      const isOfRoom = at === MOVES || (at === STANDS && sinusoid.decayPerS < 1 / HELD_S);
      return { ...sinusoid, weight: loud * clear * exact * nearBounds, isOfRoom };
    })
    .filter((sinusoid, _, all) => !isLeftover(sinusoid, all));
}

const isLeftover = (sinusoid: DampedSinusoid, all: readonly DampedSinusoid[]): boolean =>
  all.some(
    (other) =>
      amplitude(other) > 3.16 * amplitude(sinusoid) &&
      Math.abs(other.frequencyHz - sinusoid.frequencyHz) < Math.max(5, 0.025 * sinusoid.frequencyHz),
  );
