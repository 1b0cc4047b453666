/** The Reading: the page's one live region. Figures stand for the eye, one sentence says the same for the ear. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { en } from '../../words/en.ts';
import '../parts/grade-mark.ts';
import { shared } from '../shared-styles.ts';
import type { Large, ReadingView } from './reading-view.ts';

const NO_BREAK = '\u00a0';

@customElement('reading-panel')
export class ReadingPanel extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .answer {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(17rem, 22.5rem);
        column-gap: var(--space-24);
        min-block-size: 8.5rem;
      }
      .figures {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 var(--space-32);
        align-self: start;
      }
      .force {
        font-size: var(--figure-size);
        line-height: var(--figure-line);
        letter-spacing: var(--tracking-large);
      }
      .part {
        white-space: nowrap;
      }
      .value {
        font-weight: var(--weight-figure);
      }
      .unit {
        font-size: 0.62em;
        word-spacing: -0.15em;
      }
      .doubt {
        font-size: var(--figure-doubt-size);
        line-height: 1;
      }
      .bounds {
        font-size: var(--bounds-size);
        line-height: var(--figure-line);
        letter-spacing: var(--tracking-large);
      }
      .frequency {
        font-size: var(--title-size);
        line-height: var(--title-line);
        color: var(--ink-2);
        white-space: nowrap;
      }
      .frequency small {
        font-size: var(--lead-size);
      }
      .headline {
        grid-column: 1 / -1;
        padding-block-start: var(--space-8);
        font-size: var(--answer-size);
        line-height: var(--answer-line);
        font-weight: var(--weight-figure);
        letter-spacing: var(--tracking-large);
      }
      .headline + .said {
        grid-column: 1 / -1;
      }
      .lead {
        font-size: var(--lead-size);
        line-height: var(--lead-line);
        max-inline-size: 44rem;
      }
      .headline + .said .lead {
        color: var(--ink-2);
      }
      .second {
        color: var(--ink-2);
      }
      .grade {
        display: flex;
        align-items: center;
        gap: var(--space-12);
        min-block-size: var(--answer-line);
        font-size: var(--title-size);
        line-height: var(--title-line);
        font-weight: var(--weight-strong);
      }
      .grade.trusted {
        color: var(--trusted);
      }
      .grade.doubtful {
        color: var(--doubtful);
      }
      .grade.unusable {
        color: var(--unusable);
      }
      .grade.nothing {
        color: var(--ink-2);
      }
      .grade grade-mark {
        font-size: 1.25rem;
      }
      @media (max-width: 59.99rem) {
        .answer {
          display: block;
          min-block-size: 0;
        }
        .figures {
          display: block;
        }
      }
      @media (max-width: 22rem) {
        .force {
          --figure-size: 3.25rem;
          --figure-doubt-size: 1.75rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: ReadingView | undefined;

  override render() {
    if (!this.view) return nothing;
    const { large, frequency, grade, lead, second, spoken } = this.view;
    return html`
      <div role="status" aria-label=${en.reading.name}>
        <div class="answer" aria-hidden="true">
          ${
            large.kind === 'sentence'
              ? large.text && html`<p class="headline">${large.text}</p>`
              : html`<p class="figures">
                  ${figure(large)}
                  ${frequency ? html`<span class="frequency">${frequency.value}${NO_BREAK}Hz <small>±${NO_BREAK}${frequency.doubt}${NO_BREAK}Hz</small></span>` : nothing}
                </p>`
          }
          <div class="said">
            ${
              grade
                ? html`<p class="grade ${grade.grade}"><grade-mark bare .grade=${grade.grade} .word=${grade.word}></grade-mark>${grade.word}</p>`
                : nothing
            }
            <p class="lead">${lead}</p>
            <p class="second">${second}</p>
          </div>
        </div>
        <p class="visually-hidden">${spoken}</p>
      </div>
    `;
  }
}

function figure(large: Exclude<Large, { kind: 'sentence' }>) {
  if (large.kind === 'bounds') return html`<span class="bounds">${large.text}<span class="unit">${NO_BREAK}N</span></span>`;
  const unit = large.kind === 'force' ? 'N' : 'Hz';
  return html`<span class="force"
    ><span class="part"><span class="value">${large.value}</span><span class="unit">${NO_BREAK}${unit}</span></span
    ><span class="part doubt"> ±${NO_BREAK}${large.doubt}${NO_BREAK}${unit}</span></span
  >`;
}

declare global {
  interface HTMLElementTagNameMap {
    'reading-panel': ReadingPanel;
  }
}
