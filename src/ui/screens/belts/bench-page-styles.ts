/** Layout of the bench: what is told beside what is found; one below the other on a narrow page. */

import { css } from 'lit';

export const benchPageStyles = css`
  .bench {
    display: grid;
    grid-template-columns: minmax(18rem, 25rem) minmax(0, 1fr);
    gap: var(--space-32);
    margin-block-start: var(--space-24);
  }
  .rig {
    margin-block-end: var(--space-12);
  }
  .take {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: var(--space-4) var(--space-8);
    align-items: center;
  }
  .take-name {
    grid-column: 1 / -1;
    font-size: var(--note-size);
    line-height: var(--note-line);
    font-weight: var(--weight-strong);
  }
  .take:has(.heard) {
    grid-template-columns: minmax(0, 1fr) auto auto;
  }
  .known-to {
    max-inline-size: 12rem;
    margin-block-start: var(--space-12);
  }
  .found table.figures th {
    inline-size: 40%;
  }
  .found table.figures td.wrap {
    white-space: normal;
  }
  .found ol,
  .found ul {
    padding-inline-start: var(--space-24);
    margin-block: var(--space-4) 0;
  }
  @media (max-width: 68rem) {
    .bench {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
