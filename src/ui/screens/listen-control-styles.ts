/** Layout of Listen and Stop: level above the button in the side strip, beside it at the thumb. */

import { css } from 'lit';

export const listenControlStyles = css`
  :host {
    display: block;
  }
  .state {
    display: flex;
    justify-content: space-between;
    gap: var(--space-12);
    margin-block-end: var(--space-4);
  }
  .state strong {
    font-weight: var(--weight-strong);
  }
  .state span {
    color: var(--ink-2);
    font-size: var(--note-size);
  }
  button {
    inline-size: 100%;
    min-block-size: var(--main-target-size);
    margin-block: var(--space-12);
    font-size: var(--lead-size);
  }
  .below {
    min-block-size: calc(2 * var(--note-line));
  }
  .cautions {
    display: none;
  }
  @media (max-width: 59.99rem) {
    :host {
      display: grid;
      grid-template-columns: minmax(0, 1fr);
      align-items: center;
      gap: var(--space-8) var(--space-16);
    }
    button {
      margin: 0;
    }
    .below {
      display: none;
    }
    .cautions {
      display: block;
    }
    .short {
      display: block;
    }
    :host([listening]) {
      grid-template-columns: minmax(0, 1fr) minmax(6.5rem, 0.4fr);
    }
    @media (max-height: 30rem) {
      .cautions {
        display: none;
      }
    }
    .cautions button {
      display: inline;
      inline-size: auto;
      min-block-size: 1.5rem;
      padding: 0;
      font-size: inherit;
      font-weight: inherit;
    }
  }
`;
