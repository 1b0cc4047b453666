/** The bar of places: along the top when wide, at the thumb when narrow. The current one has a heavier word and a bar of 3 px. */

import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../shared-styles.ts';

export interface PlaceLink {
  readonly id: string;
  readonly name: string;
  readonly href: string;
  readonly icon: TemplateResult;
}

/**
 * @cssprop --ink, --ink-2, --paper, --line - current word and bar, other words, ground, edge to the sheet
 * @cssprop --thumb-bar-height, --stroke-place
 */
@customElement('place-bar')
export class PlaceBar extends LitElement {
  static override styles = [
    shared,
    css`
      nav {
        display: flex;
        block-size: 100%;
        gap: var(--space-32);
      }
      a {
        position: relative;
        display: flex;
        align-items: center;
        color: var(--ink-2);
        text-decoration: none;
      }
      a[aria-current] {
        color: var(--ink);
        font-weight: var(--weight-strong);
      }
      a[aria-current]::after {
        content: '';
        position: absolute;
        inset-inline: 0;
        inset-block-end: -1px;
        block-size: var(--stroke-place);
        background: var(--ink);
        forced-color-adjust: none;
      }
      a:hover {
        color: var(--ink);
      }
      svg {
        display: none;
      }
      /* The heavier word takes no more room than the lighter one, so that nothing moves. */
      .name::after {
        content: attr(data-name);
        display: block;
        block-size: 0;
        overflow: hidden;
        visibility: hidden;
        font-weight: var(--weight-strong);
      }
      :host([thumb]) nav {
        display: grid;
        grid-auto-flow: column;
        grid-auto-columns: minmax(0, 1fr);
        gap: 0;
      }
      :host([thumb]) a {
        flex-direction: column;
        justify-content: center;
        gap: var(--space-4);
        min-inline-size: 0;
        font-size: var(--small-size);
        line-height: var(--small-line);
      }
      :host([thumb]) svg {
        display: block;
      }
      :host([thumb]) a[aria-current]::after {
        inset-inline: var(--space-12);
        inset-block: -1px auto;
      }
      :host([thumb]) a:focus-visible {
        outline-offset: calc(-1 * var(--stroke-place));
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  @property() label = '';
  @property({ attribute: false }) places: readonly PlaceLink[] = [];
  @property() current = '';
  @property({ type: Boolean, reflect: true }) thumb = false;

  override render() {
    return html`<nav aria-label=${this.label}>
      ${this.places.map(
        ({ id, name, href, icon }) =>
          html`<a href=${href} aria-current=${id === this.current ? 'page' : nothing}>${icon}<span class="name" data-name=${name}>${name}</span></a>`,
      )}
    </nav>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'place-bar': PlaceBar;
  }
}
