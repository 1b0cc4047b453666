/** Layout of the validation kit: fields at the left, takes and report at the right; one column on a phone. */

import { css } from 'lit';

export const validationStyles = css`
  main {
    padding: var(--space-24) var(--sheet-margin) var(--space-64);
  }
  .columns {
    display: grid;
    grid-template-columns: minmax(18rem, 24rem) minmax(0, 1fr);
    gap: var(--space-48);
    margin-block-start: var(--space-16);
  }
  section {
    display: grid;
    gap: var(--space-12);
    margin-block-end: var(--space-24);
  }
  h2 {
    font-size: var(--lead-size);
    line-height: var(--lead-line);
  }
  .row {
    display: grid;
    gap: var(--space-4);
    min-inline-size: 0;
  }
  .row label {
    font-size: var(--note-size);
    font-weight: var(--weight-strong);
  }
  .row .note:empty {
    display: none;
  }
  .pair {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    gap: var(--space-12);
    align-items: start;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-12) var(--space-24);
  }
  .file {
    display: grid;
    gap: var(--space-4);
    font-size: var(--note-size);
  }
  .file input {
    max-inline-size: 100%;
    min-block-size: var(--target-size);
  }
  .scroll {
    overflow-x: auto;
  }
  table {
    inline-size: 100%;
    border-collapse: collapse;
  }
  th,
  table td {
    padding: var(--space-4) var(--space-12) var(--space-4) 0;
    border-block-end: var(--stroke-line) solid var(--line);
    text-align: start;
    white-space: nowrap;
  }
  thead th {
    border-block-end-color: var(--edge);
    font-size: var(--note-size);
    font-weight: var(--weight-text);
    color: var(--ink-2);
  }
  .report p {
    max-inline-size: 42rem;
  }
  @media (max-width: 59.99rem) {
    main {
      padding-block-start: var(--space-16);
      padding-block-end: calc(var(--thumb-bar-height) + var(--space-32));
    }
    .columns {
      grid-template-columns: minmax(0, 1fr);
      gap: var(--space-8);
    }
  }
`;
