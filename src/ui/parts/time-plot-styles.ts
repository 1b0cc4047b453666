/** What the two plots over time share: bars, courses, flags and the line of today. */

import { css } from 'lit';

/** @cssprop --ink, --ink-2, --edge, --line, --paper, --aim, --aim-wash - found, second, axes, separators, ground, wanted and forecast */
export const timePlotStyles = css`
  .axis {
    fill: none;
    stroke: var(--edge);
  }
  .limit {
    stroke: var(--aim);
    stroke-width: 1.5;
  }
  .today {
    stroke: var(--ink);
  }
  .event {
    stroke: var(--ink-2);
    stroke-dasharray: 2 3;
  }
  .flag {
    fill: var(--ink-2);
  }
  .bar {
    fill: var(--ink);
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .bar.hollow {
    fill: var(--paper);
  }
  .slit {
    stroke: var(--paper);
    stroke-width: 1.5;
  }
  .slit.hollow {
    stroke: var(--ink);
  }
  .course {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
  }
  .course.dotted {
    stroke-dasharray: 2 4;
  }
  .forecast {
    fill: none;
    stroke: var(--aim);
    stroke-width: 2;
  }
  .forecast.dotted {
    stroke-dasharray: 2 4;
  }
  .forecast.edge {
    stroke-width: 1;
    stroke-dasharray: 5 4;
  }
  .when {
    fill: var(--aim);
  }
  .whisker {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
  }
  .dot {
    fill: var(--ink);
  }
  .tile {
    fill: var(--ink);
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .tile.hollow {
    fill: var(--paper);
  }
  text.on-tile {
    fill: var(--paper);
    font-weight: 700;
  }
  text.on-tile.hollow {
    fill: var(--ink);
  }
`;
