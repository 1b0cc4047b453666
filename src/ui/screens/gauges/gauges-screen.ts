/** Gauges: the list in the strip, and on the sheet one gauge with its pages, all of them compared, or how to begin. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import { rangeText } from '../../../words/gauge-en.ts';
import { gaugesEn as words } from '../../../words/gauges-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/answer-line.ts';
import '../../parts/place-layout.ts';
import '../../parts/place-list.ts';
import type { PlaceEntry } from '../../parts/place-list.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { demoGauges, newGauge } from '../../state/gauge-new.ts';
import { gradeOf, proofOf } from '../../state/gauge-proof.ts';
import { KeptPart } from '../../state/kept-part.ts';
import './compare-page.ts';
import './gauge-sheet.ts';

/** In the place of a gauge's id: all of them in one plot. */
export const COMPARE = 'compare';

@customElement('gauges-screen')
export class GaugesScreen extends LitElement {
  static override styles = [
    shared,
    css`
      .head {
        padding: 0 var(--space-24) var(--space-12);
      }
      h2 {
        font-size: var(--lead-size);
        line-height: var(--lead-line);
      }
      .acts {
        display: grid;
        gap: var(--space-12);
        margin-block-start: auto;
        padding: var(--space-16) var(--space-24) var(--space-8);
      }
      .undo,
      .begin {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-8) var(--space-16);
        margin-block-end: var(--space-16);
      }
      @media (max-width: 59.99rem) {
        .head {
          display: none;
        }
        .acts {
          padding-inline: var(--sheet-margin);
        }
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  /** Id of the gauge that is shown, or COMPARE. */
  @property() gaugeId = '';
  @property() tab = '';
  @state() removed: KeptGauge | undefined;
  readonly #figures = new Figures();
  readonly #document = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document }) => document,
  );

  override render() {
    const { gauges } = this.#document.value;
    const compares = this.gaugeId === COMPARE;
    const shown = compares ? undefined : gauges.find(({ id }) => id === this.gaugeId);
    const fold = shown?.name ?? (compares ? words.compareAll(gauges.length) : words.title);
    return html`<place-layout .label=${words.list} .fold=${fold}>
      <div slot="rail" class="head"><h2>${words.title}</h2></div>
      <place-list slot="rail" .label=${words.list} .entries=${this.#entries()} .current=${compares ? COMPARE : (shown?.id ?? '')}></place-list>
      <div slot="rail" class="acts">
        ${gauges.length > 0 ? html`<button @click=${this.#add}>${words.add}</button>` : nothing}
      </div>
      ${
        this.removed
          ? html`<div class="undo" role="status"><span>${words.removed(this.removed.name)}</span>
        <button @click=${this.#bringBack}>${words.undo}</button></div>`
          : nothing
      }
      ${
        compares
          ? html`<compare-page .document=${this.#document.value}></compare-page>`
          : shown
            ? html`<gauge-sheet .document=${this.#document.value} .gauge=${shown} .tab=${this.tab} @gauge-removed=${() => this.#remove(shown)}></gauge-sheet>`
            : this.#start()
      }
    </place-layout>`;
  }

  #entries(): readonly PlaceEntry[] {
    const { gauges } = this.#document.value;
    const entries = gauges.map((gauge) => {
      const note = this.#noteOf(gauge);
      const grade = gradeOf(gauge, proofOf(gauge, this.#document.value.belts));
      return {
        id: gauge.id,
        name: gauge.name,
        note: gauge.demo ? words.demoNote(note) : note,
        href: hrefOf('gauges', gauge.id),
        grade,
        gradeWord: grade === 'nothing' ? words.notProved : words.compare.grades[grade],
      };
    });
    if (gauges.length < 2) return entries;
    return [...entries, { id: COMPARE, name: words.compareAll(gauges.length), note: words.compareNote, href: hrefOf('gauges', COMPARE) }];
  }

  #noteOf(gauge: KeptGauge): string {
    const { calibration } = proofOf(gauge, this.#document.value.belts);
    const last = gauge.readings?.at(-1);
    if (calibration.kind === 'no-calibration' || !last) return words.notProved;
    const date = new Intl.DateTimeFormat(this.#figures.locale, { day: 'numeric', month: 'short' }).format(new Date(last.at.at));
    return calibration.verified.kind === 'verified' ? words.provedNote(date, rangeText(calibration.verified)) : words.provedNowhere(date);
  }

  #start() {
    if (this.gaugeId && this.workbench.kept.keeping.isOpen && !this.removed) {
      return html`<answer-line><b>${words.gone[0]}</b><span slot="under">${words.gone[1]}</span>
        <a slot="actions" class="button" href=${hrefOf('gauges')}>${words.backToAll}</a></answer-line>`;
    }
    return html`<answer-line>
        <span slot="over">${words.empty.over}</span>${words.empty.answer[0]}<b>${words.empty.answer[1]}</b><span slot="under">${words.empty.under}</span>
      </answer-line>
      <div class="begin">
        <button class="solid" @click=${this.#add}>${words.add}</button>
        ${this.#document.value.gauges.some(({ demo }) => demo) ? nothing : html`<button @click=${this.#bringDemo}>${words.addDemo}</button>`}
      </div>`;
  }

  readonly #add = () => {
    const gauge = newGauge(words.newName, words.about.usualUnit);
    this.#keep([gauge]);
    location.hash = hrefOf('gauges', gauge.id);
  };

  readonly #bringDemo = () => {
    const gauges = demoGauges(words.demo);
    this.#keep(gauges);
    location.hash = hrefOf('gauges', gauges[0]?.id ?? '');
  };

  #keep(added: readonly KeptGauge[]): void {
    this.removed = undefined;
    void this.workbench.kept.change((document) => ({ ...document, gauges: [...document.gauges, ...added] }));
  }

  #remove(gauge: KeptGauge): void {
    this.removed = gauge;
    void this.workbench.kept.change((document) => ({ ...document, gauges: document.gauges.filter(({ id }) => id !== gauge.id) }));
    location.hash = hrefOf('gauges');
  }

  readonly #bringBack = () => {
    const { removed } = this;
    if (!removed) return;
    this.#keep([removed]);
    location.hash = hrefOf('gauges', removed.id);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'gauges-screen': GaugesScreen;
  }
}
