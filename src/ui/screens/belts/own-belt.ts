/** One belt of the person's own: its pages as links, and the one that is open. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KeptBelt } from '../../../../shared/document/belt.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import './belt-values.ts';
import './bench-page.ts';
import './clip-page.ts';
import './stretch-page.ts';
import './weigh-page.ts';

type PageName = keyof typeof beltsEn.pages;
const PAGES = Object.keys(beltsEn.pages) as readonly PageName[];

@customElement('own-belt')
export class OwnBelt extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      nav {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-24);
        margin-block-end: var(--space-24);
        border-block-end: var(--stroke-line) solid var(--line);
      }
      nav a {
        min-block-size: var(--target-size);
        align-content: center;
        border-block-end: var(--stroke-place) solid transparent;
        text-decoration: none;
      }
      nav a[aria-current] {
        border-color: var(--ink);
        font-weight: var(--weight-strong);
      }
      .name {
        color: var(--ink-2);
      }
    `,
  ];

  @property({ attribute: false }) belt!: KeptBelt;
  @property() page = '';

  override render() {
    const page = PAGES.find((name) => name === this.page) ?? '';
    return html`<nav aria-label=${beltsEn.pagesLabel}>
        ${PAGES.map((name) => {
          const href = name === '' ? hrefOf('belts', this.belt.id) : hrefOf('belts', this.belt.id, name);
          return html`<a href=${href} aria-current=${name === page ? 'page' : nothing}>${beltsEn.pages[name]}</a>`;
        })}
      </nav>
      ${this.#page(page)}`;
  }

  #page(page: PageName) {
    const { belt } = this;
    switch (page) {
      case 'weigh':
        return html`<weigh-page .belt=${belt}></weigh-page>`;
      case 'pluck':
        return html`<bench-page .belt=${belt} kind="weights"></bench-page>`;
      case 'positions':
        return html`<bench-page .belt=${belt} kind="positions"></bench-page>`;
      case 'clip':
        return html`<clip-page .belt=${belt}></clip-page>`;
      case 'stretch':
        return html`<stretch-page .belt=${belt}></stretch-page>`;
      default:
        return html`<belt-values .belt=${belt}></belt-values>`;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'own-belt': OwnBelt;
  }
}
