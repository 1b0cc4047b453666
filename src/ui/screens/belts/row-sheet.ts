/** One belt of the catalogue: what tables tell of it, and from where. */

import { html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { CatalogueBelt } from '../../../core/belt/catalogue.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/answer-line.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { beltStyles } from './belt-styles.ts';
import { rangeText, valueText } from './value-words.ts';

const words = beltsEn.row;

@customElement('row-sheet')
export class RowSheet extends LitElement {
  static override styles = [shared, beltStyles];

  @property({ attribute: false }) row!: CatalogueBelt;
  readonly #figures = new Figures();

  override render() {
    const { row } = this;
    const { names } = beltsEn.values;
    const density = valueText('linearDensityKgPerM', row.linearDensityKgPerM, this.#figures);
    const [figure, from] = words.headline(density);
    return html`<answer-line>
        <span slot="over">${row.label}</span>
        <b>${figure}</b>${from}
        <span slot="under">${words.under}</span>
        <a slot="actions" class="button" href="${hrefOf('belts', 'new')}?like=${row.id}">${words.measure}</a>
      </answer-line>
      <section>
        <h2>${words.values}</h2>
        <div class="scroll" tabindex="0" role="region" aria-label=${words.values}>
          <table class="figures">
            <tbody>
              ${this.#line(names.linearDensityKgPerM, density, row.linearDensityKgPerM.source)}
              ${this.#line(names.bendingStiffnessNm2, rangeText('bendingStiffnessNm2', row.bendingStiffnessNm2, this.#figures), row.bendingStiffnessNm2.source)}
              ${this.#line(names.ratedForceN, this.#figures.typed(row.ratedForceN.value, 'N'), row.ratedForceN.source)}
            </tbody>
          </table>
        </div>
      </section>`;
  }

  #line(name: string, figure: string, source: string) {
    return html`<tr>
      <th scope="row">${name}</th>
      <td class="figure">${figure}</td>
      <td class="note">${source}</td>
    </tr>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'row-sheet': RowSheet;
  }
}
