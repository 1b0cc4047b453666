/** The plan view beside the sentence that says the same. */

import { css } from 'lit';

export const parkPlanStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1.6fr) minmax(0, 1fr);
    gap: var(--space-24) var(--space-32);
    align-items: center;
  }
  .drawing {
    max-inline-size: 30rem;
  }
  @media (max-width: 59.99rem) {
    :host {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
