/** What the Reading says in the state that the page is in: large words, one sentence, grade, and the same in words for the ear. */

import type { Figures } from '../format.ts';
import type { AppState } from '../state/state.ts';
import { answerView } from './reading-answer.ts';
import type { ReadingView } from './reading-shape.ts';
import { busyView, decidingView, nothingView, noticeView, quietView } from './reading-states.ts';

export function readingView(state: AppState, figures: Figures): ReadingView {
  return (
    noticeView(state) ?? busyView(state) ?? decidingView(state) ?? answerView(state, figures) ?? nothingView(state) ?? quietView(state)
  );
}
