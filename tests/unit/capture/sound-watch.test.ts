import { expect, test } from 'vitest';
import { SILENT_AFTER_S, SoundWatch, STALLED_AFTER_S } from '../../../src/capture/sound-watch.ts';
import { Troubles } from '../../../src/capture/troubles.ts';
import type { CaptureTrouble } from '../../../src/ports.ts';

const SAMPLE_RATE_HZ = 8000;
const BLOCK_S = 0.125;

function watched() {
  const troubles = new Troubles();
  const told: CaptureTrouble[] = [];
  troubles.listen((trouble) => told.push(trouble));
  const watch = new SoundWatch({ troubles, sampleRateHz: SAMPLE_RATE_HZ, nowS: 0 });
  let nowS = 0;
  return {
    told,
    watch,
    /** So many seconds of blocks, each made by the function. */
    hear(seconds: number, sampleAt: (index: number) => number) {
      for (let block = 0; block < seconds / BLOCK_S; block++) {
        nowS += BLOCK_S;
        watch.hear(
          { samples: Float32Array.from({ length: SAMPLE_RATE_HZ * BLOCK_S }, (_, index) => sampleAt(index)), firstFrame: 0 },
          nowS,
        );
      }
    },
  };
}

const NOISE = (index: number) => ((index * 7919) % 13) / 1e5;

test('zeros for so long are silence, and the first sound ends it', () => {
  const { told, hear } = watched();
  hear(1, NOISE);
  hear(SILENT_AFTER_S - BLOCK_S, () => 0);
  expect(told).toEqual([]);
  hear(BLOCK_S, () => 0);
  expect(told).toEqual(['silent']);
  hear(BLOCK_S, NOISE);
  expect(told).toEqual(['silent', 'sound-again']);
});

test('a muted converter may hold another number than zero', () => {
  const { told, hear } = watched();
  hear(SILENT_AFTER_S, () => 0.01);
  expect(told).toEqual(['silent']);
});

test('a faint room is not silence, however long', () => {
  const { told, hear } = watched();
  hear(10 * SILENT_AFTER_S, NOISE);
  expect(told).toEqual([]);
});

test('a clock that stands while the context says running is a pause, and ends with the next block', () => {
  const { told, watch } = watched();
  watch.look({ isRunning: true, clockS: 7, nowS: 0.5 });
  watch.look({ isRunning: true, clockS: 7, nowS: 0.5 + STALLED_AFTER_S - 0.1 });
  expect(told).toEqual([]);
  watch.look({ isRunning: true, clockS: 7, nowS: 0.5 + STALLED_AFTER_S });
  expect(told).toEqual(['paused']);
  watch.hear({ samples: Float32Array.of(0.1, 0.2), firstFrame: 0 }, 4);
  expect(told).toEqual(['paused', 'resumed']);
});

test('a clock that goes while no block comes is silence', () => {
  const { told, watch } = watched();
  for (let nowS = 0.5; nowS <= SILENT_AFTER_S; nowS += 0.5) watch.look({ isRunning: true, clockS: nowS, nowS });
  expect(told).toEqual(['silent']);
});

test('a context that is paused is neither: it tells that itself, and has its time again afterwards', () => {
  const { told, watch } = watched();
  for (let nowS = 0.5; nowS < 60; nowS += 0.5) watch.look({ isRunning: false, clockS: 3, nowS });
  watch.look({ isRunning: true, clockS: 3, nowS: 60 });
  expect(told).toEqual([]);
});
