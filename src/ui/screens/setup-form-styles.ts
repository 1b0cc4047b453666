/** Layout of the setup: labels above their fields in the side strip, beside them on a narrow page. */

import { css } from 'lit';

export const setupFormStyles = css`
  :host {
    display: block;
  }
  .head {
    display: flex;
    align-items: baseline;
    justify-content: space-between;
    gap: var(--space-12);
    min-block-size: var(--quiet-target-size);
    margin-block-end: var(--space-4);
  }
  h2 {
    font-size: var(--lead-size);
    line-height: var(--lead-line);
  }
  .mark {
    padding: 0 var(--space-8);
    border: var(--stroke-band) solid var(--edge);
    border-radius: var(--radius);
    font-size: var(--note-size);
    line-height: var(--line-text, 1.25rem);
    font-weight: var(--weight-strong);
  }
  .place {
    margin-block: calc(-1 * var(--space-4)) var(--space-12);
  }
  .demo {
    margin-block: calc(-1 * var(--space-8)) var(--space-8);
  }
  .row {
    margin-block-end: var(--space-12);
  }
  .share {
    font-size: var(--note-size);
    font-weight: var(--weight-text);
  }
  .label {
    display: block;
    margin-block-end: var(--space-4);
    font-size: var(--note-size);
    line-height: var(--note-line);
    font-weight: var(--weight-strong);
  }
  .label small {
    font-size: inherit;
    font-weight: var(--weight-text);
    color: var(--ink-2);
  }
  .fields {
    display: grid;
    gap: var(--space-8);
    align-items: center;
  }
  .span .fields {
    grid-template-columns: minmax(0, 1fr) minmax(0, 0.8fr);
  }
  .target .fields {
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) minmax(4.25rem, auto);
  }
  .ends .fields {
    grid-template-columns: minmax(0, 1fr);
  }
  .note {
    margin-block-start: var(--space-4);
  }
  .note button.quiet {
    min-block-size: 1.5rem;
    padding-block: 0;
    font-size: inherit;
    font-weight: inherit;
  }
  .note:empty {
    display: none;
  }
  .note.fault {
    color: var(--ink);
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
  details .row:first-of-type {
    margin-block-start: var(--space-8);
  }
  .fold {
    display: none;
  }
  .head h2 {
    flex: 1;
  }
  .head .toggle {
    font-size: var(--note-size);
    font-weight: var(--weight-text);
  }
  /* Out of sight, but not out of reach. */
  :host([folded]) .form {
    position: absolute;
    inline-size: var(--rail-width);
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  @media (max-width: 59.99rem) {
    h2 {
      position: absolute;
      inline-size: 1px;
      block-size: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .head {
      min-block-size: 0;
      margin: 0;
    }
    .head .toggle {
      display: none;
    }
    .row {
      display: grid;
      grid-template-columns: 6rem minmax(0, 1fr);
      gap: var(--space-8);
      align-items: start;
      margin: 0;
      padding-block: var(--space-8);
      border-block-end: var(--stroke-line) solid var(--line);
    }
    .label {
      margin: 0;
      padding-block: var(--space-12);
      font-size: var(--text-size);
      line-height: var(--text-line);
      font-weight: var(--weight-text);
      color: var(--ink-2);
    }
    .label small {
      display: none;
    }
    .fold {
      display: flex;
      align-items: center;
      justify-content: space-between;
      gap: var(--space-12);
      min-block-size: var(--main-target-size);
    }
    .fold strong {
      font-weight: var(--weight-strong);
    }
    .fold span {
      overflow: hidden;
      text-overflow: ellipsis;
      white-space: nowrap;
    }
    .place {
      margin: 0;
      padding-block: var(--space-8);
    }
    :host([folded]) :is(.head, .place, .demo, .form, .share) {
      display: none;
    }
    :host(:not([foldable])) .fold {
      display: none;
    }
  }
  @media (max-width: 22rem) {
    .row {
      display: block;
    }
    .label {
      padding-block: var(--space-4);
    }
  }
  @media print {
    summary,
    .demo button {
      display: none;
    }
  }
`;
