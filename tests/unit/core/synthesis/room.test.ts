import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { inRoom, type Room } from '../../../../src/core/synthesis/room.ts';
import { db } from '../../../support/gain.ts';

const sampleRateHz = 32_768;
const sampleCount = 32_768;
const ROOM: Room = { earlyDb: -9, reverberationS: 0.5, tailDb: -6 };

const impulse = new Float64Array(sampleCount);
impulse[0] = 1;
const response = (room: Room = ROOM, seed = 3) => inRoom(impulse, { room, random: createRandom(seed), sampleRateHz });
/** Its first 15 ms, before the tail. */
const early = (room: Room, seed: number) =>
  inRoom(impulse.slice(0, Math.floor(0.015 * sampleRateHz)), { room, random: createRandom(seed), sampleRateHz });
const energy = (samples: Float64Array, fromS: number, toS = 1) =>
  samples.subarray(Math.round(fromS * sampleRateHz), Math.round(toS * sampleRateHz)).reduce((sum, value) => sum + value * value, 0);

describe('the tail', () => {
  // Energy left after a time, integrated backwards (ISO 3382-2, Schroeder's method): 60 dB less in the reverberation time.
  it.each([0.2, 0.5, 0.8])('falls by 60 dB in %d s', (reverberationS) => {
    const decay = response({ ...ROOM, reverberationS });
    const [fromS, toS] = [0.02 + 0.05 * reverberationS, 0.02 + 0.45 * reverberationS];
    expect(db(energy(decay, fromS) / energy(decay, toS))).toBeCloseTo(24, 0);
  });

  it.each([-3, -6, -20])('holds %d dB of the direct sound', (tailDb) => {
    expect(db(energy(response({ ...ROOM, tailDb }), 0.015))).toBeCloseTo(tailDb, 0);
  });
});

describe('early reflections', () => {
  const seeds = Array.from({ length: 30 }, (_, seed) => seed + 1);

  it('come after the direct sound, which is left as it was', () => {
    for (const seed of seeds) {
      const heard = early(ROOM, seed);
      expect(heard[0]).toBe(1);
      expect(energy(heard, 1 / sampleRateHz, 0.0019)).toBe(0);
      expect(energy(heard, 0.0019)).toBeGreaterThan(0);
    }
  });

  it('are as loud as told where they come earliest, and 9 dB below the direct sound unless told', () => {
    const loudest = (earlyDb?: number) =>
      Math.max(
        ...seeds.map((seed) => early({ ...ROOM, earlyDb }, seed).reduce((most, x, t) => (t > 0 ? Math.max(most, Math.abs(x)) : most), 0)),
      );
    expect(db(loudest(-9) ** 2)).toBeLessThanOrEqual(-9);
    expect(db(loudest(-9) ** 2)).toBeGreaterThan(-12);
    expect(loudest()).toBe(loudest(-9));
    expect(db(loudest(-9) ** 2) - db(loudest(-20) ** 2)).toBeCloseTo(11, 6);
  });
});

describe('inRoom', () => {
  it('is as long as the sound, and leaves it as it was', () => {
    const sound = impulse.slice(0, 100);
    expect(inRoom(sound, { room: ROOM, random: createRandom(1), sampleRateHz })).toHaveLength(100);
    expect(sound).toEqual(impulse.slice(0, 100));
  });

  it('is the same room for the same seed, whatever sounds in it, and another for another', () => {
    const twice = impulse.map((x, t) => 0.5 * x + (t === 1000 ? 0.25 : 0));
    const heard = inRoom(twice, { room: ROOM, random: createRandom(3), sampleRateHz });
    const alone = response();
    for (let t = 0; t < sampleCount; t += 7) expect(heard[t]).toBeCloseTo(0.5 * alone[t]! + (t >= 1000 ? 0.25 * alone[t - 1000]! : 0), 12);
    expect(response(ROOM, 4)).not.toEqual(alone);
  });
});
