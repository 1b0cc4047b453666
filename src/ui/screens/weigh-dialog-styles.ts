/** Layout of the weighing: labels beside their fields, above them on a narrow page. */

import { css } from 'lit';

export const weighDialogStyles = css`
  dialog {
    --dialog-size: 30rem;
  }
  h2 {
    font-size: var(--title-size);
    line-height: var(--title-line);
  }
  .row {
    display: grid;
    grid-template-columns: 9rem minmax(0, 1fr);
    gap: var(--space-12);
    align-items: start;
    margin-block-start: var(--space-12);
  }
  .row label {
    padding-block: var(--space-12);
  }
  .row .note {
    margin-block-start: var(--space-4);
  }
  .note.fault {
    color: var(--ink);
  }
  .result {
    display: grid;
    align-content: center;
    gap: var(--space-4);
    min-block-size: 4rem;
    margin-block: var(--space-16);
    padding-block: var(--space-8);
    border-block: var(--stroke-line) solid var(--line);
  }
  .answer {
    font-size: var(--lead-size);
    line-height: var(--lead-line);
    font-weight: var(--weight-strong);
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-12);
  }
  @media (max-width: 28rem) {
    dialog {
      padding: var(--space-16);
    }
    .row {
      grid-template-columns: minmax(0, 1fr);
      gap: var(--space-4);
    }
    .row label {
      padding-block: 0;
    }
  }
`;
