/** The Reading: the page's one live region. Figures stand for the eye, one sentence says the same for the ear. */

import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { en } from '../../words/en.ts';
import '../parts/grade-mark.ts';
import { shared } from '../shared-styles.ts';
import { readingPanelStyles } from './reading-panel-styles.ts';
import type { Large, ReadingView } from './reading-shape.ts';

const NO_BREAK = '\u00a0';

@customElement('reading-panel')
export class ReadingPanel extends LitElement {
  static override styles = [shared, readingPanelStyles];

  @property({ attribute: false }) view: ReadingView | undefined;

  override render() {
    if (!this.view) return nothing;
    const { large, frequency, grade, lead, second, advice, spoken } = this.view;
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
      ${advice ? html`<p class="advice">${advice}</p>` : nothing}
    `;
  }
}

function figure(large: Exclude<Large, { kind: 'sentence' }>) {
  if (large.kind === 'bounds') return html`<span class="bounds">${large.text}<span class="unit">${NO_BREAK}N</span></span>`;
  const unit = large.kind === 'force' ? 'N' : 'Hz';
  return html`<span class=${large.kind === 'force' ? 'force' : 'force frequency-alone'}
    ><span class="part"><span class="value">${large.value}</span><span class="unit">${NO_BREAK}${unit}</span></span
    ><wbr /><span class="part doubt"> ±${NO_BREAK}${large.doubt}${NO_BREAK}${unit}</span></span
  >`;
}

declare global {
  interface HTMLElementTagNameMap {
    'reading-panel': ReadingPanel;
  }
}
