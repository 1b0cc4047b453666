/** What a place holds, as links in its side strip: name and a note each; the current one has a bar of 3 px and the sheet's ground. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../shared-styles.ts';

export interface PlaceEntry {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly href: string;
}

/** @cssprop --ink, --ink-2, --paper, --line - names and bar, notes, ground of the current one, separators */
@customElement('place-list')
export class PlaceList extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      ul {
        padding: 0;
        list-style: none;
        border-block-start: var(--stroke-line) solid var(--line);
      }
      a {
        display: block;
        position: relative;
        min-block-size: var(--target-size);
        padding: var(--space-12) var(--space-24);
        border-block-end: var(--stroke-line) solid var(--line);
        text-decoration: none;
        overflow-wrap: anywhere;
      }
      a[aria-current] {
        background: var(--paper);
      }
      a[aria-current]::before {
        content: '';
        position: absolute;
        inset-block: 0;
        inset-inline-start: 0;
        inline-size: var(--stroke-place);
        background: var(--ink);
        forced-color-adjust: none;
      }
      a:focus-visible {
        outline-offset: calc(-1 * var(--stroke-place));
      }
      strong {
        display: block;
        font-weight: var(--weight-strong);
      }
      @media (max-width: 59.99rem) {
        a {
          padding-inline: var(--sheet-margin);
        }
      }
    `,
  ];

  @property() label = '';
  @property({ attribute: false }) entries: readonly PlaceEntry[] = [];
  @property() current = '';

  override render() {
    return html`<ul aria-label=${this.label || nothing}>
      ${this.entries.map(
        ({ id, name, note, href }) =>
          html`<li><a href=${href} aria-current=${id === this.current ? 'page' : nothing}><strong>${name}</strong>
            ${note ? html`<span class="note">${note}</span>` : nothing}</a></li>`,
      )}
    </ul>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'place-list': PlaceList;
  }
}
