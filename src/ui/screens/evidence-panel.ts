/** What stands below the ruler once there is a reading: its spectrum, or the reasons for doubt in its place, and what the doubt is made of. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Reading } from '../../core/outcome.ts';
import { en } from '../../words/en.ts';
import { Figures } from '../format.ts';
import '../parts/doubt-bars.ts';
import '../parts/reasons-list.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';
import { doubtGroups, pluckRows, wordedReasons } from './evidence-view.ts';
import { mostUseful } from './improvements.ts';
import './live-spectrum.ts';
import { lowerPanelStyles } from './lower-panel-styles.ts';
import { spanDrawing } from './span-view.ts';
import './take-sources.ts';
import { evidencePanelStyles } from './evidence-panel-styles.ts';

@customElement('evidence-panel')
export class EvidencePanel extends LitElement {
  static override styles = [shared, lowerPanelStyles, evidencePanelStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;

  readonly #figures = new Figures();
  readonly #answer = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.answer,
  );
  readonly #notes = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.take?.notes,
  );

  override willUpdate(): void {
    this.toggleAttribute('trusted', this.#answer.value.reading?.grade === 'trusted');
  }

  override render() {
    const { reading } = this.#answer.value;
    if (!reading) return nothing;
    const reasons = wordedReasons(reading);
    return html`
      <div class="left">${reasons.length > 0 ? this.#reasons(reasons) : this.#spectrum()}</div>
      <div class="right">${this.#doubt(reading)} ${this.#fileNotes()}</div>
      <details class="wide">
        <summary>${en.doubt.fold}</summary>
        ${this.#pluckTable()}
      </details>
      <div class="foot">
        <take-sources quiet></take-sources>
        <p class="note caution">
          ${en.listen.firstCautions} <button class="quiet" @click=${this.#cautions}>${en.listen.allCautions}</button>
        </p>
      </div>
    `;
  }

  #spectrum() {
    return html`<h2>${en.spectrum.title}</h2>
      <live-spectrum></live-spectrum>`;
  }

  #reasons(reasons: ReturnType<typeof wordedReasons>) {
    return html`<h2>${en.reasons.title}</h2>
      <reasons-list .items=${reasons} .label=${en.reasons.label}></reasons-list>
      <details>
        <summary>${en.reasons.spectrumFold}</summary>
        <live-spectrum></live-spectrum>
      </details>`;
  }

  #doubt(reading: Reading) {
    const groups = doubtGroups(reading, this.#figures);
    if (groups.length === 0) {
      return html`<section>
        <h2>${en.span.title}</h2>
        ${spanDrawing(this.workbench.store.state.understood, this.#figures, { variant: 'small' })}
      </section>`;
    }
    return html`<section>
      <h2>${en.doubt.title}</h2>
      <doubt-bars
        .groups=${groups}
        .label=${en.doubt.label}
        .note=${en.doubt.note}
        .nameHeading=${en.doubt.nameHeading}
        .figureHeading=${en.doubt.figureHeading}
      ></doubt-bars>
      ${this.#help()}
    </section>`;
  }

  #help() {
    const { take, understood } = this.workbench.store.state;
    const improvements = take ? mostUseful(take, understood.setup, this.#figures) : [];
    if (improvements.length === 0) return nothing;
    return html`<h2 class="help">${en.help.title}</h2>
      <dl>
        ${improvements.map(({ what, becomes }) => html`<div><dt>${what}</dt><dd>${becomes}</dd></div>`)}
      </dl>`;
  }

  #fileNotes() {
    const notes = this.#notes.value ?? [];
    if (notes.length === 0) return nothing;
    return html`<section>
      <h2>${en.notes.title}</h2>
      ${notes.map((note) => html`<p class="note">${note}</p>`)}
    </section>`;
  }

  #pluckTable() {
    return html`<table>
      <thead>
        <tr>
          ${en.doubt.pluckColumns.map((column) => html`<th scope="col">${column}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${pluckRows(this.#answer.value.plucks, this.#figures).map(
          (row) => html`<tr>
            ${row.map((cell) => html`<td>${cell}</td>`)}
          </tr>`,
        )}
      </tbody>
    </table>`;
  }

  readonly #cautions = () => this.dispatchEvent(new Event('cautions-wanted', { bubbles: true, composed: true }));
}

declare global {
  interface HTMLElementTagNameMap {
    'evidence-panel': EvidencePanel;
  }
}
