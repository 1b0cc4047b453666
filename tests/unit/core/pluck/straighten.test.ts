import { describe, expect, it } from 'vitest';
import type { PluckSegment } from '../../../../src/core/pluck/segment.ts';
import { straightened } from '../../../../src/core/pluck/straighten.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { toneHz } from '../../../support/heterodyne.ts';

const rateHz = 8000;
const decayS = 0.16;

/** Partials of frequency m f (1 + g exp(−2t/τ)): phase 2π m f (t + (g τ/2)(1 − exp(−2t/τ))). */
function gliding({ glide, firstHz, noise = 0 }: { glide: number; firstHz: number; noise?: number }): PluckSegment {
  const random = createRandom(3);
  const samples = Float64Array.from({ length: 4800 }, (_, i) => {
    const t = i / rateHz;
    const theta = t + ((glide * decayS) / 2) * (1 - Math.exp((-2 * t) / decayS));
    let x = noise * random.gaussian();
    for (let m = 1; m <= 4; m++)
      x += (0.2 / m) * Math.exp((-t * (0.9 + 0.1 * m)) / decayS) * Math.cos(2 * Math.PI * m * firstHz * theta + m);
    return x;
  });
  const background = { rateHz, heardS: 0.7, lines: [], moving: [], lineRemains: 0.03, noiseAt: () => noise ** 2 + 1e-11 };
  return { samples, heard: samples, rateHz, startS: 0, background };
}

/** Frequency some time after the touch, by phase alone. */
const phaseHz = ({ samples }: PluckSegment, { nearHz, fromS }: { nearHz: number; fromS: number }) =>
  toneHz(samples, { nearHz: 1.003 * nearHz, firstS: fromS, secondS: fromS + 0.03, lengthS: 0.09, sampleRateHz: rateHz });

describe.each([
  [0.05, 113],
  [0.05, 121.5],
  [0.1, 121],
  [0.1, 204.3],
])('a glide of %d at %d Hz', (glide, firstHz) => {
  // What a first fit over the whole ring shows of it is some average over the decay.
  const found = (share: number, noise = 0) =>
    straightened(gliding({ glide, firstHz, noise }), {
      offset: share * glide,
      frequencyHz: firstHz * (1 + share * glide),
      decayS,
      fromS: 0.012,
    });
  const LEFT = 0.26;

  it.each([0.3, 0.4, 0.5])('is taken away from all partials, from an offset of %d of it', (share) => {
    const { glideAtTouch, segment } = found(share);
    expect(Math.abs(glideAtTouch / glide - 1)).toBeLessThan(0.5);
    for (const m of [1, 2, 3]) {
      for (const fromS of [0.015, 0.1, 0.2]) {
        const heardHz = phaseHz(segment, { nearHz: m * firstHz, fromS });
        expect(Math.abs(heardHz / (m * firstHz) - 1)).toBeLessThan(LEFT * glide);
      }
    }
  });

  it('is found in noise as well', () => {
    expect(Math.abs(found(0.4, 0.01).glideAtTouch - found(0.4).glideAtTouch)).toBeLessThan(0.5 * glide);
  });
});

it('leaves the segment that it was given, and all that is known of the room', () => {
  const segment = gliding({ glide: 0.05, firstHz: 121 });
  const before = segment.samples.slice();
  const straight = straightened(segment, { offset: 0.02, frequencyHz: 121, decayS, fromS: 0.012 }).segment;
  expect(segment.samples).toEqual(before);
  expect({ ...straight, samples: [] }).toEqual({ ...segment, samples: [] });
  expect(segment.samples.length - straight.samples.length).toBeLessThan(0.01 * segment.samples.length);
});
