/** What the Reading says in each state of the page; the sentences are those of the word table. */

import { describe, expect, it } from 'vitest';
import { Figures } from '../../../../src/ui/format.ts';
import { figureText } from '../../../../src/ui/screens/reading-shape.ts';
import { readingView } from '../../../../src/ui/screens/reading-view.ts';
import { OWN_BELT } from '../../../../src/ui/state/span-setup.ts';
import { type AppEvent, type AppState, initialState, reduce } from '../../../../src/ui/state/state.ts';
import { en } from '../../../../src/words/en.ts';
import { pluckEvent } from '../../../support/heard-plucks.ts';

const figures = new Figures('en');
const having = (...events: AppEvent[]): AppState => events.reduce(reduce, initialState());
const view = (...events: AppEvent[]) => readingView(having(...events), figures);
const text = (...events: AppEvent[]) => figureText(view(...events).large);

const ASKED: AppEvent = { kind: 'microphone-asked' };
const BEGAN: AppEvent = { kind: 'listening-began', source: 'microphone', sampleRateHz: 48_000, processing: 'untouched' };
const READY: AppEvent = { kind: 'heard', event: { kind: 'ready', atS: 0.5 } };
const ONSET: AppEvent = { kind: 'heard', event: { kind: 'onset', atS: 1 } };
const ENDED: AppEvent = { kind: 'listening-ended' };
const pluck = (frequencyHz: number, change = {}): AppEvent => ({ kind: 'heard', event: pluckEvent(frequencyHz, change) });
const missed = (why: 'not-a-span' | 'too-quiet'): AppEvent => ({ kind: 'heard', event: { kind: 'no-pluck', atS: 1, why } });
const failed = (why: 'blocked' | 'none' | 'in-use' | 'insecure-page'): AppEvent => ({
  kind: 'capture-failed',
  failure: { kind: 'capture-failure', why, detail: '' },
});
const told = (change: Extract<AppEvent, { kind: 'setup-entered' }>['change']): AppEvent => ({ kind: 'setup-entered', change });
/** A weighed belt on a long, well measured span between pulleys. */
const GOOD = told({ beltId: OWN_BELT, linearDensity: '8 ± 0.04', spanLength: '300', spanKnownTo: '0.3', ends: ['pulley', 'pulley'] });

describe('before the first reading', () => {
  it.each([
    ['empty', [], 'No reading yet'],
    ['asking', [ASKED], 'Allow the microphone'],
    ['waiting', [ASKED, BEGAN], 'Quiet for a moment'],
    ['listening', [BEGAN, READY], 'Pluck the span'],
    ['heard a pluck', [BEGAN, READY, ONSET], 'Heard it'],
    ['blocked', [ASKED, failed('blocked')], 'The microphone is blocked'],
    ['none', [ASKED, failed('none')], 'No microphone found'],
    ['in use', [ASKED, failed('in-use')], 'Another program holds the microphone'],
    ['insecure page', [ASKED, failed('insecure-page')], 'This page may not listen'],
    ['silent', [BEGAN, { kind: 'obstacle', obstacle: 'silent' }], 'The microphone gives silence'],
    ['paused', [BEGAN, { kind: 'obstacle', obstacle: 'paused' }], 'Listening has paused'],
    ['gone', [BEGAN, { kind: 'listening-ended', lost: 'gone' }], 'The microphone went away'],
    ['opening a file', [{ kind: 'file-opening', fileName: 'a.wav' }], 'Reading the recording'],
  ] as readonly [string, AppEvent[], string][])('%s', (_state, events, large) => {
    expect(text(...events)).toBe(large);
    expect(view(...events).lead).not.toBe('');
  });

  it('says nothing new to the ear between the ring and its answer', () => {
    expect(view(BEGAN, READY, ONSET).spoken).toBe(view(BEGAN, READY).spoken);
  });

  it('counts knocks that were no span', () => {
    const heard = view(BEGAN, READY, missed('not-a-span'), missed('not-a-span'));
    expect(heard.grade).toEqual({ grade: 'nothing', word: 'nothing heard' });
    expect(heard.lead).toBe('Two knocks, but no ringing span.');
    expect(view(BEGAN, READY, missed('too-quiet')).lead).toContain('too faint to measure');
  });

  it('says what is wrong with a file in its own words', () => {
    const failure = { kind: 'file-failure', why: 'damaged', text: 'It ends inside its header.' } as const;
    const said = view({ kind: 'file-failed', failure, fileName: 'a.wav' });
    expect([figureText(said.large), said.lead]).toEqual(['This file could not be read', 'It ends inside its header.']);
  });
});

describe('a reading', () => {
  it('holds force, uncertainty, frequency and grade, for the eye and for the ear', () => {
    const said = view(GOOD, BEGAN, pluck(60), pluck(60.02), pluck(59.98));
    // Mersenne's law: 4 × 0.008 kg/m × (0.3 m)² × (60 Hz)² = 10.4 N; stiffness and ends take a little
    expect(said.large.kind).toBe('force');
    expect(Number((said.large as { value: string }).value)).toBeGreaterThan(9.5);
    expect(Number((said.large as { value: string }).value)).toBeLessThan(10.5);
    expect(said.grade?.word).toBe('trusted');
    expect(said.caption).toBe('Reading, three plucks');
    expect(said.spoken).toMatch(/^Reading: [\d.]+ newtons, plus or minus [\d.]+\. Trusted\. 60\.0\d* hertz/u);
  });

  it('keeps its place while the next pluck rings', () => {
    const before = view(GOOD, BEGAN, pluck(60));
    const ringing = view(GOOD, BEGAN, pluck(60), ONSET);
    expect(ringing).toEqual(before);
  });

  it('asks for what is missing and gives the frequency', () => {
    const said = view(BEGAN, pluck(60));
    expect(said.large.kind).toBe('frequency');
    expect(said.lead).toBe(en.reading.needsSpan);
    expect(view(told({ beltId: OWN_BELT }), BEGAN, pluck(60)).lead).toBe(en.reading.needsBoth);
    expect(view(told({ beltId: OWN_BELT, spanLength: '300' }), BEGAN, pluck(60)).lead).toBe(en.reading.needsBelt);
  });

  it('stands against the target in words', () => {
    const against = (from: string, to: string) => view(GOOD, told({ targetFrom: from, targetTo: to }), BEGAN, pluck(60), pluck(60)).lead;
    expect(against('2', '4')).toMatch(/^High by [\d.]+\sN\.$/u);
    expect(against('20', '30')).toMatch(/^Low by [\d.]+\sN\.$/u);
    expect(against('6', '16')).toMatch(/^Inside the target/u);
  });

  it('says that one pluck is one pluck where there is no target', () => {
    expect(view(GOOD, BEGAN, pluck(60)).lead).toBe(en.reading.onePluck);
  });

  it('names the belt that nobody weighed', () => {
    const said = view(told({ spanLength: '300' }), BEGAN, pluck(60), pluck(60));
    expect(said.grade?.grade).toBe('doubtful');
    expect(said.second).toBe('Clear sound. Nobody has weighed this belt: weigh a metre of it.');
  });

  it('gives bounds instead of a value where the span decides nothing', () => {
    const said = view(told({ spanLength: '30', spanKnownTo: '2' }), BEGAN, pluck(480), pluck(480));
    expect(said.grade?.grade).toBe('unusable');
    expect(said.large.kind).toBe('bounds');
    expect(said.lead).toBe(en.reading.cannotTell);
    expect(said.spoken).not.toContain('plus or minus 0 newtons');
  });

  it('gives way to a microphone that went away, and comes back', () => {
    const gone: AppEvent = { kind: 'listening-ended', lost: 'gone' };
    expect(view(GOOD, BEGAN, pluck(60), gone).lead).toContain('Your one pluck is safe');
    expect(view(GOOD, BEGAN, pluck(60), gone, { kind: 'notice-dismissed' }).large.kind).toBe('force');
  });

  it('stays when the next sound is no pluck, and says so', () => {
    const said = view(GOOD, BEGAN, READY, pluck(60), missed('too-quiet'));
    expect(said.large.kind).toBe('force');
    expect(said.second).toBe(en.reading.lastSoundFaint);
  });

  it('names its file', () => {
    const events = [pluckEvent(60), pluckEvent(60)];
    const heard: AppEvent = { kind: 'recording-heard', fileName: 'a.wav', events, notes: [], sampleRateHz: 48_000 };
    expect(view(GOOD, heard).caption).toBe('Reading, two plucks in a.wav');
  });

  it('says that a file held no pluck', () => {
    const heard: AppEvent = { kind: 'recording-heard', fileName: 'a.wav', events: [], notes: [], sampleRateHz: 48_000 };
    expect(view(GOOD, heard).grade?.word).toBe('nothing heard');
    expect(view(GOOD, BEGAN, ENDED).grade).toBeUndefined();
  });

  it('writes numbers as the reader does', () => {
    const state = having(GOOD, BEGAN, pluck(60), pluck(60));
    expect(figureText(readingView(state, new Figures('de')).large)).toMatch(/^\d+,\d+\sN\s±\s\d+,\d+\sN$/u);
  });
});

describe('octave open', () => {
  const open = { rivalHz: 30, leadOverRival: 0.2 };

  it('gives both forces and neither of them alone', () => {
    const said = view(GOOD, BEGAN, pluck(60, open));
    expect(said.grade?.grade).toBe('unusable');
    const [, one, other] = /^([\d.]+) or ([\d.]+)/u.exec(figureText(said.large))!;
    expect(Number(one) / Number(other)).toBeGreaterThan(3.5); // half the frequency, about a quarter of the force
    expect(said.lead).toBe(en.reading.twoFit);
  });
});
