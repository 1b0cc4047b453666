import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keptWithin } from '../../../src/capture/time-limit.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test('a promise that is never answered is given up', async () => {
  const kept = keptWithin(new Promise(() => {}), 1500);
  await vi.advanceTimersByTimeAsync(1500);
  expect(await kept).toBe(false);
});

test('kept and broken promises are told at once, and leave no timer', async () => {
  expect(await keptWithin(Promise.resolve(), 1500)).toBe(true);
  expect(await keptWithin(Promise.reject(new Error('no')), 1500)).toBe(false);
  expect(vi.getTimerCount()).toBe(0);
});
