/** What all dialogs share: paper, edge, and a size that leaves the page's margin free. */

import { css } from 'lit';

/** @cssprop --dialog-size - widest inline size, 34rem unless the dialog sets it */
export const dialogStyles = css`
  dialog {
    inline-size: min(var(--dialog-size, 34rem), calc(100vw - 2 * var(--space-16)));
    max-block-size: calc(100dvh - 2 * var(--space-16));
    padding: var(--space-24);
    border: var(--stroke-line) solid var(--edge);
    border-radius: 0;
    background: var(--paper);
    color: var(--ink);
  }
  dialog::backdrop {
    background: var(--backdrop);
  }
`;
