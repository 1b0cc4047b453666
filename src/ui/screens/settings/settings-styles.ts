/** Layout of Settings: one column of blocks with lines between. */

import { css } from 'lit';

export const settingsStyles = css`
  :host {
    display: block;
  }
  .settings {
    padding: var(--space-24) var(--sheet-margin) calc(var(--space-32) + var(--thumb-bar-height));
  }
  h2 {
    margin-block-end: var(--space-8);
    font-size: var(--title-size);
    line-height: var(--title-line);
  }
  p {
    max-inline-size: 44rem;
  }
  .block {
    margin-block-start: var(--space-24);
    padding-block-start: var(--space-24);
    border-block-start: var(--stroke-line) solid var(--line);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-12);
    margin-block-start: var(--space-16);
  }
  label.button {
    display: inline-block;
    position: relative;
    align-content: center;
  }
  label.button:focus-within {
    outline: var(--focus-ring);
    outline-offset: var(--focus-gap);
  }
  .table {
    margin-block-start: var(--space-16);
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    min-inline-size: min(100%, 24rem);
  }
  caption,
  th {
    text-align: start;
    font-weight: var(--weight-strong);
  }
  thead th {
    color: var(--ink-2);
    font-weight: var(--weight-text);
  }
  td,
  th {
    padding: var(--space-8) var(--space-16) var(--space-8) 0;
    border-block-end: var(--stroke-line) solid var(--line);
  }
  td,
  thead th + th {
    text-align: end;
    white-space: nowrap;
  }
  .note {
    margin-block-start: var(--space-8);
  }
  .recordings {
    padding: 0;
    list-style: none;
  }
  .recordings li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-8) var(--space-16);
    padding-block: var(--space-8);
    border-block-end: var(--stroke-line) solid var(--line);
  }
  .recordings li > span {
    flex: 1 1 14rem;
  }
  summary {
    min-block-size: var(--target-size);
    align-content: center;
    cursor: pointer;
  }
  fieldset {
    margin: var(--space-16) 0 0;
    padding: 0;
    border: 0;
  }
  legend {
    padding: 0;
    font-weight: var(--weight-strong);
  }
  .choice {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 0 var(--space-12);
    align-items: start;
    min-block-size: var(--target-size);
    padding-block: var(--space-8);
  }
  .choice input {
    inline-size: 1.25rem;
    block-size: 1.25rem;
    margin: 0;
    accent-color: var(--ink);
  }
  .cue {
    display: flex;
    align-items: center;
    gap: var(--space-12);
    min-block-size: var(--target-size);
  }
  .cue input {
    inline-size: 18px;
    block-size: 18px;
    margin: 0;
    accent-color: var(--ink);
  }
`;
