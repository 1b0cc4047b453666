/** What all drawings share: text in the page's type, paint by class, and a way to speak to screen readers alone. */

import { css } from 'lit';

export const plotStyles = css`
  :host {
    display: block;
    position: relative;
    font-family: var(--font);
    font-size: var(--note-size);
    font-variant-numeric: tabular-nums lining-nums;
    color: var(--ink);
  }
  :host([hidden]) {
    display: none;
  }
  /* A drawing is made in the pixels of the screen; on narrower paper it shrinks as a whole. */
  svg[viewBox] {
    max-inline-size: 100%;
    block-size: auto;
  }
  svg {
    display: block;
    direction: ltr;
    overflow: visible;
    forced-color-adjust: none;
  }
  text {
    fill: var(--ink);
  }
  text.second {
    fill: var(--ink-2);
  }
  text.hint {
    fill: var(--ink-3);
  }
  text.aim {
    fill: var(--aim);
  }
  text.strong {
    font-weight: 600;
  }
  .wash {
    fill: var(--aim-wash);
  }
  .edge-of-aim {
    stroke: var(--aim);
    stroke-width: 1.5;
  }
  .spoken {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;
