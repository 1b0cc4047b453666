import { describe, expect, it } from 'vitest';
import { fftPlan } from '../../../../src/core/math/fft.ts';
import { backgroundSound } from '../../../../src/core/synthesis/background.ts';
import { filtered, firstOrderHighPass, firstOrderLowPass, resonator, secondOrderHighPass } from '../../../../src/core/synthesis/filter.ts';
import { rms } from '../../../../src/core/synthesis/level.ts';
import { throughCorner } from '../../../../src/core/synthesis/microphone.ts';
import { pinkNoise, whiteNoise } from '../../../../src/core/synthesis/noise.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { inRoom } from '../../../../src/core/synthesis/room.ts';
import { toneAmplitude } from '../../../support/heterodyne.ts';

const sampleRateHz = 32_768;
const sampleCount = 32_768;
const db = (power: number) => 10 * Math.log10(power);

/** Power between two frequencies, from the spectrum of one second. */
function bandPower(samples: Float64Array, lowHz: number, highHz: number): number {
  const spectrum = fftPlan(sampleCount).transform(samples);
  let power = 0;
  for (let bin = lowHz; bin < highHz; bin++) power += (spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2) / sampleCount ** 2;
  return power;
}

const gainDb = (through: (sound: Float64Array) => Float64Array, frequencyHz: number) => {
  const sine = Float64Array.from({ length: sampleCount }, (_, index) => Math.sin((2 * Math.PI * frequencyHz * index) / sampleRateHz));
  return 2 * db(toneAmplitude(through(sine), { frequencyHz, startS: 0.5, lengthS: 0.5, sampleRateHz }));
};

describe('filters', () => {
  // −10 log10(2) at the corner of any maximally flat filter; far below it 6 dB an octave for each order.
  it.each([1, 2, 4] as const)('high-pass of order %d', (order) => {
    const through = (sound: Float64Array) => throughCorner(sound, { cornerHz: 200, order }, sampleRateHz);
    const corners = order === 4 ? 2 : 1;
    expect(gainDb(through, 200)).toBeCloseTo(-3.0103 * corners, 2);
    expect(gainDb(through, 20) - gainDb(through, 10)).toBeCloseTo(6.02 * order, 0);
    expect(gainDb(through, 4000)).toBeCloseTo(0, 1);
  });

  it('low-pass and resonator', () => {
    expect(gainDb((sound) => filtered(sound, firstOrderLowPass(1000, sampleRateHz)), 1000)).toBeCloseTo(-3.0103, 2);
    expect(gainDb((sound) => filtered(sound, resonator(700, 100, sampleRateHz)), 700)).toBeCloseTo(0, 3);
    expect(gainDb((sound) => filtered(sound, resonator(700, 100, sampleRateHz)), 650)).toBeLessThan(-2);
  });

  it('stay at rest when nothing comes in', () => {
    const silence = new Float64Array(100);
    for (const filter of [firstOrderHighPass(100, sampleRateHz), secondOrderHighPass(100, sampleRateHz)]) {
      expect(filtered(silence, filter)).toEqual(silence);
    }
  });
});

describe('noise', () => {
  it('white has equal power in equal bands', () => {
    const noise = whiteNoise(createRandom(1), sampleCount);
    expect(rms(noise)).toBeCloseTo(1, 1);
    for (const lowHz of [1000, 5000, 12_000])
      expect(Math.abs(db(bandPower(noise, lowHz, lowHz + 2000) / bandPower(noise, 8000, 10_000)))).toBeLessThan(0.6);
  });

  it('pink has equal power in each octave', () => {
    const noise = pinkNoise(createRandom(2), sampleCount, sampleRateHz);
    expect(rms(noise)).toBeCloseTo(1, 6);
    const octaves = [63, 125, 250, 500, 1000, 2000, 4000].map((lowHz) => db(bandPower(noise, lowHz, 2 * lowHz)));
    const mean = octaves.reduce((sum, level) => sum + level, 0) / octaves.length;
    // The ripple of the poles is 0.3 dB; the lowest octave holds 63 bins, whose power scatters by 0.55 dB.
    for (const level of octaves) expect(Math.abs(level - mean)).toBeLessThan(1.6);
  });
});

describe('inRoom', () => {
  it('has a tail that falls by 60 dB in its time and holds the energy told', () => {
    const impulse = new Float64Array(sampleCount);
    impulse[0] = 1;
    const room = { earlyDb: -9, reverberationS: 0.5, tailDb: -6 };
    const response = inRoom(impulse, { room, random: createRandom(3), sampleRateHz });
    const energyFrom = (timeS: number) =>
      response.subarray(Math.round(timeS * sampleRateHz)).reduce((sum, value) => sum + value * value, 0);
    expect(response[0]).toBe(1);
    // Energy left after a time, integrated backwards: 12 dB less for each tenth of a second.
    expect(db(energyFrom(0.05) / energyFrom(0.25))).toBeCloseTo(24, 0);
    expect(db(energyFrom(0.015))).toBeCloseTo(-6, 0);
  });
});

describe('backgroundSound', () => {
  it('gives each tone the level told', () => {
    const hum = { mainsHz: 50.02, levelDbfs: -20, harmonicsDb: [-6, -3] };
    const tones = [{ frequencyHz: 1315, levelDbfs: -30 }];
    const sound = backgroundSound({ hum, tones }, { seed: 4, sampleRateHz, sampleCount });
    const levelDbfs = (frequencyHz: number) => 2 * db(toneAmplitude(sound, { frequencyHz, startS: 0, lengthS: 1, sampleRateHz }));
    expect([50.02, 100.04, 150.06, 1315].map(levelDbfs).map((level) => Math.round(10 * level) / 10)).toEqual([-20, -26, -23, -30]);
  });

  it('gives noise the power of a sine of that level', () => {
    for (const background of [{ whiteDbfs: -30 }, { pinkDbfs: -30 }]) {
      expect(2 * db(rms(backgroundSound(background, { seed: 5, sampleRateHz, sampleCount })))).toBeCloseTo(-33.01, 2);
    }
  });

  it('adds a sound without changing the others', () => {
    const extent = { seed: 6, sampleRateHz, sampleCount: 1000 };
    const noise = backgroundSound({ whiteDbfs: -30 }, extent);
    const tone = backgroundSound({ tones: [{ frequencyHz: 440, levelDbfs: -20 }] }, extent);
    const both = backgroundSound({ whiteDbfs: -30, tones: [{ frequencyHz: 440, levelDbfs: -20 }] }, extent);
    both.forEach((value, index) => {
      expect(value).toBeCloseTo(noise[index]! + tone[index]!, 12);
    });
  });
});
