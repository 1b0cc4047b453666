/** Rows of weights, the rig's drawing, and the cautions before weights hang. */

import { css } from 'lit';

export const rigFormStyles = css`
  .cautions {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(16rem, 100%), 1fr));
    gap: var(--space-4) var(--space-24);
    margin-block-end: var(--space-16);
    padding-inline-start: var(--space-16);
    font-size: var(--note-size);
    line-height: var(--note-line);
    color: var(--ink-2);
  }
  .rig {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-16) var(--space-24);
    align-items: center;
  }
  .law {
    flex: 1 1 16rem;
  }
  .drawing {
    flex: none;
    color: var(--ink-2);
  }
  .weights {
    margin-block: var(--space-16);
  }
  .weight {
    display: grid;
    grid-template-columns: minmax(6rem, 2fr) minmax(6rem, 1fr) auto 2.75rem;
    gap: var(--space-8) var(--space-16);
    align-items: end;
    padding-block: var(--space-8);
    border-block-end: var(--stroke-line) solid var(--line);
  }
  .weight:has(:nth-child(3):is(told-quantity)) {
    grid-template-columns: minmax(6rem, 2fr) minmax(5rem, 1fr) minmax(5rem, 1fr) auto 2.75rem;
  }
  .pulls {
    min-block-size: var(--target-size);
    white-space: nowrap;
  }
  .pulls strong {
    display: block;
    padding-block-start: var(--space-8);
  }
  @media (max-width: 40rem) {
    .weight,
    .weight:has(:nth-child(3):is(told-quantity)) {
      grid-template-columns: 1fr 1fr;
    }
  }
`;
