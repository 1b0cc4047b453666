/** Acts of a person against an outside made by hand: what is opened is closed, and what comes too late changes nothing. */

import { describe, expect, it } from 'vitest';
import type { AnalystEvent, CaptureTrouble, EnteredSetup, OpenMicrophone } from '../../../../src/ports.ts';
import { Effects, type Outside } from '../../../../src/ui/state/effects.ts';
import { LiveMoments } from '../../../../src/ui/state/live.ts';
import { EMPTY_SETUP } from '../../../../src/ui/state/span-setup.ts';
import { initialState } from '../../../../src/ui/state/state.ts';
import { Store } from '../../../../src/ui/state/store.ts';
import { pluckEvent } from '../../../support/heard-plucks.ts';

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

/** Everything outside the page, in memory; a pluck that still rings is told when the take ends. */
function workbench() {
  const log: string[] = [];
  const kept: EnteredSetup[] = [];
  let tell: (event: AnalystEvent) => void = () => {};
  let trouble: (what: CaptureTrouble) => void = () => {};
  let answerAsking: (opened: Awaited<ReturnType<Outside['recorder']['open']>>) => void = () => {};
  let ringing = false;
  const { port1 } = new MessageChannel();

  const microphone: OpenMicrophone = {
    sampleRateHz: 48_000,
    device: { id: 'a', label: 'Desk' },
    processing: 'untouched',
    sendTo: () => log.push('sends'),
    onTrouble: (listener) => {
      trouble = listener;
    },
    resume: async () => void log.push('resumed'),
    close: async () => void log.push('closed'),
  };
  const outside: Outside = {
    recorder: {
      devices: async () => [{ id: 'a', label: 'Desk' }],
      onDevicesChanged: () => () => {},
      open: () =>
        new Promise((resolve) => {
          answerAsking = resolve;
        }),
    },
    analyst: {
      listen: ({ onEvent }) => {
        tell = onEvent;
        const end = async () => {
          if (ringing) onEvent(pluckEvent(90));
          log.push('take ended');
        };
        return { port: port1, end };
      },
      analyse: async () => [pluckEvent(100)],
      inspect: () => Promise.reject(new Error('not asked')),
    },
    draws: { draw: async () => undefined },
    counsellor: { ask: () => {} },
    player: { play: async () => {} },
    pluckFiles: { wav: () => new Blob(), json: () => new Blob() },
    planner: { plan: async () => undefined, second: async () => undefined, tryHere: async () => [] },
    decoder: {
      decode: async (file) =>
        file.name.endsWith('.wav')
          ? { kind: 'decoded-file', recording: { samples: new Float32Array(8), sampleRateHz: 44_100 }, notes: [] }
          : { kind: 'file-failure', why: 'not-sound', text: 'It is no sound.' },
    },
    replay: {
      start: ({ onEnd }) => {
        log.push('plays');
        queueMicrotask(onEnd);
        return { stop: () => log.push('replay stopped') };
      },
    },
    memory: { last: () => undefined, keep: (entered) => kept.push(entered), forget: () => kept.splice(0) },
    demo: async () => ({
      recording: { samples: new Float32Array(8), sampleRateHz: 48_000 },
      entered: { ...EMPTY_SETUP, spanLength: '200' },
    }),
  };
  const store = new Store(initialState());
  const live = new LiveMoments();
  const effects = new Effects({ store, live, outside });
  return {
    log,
    kept,
    store,
    live,
    effects,
    allow: () => answerAsking(microphone),
    refuse: () => answerAsking({ kind: 'capture-failure', why: 'blocked', detail: '' }),
    tell: (event: AnalystEvent) => tell(event),
    trouble: (what: CaptureTrouble) => trouble(what),
    letRing: () => {
      ringing = true;
    },
  };
}

async function listening() {
  const bench = workbench();
  void bench.effects.listen();
  await settled();
  bench.allow();
  await settled();
  return bench;
}

describe('listen', () => {
  it('opens, sends the sound to the analyst, and names the devices that are known only then', async () => {
    const { store, log } = await listening();
    expect(store.state.activity).toMatchObject({ kind: 'listening', source: 'microphone', device: { label: 'Desk' } });
    expect(store.state.devices).toHaveLength(1);
    expect(log).toEqual(['sends']);
  });

  it('shows a refusal and can be tried again', async () => {
    const bench = workbench();
    void bench.effects.listen();
    await settled();
    bench.refuse();
    await settled();
    expect(bench.store.state.notice).toMatchObject({ kind: 'capture-failure', failure: { why: 'blocked' } });
    void bench.effects.listen();
    await settled();
    bench.allow();
    await settled();
    expect(bench.store.state.activity.kind).toBe('listening');
  });

  it('closes a microphone that was allowed after the person had turned away', async () => {
    const bench = workbench();
    void bench.effects.listen();
    await settled();
    await bench.effects.stop();
    expect(bench.store.state.activity.kind).toBe('idle');
    bench.allow();
    await settled();
    expect(bench.log).toEqual(['closed']);
    expect(bench.store.state.activity.kind).toBe('idle');
  });

  it('passes moments to the eye and not to the store', async () => {
    const { store, live, tell } = await listening();
    const before = store.state;
    const seen: unknown[] = [];
    live.follow((moment) => seen.push(moment));
    tell({ kind: 'moment', peakDbfs: -20, levelDbfs: -30, clipped: false, binWidthHz: 1, levelsDbfs: new Float32Array(4) });
    expect(seen).toHaveLength(1);
    expect(store.state).toBe(before);
  });
});

describe('stop', () => {
  it('releases the device first and hears out a pluck that still rings', async () => {
    const { effects, letRing, log, store } = await listening();
    letRing();
    await effects.stop();
    expect(log).toEqual(['sends', 'closed', 'take ended']);
    expect(store.state.answer.plucks).toHaveLength(1);
    expect(store.state.activity.kind).toBe('idle');
  });

  it.each(['gone', 'recorder-failed'] as const)('ends by itself when the microphone is %s', async (what) => {
    const { trouble, log, store } = await listening();
    trouble(what);
    await settled();
    expect(log).toContain('closed');
    expect(store.state.notice).toEqual({ kind: 'lost', why: what });
  });

  it('stays where the sound is only paused, and resumes', async () => {
    const { trouble, effects, store, log } = await listening();
    trouble('paused');
    expect(store.state.activity).toMatchObject({ kind: 'listening', obstacle: 'paused' });
    await effects.resume();
    expect(log).toContain('resumed');
    trouble('resumed');
    expect(store.state.activity).toMatchObject({ kind: 'listening', obstacle: undefined });
  });

  it('says so when the analysis breaks, and does not wait for it', async () => {
    const { tell, log, store } = await listening();
    tell({ kind: 'failed', detail: 'out of memory' });
    await settled();
    expect(log).toEqual(['sends', 'closed']);
    expect(store.state.notice).toEqual({ kind: 'lost', why: 'analysis-failed' });
  });
});

describe('demo and recordings', () => {
  it('plays the demo to its end and remembers only the own setup', async () => {
    const { effects, store, log, kept } = workbench();
    store.dispatch({ kind: 'setup-entered', change: { spanLength: '150' } });
    await effects.playDemo();
    await settled();
    expect(store.state.activity.kind).toBe('idle');
    expect(log).toEqual(['plays', 'replay stopped', 'take ended']);
    expect(store.state.entered.spanLength).toBe('200');
    expect(kept.map(({ spanLength }) => spanLength)).toEqual(['150']);
    await effects.leaveDemo();
    expect(store.state.entered.spanLength).toBe('150');
  });

  it('ends the listening when a recording is opened', async () => {
    const { effects, log, store } = await listening();
    await effects.openRecording(new File([], 'take.wav'));
    expect(log).toContain('closed');
    expect(store.state.answer.reading?.frequencyHz.value).toBeCloseTo(100, 6);
  });

  it('says what is wrong with a file', async () => {
    const { effects, store } = workbench();
    await effects.openRecording(new File([], 'letter.txt'));
    expect(store.state.notice).toMatchObject({ kind: 'file-failure', failure: { text: 'It is no sound.' } });
  });
});

describe('an errand of another place', () => {
  const errand = { ...EMPTY_SETUP, spanLength: '240' };

  it('listens with its own setup, and gives back setup and plucks that were there before', async () => {
    const bench = await listening();
    bench.tell(pluckEvent(120));
    await bench.effects.stop();
    bench.store.dispatch({ kind: 'setup-entered', change: { spanLength: '180' } });
    void bench.effects.listenFor('belts', errand);
    await settled();
    bench.allow();
    await settled();
    expect(bench.store.state).toMatchObject({
      errand: { owner: 'belts' },
      entered: { spanLength: '240' },
      activity: { kind: 'listening' },
    });
    bench.tell(pluckEvent(90));
    expect(bench.store.state.answer.plucks).toHaveLength(1);
    await bench.effects.endErrand();
    expect(bench.store.state.errand).toBeUndefined();
    expect(bench.store.state.entered.spanLength).toBe('180');
    expect(bench.store.state.answer.plucks.map(({ frequencyHz }) => Math.round(frequencyHz.value))).toEqual([120]);
    expect(bench.kept.map(({ spanLength }) => spanLength)).not.toContain('240');
  });

  it('is over as soon as the person listens for themselves', async () => {
    const bench = workbench();
    await bench.effects.openRecordingFor('belts', errand, new File(['x'], 'a.wav'));
    expect(bench.store.state.answer.plucks).toHaveLength(1);
    void bench.effects.listen();
    await settled();
    expect(bench.store.state.errand).toBeUndefined();
    expect(bench.store.state.answer.plucks).toHaveLength(0);
  });
});
