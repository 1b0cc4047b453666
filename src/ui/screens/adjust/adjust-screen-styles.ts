/** Layout of adjusting: the instruction first and large, then the belts beside their ruler, then the way so far beside what was learned. */

import { css } from 'lit';

export const adjustScreenStyles = css`
  :host {
    display: block;
    --say-size: clamp(2.75rem, 8.2vw, 6.5rem);
  }
  main {
    display: flex;
    flex-direction: column;
    min-block-size: 100dvh;
  }
  header {
    display: flex;
    align-items: center;
    gap: var(--space-8) var(--space-16);
    padding: var(--space-8) var(--sheet-margin);
    border-block-end: var(--stroke-line) solid var(--line);
  }
  h1 {
    font-size: 1rem;
    line-height: var(--text-line);
  }
  .over {
    flex: 1;
    min-inline-size: 0;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
    color: var(--ink-2);
  }
  .ear {
    display: flex;
    align-items: center;
    gap: var(--space-12);
  }
  .ear level-meter {
    inline-size: 10rem;
  }
  .ear .words {
    display: flex;
    gap: var(--space-8);
    white-space: nowrap;
  }
  .sheet {
    display: grid;
    gap: 0 var(--space-48);
    grid-template-columns: minmax(0, 2fr) minmax(0, 3fr);
    padding: var(--space-8) var(--sheet-margin) var(--space-32);
  }
  .next {
    grid-column: 1 / -1;
    padding-block: var(--space-4) var(--space-16);
    border-block-end: var(--stroke-line) solid var(--line);
  }
  .say {
    font-size: var(--say-size);
    line-height: 1.08;
    letter-spacing: var(--tracking-large);
    text-wrap: balance;
  }
  .say b {
    font-weight: var(--weight-figure);
  }
  .say.done {
    font-size: clamp(2.25rem, 5vw, 4rem);
    line-height: 1.2;
  }
  .after {
    font-size: var(--title-size);
    line-height: var(--title-line);
    color: var(--ink-2);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-12);
    margin-block-start: var(--space-12);
  }
  .acts .listen {
    min-block-size: var(--main-target-size);
    min-inline-size: 10rem;
    font-size: var(--lead-size);
  }
  .block {
    padding-block: var(--space-16);
    min-inline-size: 0;
  }
  .belts {
    display: grid;
    gap: var(--space-12);
    align-content: start;
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .belt {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: var(--space-4) var(--space-16);
    align-items: center;
  }
  .belt letter-tile {
    font-size: 1.65rem;
  }
  .belt[data-asked] letter-tile {
    outline: var(--stroke-place) solid var(--aim);
    outline-offset: 2px;
  }
  .force {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    column-gap: var(--space-12);
    min-block-size: 3.5rem;
    font-size: 3.25rem;
    line-height: 3.5rem;
    letter-spacing: var(--tracking-large);
  }
  .force b {
    font-weight: var(--weight-figure);
  }
  .force small {
    font-size: 0.58em;
    letter-spacing: 0;
    white-space: nowrap;
  }
  .force.none {
    font-size: var(--lead-size);
    letter-spacing: 0;
    color: var(--ink-2);
  }
  .standing {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--space-16);
    grid-column: 2;
  }
  .wide-line {
    grid-column: 1 / -1;
    border-block-start: var(--stroke-line) solid var(--line);
  }
  .learned {
    display: grid;
    gap: var(--space-12);
    align-content: start;
  }
  .learned.whole {
    grid-column: 1 / -1;
    gap: var(--space-4);
  }
  .learned h2 {
    margin-block-end: var(--space-4);
  }
  .headline {
    font-size: 1.375rem;
    line-height: 1.75rem;
    font-weight: var(--weight-strong);
  }
  .learned p {
    color: var(--ink-2);
  }
  .learned .headline {
    color: var(--ink);
  }
  .way {
    order: 3;
  }
  .way h2 {
    margin-block-end: var(--space-8);
  }
  .matters {
    order: 4;
  }
  .foot {
    display: none;
  }
  .care {
    margin-block-start: var(--space-8);
    color: var(--ink-2);
  }
  :host([far]) {
    --say-size: clamp(3.5rem, 13.5vw, 13rem);
  }
  :host([far]) .sheet {
    grid-template-columns: minmax(0, 1fr);
    flex: 1;
    align-content: space-between;
  }
  :host([far]) .after {
    font-size: clamp(1.5rem, 3vw, 2.75rem);
    line-height: 1.3;
  }
  :host([far]) .belts {
    grid-template-columns: repeat(auto-fit, minmax(20rem, 1fr));
  }
  :host([far]) .force {
    font-size: clamp(3.5rem, 8vw, 7rem);
    line-height: 1.15;
  }
  :host([far]) .belt letter-tile {
    font-size: clamp(2rem, 4vw, 3.5rem);
  }
  :host([far]) .standing {
    font-size: var(--title-size);
    line-height: var(--title-line);
  }
  .missing {
    display: grid;
    gap: var(--space-16);
    justify-items: start;
    padding: var(--space-32) var(--sheet-margin);
  }
  .missing h1 {
    font-size: var(--answer-size);
    line-height: var(--answer-line);
  }
  .missing ul {
    padding-inline-start: var(--space-24);
  }
  @media (max-width: 59.99rem) {
    :host {
      --say-size: clamp(2.75rem, 15vw, 4.5rem);
    }
    .sheet {
      grid-template-columns: minmax(0, 1fr);
      padding-block-end: calc(var(--space-64) + var(--space-48));
    }
    .after {
      font-size: var(--lead-size);
      line-height: var(--lead-line);
    }
    .say b,
    .say span {
      display: block;
    }
    .over,
    header .ear {
      display: none;
    }
    h1 {
      flex: 1;
    }
    .matters {
      order: 2;
      border-block-start: var(--stroke-line) solid var(--line);
    }
    .way {
      border-block-start: var(--stroke-line) solid var(--line);
    }
    .wide-line {
      display: none;
    }
    .foot {
      position: fixed;
      z-index: 1;
      inset-inline: 0;
      inset-block-end: 0;
      display: grid;
      grid-template-columns: minmax(0, 1fr) auto;
      gap: var(--space-16);
      align-items: center;
      padding: var(--space-8) var(--sheet-margin) calc(var(--space-8) + env(safe-area-inset-bottom));
      background: var(--paper);
      border-block-start: var(--stroke-line) solid var(--line);
    }
    .foot button {
      min-block-size: var(--main-target-size);
    }
    .foot .words {
      display: flex;
      justify-content: space-between;
      gap: var(--space-8);
      font-size: var(--note-size);
    }
    header .undo {
      display: none;
    }
  }
`;
