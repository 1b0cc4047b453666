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
  header place-bar {
    block-size: calc(100% + 1px);
  }
  place-bar[thumb] {
    position: fixed;
    z-index: 2;
    inset-inline: 0;
    inset-block-end: 0;
    block-size: var(--thumb-bar-height);
    padding-block-end: env(safe-area-inset-bottom);
    background: var(--paper);
    border-block-start: var(--stroke-line) solid var(--line);
  }
  .elsewhere {
    margin-inline-start: auto;
    padding-inline: var(--space-16);
  }
  .elsewhere[hidden] + .aside {
    margin-inline-start: auto;
  }
  .aside + .aside {
    margin-inline-start: var(--space-12);
  }
  .aside[aria-current] {
    font-weight: var(--weight-strong);
    text-decoration: underline;
    text-decoration-thickness: var(--stroke-place);
  }
  .not-opened {
    display: grid;
    gap: var(--space-16);
    justify-items: start;
    padding: var(--space-32) var(--sheet-margin);
  }
  .not-opened h1 {
    font-size: var(--answer-size);
    line-height: var(--answer-line);
  }
  .aside {
    align-self: center;
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
  }
  @media (max-height: 30rem) {
    header {
      position: static;
    }
  }
  @media print {
    header,
    place-bar {
      display: none;
    }
  }
`;
