/** What the pages of Belts share: tables of figures, rows of fields, pages as links. */

import { css } from 'lit';

export const beltStyles = css`
  :host {
    display: block;
  }
  section {
    margin-block-start: var(--space-24);
    padding-block-start: var(--space-16);
    border-block-start: var(--stroke-line) solid var(--line);
  }
  section:first-of-type {
    margin-block-start: 0;
    padding-block-start: 0;
    border-block-start: 0;
  }
  h2 {
    margin-block-end: var(--space-8);
  }
  p + p,
  .note + .note {
    margin-block-start: var(--space-4);
  }
  .scroll {
    overflow-x: auto;
  }
  table.figures {
    inline-size: 100%;
    border-collapse: collapse;
  }
  table.figures th,
  table.figures td {
    padding: var(--space-8) var(--space-16) var(--space-8) 0;
    border-block-end: var(--stroke-line) solid var(--line);
    font-weight: var(--weight-text);
    text-align: start;
    vertical-align: top;
  }
  table.figures thead th {
    padding-block: 0 var(--space-4);
    font-size: var(--note-size);
    color: var(--ink-2);
  }
  table.figures tbody tr:last-child > * {
    border-block-end: 0;
  }
  table.figures td.figure {
    font-weight: var(--weight-strong);
    white-space: nowrap;
  }
  table.figures :is(th, td):last-child {
    padding-inline-end: 0;
  }
  table.figures button {
    margin-block: calc(-1 * var(--space-8));
  }
  .note + .rows {
    margin-block-start: var(--space-8);
  }
  .rows {
    display: grid;
    gap: var(--space-12);
  }
  .pair {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(5.5rem, 0.5fr) auto;
    gap: var(--space-8);
    align-items: center;
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 15rem), 1fr));
    gap: var(--space-16);
    align-items: start;
    max-inline-size: 52rem;
  }
  label,
  .label {
    display: block;
    margin-block-end: var(--space-4);
    font-size: var(--note-size);
    line-height: var(--note-line);
    font-weight: var(--weight-strong);
  }
  input.text {
    inline-size: 100%;
    min-block-size: var(--target-size);
    padding-inline: var(--space-12);
    border: var(--stroke-line) solid var(--edge);
    border-radius: var(--radius);
    background: var(--field);
    color: var(--ink);
  }
  .fault {
    color: var(--ink);
    font-weight: var(--weight-strong);
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-12) var(--space-16);
    margin-block-start: var(--space-16);
  }
  a.button.main {
    background: var(--solid);
    border-color: var(--solid);
    color: var(--on-solid);
    forced-color-adjust: preserve-parent-color;
  }
  .answer {
    font-size: var(--title-size);
    line-height: var(--title-line);
  }
  .answer b {
    font-weight: var(--weight-figure);
  }
  .caution {
    margin-block-end: var(--space-16);
    padding-inline-start: var(--space-12);
    border-inline-start: var(--stroke-place) solid var(--doubtful);
  }
  ul.plain {
    padding: 0;
    list-style: none;
  }
  summary {
    min-block-size: var(--quiet-target-size);
    align-content: center;
    cursor: pointer;
    text-decoration: underline;
    text-decoration-color: var(--edge);
    text-underline-offset: 0.25em;
  }
`;
