import { describe, expect, it } from 'vitest';
import { touchIndex } from '../../../../src/core/pluck/touch.ts';
import { backgroundSound } from '../../../../src/core/synthesis/background.ts';
import { addAt } from '../../../../src/core/synthesis/level.ts';
import { stiffPartials, tones } from '../../../support/tones.ts';

const NEAR_S = 0.003;

describe.each([8000, 9187.5, 12_000])('touchIndex at %d Hz', (rateHz) => {
  const startS = 0.5;
  const touch = Math.round(startS * rateHz);
  const sampleCount = Math.round(1.2 * rateHz);
  const ring = (amplitude: number) =>
    tones(stiffPartials({ firstHz: 121, inharmonicity: 0.005, numbers: [1, 2, 3, 4, 5, 6], amplitude, decayS: 0.18, startS }), {
      rateHz,
      count: sampleCount,
    });
  const hum = { mainsHz: 50.03, levelDbfs: -14, harmonicsDb: [-4, -2, -10, -7] };

  it.each([
    ['white noise', { whiteDbfs: -45 }, 0.2],
    ['pink noise', { pinkDbfs: -40 }, 0.2],
    ['hum as loud as the ring', { whiteDbfs: -70, hum }, 0.2],
    ['a held tone beside it', { whiteDbfs: -70, tones: [{ frequencyHz: 130, levelDbfs: -14 }] }, 0.2],
    ['almost nothing', { whiteDbfs: -100 }, 0.05],
  ])('finds the moment in %s, whichever way the coarse onset errs', (_, background, amplitude) => {
    for (let seed = 1; seed <= 4; seed++) {
      const samples = ring(amplitude);
      addAt(samples, backgroundSound(background, { seed, sampleRateHz: rateHz, sampleCount }));
      for (const errorS of [-0.02, 0, 0.02]) {
        const found = touchIndex(samples, { onset: touch + Math.round(errorS * rateHz), rateHz });
        expect(Math.abs(found - touch) / rateHz).toBeLessThan(NEAR_S);
      }
    }
  });

  it('finds it in digital silence', () => {
    const found = touchIndex(ring(0.3), { onset: touch, rateHz });
    expect(Math.abs(found - touch) / rateHz).toBeLessThan(NEAR_S);
  });

  it('finds it where there is little room before it to learn from', () => {
    const late = ring(0.3).slice(touch - Math.round(0.06 * rateHz));
    addAt(late, backgroundSound({ whiteDbfs: -45 }, { seed: 3, sampleRateHz: rateHz, sampleCount: late.length }));
    const found = touchIndex(late, { onset: Math.round(0.06 * rateHz), rateHz });
    expect(Math.abs(found / rateHz - 0.06)).toBeLessThan(NEAR_S);
  });

  it('gives an index of the samples also where nothing changes', () => {
    for (const samples of [new Float64Array(sampleCount), new Float64Array(sampleCount).fill(0.2)]) {
      const found = touchIndex(samples, { onset: touch, rateHz });
      expect(found).toBeGreaterThanOrEqual(0);
      expect(found).toBeLessThan(sampleCount);
    }
  });
});
