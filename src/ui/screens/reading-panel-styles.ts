/** Type of the Reading: figures at arm's length, grade and sentences beside them, below them on a narrow page. */

import { css } from 'lit';

export const readingPanelStyles = css`
  :host {
    display: block;
    position: relative;
  }
  /* Under the figures, in the room that is kept there: it comes a moment later, and nothing may move. */
  .advice {
    position: absolute;
    inset-block-end: 0;
    inset-inline-start: 0;
    max-inline-size: calc(100% - 25rem);
    font-weight: var(--weight-strong);
  }
  .answer {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(17rem, 22.5rem);
    column-gap: var(--space-24);
    align-content: start;
    min-block-size: 8.5rem;
  }
  .figures {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-32);
    align-self: start;
  }
  .force {
    font-size: var(--figure-size);
    line-height: var(--figure-line);
    letter-spacing: var(--tracking-large);
  }
  .force.frequency-alone {
    font-size: var(--bounds-size);
  }
  .part {
    white-space: nowrap;
  }
  .value {
    font-weight: var(--weight-figure);
  }
  .unit {
    font-size: 0.62em;
    word-spacing: -0.15em;
  }
  .doubt {
    font-size: var(--figure-doubt-size);
    line-height: 1;
  }
  .bounds {
    font-size: var(--bounds-size);
    line-height: var(--figure-line);
    letter-spacing: var(--tracking-large);
  }
  .frequency {
    font-size: var(--title-size);
    line-height: var(--title-line);
    color: var(--ink-2);
    white-space: nowrap;
  }
  .frequency small {
    font-size: var(--lead-size);
  }
  .headline {
    grid-column: 1 / -1;
    padding-block-start: var(--space-8);
    font-size: var(--answer-size);
    line-height: var(--answer-line);
    font-weight: var(--weight-figure);
    letter-spacing: var(--tracking-large);
  }
  .headline + .said {
    grid-column: 1 / -1;
  }
  .lead {
    font-size: var(--lead-size);
    line-height: var(--lead-line);
    max-inline-size: 44rem;
  }
  .headline + .said .lead {
    color: var(--ink-2);
  }
  .second {
    color: var(--ink-2);
  }
  .grade {
    display: flex;
    align-items: center;
    gap: var(--space-12);
    min-block-size: var(--answer-line);
    font-size: var(--title-size);
    line-height: var(--title-line);
    font-weight: var(--weight-strong);
  }
  .grade.trusted {
    color: var(--trusted);
  }
  .grade.doubtful {
    color: var(--doubtful);
  }
  .grade.unusable {
    color: var(--unusable);
  }
  .grade.nothing {
    color: var(--ink-2);
  }
  .grade grade-mark {
    font-size: 1.25rem;
  }
  @media (max-width: 59.99rem) {
    .answer {
      display: block;
      min-block-size: 0;
    }
    .figures {
      column-gap: var(--space-24);
    }
    .advice {
      position: static;
      max-inline-size: none;
      margin-block-start: var(--space-8);
    }
  }
  @media (max-width: 22rem) {
    .force {
      --figure-size: 3.25rem;
      --figure-doubt-size: 1.75rem;
    }
  }
`;
