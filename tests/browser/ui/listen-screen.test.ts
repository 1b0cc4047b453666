/** The screen as it stands in the browser: nothing jumps from the first second to the last, and the level never waits for the store. */

import { beforeEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import type { AppEvent } from '../../../src/ui/state/state.ts';
import { pluckEvent } from '../../support/heard-plucks.ts';
import { deep, drawn, mountApp } from './listen-harness.ts';

const pluck = (frequencyHz: number): AppEvent => ({ kind: 'heard', event: pluckEvent(frequencyHz) });
const onset: AppEvent = { kind: 'heard', event: { kind: 'onset', atS: 1 } };

/** From the opening screen to the end of a reading. */
const COURSE: readonly [string, AppEvent][] = [
  ['asking', { kind: 'microphone-asked' }],
  ['waiting', { kind: 'listening-began', source: 'microphone', sampleRateHz: 48_000, processing: 'untouched' }],
  ['listening', { kind: 'heard', event: { kind: 'ready', atS: 0.5 } }],
  ['a knock', { kind: 'heard', event: { kind: 'no-pluck', atS: 1, why: 'not-a-span' } }],
  ['ringing', onset],
  ['first pluck', pluck(90)],
  ['ringing again', onset],
  ['second pluck', pluck(90.1)],
  ['third pluck', pluck(89.9)],
  ['gone', { kind: 'listening-ended', lost: 'gone' }],
  ['back to the figures', { kind: 'notice-dismissed' }],
];

const placeOf = (selector: string) => {
  const { x, y, width, height } = deep(selector)!.getBoundingClientRect();
  return { x, y, width, height };
};

describe('on a wide page', () => {
  beforeEach(() => page.viewport(1280, 800));

  it('keeps Reading and ruler where they are through every state', async () => {
    const { store } = mountApp();
    store.dispatch({ kind: 'setup-entered', change: { spanLength: '180', targetFrom: '6', targetTo: '9' } });
    await drawn();
    const ruler = placeOf('force-ruler');
    const reading = placeOf('reading-panel');
    for (const [state, event] of COURSE) {
      store.dispatch(event);
      await drawn();
      expect(placeOf('force-ruler'), state).toEqual(ruler);
      expect(placeOf('reading-panel'), state).toEqual(reading);
    }
  });
});

describe('the setup beside a reading', () => {
  beforeEach(() => page.viewport(1280, 800));

  const summary = () => deep('.summary');
  const toggle = () => deep('.head .toggle') as HTMLButtonElement;
  const field = (id: string) => deep(`#${id}`) as HTMLInputElement;

  async function readOnce() {
    const { store } = mountApp();
    store.dispatch({ kind: 'setup-entered', change: { spanLength: '180', targetFrom: '6', targetTo: '9' } });
    store.dispatch(COURSE[1]![1]);
    await drawn();
    expect(summary()).toBeUndefined();
    store.dispatch(pluck(90));
    await drawn();
    return store;
  }

  it('rests as a summary, and opens and closes by its button', async () => {
    await readOnce();
    const said = summary()!.textContent!.replace(/[\s\u00a0]+/gu, ' ');
    for (const text of ['180 mm ± 1 mm', '6 to 9 N', 'Hz on this span', 'not known']) expect(said).toContain(text);
    toggle().click();
    await drawn();
    expect(summary()).toBeUndefined();
    toggle().click();
    await drawn();
    expect(summary()).toBeDefined();
  });

  it('opens where the keyboard enters it, stays open while the force goes and comes, and closes behind the keyboard', async () => {
    const store = await readOnce();
    field('spanLength').focus();
    await drawn();
    expect(summary()).toBeUndefined();
    for (const spanLength of ['', '2', '20', '200']) {
      store.dispatch({ kind: 'setup-entered', change: { spanLength } });
      await drawn();
      expect(summary(), spanLength).toBeUndefined();
    }
    deep('listen-control')!.shadowRoot!.querySelector('button')!.focus();
    await drawn();
    expect(summary()?.textContent).toContain('200');
  });

  it('is the form as long as something is missing', async () => {
    const store = await readOnce();
    store.dispatch({ kind: 'setup-entered', change: { spanLength: '' } });
    await drawn();
    expect(summary()).toBeUndefined();
    store.dispatch({ kind: 'setup-entered', change: { spanLength: '180', targetTo: '' } });
    await drawn();
    expect(summary()).toBeUndefined();
  });
});

describe('on a phone', () => {
  beforeEach(() => page.viewport(390, 844));

  it('keeps the ruler where it is from the first listening on, with the setup in one line', async () => {
    const { store } = mountApp();
    store.dispatch({ kind: 'setup-entered', change: { spanLength: '180', targetFrom: '6', targetTo: '9' } });
    store.dispatch(COURSE[0]![1]);
    await drawn();
    const ruler = placeOf('force-ruler');
    for (const [state, event] of COURSE.slice(1)) {
      store.dispatch(event);
      await drawn();
      expect(placeOf('force-ruler'), state).toEqual(ruler);
      expect(deep('#belt')!.checkVisibility(), state).toBe(false);
    }
  });

  it('comes back to the Reading when something is started further down', async () => {
    const { store } = mountApp();
    await drawn();
    window.scrollTo(0, 400);
    expect(window.scrollY).toBeGreaterThan(100);
    store.dispatch({ kind: 'file-opening', fileName: 'a.wav' });
    await drawn();
    expect(window.scrollY).toBe(0);
  });

  it('shows all fields before it listens', async () => {
    mountApp();
    await drawn();
    for (const field of ['#belt', '#spanLength', '#targetFrom', '#targetTo']) expect(deep(field)!.checkVisibility(), field).toBe(true);
  });
});

describe('the sound of the moment', () => {
  it('moves the level and the live line without a change of state', async () => {
    const { store, live } = mountApp();
    store.dispatch(COURSE[1]![1]);
    await drawn();
    const before = store.state;
    const levelsDbfs = new Float32Array(1500).fill(-70);
    live.show({ kind: 'moment', peakDbfs: -18, levelDbfs: -30, roomDbfs: -60, clipped: false, binWidthHz: 2, levelsDbfs });
    await drawn();
    const meter = deep('level-meter')!.shadowRoot!.querySelector('[role=meter]')!;
    expect(meter.getAttribute('aria-valuenow')).toBe('-18');
    expect(meter.getAttribute('aria-valuetext')).toMatch(/^.18 dB, the room .60 dB$/u);
    expect(deep('spectrum-plot')!.shadowRoot!.querySelector('.live')!.getAttribute('d')).not.toBe('');
    expect(store.state).toBe(before);
  });

  it('bears digital silence', async () => {
    const { store, live } = mountApp();
    store.dispatch(COURSE[1]![1]);
    await drawn();
    const silence = Number.NEGATIVE_INFINITY;
    const levelsDbfs = new Float32Array(1500).fill(silence);
    live.show({ kind: 'moment', peakDbfs: silence, levelDbfs: silence, roomDbfs: silence, clipped: false, binWidthHz: 2, levelsDbfs });
    await drawn();
    expect(deep('level-meter')!.shadowRoot!.querySelector('[role=meter]')!.getAttribute('aria-valuetext')).toBe('silent');
  });
});

describe('a belt that nobody weighed', () => {
  it('is weighed in one press, stays what it is, and is weighed from then on', async () => {
    const { store } = mountApp();
    await drawn();
    const before = store.state.entered.beltId;
    (deep('#belt-note button') as HTMLButtonElement).click();
    await drawn();
    const length = deep('#length') as HTMLInputElement;
    expect((length.getRootNode() as ShadowRoot).activeElement).toBe(length);
    for (const [field, text] of Object.entries({ length: '1 m', mass: '7.7', scaleStep: '0.1' })) {
      (deep(`#${field}`) as HTMLInputElement).value = text;
    }
    (deep('weigh-dialog')!.shadowRoot!.querySelector('button[type=submit]') as HTMLButtonElement).click();
    await drawn();
    expect(store.state.entered.beltId).toBe(before);
    const belt = store.state.understood.setup.belt!;
    expect(belt.densityFrom).toBe('weighed');
    expect(belt.linearDensityKgPerM.value).toBeCloseTo(0.0077, 4);
    expect(deep('#length')).toBeUndefined();
  });

  it('keeps its dialog open where something is missing, at the field that it is', async () => {
    const { store } = mountApp();
    await drawn();
    (deep('#belt-note button') as HTMLButtonElement).click();
    await drawn();
    (deep('#length') as HTMLInputElement).value = '1 m';
    (deep('weigh-dialog')!.shadowRoot!.querySelector('button[type=submit]') as HTMLButtonElement).click();
    await drawn();
    const mass = deep('#mass')!;
    expect((mass.getRootNode() as ShadowRoot).activeElement).toBe(mass);
    expect(store.state.entered.weighing).toBeUndefined();
  });
});
