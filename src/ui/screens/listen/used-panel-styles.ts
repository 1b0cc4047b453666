/** Layout of 'What was used'. */

import { css } from 'lit';

export const usedPanelStyles = css`
  :host {
    display: block;
  }
  summary {
    min-block-size: var(--target-size);
    align-content: center;
    cursor: pointer;
    font-weight: var(--weight-strong);
  }
  .choice {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--space-24);
  }
  .choice label {
    display: inline-flex;
    align-items: center;
    gap: var(--space-8);
    min-block-size: var(--target-size);
    cursor: pointer;
  }
  .choice input {
    inline-size: 1.125rem;
    block-size: 1.125rem;
    margin: 0;
    accent-color: var(--ink);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-8) var(--space-24);
    margin-block: var(--space-4) var(--space-12);
  }
  .sentence {
    max-inline-size: 44rem;
    margin-block-end: var(--space-16);
  }
  h3 {
    margin-block: var(--space-16) var(--space-8);
  }
  @media print {
    .choice,
    .acts {
      display: none;
    }
  }
`;
