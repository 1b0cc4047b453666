/** A grade as shape and word: a full disc, a diamond half filled, an open square struck through, a flat stroke. Colour comes last. */

import { css, html, LitElement, nothing, type SVGTemplateResult, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Grade } from '../../core/outcome.ts';

export type MarkedGrade = Grade | 'nothing';

/** Each shape in a box of 20 by 20. */
const SHAPES: Readonly<Record<MarkedGrade, SVGTemplateResult>> = {
  trusted: svg`<circle cx="10" cy="10" r="8.5" class="full" />`,
  doubtful: svg`<path d="M10,1.2 L18.8,10 L10,18.8 L1.2,10 Z" class="open" /><path d="M10,1.2 L10,18.8 L1.2,10 Z" class="full" />`,
  unusable: svg`<path d="M2,2 H18 V18 H2 Z M2.5,17.5 L17.5,2.5" class="open" />`,
  nothing: svg`<path d="M2,10 H18" class="open" />`,
};

/**
 * @cssprop --trusted, --doubtful, --unusable, --ink-2 - colour of the mark, by grade
 * @cssprop --font, --text-size, --title-size - type
 */
@customElement('grade-mark')
export class GradeMark extends LitElement {
  static override styles = css`
    :host {
      display: inline-flex;
      align-items: center;
      gap: 0.5em;
      font-family: var(--font);
      font-size: var(--text-size);
      font-weight: 600;
      line-height: 1.25;
      color: var(--ink-2);
    }
    :host([hidden]) {
      display: none;
    }
    :host([size='large']) {
      font-size: var(--title-size);
    }
    :host([grade='trusted']) {
      color: var(--trusted);
    }
    :host([grade='doubtful']) {
      color: var(--doubtful);
    }
    :host([grade='unusable']) {
      color: var(--unusable);
    }
    svg {
      flex: none;
      inline-size: 1em;
      block-size: 1em;
      min-inline-size: 16px;
      min-block-size: 16px;
      forced-color-adjust: preserve-parent-color;
    }
    :host([grade='doubtful']) svg {
      inline-size: 1.15em;
      block-size: 1.15em;
      margin-inline: -0.075em;
    }
    /* Beside other text the word stands on its line; else the mark's lower edge would. */
    span {
      align-self: baseline;
    }
    .full {
      fill: currentColor;
    }
    .open {
      fill: none;
      stroke: currentColor;
      stroke-width: 2;
    }
  `;

  @property({ reflect: true }) grade: MarkedGrade = 'nothing';
  @property() word = '';
  @property({ reflect: true }) size: 'large' | 'text' = 'text';
  /** The shape alone; the word becomes its name. */
  @property({ type: Boolean }) bare = false;

  override render() {
    return this.bare
      ? html`<svg viewBox="0 0 20 20" role="img" aria-label=${this.word || nothing}>${SHAPES[this.grade]}</svg>`
      : html`<svg viewBox="0 0 20 20" aria-hidden="true">${SHAPES[this.grade]}</svg><span>${this.word}</span>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'grade-mark': GradeMark;
  }
}
