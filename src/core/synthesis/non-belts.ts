/** Sounds that are no plucked span, for proving that they give no reading. All are Float64Array [sampleCount], peak 1. */

import { filtered, firstOrderHighPass, resonator } from './filter.ts';
import { addAt, peak } from './level.ts';
import { whiteNoise } from './noise.ts';
import { createRandom, type Random } from './random.ts';

export interface SoundExtent {
  readonly seed: number;
  readonly sampleRateHz: number;
  readonly sampleCount: number;
}

const atPeak = (sound: Float64Array): Float64Array => {
  const largest = peak(sound) || 1;
  return sound.map((value) => value / largest);
};

/** Rises as a half cosine over the attack, holds, and falls to nothing over the last tenth of a second before the end. */
function heldEnvelope(timeS: number, { startS, attackS, endS }: { startS: number; attackS: number; endS: number }): number {
  const rise = Math.min(1, Math.max(0, (timeS - startS) / attackS));
  const fall = Math.min(1, Math.max(0, (endS - timeS) / 0.1));
  return 0.25 * (1 - Math.cos(Math.PI * rise)) * (1 - Math.cos(Math.PI * fall));
}

/** Notes with falling harmonics that swell up and are held, as from a reed or a pipe. One note is a held tone, several are a chord. */
export function heldNotes(
  { seed, sampleRateHz, sampleCount }: SoundExtent,
  options: { readonly notesHz: readonly number[]; readonly startS: number; readonly attackS: number; readonly endS: number },
): Float64Array {
  const random = createRandom(seed, 21);
  const sound = new Float64Array(sampleCount);
  for (const noteHz of options.notesHz) {
    for (let harmonic = 1; harmonic <= 6; harmonic++) {
      const phase = 2 * Math.PI * random.uniform();
      const step = (2 * Math.PI * harmonic * noteHz) / sampleRateHz;
      for (let index = 0; index < sampleCount; index++) {
        sound[index]! += (heldEnvelope(index / sampleRateHz, options) * Math.sin(phase + step * index)) / harmonic;
      }
    }
  }
  return atPeak(sound);
}

/** Formants of five open vowels, Hz, within what phonetics tables give for adult speakers. */
const VOWELS_HZ = [
  [730, 1090, 2440],
  [270, 2290, 3010],
  [570, 840, 2410],
  [530, 1840, 2480],
  [300, 870, 2240],
] as const;
const FORMANT_WIDTHS_HZ = [80, 100, 140];
const SYLLABLE_S = 0.19;
const PAUSE_S = 0.07;

/** Syllables: glottal pulses on a pitch that moves, through formants that glide from one vowel to the next, with hiss between. */
export function speechLike({ seed, sampleRateHz, sampleCount }: SoundExtent, { startS }: { startS: number }): Float64Array {
  const random = createRandom(seed, 22);
  const sound = new Float64Array(sampleCount);
  for (let syllable = 0; ; syllable++) {
    const fromS = startS + syllable * (SYLLABLE_S + PAUSE_S) + random.between(-0.02, 0.02);
    if (fromS + SYLLABLE_S > sampleCount / sampleRateHz) break;
    const from = Math.round(fromS * sampleRateHz);
    const hiss = whiteNoise(random, Math.round(0.05 * sampleRateHz)).map(
      (value, index, all) => value * Math.sin((Math.PI * index) / all.length),
    );
    const consonant = filtered(hiss, firstOrderHighPass(0.25 * sampleRateHz, sampleRateHz));
    addAt(
      sound,
      consonant.map((value) => 0.03 * value),
      from - Math.round(0.03 * sampleRateHz),
    );
    addAt(sound, voicedSyllable(random, sampleRateHz), from);
  }
  return atPeak(sound);
}

function voicedSyllable(random: Random, sampleRateHz: number): Float64Array {
  const sampleCount = Math.round(SYLLABLE_S * sampleRateHz);
  const source = new Float64Array(sampleCount);
  const startHz = random.between(105, 150);
  const endHz = startHz * random.between(0.8, 1.15);
  let turned = 0;
  for (let index = 0; index < sampleCount; index++) {
    const share = index / sampleCount;
    turned = (turned + (startHz + (endHz - startHz) * share) / sampleRateHz) % 1;
    // The cords open slowly and close quickly; they are open for six tenths of a period.
    source[index] = (turned < 0.6 ? turned * turned * (0.6 - turned) : 0) * Math.sin(Math.PI * share) ** 0.7;
  }
  const vowel = () => VOWELS_HZ[Math.floor(random.uniform() * VOWELS_HZ.length)]!;
  const [first, second] = [vowel(), vowel()];
  const voiced = (formants: readonly number[]) =>
    formants.reduce((sound, centreHz, index) => {
      if (centreHz > 0.45 * sampleRateHz) return sound;
      addAt(sound, filtered(source, resonator(centreHz, FORMANT_WIDTHS_HZ[index]!, sampleRateHz)));
      return sound;
    }, new Float64Array(sampleCount));
  const [before, after] = [voiced(first), voiced(second)];
  return before.map((value, index) => value + ((after[index]! - value) * index) / sampleCount);
}

interface Mode {
  readonly frequencyHz: number;
  readonly gain: number;
  readonly decayS: number;
}

/** Something struck: decaying modes that start together. */
function addModes(into: Float64Array, modes: readonly Mode[], { from, sampleRateHz }: { from: number; sampleRateHz: number }): void {
  for (const { frequencyHz, gain, decayS } of modes) {
    for (let index = from; index < into.length && index - from < 12 * decayS * sampleRateHz; index++) {
      const timeS = (index - from) / sampleRateHz;
      into[index]! += gain * Math.exp(-timeS / decayS) * Math.sin(2 * Math.PI * frequencyHz * timeS);
    }
  }
}

const FRAME_MODES_HZ = [187, 431, 655, 1130, 1870];

/** Knuckles on a frame: a few modes that die within 15 ms, a little different at each knock. */
export function taps({ seed, sampleRateHz, sampleCount }: SoundExtent, { startsS }: { startsS: readonly number[] }): Float64Array {
  const random = createRandom(seed, 23);
  const sound = new Float64Array(sampleCount);
  for (const startS of startsS) {
    const modes = FRAME_MODES_HZ.map((frequencyHz) => ({
      frequencyHz: frequencyHz * random.between(0.97, 1.03),
      gain: random.between(0.3, 1),
      decayS: random.between(0.004, 0.014),
    }));
    addModes(sound, modes, { from: Math.round(startS * sampleRateHz), sampleRateHz });
  }
  return atPeak(sound);
}

/** Partials of a small bell over its lowest, invented, as inharmonic as a turned brass cup is. */
const BELL_PARTIALS = [
  { ratio: 1, gain: 1, decayS: 0.9 },
  { ratio: 2.31, gain: 0.8, decayS: 0.6 },
  { ratio: 3.09, gain: 0.6, decayS: 0.4 },
  { ratio: 4.37, gain: 0.5, decayS: 0.3 },
  { ratio: 5.83, gain: 0.3, decayS: 0.2 },
];

export function bell({ sampleRateHz, sampleCount }: SoundExtent, options: { lowestHz: number; startsS: readonly number[] }): Float64Array {
  const sound = new Float64Array(sampleCount);
  const modes = BELL_PARTIALS.map(({ ratio, gain, decayS }) => ({ frequencyHz: ratio * options.lowestHz, gain, decayS })).filter(
    ({ frequencyHz }) => frequencyHz < 0.45 * sampleRateHz,
  );
  for (const startS of options.startsS) addModes(sound, modes, { from: Math.round(startS * sampleRateHz), sampleRateHz });
  return atPeak(sound);
}
