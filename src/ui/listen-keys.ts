/** The keys that stand for buttons of Listen: L listens or stops, U takes the last pluck back, F shows large figures, K keeps, Esc leaves. */

import { hrefOf, type Route } from './route.ts';
import { KEEP_WANTED } from './screens/keep-take.ts';
import type { Workbench } from './state/context.ts';

/** Acts on a key; a key that stands for nothing, or is pressed while someone types, does nothing. */
export function listenKey(event: KeyboardEvent, { store, effects }: Workbench, route: Route): void {
  if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.repeat || isTyping(event)) return;
  const { activity, notice } = store.state;
  const far = route.rest[0] === 'far';
  switch (event.key.toLowerCase()) {
    case 'l':
      void (activity.kind === 'idle' ? effects.listen() : effects.stop());
      break;
    case 'u':
      store.dispatch({ kind: 'pluck-undone' });
      break;
    case 'f':
      location.hash = far ? hrefOf('listen') : hrefOf('listen', 'far');
      break;
    case 'k':
      window.dispatchEvent(new Event(KEEP_WANTED));
      break;
    case 'escape':
      if (far) location.hash = hrefOf('listen');
      else if (activity.kind !== 'idle') void effects.stop();
      else if (notice) store.dispatch({ kind: 'notice-dismissed' });
      break;
  }
}

/** Fields, choices and open dialogs keep their keys. */
export function isTyping(event: KeyboardEvent): boolean {
  return event
    .composedPath()
    .some((target) => target instanceof Element && target.matches('input, select, textarea, dialog, [contenteditable]'));
}
