/** What the parts of the machine editor share: fields in rows that fold to one column, lines between blocks. */

import { css } from 'lit';

export const editorStyles = css`
  :host {
    display: block;
  }
  h2 {
    font-size: var(--title-size);
    line-height: var(--title-line);
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-8) var(--space-16);
    margin-block-end: var(--space-12);
  }
  .head > :first-child {
    flex: 1;
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(11rem, 100%), 1fr));
    gap: var(--space-16);
    align-items: start;
  }
  .wide {
    grid-column: span 2;
  }
  label.over,
  .over {
    display: block;
    margin-block-end: var(--space-4);
    font-size: var(--note-size);
    line-height: var(--note-line);
    font-weight: var(--weight-strong);
  }
  input[type='text'] {
    inline-size: 100%;
    min-block-size: var(--target-size);
    padding-inline: var(--space-12);
    border: var(--stroke-line) solid var(--edge);
    border-radius: var(--radius);
    background: var(--field);
    color: var(--ink);
  }
  .check {
    display: flex;
    align-items: center;
    gap: var(--space-8);
    min-block-size: var(--target-size);
  }
  .check input {
    inline-size: 1.25rem;
    block-size: 1.25rem;
    accent-color: var(--ink);
  }
  .note {
    margin-block-start: var(--space-4);
  }
  summary {
    display: inline-block;
    min-block-size: var(--quiet-target-size);
    align-content: center;
    cursor: pointer;
    font-size: var(--note-size);
    text-decoration: underline;
    text-decoration-color: var(--edge);
    text-underline-offset: 0.25em;
  }
  @media (max-width: 40rem) {
    .wide {
      grid-column: auto;
    }
  }
`;
