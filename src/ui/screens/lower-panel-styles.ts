/** Two columns below the ruler, one on a narrow page. */

import { css } from 'lit';

export const lowerPanelStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(17rem, 22.5rem);
    gap: var(--space-24);
    align-items: start;
  }
  .left,
  .right {
    display: grid;
    gap: var(--space-8);
    min-inline-size: 0;
  }
  .right {
    gap: var(--space-16);
  }
  section > h2 {
    margin-block-end: var(--space-8);
  }
  @media (max-width: 59.99rem) {
    :host {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
