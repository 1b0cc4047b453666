/** A numbering that is open: the deciding pluck is asked for, read for its numbering only, and taken back first; what is kept of the sounds is bounded. */

import { describe, expect, it } from 'vitest';
import { NO_COUNSEL } from '../../../../src/core/counsel.ts';
import type { PluckSound } from '../../../../src/core/outcome.ts';
import type { HeardEvent, SoundClip } from '../../../../src/ports.ts';
import { Figures } from '../../../../src/ui/format.ts';
import { readingView } from '../../../../src/ui/screens/reading-view.ts';
import { followCounsel } from '../../../../src/ui/state/counsel.ts';
import { type AppEvent, type AppState, initialState, reduce } from '../../../../src/ui/state/state.ts';
import { Store } from '../../../../src/ui/state/store.ts';
import { pluckEvent, pluckSound } from '../../../support/heard-plucks.ts';

const having = (events: readonly AppEvent[], from: AppState = initialState()): AppState => events.reduce(reduce, from);
const figures = new Figures('en');
const SPAN: AppEvent = { kind: 'setup-entered', change: { spanLength: '250 mm' } };
const BEGAN: AppEvent = { kind: 'listening-began', source: 'microphone', sampleRateHz: 48_000, processing: 'untouched' };
const READY: AppEvent = { kind: 'heard', event: { kind: 'ready', atS: 0.7 } };

/** One partial, which may be the first or the second. */
function alone(hertz: number): PluckSound {
  const sound = pluckSound(hertz, { rivalHz: hertz / 2, leadOverRival: 1.4 });
  return { ...sound, partials: sound.partials.slice(0, 1) };
}
const clip = (startS = 0): SoundClip => ({ samples: new Float32Array(8), sampleRateHz: 8000, startS });
const heard = (sound: PluckSound): AppEvent => ({ kind: 'heard', event: { ...pluckEvent(100), sound, clip: clip() } as HeardEvent });
const open = () => having([SPAN, BEGAN, READY, heard(alone(130))]);

describe('an open numbering', () => {
  it('has both forces, and a deciding pluck can be asked for', () => {
    const state = open();
    expect(state.answer.octave?.own.forceN?.value).toBeGreaterThan(3 * state.answer.octave!.rival.forceN!.value);
    expect(having([{ kind: 'deciding-asked' }], state).deciding).toBe(true);
  });

  it('is settled by the next pluck, which is none of the reading', () => {
    const state = having([{ kind: 'deciding-asked' }], open());
    expect(readingView(state, figures).large).toEqual({ kind: 'sentence', text: 'Touch the middle, pluck at a quarter' });
    const settled = having([heard(alone(130))], state);
    expect(settled.deciding).toBeUndefined();
    expect(settled.answer.octave).toBeUndefined();
    expect(settled.answer.reading?.pluckCount).toBe(1);
    expect(Math.abs(settled.answer.reading!.frequencyHz.value / 65 - 1)).toBeLessThan(0.05);
    expect(readingView(settled, figures).second).toContain('Numbered by the pluck with a finger on the middle.');
    const more = having([heard(alone(130.2))], settled); // a plain pluck again, read by what was settled
    expect(more.answer.reading?.pluckCount).toBe(2);
    expect(more.answer.octave).toBeUndefined();
  });

  it('takes the deciding pluck back first, then the plain one', () => {
    const settled = having([{ kind: 'deciding-asked' }, heard(alone(130))], open());
    const back = having([{ kind: 'pluck-undone' }], settled);
    expect(back.answer.octave).toBeDefined();
    expect(back.take?.plucks).toHaveLength(1);
    expect(having([{ kind: 'pluck-undone' }], back).answer.reading).toBeUndefined();
  });

  it('may be left open, and is asked for nowhere else', () => {
    const left = having([{ kind: 'deciding-asked' }, { kind: 'deciding-dropped' }, heard(alone(130.1))], open());
    expect(left.take?.plucks).toHaveLength(2);
    expect(having([SPAN, BEGAN, READY, heard(pluckSound(130)), { kind: 'deciding-asked' }]).deciding).toBeUndefined();
    expect(having([{ kind: 'deciding-asked' }, { kind: 'started-over' }], open()).deciding).toBeUndefined();
  });

  it('goes on over a recording and over the microphone', () => {
    const recorded = having([
      SPAN,
      {
        kind: 'recording-heard',
        fileName: 'a.wav',
        events: [{ ...pluckEvent(100), sound: alone(130) } as HeardEvent],
        notes: [],
        sampleRateHz: 48_000,
      },
      { kind: 'deciding-asked' },
    ]);
    const byFile = having(
      [
        {
          kind: 'recording-heard',
          fileName: 'b.wav',
          events: [{ ...pluckEvent(100), sound: alone(260) } as HeardEvent],
          notes: [],
          sampleRateHz: 48_000,
        },
      ],
      recorded,
    );
    expect(byFile.answer.octave).toBeUndefined();
    expect(byFile.answer.reading?.frequencyHz.value).toBeCloseTo(130, 9); // an octave up: what was heard was the first
    const byEar = having([BEGAN, READY, heard(alone(260))], recorded);
    expect(byEar.answer.reading?.frequencyHz.value).toBeCloseTo(130, 9);
    const nothing = having([{ kind: 'recording-heard', fileName: 'c.wav', events: [], notes: [], sampleRateHz: 48_000 }], recorded);
    expect(nothing.deciding).toBe(true);
    expect(nothing.take?.plucks).toHaveLength(1);
  });
});

describe('what is kept of the sounds', () => {
  it('is the sound of the latest plucks, and of the latest that were none', () => {
    const plucks = Array.from({ length: 40 }, (_, i) => heard(pluckSound(90 + i / 100)));
    const state = having([BEGAN, READY, ...plucks]);
    const kept = state.take!.plucks.map((pluck) => pluck.clip !== undefined);
    expect(kept.filter(Boolean)).toHaveLength(24);
    expect(kept.lastIndexOf(false)).toBe(15);
    const knocks = Array.from(
      { length: 9 },
      (_, i): AppEvent => ({ kind: 'heard', event: { kind: 'no-pluck', atS: 2 + i, why: 'not-a-span', clip: clip(i) } }),
    );
    expect(having(knocks, state).take?.refused?.map(({ atS }) => atS)).toEqual([8, 9, 10]);
  });
});

describe('counsel', () => {
  it('is asked for with each new answer, and told only of the one that stands', () => {
    const store = new Store(initialState());
    const asked: (() => void)[] = [];
    followCounsel(store, { ask: (_, onAnswer) => asked.push(() => onAnswer(NO_COUNSEL)) });
    for (const event of [SPAN, BEGAN, READY]) store.dispatch(event);
    expect(asked).toHaveLength(0);
    store.dispatch(heard(pluckSound(90)));
    store.dispatch(heard(pluckSound(90.1)));
    expect(asked).toHaveLength(2);
    asked[0]!();
    expect(store.state.counsel).toBeUndefined();
    asked[1]!();
    expect(store.state.counsel).toBe(NO_COUNSEL);
    store.dispatch({ kind: 'started-over' });
    expect(store.state.counsel).toBeUndefined();
    expect(asked).toHaveLength(2);
  });

  it('gives one sentence of advice, beside the figures and not in what is spoken', () => {
    const state = having([SPAN, BEGAN, READY, heard(pluckSound(90))]);
    const forceN = state.answer.reading!.forceN!;
    const better = { ...forceN, low: forceN.value - forceN.u95! / 3, high: forceN.value + forceN.u95! / 3, u95: forceN.u95! / 3 };
    const advised = having(
      [
        {
          kind: 'counselled',
          about: state.answer,
          counsel: { ...NO_COUNSEL, advice: { kind: 'softer', forceN: better, grade: state.answer.reading!.grade } },
        },
      ],
      state,
    );
    const view = readingView(advised, figures);
    expect(view.advice).toMatch(/^Next time pluck half as far: ±\s[\d.]+ → ±\s[\d.]+\sN\.$/u);
    expect(view.spoken).toBe(readingView(state, figures).spoken);
    const lifted = having(
      [
        {
          kind: 'counselled',
          about: state.answer,
          counsel: { ...NO_COUNSEL, advice: { kind: 'damp-neighbour', forceN, grade: 'trusted' } },
        },
      ],
      state,
    );
    expect(readingView(lifted, figures).advice).toBe('Lay a finger on the span beside it: that would make it trusted.');
  });
});
