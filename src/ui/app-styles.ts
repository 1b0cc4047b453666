/** The bar at the top of every place, and the field that takes a dropped recording. */

import { css } from 'lit';

export const appStyles = css`
  :host {
    display: block;
  }
  header {
    position: sticky;
    z-index: 2;
    inset-block-start: 0;
    display: flex;
    align-items: stretch;
    block-size: var(--bar-height);
    padding-inline-end: var(--space-24);
    background: var(--paper);
    border-block-end: var(--stroke-line) solid var(--line);
  }
  .brand {
    display: flex;
    align-items: center;
    gap: var(--space-12);
    inline-size: var(--rail-width);
    padding-inline-start: var(--space-24);
    font-size: 1rem;
    font-weight: var(--weight-strong);
  }
  h1 {
    position: relative;
    align-content: center;
    font-size: var(--text-size);
    line-height: var(--text-line);
    font-weight: var(--weight-strong);
  }
  h1::after {
    content: '';
    position: absolute;
    inset-inline: 0;
    inset-block-end: -1px;
    block-size: var(--stroke-place);
    background: var(--ink);
    forced-color-adjust: none;
  }
  .cautions {
    align-self: center;
    margin-inline-start: auto;
    border-color: transparent;
    padding-inline: var(--space-4);
    font-size: var(--note-size);
    font-weight: var(--weight-text);
  }
  .drop {
    position: fixed;
    z-index: 3;
    inset: var(--space-16);
    display: grid;
    place-items: center;
    border: var(--stroke-place) dashed var(--aim);
    background: var(--paper);
    color: var(--aim);
    font-size: var(--title-size);
    font-weight: var(--weight-strong);
  }
  @media (max-width: 59.99rem) {
    header {
      padding-inline-end: var(--sheet-margin);
    }
    .brand {
      inline-size: auto;
      padding-inline-start: var(--sheet-margin);
    }
    h1 {
      position: absolute;
      inline-size: 1px;
      block-size: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
  }
  @media (max-height: 30rem) {
    header {
      position: static;
    }
  }
  @media print {
    header {
      position: static;
    }
  }
`;
