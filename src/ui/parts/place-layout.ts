/**
 * The layout that the shelves share: side strip and sheet when wide; on a narrow page the strip's content stands as rows above the sheet,
 * folded under one line where `fold` names it. Slots: `rail`, and the sheet's content.
 */

import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { Narrow } from '../narrow.ts';
import { shared } from '../shared-styles.ts';

/**
 * @cssprop --rail, --line - ground of the strip, its edge
 * @cssprop --bar-height, --rail-width, --sheet-margin, --thumb-bar-height
 */
@customElement('place-layout')
export class PlaceLayout extends LitElement {
  static override styles = [
    shared,
    css`
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
        padding-block: var(--space-16);
        overflow-y: auto;
        background: var(--rail);
        border-inline-end: var(--stroke-line) solid var(--line);
      }
      .sheet {
        min-inline-size: 0;
        padding: var(--space-24) var(--sheet-margin) var(--space-32);
      }
      summary {
        display: flex;
        align-items: center;
        justify-content: space-between;
        min-block-size: var(--main-target-size);
        padding-inline: var(--sheet-margin);
        font-weight: var(--weight-strong);
        cursor: pointer;
        list-style: none;
      }
      summary::-webkit-details-marker {
        display: none;
      }
      summary svg {
        transition: none;
      }
      details[open] summary svg {
        transform: rotate(180deg);
      }
      @media (max-width: 59.99rem) {
        :host {
          display: block;
          padding-block-end: var(--thumb-bar-height);
        }
        .rail {
          position: static;
          display: block;
          block-size: auto;
          padding-block: 0;
          border-inline-end: 0;
          border-block-end: var(--stroke-line) solid var(--line);
        }
        .sheet {
          padding-block-start: var(--space-16);
        }
      }
      @media print {
        :host {
          display: block;
          min-block-size: 0;
          padding: 0;
        }
        .sheet {
          padding: 0;
        }
        .rail {
          display: none;
        }
      }
    `,
  ];

  /** Name of the strip, for the ear. */
  @property() label = '';
  /** One line that the strip's content folds under on a narrow page; empty: it stands open. */
  @property() fold = '';
  readonly #narrow = new Narrow(this);

  override render() {
    const rail = html`<slot name="rail"></slot>`;
    return html`<aside class="rail" aria-label=${this.label}>
        ${this.#narrow.matches && this.fold ? html`<details><summary>${this.fold}${arrow}</summary>${rail}</details>` : rail}
      </aside>
      <main class="sheet"><slot></slot></main>`;
  }
}

const arrow = html`<svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
  <path d="M2,4 L6,8 L10,4" fill="none" stroke="currentColor" stroke-width="1.5" />
</svg>`;

declare global {
  interface HTMLElementTagNameMap {
    'place-layout': PlaceLayout;
  }
}
