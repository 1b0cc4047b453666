/** The cue: only where it was asked for, only after listening has ended, never while the page listens. */

import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { SoundCue } from '../../../../src/ui/state/sound-cue.ts';
import { initialState } from '../../../../src/ui/state/state.ts';
import { Store } from '../../../../src/ui/state/store.ts';

function bench() {
  const store = new Store(initialState());
  const kept = new Map<string, string>();
  const storage = () =>
    ({
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
      removeItem: (key: string) => kept.delete(key),
    }) as unknown as Storage;
  const played: (readonly number[])[] = [];
  const cue = new SoundCue({ store, storage, play: (tones) => played.push(tones) });
  const listen = (source: 'microphone' | 'demo' = 'microphone') =>
    store.dispatch({ kind: 'listening-began', source, sampleRateHz: 48_000 });
  const stop = () => store.dispatch({ kind: 'listening-ended' });
  return { cue, played, listen, stop };
}

describe('the sound cue', () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  it('is silent unless it was asked for', () => {
    const { played, listen, stop } = bench();
    listen();
    stop();
    vi.runAllTimers();
    expect(played).toEqual([]);
  });

  it('comes once listening has ended and the microphone is let go, falling where nothing was heard', () => {
    const { cue, played, listen, stop } = bench();
    cue.turn(true);
    played.length = 0;
    listen();
    vi.runAllTimers();
    expect(played).toEqual([]);
    stop();
    expect(played).toEqual([]);
    vi.runAllTimers();
    expect(played.length).toBe(1);
    expect(played[0]![1]).toBeLessThan(played[0]![0]!);
  });

  it('gives way where somebody listens again at once', () => {
    const { cue, played, listen, stop } = bench();
    cue.turn(true);
    played.length = 0;
    listen();
    stop();
    listen();
    vi.runAllTimers();
    expect(played).toEqual([]);
  });

  it('says nothing after the demo, and after it was turned off', () => {
    const { cue, played, listen, stop } = bench();
    cue.turn(true);
    played.length = 0;
    listen('demo');
    stop();
    vi.runAllTimers();
    cue.turn(false);
    listen();
    stop();
    vi.runAllTimers();
    expect(played).toEqual([]);
  });

  it('stays quiet where the browser keeps nothing', () => {
    const store = new Store(initialState());
    const forbidden = () => {
      throw new DOMException('forbidden', 'SecurityError');
    };
    const cue = new SoundCue({ store, storage: forbidden, play: () => {} });
    expect(cue.isOn).toBe(false);
    expect(() => cue.turn(true)).not.toThrow();
  });
});
