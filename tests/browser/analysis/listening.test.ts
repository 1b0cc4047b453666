/** The whole way with nothing replaced: a source, the real worker with the real core, and the events on the page. */
import { describe, expect, test } from 'vitest';
import { createAnalyst } from '../../../src/analysis/analyst.ts';
import { createRecorder } from '../../../src/capture/microphone.ts';
import { createReplay } from '../../../src/capture/replay.ts';
import { UNKNOWN_ENDS } from '../../../src/core/setup.ts';
import { demoTake } from '../../../src/core/synthesis/demo.ts';
import type { AnalystEvent } from '../../../src/ports.ts';

const { recording, setup, truth } = demoTake();
const of = <Kind extends AnalystEvent['kind']>(events: readonly AnalystEvent[], kind: Kind) =>
  events.filter((event): event is Extract<AnalystEvent, { kind: Kind }> => event.kind === kind);

/** A take that hears the demo through a replay, to its end. */
async function replayed(onEvent: (event: AnalystEvent) => void = () => {}) {
  const events: AnalystEvent[] = [];
  const take = createAnalyst().listen({
    sampleRateHz: recording.sampleRateHz,
    setup,
    onEvent: (event) => {
      events.push(event);
      onEvent(event);
    },
  });
  await new Promise<void>((resolve) => createReplay().start({ recording, port: take.port, onEnd: resolve }));
  await take.end();
  return events;
}

describe('a replay', () => {
  test('gives the same plucks, one by one, as the whole recording at once', async () => {
    const [live, whole] = await Promise.all([replayed(), createAnalyst().analyse({ recording, setup })]);
    const plucks = of(live, 'pluck');
    expect(of(live, 'failed')).toEqual([]);
    expect(plucks).toHaveLength(truth.plucks.length);
    expect(plucks.map(({ sound }) => sound)).toEqual(of(whole, 'pluck').map(({ sound }) => sound));
    plucks.forEach(({ sound }, index) => {
      expect(Math.abs(sound.startS - truth.plucks[index]!.startS)).toBeLessThan(0.1);
    });
  });

  test('has a moment some fifteen times for each second of sound, with levels for the eye', async () => {
    const moments = of(await replayed(), 'moment');
    const durationS = recording.samples.length / recording.sampleRateHz;
    expect(moments).toHaveLength(Math.floor(15 * durationS));
    const loudest = Math.max(...moments.map(({ peakDbfs }) => peakDbfs));
    const peak = recording.samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    expect(loudest).toBeCloseTo(20 * Math.log10(peak), 1);
    expect(moments.at(-1)!.roomDbfs).toBeLessThan(-40);
    expect(moments.at(-1)!.levelsDbfs.length).toBeGreaterThan(500);
  });

  test('is heard out when it is ended straight after the last block', async () => {
    const cut = { samples: recording.samples.subarray(0, Math.round(1.4 * recording.sampleRateHz)), sampleRateHz: recording.sampleRateHz };
    const events: AnalystEvent[] = [];
    const take = createAnalyst().listen({ sampleRateHz: cut.sampleRateHz, setup, onEvent: (event) => events.push(event) });
    for (let at = 0; at < cut.samples.length; at += 1024) {
      const samples = new Float32Array(cut.samples.subarray(at, at + 1024));
      take.port.postMessage({ samples, firstFrame: at }, [samples.buffer]);
    }
    await take.end();
    expect(of(events, 'pluck')).toHaveLength(1);
    const before = events.length;
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(events).toHaveLength(before);
  });

  test('with a hole in it goes on after the hole, on the same clock', async () => {
    const events: AnalystEvent[] = [];
    const { sampleRateHz } = recording;
    const take = createAnalyst().listen({ sampleRateHz, setup, onEvent: (event) => events.push(event) });
    const [holeStart, holeEnd] = [0.2 * sampleRateHz, 0.25 * sampleRateHz];
    for (let at = 0; at < recording.samples.length; at += 480) {
      if (at >= holeStart && at < holeEnd) continue;
      const samples = new Float32Array(recording.samples.subarray(at, at + 480));
      take.port.postMessage({ samples, firstFrame: at }, [samples.buffer]);
    }
    await take.end();
    const starts = of(events, 'pluck').map(({ sound }) => sound.startS);
    expect(starts.at(-1)! - truth.plucks.at(-1)!.startS).toBeLessThan(0.1);
    expect(truth.plucks.at(-1)!.startS - starts.at(-1)!).toBeLessThan(0.1);
    expect(of(events, 'ready')[0]!.atS).toBeGreaterThan(holeEnd / sampleRateHz + 0.5);
  });
});

test('the microphone reaches the page: worklet, worker, events', async () => {
  const microphone = await createRecorder().open({});
  if ('why' in microphone) throw new Error(microphone.why);
  const events: AnalystEvent[] = [];
  const take = createAnalyst().listen({
    sampleRateHz: microphone.sampleRateHz,
    setup: { ends: UNKNOWN_ENDS },
    onEvent: (event) => events.push(event),
  });
  microphone.sendTo(take.port);
  await expect.poll(() => of(events, 'onset').length, { timeout: 10_000 }).toBeGreaterThan(0); // the browser's own beeps
  await microphone.close();
  await take.end();
  expect(of(events, 'ready')).toHaveLength(1);
  expect(Math.max(...of(events, 'moment').map(({ peakDbfs }) => peakDbfs))).toBeGreaterThan(-20);
  expect(of(events, 'failed')).toEqual([]);
});

describe('a whole recording', () => {
  test('several at once are kept apart', async () => {
    const silence = { samples: new Float32Array(48_000), sampleRateHz: 48_000 };
    const analyst = createAnalyst();
    const [plucks, nothing, again] = await Promise.all([
      analyst.analyse({ recording, setup }),
      analyst.analyse({ recording: silence, setup }),
      analyst.analyse({ recording, setup }),
    ]);
    expect(of(plucks, 'pluck')).toHaveLength(truth.plucks.length);
    expect(nothing).toEqual([expect.objectContaining({ kind: 'ready' }), expect.objectContaining({ kind: 'no-pluck', why: 'silence' })]);
    expect(again).toEqual(plucks);
    expect(recording.samples.length).toBeGreaterThan(0); // still the page's own
  });

  test('given up, it rejects with the reason, and the next one is answered', async () => {
    const analyst = createAnalyst();
    const control = new AbortController();
    const running = analyst.analyse({ recording, setup, signal: control.signal });
    setTimeout(() => control.abort(new DOMException('another file', 'AbortError')), 1);
    await expect(running).rejects.toThrow('another file');
    expect(of(await analyst.analyse({ recording, setup }), 'pluck')).toHaveLength(truth.plucks.length);
  });

  test('what breaks in the worker is told', async () => {
    const broken = { samples: recording.samples, sampleRateHz: Number.NaN };
    await expect(createAnalyst().analyse({ recording: broken, setup })).rejects.toThrow(/Error/);
  });
});

test('a live take that breaks in the worker is told once, and its end does not hang', async () => {
  const events: AnalystEvent[] = [];
  const take = createAnalyst().listen({ sampleRateHz: Number.NaN, setup, onEvent: (event) => events.push(event) });
  await take.end();
  expect(events).toMatchObject([{ kind: 'failed' }]);
});
