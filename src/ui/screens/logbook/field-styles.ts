/** Forms of the logbook's dialogs: labels above their fields, faults below them. */

import { css } from 'lit';

export const fieldStyles = css`
  .form {
    display: grid;
    gap: var(--space-12);
  }
  .form label,
  .form fieldset {
    display: grid;
    gap: var(--space-4);
    margin: 0;
    padding: 0;
    border: 0;
    font-weight: var(--weight-strong);
  }
  .form input:not([type='checkbox']),
  .form select,
  .form textarea {
    font: inherit;
    font-size: var(--input-size);
    font-weight: var(--weight-text);
    inline-size: 100%;
    min-inline-size: 0;
    min-block-size: var(--target-size);
    padding: var(--space-8) var(--space-12);
    border: var(--stroke-line) solid var(--edge);
    border-radius: var(--radius);
    background: var(--field);
    color: var(--ink);
  }
  .form textarea {
    resize: vertical;
  }
  .form .box {
    display: flex;
    align-items: center;
    gap: var(--space-12);
    min-block-size: var(--quiet-target-size);
    font-weight: var(--weight-text);
  }
  .form .box input {
    inline-size: 18px;
    block-size: 18px;
    margin: 0;
    accent-color: var(--ink);
  }
  .fault:empty {
    display: none;
  }
  .fault {
    font-weight: var(--weight-strong);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-12);
  }
`;
