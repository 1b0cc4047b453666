import { afterEach, expect, test, vi } from 'vitest';
import { createAnalyst } from '../../../src/analysis/analyst.ts';
import type { ToWorker } from '../../../src/analysis/messages.ts';
import type { AnalystEvent } from '../../../src/ports.ts';
import { FakeWorker, pluckAt, SETUP } from './fakes.ts';

afterEach(() => {
  vi.useRealTimers();
});

function listening() {
  const worker = new FakeWorker();
  const events: AnalystEvent[] = [];
  const take = createAnalyst(() => worker).listen({ sampleRateHz: 44_100, setup: SETUP, onEvent: (event) => events.push(event) });
  return { worker, events, take };
}

test('the worker gets rate, setup and one end of the port; the other is for the source', async () => {
  const { worker, take } = listening();
  const { port, ...rest } = worker.got[0] as Extract<ToWorker, { kind: 'listen' }>;
  expect(rest).toEqual({ kind: 'listen', sampleRateHz: 44_100, setup: SETUP });
  expect(worker.transferred[0]).toBe(port);
  const got = new Promise((resolve) => {
    port.onmessage = ({ data }) => resolve(data);
  });
  take.port.postMessage('block');
  expect(await got).toBe('block');
  port.close();
});

test('events are told in order; the end comes after the last of them', async () => {
  const { worker, events, take } = listening();
  worker.say({ kind: 'event', event: { kind: 'ready', atS: 0.7 } });
  let isEnded = false;
  const ending = take.end().then(() => {
    isEnded = true;
  });
  expect(worker.got.at(-1)).toEqual({ kind: 'end' });
  worker.say({ kind: 'event', event: pluckAt(1) });
  await Promise.resolve();
  expect(isEnded).toBe(false);
  worker.say({ kind: 'ended' });
  await ending;
  expect(events).toEqual([{ kind: 'ready', atS: 0.7 }, pluckAt(1)]);
  expect(worker.isTerminated).toBe(true);
});

test('end twice asks once, and both are answered', async () => {
  const { worker, take } = listening();
  const both = Promise.all([take.end(), take.end()]);
  worker.say({ kind: 'ended' });
  await both;
  await take.end();
  expect(worker.got.filter(({ kind }) => kind === 'end')).toHaveLength(1);
});

test.each([
  ['crashes', (worker: FakeWorker) => worker.crash('out of memory'), 'out of memory'],
  ['does not load', (worker: FakeWorker) => worker.crash(''), 'the analysis could not be started'],
  ['says that it broke', (worker: FakeWorker) => worker.say({ kind: 'failed', detail: 'RangeError: no' }), 'RangeError: no'],
  ['sends what cannot be read', (worker: FakeWorker) => worker.onmessageerror?.({} as MessageEvent), 'a message could not be read'],
] as const)('a worker that %s: told once, and the end does not hang', async (_, breakIt, detail) => {
  const { worker, events, take } = listening();
  const ending = take.end();
  breakIt(worker);
  breakIt(worker);
  await ending;
  await take.end();
  worker.say({ kind: 'event', event: pluckAt(1) });
  expect(events).toEqual([{ kind: 'failed', detail }]);
  expect(worker.isTerminated).toBe(true);
});

test('a worker that hangs is given up', async () => {
  vi.useFakeTimers();
  const { worker, events, take } = listening();
  const ending = take.end();
  await vi.advanceTimersByTimeAsync(60_000);
  await ending;
  expect(events).toMatchObject([{ kind: 'failed' }]);
  expect(worker.isTerminated).toBe(true);
});
