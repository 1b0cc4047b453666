import { describe, expect, test } from 'vitest';
import { Take } from '../../../src/analysis/take.ts';
import type { Listening, ListeningEvent } from '../../../src/core/listening.ts';
import type { LiveMoment } from '../../../src/ports.ts';
import { fakeListening, pluckAt, SETUP } from './fakes.ts';

const SAMPLE_RATE_HZ = 8000;

function takeOf(...stretches: readonly Listening[]) {
  const told: (ListeningEvent | LiveMoment)[] = [];
  let made = 0;
  const take = new Take({
    sampleRateHz: SAMPLE_RATE_HZ,
    setup: SETUP,
    createListening: () => stretches[made++]!,
    tell: (event) => told.push(event),
  });
  const hear = (firstFrame: number, frames: number) => take.hear({ samples: new Float32Array(frames).fill(1 + firstFrame), firstFrame });
  return { take, hear, told, events: () => told.filter(({ kind }) => kind !== 'moment'), made: () => made };
}

test('blocks go on as they come, events come back as they are', () => {
  const { listening, pushed } = fakeListening({ onFinish: [pluckAt(0.5)] });
  const { take, hear, events } = takeOf(listening);
  hear(4096, 2); // a source may have run before the take
  hear(4098, 3);
  take.finish();
  expect(pushed).toEqual([4097, 4097, 4099, 4099, 4099]);
  expect(events()).toEqual([pluckAt(0.5)]);
});

test('a stretch begins with its first sound, since a microphone that opens is silent at first', () => {
  const { listening, pushed } = fakeListening({ onFinish: [pluckAt(0.5)] });
  const { take, events } = takeOf(listening);
  take.hear({ samples: new Float32Array(4000), firstFrame: 0 });
  take.hear({ samples: Float32Array.of(0, 0, 0, 0.5, 0), firstFrame: 4000 });
  take.hear({ samples: Float32Array.of(0, 0.25), firstFrame: 4005 });
  take.finish();
  expect(pushed).toEqual([0.5, 0, 0, 0.25]);
  expect(events()).toEqual([pluckAt(0.5 + 4003 / SAMPLE_RATE_HZ)]);
});

test('some fifteen moments for each second of sound', () => {
  const { hear, told } = takeOf(fakeListening().listening);
  for (let frame = 0; frame < 4 * SAMPLE_RATE_HZ; frame += 1000) hear(frame, 1000);
  expect(told.filter(({ kind }) => kind === 'moment')).toHaveLength(60);
});

describe('where samples are missing', () => {
  test('what sounded is judged by what was heard, and times go on as the clock did', () => {
    const first = fakeListening({ onPush: [{ kind: 'onset', atS: 0.2 }], onFinish: [pluckAt(0.2)] });
    const second = fakeListening({ onPush: [{ kind: 'ready', atS: 0.7 }], onFinish: [pluckAt(0.9)] });
    const { take, hear, events } = takeOf(first.listening, second.listening);
    hear(1000, 8000);
    hear(1000 + 8000 + 4000, 8000); // half a second is lost
    take.finish();
    expect(events()).toEqual([{ kind: 'onset', atS: 0.2 }, pluckAt(0.2), { kind: 'ready', atS: 1.5 + 0.7 }, pluckAt(1.5 + 0.9)]);
    expect(first.pushed).toHaveLength(8000);
    expect(second.pushed).toHaveLength(8000);
  });

  test('times add up over several gaps', () => {
    const quiet = () => fakeListening().listening;
    const { take, hear, events } = takeOf(quiet(), quiet(), fakeListening({ onFinish: [pluckAt(0.25)] }).listening);
    hear(0, 800);
    hear(1600, 800);
    hear(4000, 800);
    take.finish();
    expect(events()).toEqual([pluckAt(0.5 + 0.25)]);
  });

  test('a source that begins anew carries on where the old one ended', () => {
    const { take, hear, events } = takeOf(fakeListening().listening, fakeListening({ onFinish: [pluckAt(0.5)] }).listening);
    hear(80_000, 8000);
    hear(0, 8000);
    take.finish();
    expect(events()).toEqual([pluckAt(1.5)]);
  });

  test('that nothing began before the gap is no news', () => {
    const nothing: ListeningEvent = { kind: 'no-pluck', atS: 0, why: 'no-onset' };
    const { hear, events } = takeOf(fakeListening({ onFinish: [nothing] }).listening, fakeListening().listening);
    hear(0, 800);
    hear(1600, 800);
    expect(events()).toEqual([]);
  });

  test('but what became of a sound that had begun is', () => {
    const onset: ListeningEvent = { kind: 'onset', atS: 0.1 };
    const cut: ListeningEvent = { kind: 'no-pluck', atS: 0.1, why: 'too-short' };
    const { hear, events } = takeOf(fakeListening({ onPush: [onset], onFinish: [cut] }).listening, fakeListening().listening);
    hear(0, 800);
    hear(1600, 800);
    expect(events()).toEqual([onset, cut]);
  });

  test('nothing in the last stretch is not nothing in the take', () => {
    const nothing: ListeningEvent = { kind: 'no-pluck', atS: 0, why: 'no-onset' };
    const withPluck = fakeListening({ onPush: [{ kind: 'onset', atS: 0 }], onFinish: [pluckAt(0)] });
    const { take, hear, events } = takeOf(withPluck.listening, fakeListening({ onFinish: [nothing] }).listening);
    hear(0, 800);
    hear(1600, 800);
    take.finish();
    expect(events().map(({ kind }) => kind)).toEqual(['onset', 'pluck']);
  });

  test('nothing in any stretch is nothing', () => {
    const nothing: ListeningEvent = { kind: 'no-pluck', atS: 0, why: 'no-onset' };
    const { take, hear, events } = takeOf(fakeListening().listening, fakeListening({ onFinish: [nothing] }).listening);
    hear(0, 800);
    hear(1600, 800);
    take.finish();
    expect(events()).toEqual([{ ...nothing, atS: 0.2 }]);
  });
});
