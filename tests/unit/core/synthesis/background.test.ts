import { describe, expect, it } from 'vitest';
import { backgroundSound } from '../../../../src/core/synthesis/background.ts';
import { rms } from '../../../../src/core/synthesis/level.ts';
import { db } from '../../../support/gain.ts';
import { toneAmplitude } from '../../../support/heterodyne.ts';

const sampleRateHz = 32_768;
const sampleCount = 32_768;

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
