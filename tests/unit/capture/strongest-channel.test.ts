import { expect, test } from 'vitest';
import { strongestChannel } from '../../../src/capture/strongest-channel.ts';

test('the channel with most sound, not the one with the largest offset', () => {
  const quiet = Float32Array.of(0.9, 0.91, 0.9, 0.89);
  const loud = Float32Array.of(0.2, -0.2, 0.2, -0.2);
  expect(strongestChannel([quiet, loud])).toBe(1);
  expect(strongestChannel([loud, quiet])).toBe(0);
});

test('of equals the first, and of nothing the first', () => {
  expect(strongestChannel([Float32Array.of(1, -1), Float32Array.of(1, -1)])).toBe(0);
  expect(strongestChannel([new Float32Array(0), new Float32Array(0)])).toBe(0);
});
