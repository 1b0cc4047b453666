/** All readings in the order in which they were noted; any can be corrected, left out, brought back. */

import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KeptGauge, KeptGaugeReading } from '../../../../shared/document/gauge.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures } from '../../format.ts';
import { shared } from '../../shared-styles.ts';
import type { GaugeProof } from '../../state/gauge-proof.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import { type EditGauge, editReading, typedReading } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';
import { oddRow } from './odd-row.ts';

const words = gaugesEn.run;

@customElement('reading-rows')
export class ReadingRows extends LitElement {
  static override styles = [shared, editorStyles, gaugeStyles];

  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) proof!: GaugeProof;
  @property({ attribute: false }) edit: EditGauge = () => {};
  readonly #figures = new Figures();

  override render() {
    const readings = this.gauge.readings ?? [];
    return html`<details>
      <summary>${words.rows} (${readings.length})</summary>
      <div class="scrolls"><table>
        <thead><tr>${words.rowColumns.map((column) => html`<th scope="col">${column}</th>`)}<td></td></tr></thead>
        <tbody>${readings.map((reading, index) => this.#row(reading, index + 1))}</tbody>
      </table></div>
    </details>`;
  }

  #row(reading: KeptGaugeReading, row: number) {
    const weight = this.gauge.weights?.find(({ id }) => id === reading.weightId);
    const way = reading.how === 'left-on' ? words.ways[reading.direction ?? 'up'] : words.ways[reading.how];
    const odd = reading.dropped ? undefined : oddRow(this.proof, row);
    const toggle = () => this.edit(editReading(reading.id, ({ dropped, ...rest }) => (dropped ? rest : { ...rest, dropped: true })));
    return html`<tr>
      <th scope="row">${row}</th>
      <td>${weight?.name ?? ''}</td>
      <td>${way}</td>
      <td><input type="text" inputmode="decimal" aria-label=${words.edit(row)} .value=${this.#figures.typed(reading.reading)}
        @change=${(event: Event) => this.#corrected(reading, event)} />${odd ? html`<p class="note">${odd}</p>` : nothing}</td>
      <td>${reading.dropped ? html`<span class="note">${words.leftOut}</span> ` : nothing}<button class="quiet" @click=${toggle}>${reading.dropped ? words.bringBack : words.leaveOut}</button></td>
    </tr>`;
  }

  #corrected(reading: KeptGaugeReading, event: Event): void {
    const input = event.currentTarget as HTMLInputElement;
    const value = typedReading(input.value);
    if (value === undefined) input.value = this.#figures.typed(reading.reading);
    else this.edit(editReading(reading.id, (one) => ({ ...one, reading: value })));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'reading-rows': ReadingRows;
  }
}
