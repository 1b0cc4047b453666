/** What stands below the ruler once there is a reading: its spectrum, or the reasons for doubt in its place, and what the doubt is made of. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Reading } from '../../core/outcome.ts';
import { en } from '../../words/en.ts';
import { plannerEn } from '../../words/planner-en.ts';
import { Figures } from '../format.ts';
import { Narrow } from '../narrow.ts';
import '../parts/doubt-bars.ts';
import '../parts/reasons-list.ts';
import '../parts/remedy-ruler.ts';
import { planHref } from '../route.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';
import { doubtGroups, pluckRows, wordedReasons } from './evidence-view.ts';
import { mostUseful } from './improvements.ts';
import './draws-check.ts';
import './listen/octave-choice.ts';
import './listen/used-panel.ts';
import './live-spectrum.ts';
import { lowerPanelStyles } from './lower-panel-styles.ts';
import { type RemedyAct, remedyActs, remedyView } from './remedy-view.ts';
import { spanDrawing } from './span-view.ts';
import './take-sources.ts';
import { evidencePanelStyles } from './evidence-panel-styles.ts';

/** Someone wants to take a remedy up. */
export class RemedyWanted extends Event {
  readonly act: RemedyAct;

  constructor(act: RemedyAct) {
    super('remedy-wanted', { bubbles: true, composed: true });
    this.act = act;
  }
}

@customElement('evidence-panel')
export class EvidencePanel extends LitElement {
  static override styles = [shared, lowerPanelStyles, evidencePanelStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;

  readonly #figures = new Figures();
  readonly #narrow = new Narrow(this);
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

  readonly #counsel = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.counsel,
  );

  override willUpdate(): void {
    this.toggleAttribute('trusted', this.#answer.value.reading?.grade === 'trusted');
  }

  override render() {
    const { reading } = this.#answer.value;
    if (!reading) return nothing;
    const reasons = wordedReasons(reading);
    const remedies = this.#remedies(reading);
    const actsBesideRemedies = remedies !== undefined && !this.#narrow.matches;
    return html`
      <div class="left">${this.#answer.value.octave ? html`<octave-choice></octave-choice>` : nothing} ${reasons.length > 0 ? this.#reasons(reasons, actsBesideRemedies ? nothing : this.#acts()) : this.#spectrum()}</div>
      <div class="right">${remedies ?? nothing} ${actsBesideRemedies ? this.#acts() : nothing} ${this.#doubt(reading, remedies === undefined)} ${this.#fileNotes()}</div>
      <details class="wide">
        <summary>${en.doubt.fold}</summary>
        ${this.#pluckTable()}
      </details>
      <used-panel class="wide"></used-panel>
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

  #reasons(reasons: ReturnType<typeof wordedReasons>, acts: unknown) {
    return html`<h2>${en.reasons.title}</h2>
      <reasons-list .items=${reasons} .label=${en.reasons.label}></reasons-list>
      ${acts}
      <details>
        <summary>${en.reasons.spectrumFold}</summary>
        <live-spectrum></live-spectrum>
      </details>`;
  }

  /** Undefined for a trusted reading, and where no remedy is known. */
  #remedies(reading: Reading) {
    const { understood } = this.workbench.store.state;
    const counsel = this.#counsel.value;
    const asked =
      counsel && reading.grade !== 'trusted' ? { remedies: counsel.remedies, setup: understood.setup, now: reading } : undefined;
    const view = asked && remedyView(asked, this.#figures);
    return (
      view &&
      html`<section>
      <h2>${view.title}</h2>
      <remedy-ruler
        .target=${understood.setup.targetForceN}
        .rows=${view.rows}
        .table=${view.table}
        .note=${en.remedies.note}
        .locale=${this.#figures.locale}
      ></remedy-ruler>
    </section>`
    );
  }

  #acts() {
    const acts = remedyActs(this.workbench.store.state);
    if (acts.length === 0) return nothing;
    const texts: Record<RemedyAct, string> = {
      weigh: en.remedies.weigh,
      'change-span': en.remedies.changeSpan,
      'tell-ends': en.remedies.tellEnds,
    };
    return html`<div class="acts">
      ${acts.map(
        (act, index) =>
          html`<button class=${(this.#answer.value.octave ? [''] : ['solid', ''])[index] ?? 'quiet'} @click=${() => this.dispatchEvent(new RemedyWanted(act))}>${texts[act]}</button>`,
      )}
      ${acts.includes('change-span') ? html`<a class="button quiet" href=${planHref(this.workbench.store.state.entered)}>${plannerEn.open}</a>` : nothing}
    </div>`;
  }

  #doubt(reading: Reading, withHelp: boolean) {
    const groups = doubtGroups(reading, this.#figures);
    if (groups.length === 0) {
      return html`<section>
        <h2>${en.span.title}</h2>
        ${spanDrawing(this.workbench.store.state.understood, this.#figures, { variant: 'small' })}
        <draws-check></draws-check>
      </section>`;
    }
    return html`<section>
      <h2>${en.doubt.title}</h2>
      <doubt-bars
        .groups=${groups}
        .label=${en.doubt.label}
        .nameHeading=${en.doubt.nameHeading}
        .figureHeading=${en.doubt.figureHeading}
      ></doubt-bars>
      ${withHelp ? this.#help() : nothing}
      <p class="note">${en.doubt.note}</p>
      <draws-check></draws-check>
    </section>`;
  }

  #help() {
    const improvements = mostUseful(this.#counsel.value?.improvements ?? [], this.#answer.value.reading?.forceN, this.#figures);
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
