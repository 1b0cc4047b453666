/** Weighing a belt of one's own: several pieces, or a whole loop, as one density with its doubt. */

import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { beltById, belts } from '../../../../shared/belts.ts';
import type { KeptBelt } from '../../../../shared/document/belt.ts';
import type { Weighing } from '../../../core/belt/density.ts';
import { combinedWeighings, unexpectedDensity } from '../../../core/belt/weighings.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { en } from '../../../words/en.ts';
import '../../parts/answer-line.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import { shared } from '../../shared-styles.ts';
import { EMPTY_WEIGHING, type ReadWeighing, readWeighing, type WeighingField, type WeighingTexts } from '../../state/weighing.ts';
import { weighingFaultText } from '../weigh-dialog.ts';
import { BeltPage } from './belt-page.ts';
import { beltStyles } from './belt-styles.ts';

const words = beltsEn.weighPage;
type KeptWeighings = NonNullable<KeptBelt['weighings']>;

@customElement('weigh-page')
export class WeighPage extends BeltPage {
  static override styles = [shared, quantityInputStyles, selectFieldStyles, beltStyles];

  override render() {
    const rows = this.#rows;
    const read = rows.map((texts) => readWeighing(texts, this.belt.toothPitchM));
    const done = read.flatMap(({ weighing }) => (weighing ? [weighing] : []));
    const result = done.length > 0 ? combinedWeighings(done) : undefined;
    return html`<answer-line>
        <span slot="over">${this.belt.name}</span>
        ${result ? headline(words.result(this.density(result.linearDensityKgPerM))) : words.headline}
        <span slot="under">${en.weighing.lead}</span>
        ${result ? html`<button slot="actions" class="solid" @click=${() => this.#use(done)}>${words.use}</button>` : nothing}
      </answer-line>
      <p role="status">${this.usedText}</p>
      ${result ? this.#questions(result) : nothing}
      ${rows.map((texts, index) => this.#row(texts, read[index]!, index, rows.length))}
      <div class="buttons"><button @click=${() => this.#keep([...rows, { ...EMPTY_WEIGHING, scaleStep: rows.at(-1)?.scaleStep ?? '' }])}>${words.another}</button></div>`;
  }

  get #rows(): KeptWeighings {
    return this.shown.weighings?.length ? this.shown.weighings : [EMPTY_WEIGHING];
  }

  #questions(result: ReturnType<typeof combinedWeighings>) {
    const row = this.belt.catalogueId === undefined ? undefined : beltById(this.belt.catalogueId);
    const odd = unexpectedDensity(result.linearDensityKgPerM, { row, toothPitchM: this.belt.toothPitchM, catalogue: belts });
    const figure = (density: number, unit = '') => this.figures.rough(density * 1000, unit);
    return html`${result.agree ? nothing : html`<p class="caution">${words.disagree}</p>`}
    ${
      odd
        ? html`<p class="caution">
            ${en.weighing.outside(en.range(figure(odd.low), figure(odd.high, 'g/m')))}
            ${odd.looksLike[0] ? words.looksLike(odd.looksLike[0].label) : nothing}
          </p>`
        : nothing
    }`;
  }

  #row(texts: WeighingTexts, read: ReadWeighing, index: number, count: number) {
    const type = (change: Partial<WeighingTexts>) => this.#keep(this.#rows.map((row, i) => (i === index ? { ...row, ...change } : row)));
    const kinds = (['piece', 'loop'] as const).map((value) => ({ value, text: en.weighing.kinds[value] }));
    const field = (name: WeighingField, options: { label: string; unit: string; note: string }) => {
      const id = `${name}-${index}`;
      const fault = read.faults[name];
      return html`<div>
        <label for=${id}>${options.label}</label>
        ${quantityInput({ id, value: texts[name], unit: options.unit, unreadable: fault !== undefined, describedBy: `${id}-note`, onTyped: (text) => type({ [name]: text }) })}
        <p class=${fault ? 'note fault' : 'note'} id="${id}-note">${fault ? weighingFaultText(fault) : options.note}</p>
      </div>`;
    };
    const w = en.weighing;
    return html`<section>
      <h2>${words.row(index + 1)}</h2>
      <div class="fields">
        <div>
          <label for="kind-${index}">${w.kind}</label>
          ${selectField({ id: `kind-${index}`, value: texts.kind, choices: kinds, onChosen: (kind) => type({ kind: kind === 'loop' ? 'loop' : 'piece' }) })}
        </div>
        ${field('length', { label: w.length[texts.kind], unit: texts.kind === 'loop' ? 'teeth' : 'mm', note: w.lengthNote[texts.kind] })}
        ${field('mass', { label: w.mass, unit: 'g', note: w.massNote })}
        ${field('scaleStep', { label: w.scaleStep, unit: 'g', note: w.scaleStepNote })}
      </div>
      <p class="note">
        ${read.weighing && count > 1 ? words.single(this.density(combinedWeighings([read.weighing]).linearDensityKgPerM)) : nothing}
        ${count > 1 ? html`<button class="quiet" @click=${() => this.#keep(this.#rows.filter((_, i) => i !== index))}>${words.drop}</button>` : nothing}
      </p>
    </section>`;
  }

  #keep(weighings: KeptWeighings): void {
    void this.change((belt) => ({ ...belt, weighings }));
  }

  #use(done: readonly Weighing[]): void {
    const { linearDensityKgPerM } = combinedWeighings(done);
    void this.use({ from: 'weighed', note: words.note(done.length), values: { linearDensityKgPerM } });
  }
}

/** The figure carries the weight. */
export const headline = ([before, figure, after = '']: readonly [string, string, string?]) => html`${before}<b>${figure}</b>${after}`;

declare global {
  interface HTMLElementTagNameMap {
    'weigh-page': WeighPage;
  }
}
