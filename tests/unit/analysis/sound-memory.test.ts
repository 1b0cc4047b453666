import { describe, expect, test } from 'vitest';
import { clipAt, SoundMemory } from '../../../src/analysis/sound-memory.ts';
import { Take } from '../../../src/analysis/take.ts';
import type { HeardEvent, LiveMoment } from '../../../src/ports.ts';
import { fakeListening, pluckAt, SETUP } from './fakes.ts';

const RATE_HZ = 1000;
/** Each sample is its own index, in thousandths. */
const counted = (from: number, count: number): Float32Array<ArrayBuffer> =>
  Float32Array.from({ length: count }, (_, i) => (from + i + 1) / 1e4);
const firstIndex = (samples: Float32Array): number => Math.round(samples[0]! * 1e4) - 1;

test('a clip reaches from half a second before to nearly a second after, as far as there is sound', () => {
  const samples = counted(0, 3000);
  const clip = clipAt({ samples, sampleRateHz: RATE_HZ, fromS: 10 }, 11.2);
  expect(clip).toMatchObject({ startS: 10.7, sampleRateHz: RATE_HZ });
  expect(firstIndex(clip.samples)).toBe(700);
  expect(clip.samples).toHaveLength(1450);
  const early = clipAt({ samples, sampleRateHz: RATE_HZ, fromS: 10 }, 10.1);
  expect(early.startS).toBe(10);
  expect(clipAt({ samples, sampleRateHz: RATE_HZ, fromS: 10 }, 12.9).samples).toHaveLength(600);
});

describe('what is remembered of a stream', () => {
  test.each([1, 7, 640, 5000])('is the same whatever the blocks: %i samples each', (size) => {
    const memory = new SoundMemory(RATE_HZ);
    for (let from = 0; from < 9000; from += size) memory.hear(counted(from, Math.min(size, 9000 - from)));
    const clip = memory.clipAt(7.9);
    expect(clip.startS).toBeCloseTo(7.4, 9);
    expect(firstIndex(clip.samples)).toBe(7400);
    expect(clip.samples).toHaveLength(1450);
    expect(Array.from(clip.samples)).toEqual(Array.from(counted(7400, 1450)));
  });

  test('is bounded: what lies too far back is gone', () => {
    const memory = new SoundMemory(RATE_HZ);
    memory.hear(counted(0, 9000));
    const clip = memory.clipAt(1);
    expect(clip.samples).toHaveLength(0);
  });

  test('gives what there is while little was heard', () => {
    const memory = new SoundMemory(RATE_HZ);
    memory.hear(counted(0, 300));
    expect(firstIndex(memory.clipAt(0.1).samples)).toBe(0);
    expect(memory.clipAt(0.1).samples).toHaveLength(300);
  });
});

test('a take that keeps its sound sends it with each pluck, on the clock of the take', () => {
  const told: (HeardEvent | LiveMoment)[] = [];
  const first = fakeListening({ onFinish: [pluckAt(0.6)] });
  const second = fakeListening({ onFinish: [{ kind: 'no-pluck', atS: 0.7, why: 'not-a-span' }] });
  const listenings = [first.listening, second.listening];
  const take = new Take({
    sampleRateHz: RATE_HZ,
    setup: SETUP,
    createListening: () => listenings.shift()!,
    tell: (event) => told.push(event),
    keepsSound: true,
  });
  take.hear({ samples: counted(0, 1500), firstFrame: 0 });
  take.hear({ samples: counted(2500, 1500), firstFrame: 2500 }); // a second is lost
  take.finish();
  const [pluck, aside] = told.filter(({ kind }) => kind !== 'moment') as HeardEvent[];
  expect(pluck!.clip!.startS).toBeCloseTo(0.1, 9);
  expect(firstIndex(pluck!.clip!.samples)).toBe(100);
  expect(aside).toMatchObject({ kind: 'no-pluck', atS: 3.2 });
  expect(aside!.clip!.startS).toBeCloseTo(2.7, 9);
  expect(firstIndex(aside!.clip!.samples)).toBe(2700);
});
