/** What the pages of a gauge share beside the editor's fields: two columns that fold to one, plain tables, names with figures. */

import { css } from 'lit';

export const gaugeStyles = css`
  :host {
    display: block;
  }
  .columns {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 20rem;
    gap: var(--space-24) var(--space-48);
    align-items: start;
  }
  .block {
    margin-block-start: var(--space-24);
    padding-block-start: var(--space-24);
    border-block-start: var(--stroke-line) solid var(--line);
  }
  .big {
    font-size: var(--figure-doubt-size);
    line-height: 1.2;
    font-weight: var(--weight-figure);
    letter-spacing: -0.025em;
  }
  table {
    inline-size: 100%;
    border-collapse: collapse;
  }
  caption {
    padding-block: var(--space-16) var(--space-4);
    font-weight: var(--weight-strong);
    text-align: start;
  }
  th,
  td {
    padding: var(--space-8) var(--space-8) var(--space-8) 0;
    border-block-end: var(--stroke-line) solid var(--line);
    text-align: start;
    vertical-align: baseline;
    font-weight: var(--weight-text);
  }
  thead th {
    font-size: var(--note-size);
    color: var(--ink-2);
  }
  .number {
    text-align: end;
    white-space: nowrap;
  }
  .strong {
    font-weight: var(--weight-strong);
  }
  .facts {
    display: grid;
    grid-template-columns: max-content 1fr;
    gap: var(--space-8) var(--space-24);
    margin-block: var(--space-16);
  }
  .facts dd {
    font-weight: var(--weight-strong);
  }
  .refused,
  .refused td {
    color: var(--unusable);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-12);
    margin-block-start: var(--space-16);
  }
  .told {
    display: grid;
    gap: var(--space-8);
    margin: 0;
    padding-inline-start: var(--space-24);
  }
  .scrolls {
    overflow-x: auto;
  }
  details > summary {
    min-block-size: var(--target-size);
    font-size: var(--text-size);
    font-weight: var(--weight-strong);
  }
  details.block {
    margin-block-start: 0;
    padding-block-start: 0;
  }
  td grade-mark {
    vertical-align: bottom;
  }
  .slim {
    inline-size: auto;
  }
  .slim th,
  .slim td {
    padding-inline-end: var(--space-24);
    vertical-align: middle;
  }
  @media (max-width: 76rem) {
    .columns {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
