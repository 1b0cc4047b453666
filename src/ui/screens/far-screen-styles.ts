/** Layout of the large figures: side by side when wide, one below the other on a phone; the ruler keeps to the lower edge. */

import { css } from 'lit';

export const farScreenStyles = css`
  main {
    display: flex;
    flex-direction: column;
    gap: var(--space-24);
    min-block-size: 100dvh;
    padding: var(--space-24) var(--sheet-margin);
  }
  .reading {
    flex: 1;
    display: grid;
    align-items: center;
  }
  .answer {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    column-gap: 4vw;
  }
  .figure {
    font-size: var(--far-size);
    line-height: var(--far-line);
    font-weight: var(--weight-figure);
    letter-spacing: var(--tracking-large);
    white-space: nowrap;
  }
  .figure small {
    font-size: 0.4em;
    font-weight: var(--weight-text);
    letter-spacing: 0;
  }
  .figure.bounds,
  .figure.frequency {
    font-size: calc(var(--far-size) * 0.55);
    font-weight: var(--weight-text);
  }
  .figure.frequency {
    font-weight: var(--weight-figure);
  }
  .sentence {
    font-size: clamp(3rem, 9vw, 8rem);
    line-height: 1.1;
    font-weight: var(--weight-strong);
    letter-spacing: var(--tracking-large);
  }
  .said {
    flex: 1 1 18rem;
    display: grid;
    gap: var(--space-8);
    min-inline-size: 0;
  }
  .doubt {
    font-size: clamp(3.5rem, 18vw, 5.5rem);
    line-height: 1.15;
    letter-spacing: var(--tracking-large);
    white-space: nowrap;
  }
  .doubt small {
    font-size: 0.7em;
  }
  .grade {
    display: flex;
    align-items: center;
    gap: 0.3em;
    font-size: clamp(2.25rem, 4.5vw, 4rem);
    line-height: 1.2;
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
  .grade grade-mark {
    font-size: inherit;
  }
  .lead {
    font-size: clamp(1.5rem, 2.6vw, 2.25rem);
    line-height: 1.3;
  }
  .foot {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-12);
    color: var(--ink-2);
  }
  .hint {
    font-size: var(--note-size);
  }
  @media (hover: none) {
    .hint {
      display: none;
    }
  }
`;
