import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createReplay } from '../../../src/capture/replay.ts';
import type { SoundBlock } from '../../../src/ports.ts';

const SAMPLE_RATE_HZ = 8000;
const recording = { samples: Float32Array.from({ length: 20_000 }, (_, index) => index / 20_000), sampleRateHz: SAMPLE_RATE_HZ };

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'performance'] });
});
afterEach(() => {
  vi.useRealTimers();
});

function started(played = recording) {
  const blocks: SoundBlock[] = [];
  const port = { postMessage: (block: SoundBlock) => blocks.push(block) } as unknown as MessagePort;
  const onEnd = vi.fn();
  const { stop } = createReplay().start({ recording: played, port, onEnd });
  const sentFrames = () => blocks.reduce((sum, { samples }) => sum + samples.length, 0);
  return { blocks, onEnd, stop, sentFrames };
}

test('as fast as the clock goes: never ahead, never a block behind', () => {
  const { sentFrames } = started();
  for (let ms = 20; ms <= 1000; ms += 20) {
    vi.advanceTimersByTime(20);
    const due = (ms / 1000) * SAMPLE_RATE_HZ;
    expect(sentFrames()).toBeLessThanOrEqual(due);
    expect(sentFrames()).toBeGreaterThan(due - 1024);
  }
});

test('every sample arrives once and in its place, the end is told once', () => {
  const { blocks, onEnd, sentFrames } = started();
  vi.advanceTimersByTime(10_000);
  const joined = new Float32Array(recording.samples.length);
  for (const { samples, firstFrame } of blocks) joined.set(samples, firstFrame);
  expect(joined).toEqual(recording.samples);
  blocks.slice(1).forEach(({ firstFrame }, index) => {
    expect(firstFrame).toBe(blocks[index]!.firstFrame + blocks[index]!.samples.length);
  });
  expect(sentFrames()).toBe(recording.samples.length);
  expect(onEnd).toHaveBeenCalledTimes(1);
});

test('a tab that slept catches up at once', () => {
  const { sentFrames } = started();
  const nowMs = performance.now();
  vi.spyOn(performance, 'now').mockReturnValue(nowMs + 1500); // the clock goes on while the timers stand
  vi.advanceTimersByTime(20);
  expect(sentFrames()).toBe(Math.floor(12_000 / 1024) * 1024);
  vi.restoreAllMocks();
});

test('stopped, nothing more comes and no end is told', () => {
  const { sentFrames, onEnd, stop } = started();
  vi.advanceTimersByTime(500);
  const before = sentFrames();
  stop();
  vi.advanceTimersByTime(10_000);
  expect(sentFrames()).toBe(before);
  expect(onEnd).not.toHaveBeenCalled();
});

test('an empty recording ends, but not before start has returned', () => {
  const { onEnd } = started({ samples: new Float32Array(0), sampleRateHz: SAMPLE_RATE_HZ });
  expect(onEnd).not.toHaveBeenCalled();
  vi.advanceTimersByTime(20);
  expect(onEnd).toHaveBeenCalledTimes(1);
});
