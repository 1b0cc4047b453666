import { expect, it } from 'vitest';
import { durationS } from '../../../../src/core/samples/recording.ts';

it.each([
  [48_000, 48_000, 1],
  [11_025, 44_100, 0.25],
  [0, 8_000, 0],
])('%d samples at %d Hz last %d s', (count, sampleRateHz, seconds) => {
  expect(durationS({ samples: new Float32Array(count), sampleRateHz })).toBe(seconds);
});
