/** The report on the screen and on paper: A4 and Letter alike, tables that break between rows only, their heads on every page. */

import { css } from 'lit';

export const reportStyles = css`
  main {
    display: grid;
    gap: var(--space-24);
    max-inline-size: 56rem;
    margin-inline: auto;
    padding: var(--space-24) var(--sheet-margin) var(--space-64);
  }
  h1 {
    font-size: var(--answer-size);
    line-height: var(--answer-line);
    font-weight: var(--weight-text);
  }
  h2 {
    margin-block-end: var(--space-8);
    font-size: var(--lead-size);
    line-height: var(--lead-line);
  }
  h3 {
    margin-block: var(--space-12) var(--space-4);
  }
  .lead {
    margin-block-end: var(--space-12);
    font-size: var(--lead-size);
    line-height: var(--lead-line);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-12);
  }
  .acts a {
    text-decoration: none;
  }
  section {
    min-inline-size: 0;
    overflow-x: auto;
  }
  table {
    inline-size: 100%;
    border-collapse: collapse;
    font-size: var(--note-size);
    line-height: var(--note-line);
  }
  th,
  td {
    padding: var(--space-4) var(--space-12) var(--space-4) 0;
    border-block-end: var(--stroke-line) solid var(--line);
    text-align: start;
    vertical-align: baseline;
  }
  thead th {
    border-block-end-color: var(--edge);
    color: var(--ink-2);
    font-weight: var(--weight-text);
  }
  grade-mark {
    font-size: inherit;
  }
  ul {
    margin-block: var(--space-8);
    padding-inline-start: 1.25rem;
  }
  @media print {
    main {
      display: block;
      max-inline-size: none;
      padding: 0;
    }
    header,
    section,
    logbook-plots {
      margin-block-end: var(--space-16);
    }
    .acts {
      display: none;
    }
    section {
      overflow: visible;
    }
    thead {
      display: table-header-group;
    }
    tr,
    section:not(:has(.readings)),
    logbook-plots,
    .cautions {
      break-inside: avoid;
    }
    h2 {
      break-after: avoid;
    }
    td,
    th {
      font-size: 9pt;
    }
  }
`;
