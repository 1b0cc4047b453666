/** Layout of what a reading rests on; on a narrow page the doubt of a trusted reading goes before its spectrum. */

import { css } from 'lit';

export const evidencePanelStyles = css`
  summary {
    min-block-size: var(--quiet-target-size);
    align-content: center;
    cursor: pointer;
    font-weight: var(--weight-strong);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-12);
    margin-block-start: var(--space-4);
  }
  .wide {
    grid-column: 1 / -1;
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
  }
  th,
  td {
    padding: var(--space-4) var(--space-24) var(--space-4) 0;
    text-align: start;
    vertical-align: top;
    border-block-end: var(--stroke-line) solid var(--line);
  }
  th {
    font-size: var(--note-size);
    font-weight: var(--weight-strong);
    color: var(--ink-2);
  }
  .help {
    margin-block-start: var(--space-8);
    padding-block: var(--space-8) var(--space-4);
    border-block-start: var(--stroke-line) solid var(--line);
  }
  section > .note {
    margin-block-start: var(--space-8);
  }
  dl div {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: var(--space-12);
    margin-block-end: var(--space-4);
  }
  dd {
    font-weight: var(--weight-strong);
    white-space: nowrap;
  }
  .foot {
    grid-column: 1 / -1;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-8) var(--space-24);
    padding-block-start: var(--space-12);
    border-block-start: var(--stroke-line) solid var(--line);
  }
  .foot button {
    font-size: inherit;
    font-weight: inherit;
  }
  @media (min-width: 60rem) {
    :host(:not([trusted])) {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1.1fr);
      column-gap: var(--space-32);
    }
  }
  @media (max-width: 59.99rem) {
    .left {
      order: 1;
    }
    .right {
      order: 2;
    }
    :host([trusted]) .right {
      order: 0;
    }
    .wide,
    .foot {
      order: 3;
    }
    .caution {
      display: none;
    }
    .foot take-sources {
      flex: 1;
    }
  }
`;
