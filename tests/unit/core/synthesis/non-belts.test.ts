import { describe, expect, it } from 'vitest';
import { bell, heldNotes, speechLike, taps } from '../../../../src/core/synthesis/non-belts.ts';
import { toneAmplitude } from '../../../support/heterodyne.ts';

const sampleRateHz = 16_000;
const extent = { seed: 1, sampleRateHz, sampleCount: 32_000 };
const largest = (samples: Float64Array, fromS: number, toS: number) =>
  samples.subarray(Math.round(fromS * sampleRateHz), Math.round(toS * sampleRateHz)).reduce((most, x) => Math.max(most, Math.abs(x)), 0);
const energy = (samples: Float64Array) => samples.reduce((sum, x) => sum + x * x, 0);

const SOUNDS = {
  'held notes': (seed: number) => heldNotes({ ...extent, seed }, { notesHz: [131], startS: 0.5, attackS: 0.1, endS: 1.9 }),
  'speech-like': (seed: number) => speechLike({ ...extent, seed }, { startS: 0.5 }),
  taps: (seed: number) => taps({ ...extent, seed }, { startsS: [0.5, 1] }),
  bell: (seed: number) => bell({ ...extent, seed }, { lowestHz: 900, startsS: [0.5] }),
};

describe.each(Object.entries(SOUNDS))('%s', (_, sound) => {
  it('peaks at full scale, begins where it is told, and is as long as told', () => {
    expect(largest(sound(1), 0, 2)).toBeCloseTo(1, 9);
    expect(largest(sound(1), 0, 0.44)).toBe(0);
    expect(largest(sound(1), 0.5, 0.8)).toBeGreaterThan(0.05);
    expect(sound(1)).toHaveLength(extent.sampleCount);
  });

  it('is the same for the same seed', () => {
    expect(sound(7)).toEqual(sound(7));
  });
});

it('another seed speaks, knocks and plays otherwise; a bell is always the same bell', () => {
  for (const name of ['held notes', 'speech-like', 'taps'] as const) expect(SOUNDS[name](2)).not.toEqual(SOUNDS[name](1));
  expect(SOUNDS.bell(2)).toEqual(SOUNDS.bell(1));
});

describe('held notes', () => {
  const level = (sound: Float64Array, frequencyHz: number, startS: number) =>
    toneAmplitude(sound, { frequencyHz, startS, lengthS: 0.3, sampleRateHz });

  it('do not fade while they are held, and end where they are told', () => {
    const held = SOUNDS['held notes'](1);
    expect(largest(held, 1.5, 1.7)).toBeCloseTo(largest(held, 0.8, 1), 2);
    expect(largest(held, 1.901, 2)).toBe(0);
  });

  it('swell up over the attack', () => {
    const slow = heldNotes(extent, { notesHz: [131], startS: 0.2, attackS: 1, endS: 1.9 });
    const peaks = [0.3, 0.5, 0.8, 1.1].map((fromS) => largest(slow, fromS, fromS + 0.05));
    expect(peaks).toEqual(peaks.toSorted((a, b) => a - b));
  });

  it('have harmonics as weak as their number, none between, and sound together', () => {
    const chord = heldNotes(extent, { notesHz: [110, 138.6], startS: 0.1, attackS: 0.1, endS: 1.9 });
    const first = level(chord, 110, 1);
    for (const n of [2, 3, 6]) expect(level(chord, 110 * n, 1) / first).toBeCloseTo(1 / n, 2);
    expect(level(chord, 138.6, 1) / first).toBeCloseTo(1, 2);
    for (const frequencyHz of [180, 250, 770]) expect(level(chord, frequencyHz, 1)).toBeLessThan(0.01 * first);
  });
});

describe('syllables', () => {
  const speech = SOUNDS['speech-like'](3);

  it('come with pauses between them', () => {
    const levels = Array.from({ length: 60 }, (_, k) => largest(speech, 0.5 + 0.02 * k, 0.52 + 0.02 * k));
    expect(Math.max(...levels) / Math.min(...levels)).toBeGreaterThan(30);
    expect(levels.filter((one) => one > 0.2).length).toBeGreaterThan(10);
  });

  it('are voiced: they repeat after a period of a speaking voice', () => {
    const syllable = speech.subarray(Math.round(0.54 * sampleRateHz), Math.round(0.64 * sampleRateHz));
    const likeness = (lag: number) => syllable.subarray(lag).reduce((sum, x, t) => sum + x * syllable[t]!, 0) / energy(syllable);
    const lags = Array.from({ length: 160 }, (_, i) => Math.round(sampleRateHz / 250) + i);
    const best = lags.reduce((a, b) => (likeness(b) > likeness(a) ? b : a));
    expect(sampleRateHz / best).toBeGreaterThan(75);
    expect(sampleRateHz / best).toBeLessThan(180);
    expect(likeness(best)).toBeGreaterThan(0.4);
  });

  it('are made whole or not at all', () => {
    const short = speechLike({ ...extent, sampleCount: Math.round(0.6 * sampleRateHz) }, { startS: 0.5 });
    expect(short.every((x) => x === 0)).toBe(true);
  });

  it('can be spoken at rates that hold no third formant', () => {
    expect(speechLike({ seed: 1, sampleRateHz: 4000, sampleCount: 8000 }, { startS: 0.1 }).every(Number.isFinite)).toBe(true);
  });
});

describe('knocks', () => {
  it('are dead after a few hundredths of a second', () => {
    expect(largest(taps(extent, { startsS: [0.5] }), 0.6, 0.7)).toBeLessThan(0.002);
  });

  it('differ a little from each other', () => {
    const two = SOUNDS.taps(1);
    const knock = (startS: number) => two.slice(startS * sampleRateHz, (startS + 0.05) * sampleRateHz);
    expect(knock(0.5)).not.toEqual(knock(1));
  });

  it('outside the sound are not heard', () => {
    expect(taps(extent, { startsS: [5] }).every((x) => x === 0)).toBe(true);
    expect(taps(extent, { startsS: [] }).every((x) => x === 0)).toBe(true);
  });
});

describe('a bell', () => {
  const sound = SOUNDS.bell(1);
  const at = (frequencyHz: number, startS: number) => toneAmplitude(sound, { frequencyHz, startS, lengthS: 0.2, sampleRateHz });

  it('rings long at its lowest partial, and its others are no multiples of it', () => {
    const amplitudes = Array.from({ length: 600 }, (_, i) => at(850 + 10 * i, 0.52));
    const peaks = amplitudes.flatMap((a, i) => {
      const [before = 0, after = 0] = [amplitudes[i - 1], amplitudes[i + 1]];
      return a > before && a > after && a > 0.05 ? [850 + 10 * i] : [];
    });
    expect(peaks[0]).toBe(900);
    expect(peaks.length).toBeGreaterThanOrEqual(4);
    for (const hz of peaks.slice(1)) expect(Math.abs(hz / 900 - Math.round(hz / 900))).toBeGreaterThan(0.05);
    expect(at(900, 1.5)).toBeGreaterThan(0.1);
  });

  it('struck again rings again, while it still rings', () => {
    const twice = bell(extent, { lowestHz: 900, startsS: [0.2, 1] });
    expect(largest(twice, 1, 1.1)).toBeGreaterThan(largest(twice, 0.8, 0.99));
    expect(largest(twice, 0.9, 0.99)).toBeGreaterThan(0.05);
  });
});
