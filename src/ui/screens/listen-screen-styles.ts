/** Layout of Listen: side strip and sheet; on a narrow page rows above, Listen at the thumb. */

import { css } from 'lit';

export const listenScreenStyles = css`
  :host {
    display: grid;
    grid-template-columns: var(--rail-width) minmax(0, 1fr);
    min-block-size: calc(100dvh - var(--bar-height));
  }
  .rail {
    position: sticky;
    inset-block-start: var(--bar-height);
    display: flex;
    flex-direction: column;
    block-size: calc(100dvh - var(--bar-height));
    background: var(--rail);
    border-inline-end: var(--stroke-line) solid var(--line);
  }
  .setup {
    flex: 1;
    display: flex;
    flex-direction: column;
    justify-content: space-between;
    gap: var(--space-8);
    min-block-size: 0;
    padding: var(--space-16) var(--space-24) var(--space-4);
    overflow-y: auto;
  }
  listen-control {
    padding: var(--space-4) var(--space-24) var(--space-8);
  }
  .label {
    display: block;
    margin-block-end: var(--space-4);
    font-size: var(--note-size);
    line-height: var(--note-line);
    font-weight: var(--weight-strong);
  }
  .sheet {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    grid-template-areas:
      'caption actions'
      'reading reading'
      'ruler ruler'
      'lower lower';
    align-content: start;
    padding: var(--space-8) var(--sheet-margin) var(--space-32);
  }
  .caption {
    grid-area: caption;
    min-block-size: var(--target-size);
    align-content: center;
    color: var(--ink-2);
  }
  .actions {
    grid-area: actions;
    display: flex;
    gap: var(--space-24);
  }
  .reading {
    grid-area: reading;
  }
  .drawing {
    display: none;
  }
  .ruler {
    grid-area: ruler;
  }
  .lower {
    grid-area: lower;
    margin-block-start: var(--space-12);
    padding-block-start: var(--space-12);
    border-block-start: var(--stroke-line) solid var(--line);
  }
  @media (max-width: 59.99rem) {
    :host {
      display: block;
      padding-block-end: calc(8.5rem + var(--thumb-bar-height));
    }
    .rail {
      position: static;
      display: block;
      block-size: auto;
      padding: 0 var(--sheet-margin);
      border-inline-end: 0;
      border-block-end: var(--stroke-line) solid var(--line);
    }
    .setup {
      display: block;
      padding: 0;
      overflow: visible;
    }
    .microphone {
      display: grid;
      grid-template-columns: 6rem minmax(0, 1fr);
      gap: var(--space-8);
      align-items: center;
      padding-block: var(--space-8);
    }
    .microphone .label {
      margin: 0;
      font-size: var(--text-size);
      line-height: var(--text-line);
      font-weight: var(--weight-text);
      color: var(--ink-2);
    }
    listen-control {
      position: fixed;
      z-index: 1;
      inset-inline: 0;
      inset-block-end: var(--thumb-bar-height);
      padding: var(--space-12) var(--sheet-margin);
      background: var(--paper);
      border-block-start: var(--stroke-line) solid var(--line);
    }
    .sheet {
      grid-template-columns: minmax(0, 1fr);
      grid-template-areas:
        'caption'
        'reading'
        'ruler'
        'actions'
        'lower';
      padding-block-start: 0;
    }
    .caption {
      min-block-size: 0;
      padding-block: var(--space-12) var(--space-8);
      font-size: var(--note-size);
    }
    .caption.bare {
      display: none;
    }
    .caption.bare + .reading {
      margin-block-start: var(--space-12);
    }
    .reading {
      display: flex;
      flex-direction: column;
      justify-content: space-between;
      min-block-size: 15rem;
      margin-block-end: var(--space-12);
    }
    .drawing {
      display: block;
    }
    .actions {
      display: grid;
      grid-template-columns: repeat(auto-fit, minmax(6.5rem, 1fr));
      gap: var(--space-12);
      margin-block-start: var(--space-16);
    }
    .actions button {
      min-block-size: var(--target-size);
      padding-inline: var(--space-8);
      border-color: var(--edge);
      text-decoration: none;
    }
  }
  @media print {
    :host {
      display: block;
      padding: 0;
    }
    .rail {
      position: static;
      display: block;
      block-size: auto;
    }
    .setup {
      overflow: visible;
    }
    .actions,
    .microphone,
    listen-control {
      display: none;
    }
  }
`;
