/** What a place holds, as links in its side strip: name, a note, and where it has one its grade; the current one has a bar of 3 px and the sheet's ground. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../shared-styles.ts';
import './grade-mark.ts';
import type { MarkedGrade } from './grade-mark.ts';

export interface PlaceEntry {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly href: string;
  readonly grade?: MarkedGrade | undefined;
  readonly gradeWord?: string | undefined;
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
      .graded {
        padding-inline-start: calc(var(--space-24) + var(--space-32));
      }
      grade-mark {
        position: absolute;
        inset-block-start: var(--space-12);
        inset-inline-start: var(--space-24);
      }
      strong {
        display: block;
        font-weight: var(--weight-strong);
      }
      @media (max-width: 59.99rem) {
        a {
          padding-inline: var(--sheet-margin);
        }
        .graded {
          padding-inline-start: calc(var(--sheet-margin) + var(--space-32));
        }
        grade-mark {
          inset-inline-start: var(--sheet-margin);
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
        ({ id, name, note, href, grade, gradeWord }) =>
          html`<li><a class=${grade ? 'graded' : nothing} href=${href} aria-current=${id === this.current ? 'page' : nothing}>
            ${grade ? html`<grade-mark .grade=${grade} .word=${gradeWord ?? ''} bare></grade-mark>` : nothing}<strong>${name}</strong>
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
