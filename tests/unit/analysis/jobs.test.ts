import { expect, test } from 'vitest';
import { createAnalyst } from '../../../src/analysis/analyst.ts';
import { FakeWorker, pluckAt, SETUP } from './fakes.ts';

function analyst() {
  const workers: FakeWorker[] = [];
  const { analyse } = createAnalyst(() => {
    const worker = new FakeWorker();
    workers.push(worker);
    return worker;
  });
  return { workers, run: (signal?: AbortSignal) => analyse({ recording, setup: SETUP, signal }) };
}
const recording = { samples: Float32Array.of(0, 0.5, -0.5), sampleRateHz: 48_000 };
const settle = () => new Promise((resolve) => setTimeout(resolve));
const answer = (startS: number) => ({ kind: 'analysed', events: [pluckAt(startS)] }) as const;

test('the recording goes to a worker of its own, and the page keeps its samples', async () => {
  const { workers, run } = analyst();
  const running = run();
  await settle();
  const [worker] = workers;
  expect(worker!.got).toEqual([{ kind: 'analyse', sampleRateHz: 48_000, setup: SETUP, samples: recording.samples }]);
  expect(worker!.transferred[0]).not.toBe(recording.samples.buffer);
  worker!.say(answer(1));
  expect(await running).toEqual([pluckAt(1)]);
  expect(worker!.isTerminated).toBe(true);
});

test('several at once are kept apart, and no more than two run', async () => {
  const { workers, run } = analyst();
  const running = [run(), run(), run(), run()];
  await settle();
  expect(workers).toHaveLength(2);
  workers[1]!.say(answer(2));
  await settle();
  expect(workers).toHaveLength(3);
  workers[0]!.say(answer(1));
  workers[2]!.say(answer(3));
  await settle();
  workers[3]!.say(answer(4));
  expect(await Promise.all(running)).toEqual([[pluckAt(1)], [pluckAt(2)], [pluckAt(3)], [pluckAt(4)]]);
  expect(workers.every(({ isTerminated }) => isTerminated)).toBe(true);
});

test('aborted while running: rejects with the reason, and the worker is gone', async () => {
  const { workers, run } = analyst();
  const control = new AbortController();
  const running = run(control.signal);
  await settle();
  control.abort(new Error('another file'));
  await expect(running).rejects.toThrow('another file');
  expect(workers[0]!.isTerminated).toBe(true);
});

test('aborted while waiting: rejects, never starts, and holds up nobody', async () => {
  const { workers, run } = analyst();
  const control = new AbortController();
  const first = [run(), run()];
  const waiting = run(control.signal);
  const last = run();
  await settle();
  control.abort(new Error('not wanted'));
  await expect(waiting).rejects.toThrow('not wanted');
  workers[0]!.say(answer(1));
  workers[1]!.say(answer(2));
  await settle();
  workers[2]!.say(answer(4));
  expect(await last).toEqual([pluckAt(4)]);
  await Promise.all(first);
  expect(workers).toHaveLength(3);
});

test('aborted before: no worker is started', async () => {
  const { workers, run } = analyst();
  await expect(run(AbortSignal.abort(new Error('too late')))).rejects.toThrow('too late');
  expect(workers).toEqual([]);
});

test('aborted afterwards: the answer stands', async () => {
  const { workers, run } = analyst();
  const control = new AbortController();
  const running = run(control.signal);
  await settle();
  workers[0]!.say(answer(1));
  expect(await running).toEqual([pluckAt(1)]);
  control.abort();
});

test('a worker that breaks rejects its own job only, and frees its place', async () => {
  const { workers, run } = analyst();
  const running = [run(), run(), run()];
  await settle();
  workers[0]!.crash('out of memory');
  workers[1]!.say({ kind: 'failed', detail: 'RangeError: no' });
  await expect(running[0]).rejects.toThrow('out of memory');
  await expect(running[1]).rejects.toThrow('RangeError: no');
  await settle();
  workers[2]!.say(answer(3));
  expect(await running[2]).toEqual([pluckAt(3)]);
});
