/** The planner's sheet: figures beside the headline, the plot, its notes, and the two sections below it. */

import { css } from 'lit';

export const plannerScreenStyles = css`
  .actions {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: var(--space-16) var(--space-32);
  }
  dl {
    display: flex;
    gap: var(--space-32);
  }
  dt {
    font-size: var(--note-size);
    line-height: var(--note-line);
    color: var(--ink-2);
  }
  dd {
    font-size: var(--lead-size);
    line-height: var(--lead-line);
    font-weight: var(--weight-strong);
    white-space: nowrap;
  }
  .plot-title {
    margin-block-end: var(--space-8);
    font-weight: var(--weight-text);
  }
  .notes {
    display: grid;
    gap: var(--space-8);
    margin-block-start: var(--space-16);
    padding: 0;
    list-style: none;
  }
  .notes li {
    display: grid;
    grid-template-columns: minmax(9.5rem, max-content) minmax(0, 1fr);
    gap: var(--space-4) var(--space-16);
    max-inline-size: 60rem;
  }
  .notes li.note {
    display: block;
  }
  .block {
    display: block;
    margin-block-start: var(--space-24);
    padding-block-start: var(--space-24);
    border-block-start: var(--stroke-line) solid var(--line);
  }
  park-plan.block {
    display: grid;
  }
  @media (max-width: 59.99rem) {
    .actions,
    .actions button {
      inline-size: 100%;
    }
    .notes li {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
