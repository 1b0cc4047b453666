import { expect, test } from 'vitest';
import { type CounselWorker, createCounsellor } from '../../../src/analysis/counsel.ts';
import type { Take } from '../../../src/core/answer.ts';
import { type Counsel, NO_COUNSEL } from '../../../src/core/counsel.ts';
import { SETUP } from './fakes.ts';

class Fake implements CounselWorker {
  onmessage: CounselWorker['onmessage'] = null;
  onerror: CounselWorker['onerror'] = null;
  readonly got: Take[] = [];
  isTerminated = false;
  postMessage(take: Take) {
    this.got.push(take);
  }
  terminate() {
    this.isTerminated = true;
  }
  say(data: Counsel) {
    this.onmessage?.({ data } as MessageEvent<Counsel>);
  }
  crash() {
    this.onerror?.({ preventDefault() {} } as ErrorEvent);
  }
}

function asked() {
  const workers: Fake[] = [];
  const counsellor = createCounsellor(() => {
    const worker = new Fake();
    workers.push(worker);
    return worker;
  });
  const answers: string[] = [];
  const take = (name: string): Take => ({ sounds: [], setup: { ...SETUP }, sampleRateHz: name.charCodeAt(0) });
  const ask = (name: string) => counsellor.ask(take(name), () => answers.push(name));
  return {
    workers,
    ask,
    answers,
    rates: () => workers.flatMap(({ got }) => got.map(({ sampleRateHz }) => String.fromCharCode(sampleRateHz))),
  };
}

test('one worker answers question after question', () => {
  const { workers, ask, answers } = asked();
  ask('a');
  workers[0]!.say(NO_COUNSEL);
  ask('b');
  workers[0]!.say(NO_COUNSEL);
  expect(answers).toEqual(['a', 'b']);
  expect(workers).toHaveLength(1);
});

test('of questions that come faster only the newest is answered', () => {
  const { workers, ask, answers, rates } = asked();
  for (const name of ['a', 'b', 'c', 'd']) ask(name);
  expect(rates()).toEqual(['a']);
  workers[0]!.say(NO_COUNSEL); // overtaken: not told
  expect(rates()).toEqual(['a', 'd']);
  workers[0]!.say(NO_COUNSEL);
  expect(answers).toEqual(['d']);
});

test('a worker that breaks is replaced, and what waits is asked of the next', () => {
  const { workers, ask, answers, rates } = asked();
  ask('a');
  ask('b');
  workers[0]!.crash();
  expect(workers[0]!.isTerminated).toBe(true);
  expect(rates()).toEqual(['a', 'b']);
  workers[1]!.say(NO_COUNSEL);
  ask('c');
  expect(answers).toEqual(['b']);
  expect(workers).toHaveLength(2);
});
