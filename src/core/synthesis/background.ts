/** What a workshop sounds like before anyone plucks: noise, mains hum, a fan, steady tones of motors that hold still. */

import { addAt, amplitudeOf, atLevel } from './level.ts';
import { pinkNoise, whiteNoise } from './noise.ts';
import { createRandom, type Random } from './random.ts';

export interface SteadyTone {
  readonly frequencyHz: number;
  /** A sine of amplitude 1 is 0 dBFS. */
  readonly levelDbfs: number;
}

export interface Hum {
  /** Near 50 or 60 Hz; the grid is never exactly there. */
  readonly mainsHz: number;
  /** Level of the mains frequency itself. */
  readonly levelDbfs: number;
  /** Level of harmonic n over the fundamental, dB, n from 2 on. */
  readonly harmonicsDb: readonly number[];
}

export interface Fan {
  readonly bladePassHz: number;
  readonly toneDbfs: number;
  /** Level of the rushing air. */
  readonly airDbfs: number;
  /** Relative standard deviation of the speed, which wanders slowly. */
  readonly wander: number;
}

/** Levels are those of a sine of the same power; what is missing is silent. */
export interface Background {
  readonly whiteDbfs?: number | undefined;
  readonly pinkDbfs?: number | undefined;
  readonly hum?: Hum | undefined;
  readonly fan?: Fan | undefined;
  readonly tones?: readonly SteadyTone[] | undefined;
}

interface Extent {
  readonly sampleRateHz: number;
  readonly sampleCount: number;
}

export function backgroundSound(
  background: Background,
  { seed, sampleRateHz, sampleCount }: Extent & { readonly seed: number },
): Float64Array {
  const extent = { sampleRateHz, sampleCount };
  const sound = new Float64Array(sampleCount);
  const { whiteDbfs, pinkDbfs, hum, fan, tones = [] } = background;
  if (whiteDbfs !== undefined) addAt(sound, atLevel(whiteNoise(createRandom(seed, 11), sampleCount), whiteDbfs));
  if (pinkDbfs !== undefined) addAt(sound, atLevel(pinkNoise(createRandom(seed, 12), sampleCount, sampleRateHz), pinkDbfs));
  if (hum) addAt(sound, steadySound(humTones(hum), createRandom(seed, 13), extent));
  if (fan) addAt(sound, fanSound(fan, createRandom(seed, 14), extent));
  if (tones.length > 0) addAt(sound, steadySound(tones, createRandom(seed, 15), extent));
  return sound;
}

const humTones = ({ mainsHz, levelDbfs, harmonicsDb }: Hum): readonly SteadyTone[] =>
  [0, ...harmonicsDb].map((overDb, index) => ({ frequencyHz: (index + 1) * mainsHz, levelDbfs: levelDbfs + overDb }));

function steadySound(tones: readonly SteadyTone[], random: Random, { sampleRateHz, sampleCount }: Extent): Float64Array {
  const sound = new Float64Array(sampleCount);
  for (const { frequencyHz, levelDbfs } of tones) {
    const phase = 2 * Math.PI * random.uniform();
    const step = (2 * Math.PI * frequencyHz) / sampleRateHz;
    for (let index = 0; index < sampleCount; index++) sound[index]! += amplitudeOf(levelDbfs) * Math.sin(phase + step * index);
  }
  return sound;
}

const FAN_HARMONICS_DB = [0, -6, -12, -15];
const WANDER_TIME_S = 0.3;

/** Harmonics of the blades on a speed that wanders as a first-order random walk with a pull to its mean, and air as pink noise. */
function fanSound(fan: Fan, random: Random, { sampleRateHz, sampleCount }: Extent): Float64Array {
  const sound = atLevel(pinkNoise(random, sampleCount, sampleRateHz), fan.airDbfs).slice();
  const keep = Math.exp(-1 / (WANDER_TIME_S * sampleRateHz));
  const push = Math.sqrt(1 - keep * keep);
  const phases = FAN_HARMONICS_DB.map(() => 2 * Math.PI * random.uniform());
  let deviation = random.gaussian();
  let turned = 0;
  for (let index = 0; index < sampleCount; index++) {
    FAN_HARMONICS_DB.forEach((overDb, harmonic) => {
      sound[index]! += amplitudeOf(fan.toneDbfs + overDb) * Math.sin((harmonic + 1) * turned + phases[harmonic]!);
    });
    deviation = keep * deviation + push * random.gaussian();
    turned += (2 * Math.PI * fan.bladePassHz * (1 + fan.wander * deviation)) / sampleRateHz;
  }
  return sound;
}
