/** The bench of one belt: spans, weights and plucks at one side, what they tell at the other. */

import { html, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { KeptBench } from '../../../../shared/document/belt.ts';
import type { Measured } from '../../../core/math/measured.ts';
import type { EnteredSetup } from '../../../ports.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import '../../parts/answer-line.ts';
import { quantityInputStyles } from '../../parts/quantity-input.ts';
import { selectFieldStyles } from '../../parts/select-field.ts';
import { shared } from '../../shared-styles.ts';
import type { ValueName } from '../../state/belt-changes.ts';
import { type BenchKind, EMPTY_BENCH, type UnderstoodBench, understoodBench, withTakeAt } from '../../state/bench-texts.ts';
import { newId, nowWhen } from '../../state/new-item.ts';
import { knowledgeOf } from '../../state/own-belts.ts';
import { EMPTY_SETUP } from '../../state/span-setup.ts';
import { BeltPage } from './belt-page.ts';
import { beltStyles } from './belt-styles.ts';
import { benchFindingList, benchNext, benchPlot, benchValues } from './bench-answers.ts';
import { type BenchFields, loadRows, spanRows, type TakePlace, takeRows } from './bench-fields.ts';
import './bench-listen.ts';
import type { BenchListen, TakeHeard } from './bench-listen.ts';
import { benchPageStyles } from './bench-page-styles.ts';
import { type BenchResult, benchResult } from './bench-result.ts';
import { headline } from './weigh-page.ts';

const words = beltsEn.bench;

@customElement('bench-page')
export class BenchPage extends BeltPage {
  static override styles = [shared, quantityInputStyles, selectFieldStyles, beltStyles, benchPageStyles];

  @property() kind: BenchKind = 'weights';
  /** `undefined`: nothing to reckon with; `none`: no belt fits. */
  @state() result: BenchResult | 'none' | undefined;
  @state() reckoning = false;
  @query('bench-listen') ear!: BenchListen;

  #understood: UnderstoodBench = { faults: {}, places: [], forceN: {} };
  #bench: KeptBench | undefined;
  /** What the result was reckoned from. */
  #reckonedFrom = '';

  override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (!changed.has('belt') && !changed.has('draft') && !changed.has('kind')) return;
    this.#bench = this.#kept ?? (changed.has('kind') || !this.#bench ? EMPTY_BENCH[this.kind](newId) : this.#bench);
    this.#understood = understoodBench(this.#bench, this.shown, this.kind);
    this.#reckon();
  }

  override render() {
    const fields = this.#fields();
    const { headline: title, under } = words[this.kind];
    const { result } = this;
    const found = typeof result === 'object' ? result : undefined;
    // What cannot be told apart is no value of the belt yet.
    const isParted = found !== undefined && (this.kind === 'positions' || !found.findings.some(({ id }) => id === 'density-and-ends'));
    return html`<answer-line>
        <span slot="over">${this.belt.name}</span>
        ${found ? (isParted ? headline(this.#headline(found)) : words.notParted) : title}
        <span slot="under">${under}</span>
        ${found && isParted ? html`<button slot="actions" class="solid" @click=${() => this.#use(found)}>${words.use}</button>` : nothing}
      </answer-line>
      <p role="status">${this.usedText}</p>
      <p class="caution">${this.kind === 'weights' ? words.cautions : words.cautionsPositions} ${this.#rated(fields.ratedForceN)}</p>
      <div class="bench">
        <div class="told">
          <section>${spanRows(fields)}</section>
          ${this.kind === 'weights' ? html`<section>${loadRows(fields)}</section>` : nothing}
          <section>${takeRows(fields)}</section>
        </div>
        <div class="found" aria-busy=${this.reckoning ? 'true' : 'false'}>${this.#found()}</div>
      </div>
      <bench-listen @take-heard=${this.#heard}></bench-listen>`;
  }

  #found() {
    const { result, figures } = this;
    if (result === 'none') return html`<p role="status">${words.noFit}</p>`;
    if (!result) return html`<p class="note" role="status">${this.reckoning ? words.reckoning : words.waiting}</p>`;
    return html`<section>${benchPlot(result, figures)}</section>
      <section>${benchValues(result, figures)}</section>
      <section role="status">${benchFindingList(result, figures)}</section>
      <section>${benchNext(result, figures)}</section>`;
  }

  get #kept(): KeptBench | undefined {
    return this.kind === 'weights' ? this.shown.bench : this.shown.positions;
  }

  #fields(): BenchFields {
    return {
      bench: this.#bench!,
      kind: this.kind,
      understood: this.#understood,
      figures: this.figures,
      ratedForceN: knowledgeOf(this.belt)?.ratedForceN,
      keep: (change) => this.#keep(change),
      listen: (place) => this.ear.show(place, this.#enteredFor(place)),
    };
  }

  #headline({ fit }: BenchResult): readonly [string, string] {
    if (this.kind === 'weights') return words.headline(this.density(fit.linearDensityKgPerM));
    const { value, standardUncertainty } = fit.fixity;
    const figure = this.figures.measured(value, 2 * standardUncertainty);
    return words.headlineEnds(`${figure.value} ± ${figure.doubt}`);
  }

  #rated(forceN: number | undefined): string {
    return forceN === undefined ? '' : words.rated(this.figures.typed(forceN, 'N'));
  }

  #keep(change: (bench: KeptBench) => KeptBench): void {
    const empty = this.#bench!;
    const name = this.kind === 'weights' ? 'bench' : 'positions';
    void this.change((belt) => ({ ...belt, [name]: change(belt[name] ?? empty) }));
  }

  /** After the page was drawn: a fit takes a tenth of a second. */
  #reckon(): void {
    const { data, places } = this.#understood;
    const from = JSON.stringify(data ?? null);
    if (from === this.#reckonedFrom) return;
    this.#reckonedFrom = from;
    if (!data) {
      this.result = undefined;
      this.reckoning = false;
      return;
    }
    this.reckoning = true;
    setTimeout(() => {
      if (this.#reckonedFrom !== from) return;
      this.result = benchResult(data, places, knowledgeOf(this.belt)?.ratedForceN) ?? 'none';
      this.reckoning = false;
    }, 0);
  }

  readonly #heard = (event: TakeHeard) => {
    const { spanId, loadId } = event.place;
    const { partials, sharedRelativeU, pluckCount } = event.heard;
    const heard = {
      partials: partials.map(({ number, frequencyHz }) => ({ number, frequencyHz: { ...frequencyHz } })),
      sharedRelativeU,
      pluckCount,
      got: nowWhen(),
    };
    this.#keep((bench) => withTakeAt(bench, { spanId, loadId, heard }));
  };

  /** The span as the bench knows it, for the search of its sound. */
  #enteredFor({ spanId }: TakePlace): EnteredSetup {
    const span = this.#bench!.spans.find(({ id }) => id === spanId);
    return { ...EMPTY_SETUP, beltId: this.belt.id, spanLength: span?.length ?? '', spanKnownTo: span?.knownTo ?? '' };
  }

  #use({ fit, data }: BenchResult): void {
    const plain = ({ value, standardUncertainty }: Measured): Measured => ({ value, standardUncertainty });
    const ends: Partial<Record<ValueName, Measured>> = {
      bendingStiffnessNm2: plain(fit.bendingStiffnessNm2),
      endFixity: plain(fit.fixity),
    };
    const values = this.kind === 'weights' ? { linearDensityKgPerM: plain(fit.linearDensityKgPerM), ...ends } : ends;
    const note = words.note(data.spans.length, data.loads.length, data.takes.length);
    void this.use({ from: this.kind === 'weights' ? 'bench' : 'positions', note, values });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bench-page': BenchPage;
  }
}
