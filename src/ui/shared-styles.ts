/** What buttons, links, headings and focus look like on every screen; sizes and colours come from tokens.css. */

import { css } from 'lit';

export const shared = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  h1,
  h2,
  h3,
  p,
  ul,
  dl,
  dd,
  figure {
    margin: 0;
  }
  h2,
  h3 {
    font-size: var(--text-size);
    line-height: var(--text-line);
    font-weight: var(--weight-strong);
  }
  .visually-hidden {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .note {
    font-size: var(--note-size);
    line-height: var(--note-line);
    color: var(--ink-2);
  }
  button,
  .button {
    font: inherit;
    font-weight: var(--weight-strong);
    min-block-size: var(--target-size);
    padding: var(--space-8) var(--space-16);
    border: var(--stroke-line) solid var(--edge);
    border-radius: var(--radius);
    background: transparent;
    color: var(--ink);
    cursor: pointer;
    text-align: center;
  }
  button.solid,
  a.button.solid {
    background: var(--solid);
    border-color: var(--solid);
    color: var(--on-solid);
    forced-color-adjust: preserve-parent-color;
  }
  button.quiet,
  .quiet {
    min-block-size: var(--quiet-target-size);
    padding-inline: 0;
    border-color: transparent;
    text-decoration: underline;
    text-decoration-color: var(--edge);
    text-decoration-thickness: 1px;
    text-underline-offset: 0.25em;
  }
  a.button {
    align-content: center;
    text-decoration: none;
  }
  a.button.quiet {
    text-decoration: underline;
    text-decoration-color: var(--edge);
  }
  button:disabled {
    color: var(--ink-3);
    cursor: default;
  }
  a {
    color: inherit;
    text-underline-offset: 0.25em;
  }
  :focus-visible {
    outline: var(--focus-ring);
    outline-offset: var(--focus-gap);
  }
  select,
  input {
    font: inherit;
    font-size: var(--input-size);
  }
  @media (forced-colors: active) {
    button.quiet,
    .quiet {
      padding-inline: var(--space-8);
    }
  }
  @media print {
    button,
    .button {
      display: none;
    }
  }
`;
