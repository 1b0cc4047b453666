/** The instruction to be read from the machine, the two lengths at the side, and the ruler with both and what they come to. */

import { css } from 'lit';

export const twoScreenStyles = css`
  .fields {
    display: grid;
    gap: var(--space-16);
    padding-inline: var(--space-24);
  }
  .fields h2 {
    font-size: var(--lead-size);
    line-height: var(--lead-line);
  }
  label {
    display: block;
    margin-block-end: var(--space-4);
    font-size: var(--note-size);
    line-height: var(--note-line);
    font-weight: var(--weight-strong);
  }
  .over {
    color: var(--ink-2);
  }
  .instruction {
    margin-block: var(--space-8);
    font-size: var(--bounds-size);
    line-height: 1.1;
    font-weight: var(--weight-text);
    letter-spacing: var(--tracking-large);
    overflow-wrap: anywhere;
  }
  .figure {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-16);
  }
  .figure span {
    font-weight: var(--weight-figure);
  }
  .figure small {
    font-size: var(--figure-doubt-size);
  }
  a.solid {
    display: grid;
    align-content: center;
    background: var(--solid);
    border-color: var(--solid);
    color: var(--on-solid);
    text-decoration: none;
    forced-color-adjust: preserve-parent-color;
  }
  .then {
    min-block-size: calc(2 * var(--lead-line));
    font-size: var(--lead-size);
    line-height: var(--lead-line);
    max-inline-size: 44rem;
  }
  .state {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-4) var(--space-24);
    min-block-size: var(--lead-line);
    color: var(--ink-2);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-12) var(--space-24);
    margin-block: var(--space-16) var(--space-24);
  }
  .acts .quiet {
    align-content: center;
  }
  .acts .main {
    min-block-size: var(--main-target-size);
    padding-inline: var(--space-32);
  }
  .file {
    position: relative;
  }
  .file input {
    position: absolute;
    inset: 0;
    opacity: 0;
    cursor: pointer;
  }
  .file:focus-within {
    outline: var(--focus-ring);
    outline-offset: var(--focus-gap);
  }
  .verdict {
    margin-block-start: var(--space-16);
  }
  ul {
    padding-inline-start: var(--space-16);
  }
  @media (max-width: 59.99rem) {
    .fields {
      padding: var(--space-12) var(--sheet-margin);
    }
    .acts .main {
      inline-size: 100%;
    }
  }
`;
