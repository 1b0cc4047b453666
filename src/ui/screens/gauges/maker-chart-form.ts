/** The chart that a gauge came with, typed in point by point, each with what became of it. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import { type ChartVerdict, checkedChart } from '../../../core/gauge/maker-chart.ts';
import { formatQuantity, parseQuantity } from '../../../core/quantity.ts';
import { readingText } from '../../../words/gauge-en.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures } from '../../format.ts';
import type { MarkedGrade } from '../../parts/grade-mark.ts';
import '../../parts/grade-mark.ts';
import { shared } from '../../shared-styles.ts';
import { ceilingFrom } from '../../state/gauge-build.ts';
import type { GaugeProof } from '../../state/gauge-proof.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import { type EditGauge, typedReading } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';

const words = gaugesEn.maker;

@customElement('maker-chart-form')
export class MakerChartForm extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    gaugeStyles,
    css`
      form {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: var(--space-12);
        margin-block-start: var(--space-12);
      }
      form > div {
        flex: 0 1 9rem;
      }
    `,
  ];

  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) proof!: GaugeProof;
  @property({ attribute: false }) edit: EditGauge = () => {};
  @state() fault = '';
  readonly #figures = new Figures();

  override render() {
    const { calibration } = this.proof;
    const points = [...(this.gauge.makerChart ?? [])].sort((a, b) => a.reading - b.reading);
    const checked = calibration.kind === 'calibration' ? checkedChart(calibration, points, ceilingFrom(this.gauge)?.reading) : [];
    const step = calibration.kind === 'calibration' ? calibration.step : 0;
    return html`<details ?open=${points.length > 0}>
      <summary>${words.title}</summary>
      <p class="note">${words.lead}</p>
      ${
        points.length > 0
          ? html`<div class="scrolls"><table class="slim">
        <tbody>${points.map(
          (point, k) => html`<tr class=${checked[k]?.kind === 'refused' ? 'refused' : ''}>
          <th scope="row">${readingText(point.reading, step)}</th>
          <td class="number">${formatQuantity(point.forceN, 'N', { atMostDigits: 4, format: this.#figures.format })}</td>
          <td>${checked[k] ? this.#verdict(checked[k]) : nothing}</td>
          <td><button class="quiet" aria-label=${words.remove(readingText(point.reading, step))} @click=${() => this.#remove(point)}>×</button></td>
        </tr>`,
        )}</tbody></table></div>`
          : nothing
      }
      <form @submit=${this.#add}>
        <div><label class="over" for="reading">${words.reading}</label><input id="reading" name="reading" type="text" inputmode="decimal" autocomplete="off" /></div>
        <div><label class="over" for="force">${words.force}</label><input id="force" name="force" type="text" inputmode="decimal" autocomplete="off" /></div>
        <button type="submit">${words.add}</button>
      </form>
      ${this.fault ? html`<p class="note" role="alert">${this.fault}</p>` : nothing}
    </details>`;
  }

  #verdict(verdict: ChartVerdict) {
    const grades: Readonly<Record<ChartVerdict['kind'], MarkedGrade>> = {
      holds: 'trusted',
      off: 'doubtful',
      unproved: 'nothing',
      refused: 'unusable',
    };
    return html`<grade-mark .grade=${grades[verdict.kind]} .word=${this.#words(verdict)}></grade-mark>`;
  }

  #words(verdict: ChartVerdict): string {
    const { verdicts } = words;
    if (verdict.kind === 'refused') return verdicts.refused[verdict.why];
    if (verdict.kind !== 'off') return verdicts[verdict.kind];
    const amount = this.#figures.rough(Math.abs(verdict.offN), 'N');
    return verdict.offN > 0 ? verdicts.more(amount) : verdicts.less(amount);
  }

  readonly #add = (event: Event) => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const fields = new FormData(form);
    const reading = typedReading(String(fields.get('reading') ?? ''));
    const force = parseQuantity(String(fields.get('force') ?? ''), { kind: 'force', defaultUnit: 'N', zeroAllowed: true });
    this.fault = reading === undefined ? gaugesEn.run.notANumber : force.ok ? '' : gaugesEn.faults[force.why];
    if (reading === undefined || !force.ok) return;
    const forceN = force.value;
    this.edit((gauge) => ({ ...gauge, makerChart: [...(gauge.makerChart ?? []), { reading, forceN }] }));
    form.reset();
    form.querySelector('input')?.focus();
  };

  #remove(point: { readonly reading: number; readonly forceN: number }): void {
    this.edit((gauge) => ({
      ...gauge,
      makerChart: gauge.makerChart?.filter(({ reading, forceN }) => reading !== point.reading || forceN !== point.forceN),
    }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'maker-chart-form': MakerChartForm;
  }
}
