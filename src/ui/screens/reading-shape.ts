/** The shape of what the Reading says, whatever the state of the page. */

import { assertNever, type Grade } from '../../core/outcome.ts';
import { en } from '../../words/en.ts';
import { together } from '../format.ts';
import type { AppState } from '../state/state.ts';

export type Large =
  | { readonly kind: 'force'; readonly value: string; readonly doubt: string }
  | { readonly kind: 'frequency'; readonly value: string; readonly doubt: string }
  /** Bounds or rivals without a value: '2.3 to 5.7'. */
  | { readonly kind: 'bounds'; readonly text: string }
  | { readonly kind: 'sentence'; readonly text: string };

export interface ReadingView {
  readonly caption: string;
  readonly large: Large;
  /** Beside a force. */
  readonly frequency?: { readonly value: string; readonly doubt: string } | undefined;
  readonly grade?: { readonly grade: Grade | 'nothing'; readonly word: string } | undefined;
  /** What follows for the target, or what to do. */
  readonly lead: string;
  /** What the sound and then the inputs are worth, or what the browser said. */
  readonly second: string;
  /** What to do at the next pluck. It comes a moment after the reading, and is not in the spoken sentence. */
  readonly advice?: string | undefined;
  /** One sentence for the ear. It changes once for each pluck and for each thing that a person has to know. */
  readonly spoken: string;
}

/** How many plucks, and where they come from. */
export function captionOf({ answer, take }: AppState): string {
  const count = answer.reading?.pluckCount ?? 0;
  if (take?.source === 'demo') return en.reading.captionDemo(count);
  return take?.fileName !== undefined ? en.reading.captionFile(count, take.fileName) : en.reading.caption(count);
}

/** The figure in one line, for names of drawings. */
export function figureText(large: Large): string {
  switch (large.kind) {
    case 'force':
      return together(large, 'N');
    case 'frequency':
      return together(large, 'Hz');
    case 'bounds':
      return `${large.text}\u00a0N`;
    case 'sentence':
      return large.text;
    default:
      return assertNever(large);
  }
}
