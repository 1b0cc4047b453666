/** The Reading where there are no figures to show: before the first pluck, while something stands in the way, after sounds that were none. */

import { assertNever } from '../../core/outcome.ts';
import { en } from '../../words/en.ts';
import { octaveEn } from '../../words/octave-en.ts';
import { nothingText } from '../../words/reasons-en.ts';
import type { AppState, Notice } from '../state/state.ts';
import { captionOf, type ReadingView } from './reading-shape.ts';

const words = en.reading;

function sentenceView(state: AppState, [text = '', lead = '']: readonly string[], second = ''): ReadingView {
  const spoken = [text.endsWith('.') ? text : `${text}.`, lead, second].filter((part) => part !== '').join(' ');
  return { caption: captionOf(state), large: { kind: 'sentence', text }, lead, second, spoken };
}

/** What the person has to know before anything else goes on. */
export function noticeView(state: AppState): ReadingView | undefined {
  const { notice, take } = state;
  return notice && sentenceView(state, noticeText(notice, take?.plucks.length ?? 0), noticeDetail(notice));
}

function noticeText(notice: Notice, pluckCount: number): readonly string[] {
  switch (notice.kind) {
    case 'capture-failure':
      return en.failures[notice.failure.why];
    case 'lost':
      return notice.why === 'gone' ? en.failures.gone(pluckCount) : en.failures[notice.why];
    case 'file-failure':
      return [en.failures.file, notice.failure.text];
    default:
      return assertNever(notice);
  }
}

function noticeDetail(notice: Notice): string {
  const detail = notice.kind === 'capture-failure' && notice.failure.why === 'unknown' ? notice.failure.detail : '';
  return detail === '' ? '' : en.failures.browserSays(detail);
}

/** States of listening in which even a reading that is there gives way. */
export function busyView(state: AppState): ReadingView | undefined {
  const { activity } = state;
  if (activity.kind === 'asking') return sentenceView(state, words.asking);
  if (activity.kind === 'opening') return sentenceView(state, words.opening);
  if (activity.kind === 'listening' && activity.obstacle) return sentenceView(state, words[activity.obstacle]);
  return undefined;
}

/** A pluck with a finger on the middle is waited for. */
export function decidingView(state: AppState): ReadingView | undefined {
  const { activity, deciding, take } = state;
  if (!deciding) return undefined;
  if (activity.kind !== 'listening') return sentenceView(state, octaveEn.deciding, octaveEn.decidingIdle);
  if (activity.ear !== 'ready') return sentenceView(state, words[activity.ear]);
  return sentenceView(state, octaveEn.deciding, take?.missed.length ? words.lastSoundLeft : '');
}

/** States before the first reading. */
export function quietView(state: AppState): ReadingView {
  const { activity } = state;
  if (activity.kind !== 'listening') return sentenceView(state, words.empty);
  const view = sentenceView(state, words[activity.ear]);
  return activity.ear === 'ringing' ? { ...view, spoken: sentenceView(state, words.ready).spoken } : view;
}

/** Something was heard, and nothing of it was a pluck. */
export function nothingView(state: AppState): ReadingView | undefined {
  const { take, activity } = state;
  const why = take?.missed.at(-1);
  if (!take || (activity.kind === 'listening' && (!why || activity.ear === 'ringing'))) return undefined;
  if (activity.kind === 'idle' && take.source !== 'recording' && !why) return undefined;
  const [lead, second] = missedText(take.missed);
  return {
    caption: captionOf(state),
    large: { kind: 'sentence', text: '' },
    grade: { grade: 'nothing', word: words.nothingHeard },
    lead,
    second,
    spoken: `${words.gradeSentence(words.nothingHeard)} ${lead} ${second}`.trim(),
  };
}

function missedText(missed: NonNullable<AppState['take']>['missed']): readonly [string, string] {
  const why = missed.at(-1) ?? 'no-onset';
  if (why === 'too-quiet') return [words.tooQuiet, ''];
  if (why === 'not-a-span') return [words.knocks(missed.filter((one) => one === 'not-a-span').length), words.knocksRemedy];
  return [nothingText(why), ''];
}
