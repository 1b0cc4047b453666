/** A belt of a group by its letter: the first filled, the second outlined, the third and fourth by the stroke of their outline. No colour tells belts apart. */

import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';

/** @cssprop --ink, --paper, --font - the tile, its letter */
@customElement('letter-tile')
export class LetterTile extends LitElement {
  static override styles = css`
    :host {
      display: inline-grid;
      place-items: center;
      flex: none;
      min-inline-size: 1.75em;
      block-size: 1.75em;
      padding-inline: 0.2em;
      box-sizing: border-box;
      border: 0.1em solid var(--ink);
      font-family: var(--font);
      font-weight: 700;
      line-height: 1;
      color: var(--ink);
      background: var(--paper);
    }
    :host([look='0']) {
      background: var(--ink);
      color: var(--paper);
      forced-color-adjust: preserve-parent-color;
    }
    :host([look='2']) {
      border-style: dashed;
    }
    :host([look='3']) {
      border-style: dotted;
    }
  `;

  @property() name = '';
  /** Place of the belt in its group, from 0. */
  @property({ type: Number, reflect: true }) look = 0;

  override render() {
    return html`${this.name}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'letter-tile': LetterTile;
  }
}
