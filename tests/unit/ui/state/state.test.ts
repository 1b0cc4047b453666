import { describe, expect, it } from 'vitest';
import { EMPTY_SETUP } from '../../../../src/ui/state/span-setup.ts';
import { type AppEvent, type AppState, initialState, reduce } from '../../../../src/ui/state/state.ts';
import { pluckEvent } from '../../../support/heard-plucks.ts';

const having = (events: readonly AppEvent[], from: AppState = initialState()): AppState => events.reduce(reduce, from);

const BEGAN: AppEvent = { kind: 'listening-began', source: 'microphone', sampleRateHz: 48_000, processing: 'untouched' };
const heard = (frequencyHz: number): AppEvent => ({ kind: 'heard', event: pluckEvent(frequencyHz) });
const SPAN: AppEvent = { kind: 'setup-entered', change: { spanLength: '180 mm' } };
const READY: AppEvent = { kind: 'heard', event: { kind: 'ready', atS: 0.7 } };
const onset = (atS: number): AppEvent => ({ kind: 'heard', event: { kind: 'onset', atS } });
const noPluck = (atS: number): AppEvent => ({ kind: 'heard', event: { kind: 'no-pluck', atS, why: 'not-a-span' } });
const ENDED: AppEvent = { kind: 'listening-ended' };

describe('listening', () => {
  it('goes from asking to hearing the room, to ready, to ringing and back', () => {
    const ear = (state: AppState) => (state.activity.kind === 'listening' ? state.activity.ear : state.activity.kind);
    let state = having([{ kind: 'microphone-asked' }]);
    expect(ear(state)).toBe('asking');
    state = having([BEGAN], state);
    expect(ear(state)).toBe('waiting');
    state = having([{ kind: 'heard', event: { kind: 'ready', atS: 0.5 } }], state);
    expect(ear(state)).toBe('ready');
    state = having([{ kind: 'heard', event: { kind: 'onset', atS: 1 } }], state);
    expect(ear(state)).toBe('ringing');
    state = having([heard(90)], state);
    expect(ear(state)).toBe('ready');
    expect(having([ENDED], state).activity).toEqual({ kind: 'idle' });
  });

  it('lets nothing that sounds before the room is known speak, but a pluck', () => {
    const early = having([BEGAN, onset(0.2), noPluck(0.2)]);
    expect(early.activity).toMatchObject({ ear: 'waiting' });
    expect(early.take?.missed).toEqual([]);
    const ready = having([onset(0.5), READY, noPluck(0.5)], early); // its answer comes late, and is still of before
    expect(ready.activity).toMatchObject({ ear: 'ready' });
    expect(ready.take?.missed).toEqual([]);
    expect(having([heard(90)], early).answer.plucks).toHaveLength(1);
    expect(having([{ kind: 'heard', event: { kind: 'no-pluck', atS: 0, why: 'no-onset' } }], ready).take?.missed).toEqual(['no-onset']);
  });

  it('goes on ringing while something that began later is not told yet', () => {
    const both = having([BEGAN, READY, onset(2), onset(2.9)]);
    const first = having([noPluck(1.99)], both);
    expect(first.activity).toMatchObject({ ear: 'ringing' });
    expect(having([noPluck(2.91)], first).activity).toMatchObject({ ear: 'ready' });
    expect(having([noPluck(2.91)], both).activity).toMatchObject({ ear: 'ready' }); // an answer that never came is not waited for
  });

  it('gives the frequency without a span, and the force as soon as the span is told', () => {
    const state = having([BEGAN, heard(90)]);
    expect(state.answer.reading?.frequencyHz.value).toBeCloseTo(90, 6);
    expect(state.answer.reading?.forceN).toBeUndefined();
    const told = having([SPAN], state);
    // Mersenne's law, 4 μ L² f²: 4 × 0.0078 kg/m × (0.18 m)² × (90 Hz)² = 8.19 N, less what stiffness and ends take
    expect(told.answer.reading?.forceN?.value).toBeGreaterThan(0.85 * 8.19);
    expect(told.answer.reading?.forceN?.value).toBeLessThan(1.02 * 8.19);
  });

  it('recomputes from the same sounds and leaves them as they are', () => {
    const state = having([SPAN, BEGAN, heard(90), heard(90.1)]);
    const longer = having([{ kind: 'setup-entered', change: { spanLength: '360' } }], state);
    expect(longer.take?.plucks).toBe(state.take?.plucks);
    expect(longer.answer.reading!.forceN!.value / state.answer.reading!.forceN!.value).toBeGreaterThan(3.9);
  });

  it('keeps the plucks when the microphone goes away, and goes on with them', () => {
    const lost = having([BEGAN, heard(90), { kind: 'listening-ended', lost: 'gone' }]);
    expect(lost.notice).toEqual({ kind: 'lost', why: 'gone' });
    expect(lost.take?.plucks).toHaveLength(1);
    const again = having([{ kind: 'microphone-asked' }, BEGAN, heard(90)], lost);
    expect(again.notice).toBeUndefined();
    expect(again.take?.plucks).toHaveLength(2);
  });

  it('holds the sound for altered once it was altered', () => {
    const altered: AppEvent = { ...BEGAN, kind: 'listening-began', processing: 'altered' } as AppEvent;
    expect(having([altered, heard(90), ENDED, BEGAN]).take?.processing).toBe('altered');
  });

  it('drops what comes when nobody listens', () => {
    const state = having([BEGAN, ENDED]);
    expect(reduce(state, heard(90))).toBe(state);
  });
});

describe('undo and start over', () => {
  it('takes back the last pluck and its part of the reading', () => {
    const state = having([SPAN, BEGAN, heard(90), heard(91)]);
    const undone = having([{ kind: 'pluck-undone' }], state);
    expect(undone.take?.plucks).toEqual(state.take?.plucks.slice(0, 1));
    expect(undone.answer.reading?.frequencyHz.value).toBeCloseTo(90, 6);
    expect(having([{ kind: 'pluck-undone' }], undone).answer.reading).toBeUndefined();
  });

  it('starts over while it listens without ending the listening', () => {
    const state = having([BEGAN, heard(90), { kind: 'started-over' }]);
    expect(state.answer.plucks).toEqual([]);
    expect(state.activity.kind).toBe('listening');
    expect(having([heard(80)], state).answer.reading?.frequencyHz.value).toBeCloseTo(80, 6);
  });
});

describe('the demo', () => {
  const demo: AppEvent = { kind: 'demo-prepared', entered: { ...EMPTY_SETUP, spanLength: '200' } };
  const began: AppEvent = { kind: 'listening-began', source: 'demo', sampleRateHz: 48_000 };

  it('lends its setup and gives the own one back, without its plucks', () => {
    const state = having([SPAN, demo, began, heard(90), ENDED]);
    expect(state.entered.spanLength).toBe('200');
    const left = having([{ kind: 'demo-left' }], state);
    expect(left.entered.spanLength).toBe('180 mm');
    expect(left.answer.reading).toBeUndefined();
  });

  it('played twice still gives back the own setup', () => {
    expect(having([SPAN, demo, began, ENDED, demo, began, ENDED, { kind: 'demo-left' }]).entered.spanLength).toBe('180 mm');
  });

  it.each([
    ['a microphone', { kind: 'microphone-asked' }],
    ['a recording', { kind: 'file-opening', fileName: 'a.wav' }],
  ] as const)('never explains the sound of %s with its span', (_name, event) => {
    expect(having([SPAN, demo, began, heard(90), ENDED, event]).entered.spanLength).toBe('180 mm');
  });
});

describe('a recording', () => {
  const opened = (...frequencies: number[]): AppEvent => ({
    kind: 'recording-heard',
    fileName: 'a.wav',
    events: frequencies.map((frequencyHz) => pluckEvent(frequencyHz)),
    notes: ['channel 2 of 2 used'],
    sampleRateHz: 44_100,
  });

  it('takes the place of what was heard before', () => {
    const state = having([BEGAN, heard(90), ENDED, { kind: 'file-opening', fileName: 'a.wav' }, opened(100, 101)]);
    expect(state.take).toMatchObject({ source: 'recording', fileName: 'a.wav', notes: ['channel 2 of 2 used'] });
    expect(state.answer.plucks).toHaveLength(2);
  });

  it('that cannot be read leaves the plucks alone', () => {
    const failure = { kind: 'file-failure', why: 'damaged', text: 'It ends inside its header.' } as const;
    const state = having([BEGAN, heard(90), ENDED, { kind: 'file-failed', failure, fileName: 'a.wav' }]);
    expect(state.notice).toMatchObject({ kind: 'file-failure', fileName: 'a.wav' });
    expect(state.answer.plucks).toHaveLength(1);
    expect(having([{ kind: 'notice-dismissed' }], state).notice).toBeUndefined();
  });
});
