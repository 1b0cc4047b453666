/** Large figures, to be read from across the workshop: the Reading and the ruler, and nothing else. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { en } from '../../words/en.ts';
import { placesEn } from '../../words/places-en.ts';
import { Figures } from '../format.ts';
import '../parts/force-ruler.ts';
import '../parts/grade-mark.ts';
import { hrefOf } from '../route.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';
import './keep-take.ts';
import { farScreenStyles } from './far-screen-styles.ts';
import type { Large } from './reading-shape.ts';
import { readingView } from './reading-view.ts';
import { rulerView } from './ruler-view.ts';

const words = placesEn.far;
const NO_BREAK = '\u00a0';

@customElement('far-screen')
export class FarScreen extends LitElement {
  static override styles = [shared, farScreenStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  readonly #figures = new Figures();
  readonly #state = new Selected(
    this,
    () => this.workbench.store,
    (state) => state,
  );

  override render() {
    const state = this.#state.value;
    const view = readingView(state, this.#figures);
    const ruler = rulerView(state, view, this.#figures);
    const { large, grade, lead, spoken } = view;
    const count = state.answer.plucks.length;
    const listening = state.activity.kind === 'listening';
    return html`<main>
      <h1 class="visually-hidden">${words.name}</h1>
      <div class="reading" role="status" aria-label=${en.reading.name}>
        <div class="answer" aria-hidden="true">
          ${figure(large)}
          <div class="said">
            ${large.kind === 'force' || large.kind === 'frequency' ? html`<p class="doubt">±${NO_BREAK}${large.doubt}<small>${NO_BREAK}${unitOf(large)}</small></p>` : nothing}
            ${grade ? html`<p class="grade ${grade.grade}"><grade-mark bare .grade=${grade.grade} .word=${grade.word}></grade-mark>${grade.word}</p>` : nothing}
            <p class="lead">${lead}</p>
          </div>
        </div>
        <p class="visually-hidden">${spoken}</p>
      </div>
      <force-ruler
        .target=${state.understood.setup.targetForceN}
        .targetLabel=${ruler.targetLabel}
        .targetShortLabel=${en.ruler.targetShort}
        .reading=${ruler.reading}
        .rival=${ruler.rival}
        .boundsOnly=${ruler.boundsOnly}
        .label=${ruler.label}
        .locale=${this.#figures.locale}
      ></force-ruler>
      <p class="foot">
        <span>${listening ? words.listening(count) : words.idle(count)}</span>
        <button @click=${this.#toggle} title=${en.listen.keyHint('L')} aria-keyshortcuts="L">${listening ? en.listen.stop : en.listen.listen}</button>
        <keep-take short></keep-take>
        <a class="button" href=${hrefOf('listen')} aria-keyshortcuts="F Escape">${words.leave}</a>
        <span class="hint">${words.leaveHint('F')}</span>
      </p>
    </main>`;
  }

  readonly #toggle = () => {
    const { store, effects } = this.workbench;
    void (store.state.activity.kind === 'idle' ? effects.listen() : effects.stop());
  };
}

const unitOf = (large: Large): string => (large.kind === 'frequency' ? 'Hz' : 'N');

function figure(large: Large) {
  if (large.kind === 'sentence') return html`<p class="sentence">${large.text}</p>`;
  const text = large.kind === 'bounds' ? large.text : large.value;
  return html`<p class="figure ${large.kind}">${text}<small>${NO_BREAK}${unitOf(large)}</small></p>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'far-screen': FarScreen;
  }
}
