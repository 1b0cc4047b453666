/** Layout of the logbook: filters and buttons in the strip, plots and list on the sheet. */

import { css } from 'lit';

export const logbookStyles = css`
  .head {
    padding: 0 var(--space-24) var(--space-12);
  }
  .head h2 {
    font-size: var(--lead-size);
    line-height: var(--lead-line);
  }
  .filters {
    display: grid;
    gap: var(--space-16);
    padding: var(--space-16) var(--space-24);
  }
  .find {
    display: grid;
    gap: var(--space-4);
    font-weight: var(--weight-strong);
  }
  .find input {
    min-inline-size: 0;
    min-block-size: var(--target-size);
    padding-inline: var(--space-12);
    border: var(--stroke-line) solid var(--edge);
    border-radius: var(--radius);
    background: var(--field);
    color: var(--ink);
    font-weight: var(--weight-text);
  }
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
  }
  legend {
    padding: 0;
    font-weight: var(--weight-strong);
  }
  .box {
    display: flex;
    align-items: center;
    gap: var(--space-12);
    min-block-size: var(--quiet-target-size);
  }
  .box input {
    inline-size: 18px;
    block-size: 18px;
    margin: 0;
    accent-color: var(--ink);
  }
  .acts {
    display: grid;
    gap: var(--space-12);
    margin-block-start: auto;
    padding: var(--space-16) var(--space-24) var(--space-8);
  }
  .acts .button,
  a.button {
    text-decoration: none;
  }
  .button.solid {
    background: var(--solid);
    border-color: var(--solid);
    color: var(--on-solid);
  }
  .acts .quiet {
    align-content: center;
    text-align: center;
    font-weight: var(--weight-strong);
  }
  .entries {
    margin-block-start: var(--space-24);
  }
  .over-list {
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-16);
  }
  .undo {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-16);
    padding-block: var(--space-8);
    border-block: var(--stroke-line) solid var(--line);
  }
  @media (max-width: 59.99rem) {
    .head {
      display: none;
    }
    .filters,
    .acts {
      padding-inline: var(--sheet-margin);
    }
  }
`;
