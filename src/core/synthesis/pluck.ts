/** The sound of one pluck as it reaches the microphone in free air: damped partials whose frequencies glide down together. */

import { glideFactor, partialDecayS, releaseShape, type SimulatedSpan, spanPartialHz } from './span.ts';

export interface Pluck {
  /** Where along the span, 0 to 1 from one end. */
  readonly placeShare: number;
  /** Deflection at the moment of release. */
  readonly heightM: number;
  readonly fingerWidthM: number;
  /** A second fingertip lies lightly on the middle: partials that swing there die under it, those at rest there ring on. */
  readonly touchedMiddle?: boolean | undefined;
}

export interface Listener {
  /** Where along the span the microphone stands, 0 to 1. */
  readonly placeShare: number;
  readonly distanceM: number;
}

const MOST_PARTIALS = 40;
/** 100 dB below the loudest partial. */
const FAINTEST_SHARE = 1e-5;
/** Above this share of the sample rate nothing is made, so that nothing folds back. */
const HIGHEST_SHARE_OF_RATE = 0.45;
/** The finger does not let go at once; half a millisecond is what skin takes, our estimate. */
const RELEASE_S = 0.0005;
/** A fingertip takes a partial that swings under it in a few milliseconds, our estimate. */
const UNDER_FINGER_S = 0.006;

/**
 * Sound pressure of one pluck in an arbitrary unit that is the same for all plucks: Float64Array [sampleCount] from the release on.
 *
 * Near a surface that vibrates with wave number k and acceleration ω² q, pressure at a distance d goes as ω² q exp(−k d)/k.
 * Phases come from one integral of the glide, since all partials feel the same rise of the force:
 * f_n(t) = f_n (f(a)/f(0)) with a = a_1 exp(−t/τ_1); each rings at sqrt(f_n² − (1/(2πτ_n))²).
 */
export function pluckSound(options: {
  readonly span: SimulatedSpan;
  readonly pluck: Pluck;
  readonly listener: Listener;
  readonly sampleRateHz: number;
  readonly sampleCount: number;
}): Float64Array {
  const { span, pluck, sampleRateHz, sampleCount } = options;
  const partials = partialsHeard(options);
  const shape = releaseShape(span, { ...pluck, partialCount: MOST_PARTIALS });
  const glidedS = glidedTimes(span, { firstAmplitudeM: pluck.heightM * Math.abs(shape[0]!), sampleRateHz, sampleCount });
  const sound = new Float64Array(sampleCount);
  for (const { ringingRad, decayS, amplitude } of partials) {
    const perSample = Math.exp(-1 / (decayS * sampleRateHz));
    let envelope = amplitude;
    for (let index = 0; index < sampleCount; index++, envelope *= perSample) {
      sound[index]! += envelope * Math.cos(ringingRad * glidedS[index]!);
    }
  }
  const releaseSamples = RELEASE_S * sampleRateHz;
  for (let index = 0; index < releaseSamples && index < sampleCount; index++) sound[index]! *= index / releaseSamples;
  return sound;
}

/** A partial as it starts at the microphone. */
export interface PartialHeard {
  readonly number: number;
  /** Damped, rad/s. */
  readonly ringingRad: number;
  readonly decayS: number;
  /** In the unit of `pluckSound`; may be negative. */
  readonly amplitude: number;
}

/** Each partial as it starts at the microphone; those that nobody could hear are left out. */
export function partialsHeard(options: {
  readonly span: SimulatedSpan;
  readonly pluck: Pluck;
  readonly listener: Listener;
  readonly sampleRateHz: number;
}): readonly PartialHeard[] {
  const { span, pluck, listener, sampleRateHz } = options;
  const shape = releaseShape(span, { ...pluck, partialCount: MOST_PARTIALS });
  const partials = [];
  for (let number = 1; number <= MOST_PARTIALS; number++) {
    const undampedHz = spanPartialHz(span, number);
    if (undampedHz > HIGHEST_SHARE_OF_RATE * sampleRateHz) break;
    const freeS = partialDecayS(span, undampedHz);
    const decayS = pluck.touchedMiddle && number % 2 === 1 ? Math.min(freeS, UNDER_FINGER_S) : freeS;
    const ringingRad = Math.sqrt(Math.max(0, (2 * Math.PI * undampedHz) ** 2 - 1 / decayS ** 2));
    const waveNumber = (number * Math.PI) / span.spanLengthM;
    const pickedUp = Math.sin(number * Math.PI * listener.placeShare) * (Math.exp(-waveNumber * listener.distanceM) / waveNumber);
    partials.push({ number, ringingRad, decayS, amplitude: pluck.heightM * shape[number - 1]! * undampedHz ** 2 * pickedUp });
  }
  const loudest = Math.max(...partials.map(({ amplitude }) => Math.abs(amplitude)));
  return partials.filter(({ amplitude }) => Math.abs(amplitude) > FAINTEST_SHARE * loudest);
}

/** Integral of f(a(t))/f(0) over time at each sample: Float64Array [sampleCount], seconds; plain time where nothing glides. */
function glidedTimes(
  span: SimulatedSpan,
  { firstAmplitudeM, sampleRateHz, sampleCount }: { firstAmplitudeM: number; sampleRateHz: number; sampleCount: number },
): Float64Array {
  const times = new Float64Array(sampleCount);
  const factorAt = (index: number) => glideFactor(span, firstAmplitudeM * Math.exp(-index / (span.decayS * sampleRateHz)));
  let before = factorAt(0);
  for (let index = 1; index < sampleCount; index++) {
    const factor = factorAt(index);
    times[index] = times[index - 1]! + (before + factor) / (2 * sampleRateHz);
    before = factor;
  }
  return times;
}
