/** All gauges under one target: the plot in which the winner is seen, the figures, and a study with several people. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { KeptDocument } from '../../../../shared/document.ts';
import { type ComparedGauge, comparedGauges, type GaugeToCompare } from '../../../core/gauge/compare.ts';
import { formatPercent, formatQuantity } from '../../../core/quantity.ts';
import { DEFAULT_TOLERANCE_RELATIVE } from '../../../core/setup.ts';
import { rangeText } from '../../../words/gauge-en.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/answer-line.ts';
import '../../parts/error-lanes.ts';
import type { ErrorLane } from '../../parts/error-lanes.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import { proofOf, toleranceOf } from '../../state/gauge-proof.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import { faultText } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';
import './study-form.ts';

const words = gaugesEn.compare;
/** Where nobody told a target: a force that belts of this kind often have. */
const USUAL_TARGET = { lowN: 6, highN: 9 };

@customElement('compare-page')
export class ComparePage extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    selectFieldStyles,
    gaugeStyles,
    css`
      .fold {
        margin-block-start: var(--space-16);
        border-block-start: var(--stroke-line) solid var(--line);
      }
      .low {
        align-self: end;
      }
      .fields {
        margin-block-end: var(--space-16);
      }
    `,
  ];

  @property({ attribute: false }) document!: KeptDocument;
  @state() target: { readonly lowN: number; readonly highN: number } | undefined;
  @state() machineId = '';
  @state() usesChart = true;
  readonly #figures = new Figures();

  override render() {
    const { gauges, machines, belts } = this.document;
    const proved = gauges.flatMap((gauge): GaugeToCompare[] => {
      const { calibration } = proofOf(gauge, belts);
      if (calibration.kind === 'no-calibration') return [];
      const chart = this.usesChart && (gauge.makerChart?.length ?? 0) > 1 ? gauge.makerChart : undefined;
      return [{ id: gauge.id, name: gauge.name, calibration, chart, needsSpanM: gauge.needsSpanM, price: gauge.price }];
    });
    const target = this.target ?? gauges.find(({ targetForceN }) => targetForceN)?.targetForceN ?? USUAL_TARGET;
    const named = gauges.find(({ targetForceN }) => targetForceN);
    const tolerance = named ? toleranceOf(named) : DEFAULT_TOLERANCE_RELATIVE;
    const machine = machines.find(({ id }) => id === this.machineId);
    const spansM = machine?.belts.flatMap(({ spans }) => spans.flatMap(({ lengthM }) => (lengthM ? [lengthM.value] : [])));
    const found = comparedGauges(proved, { target, toleranceRelative: tolerance, spansM });
    const range = this.#figures.forceRange(target);
    const best = found[0];
    return html`<answer-line><span slot="over">${words.over(found.length)}</span>${
      found.length < 2
        ? html`${words.needTwo[0]}<b>${words.needTwo[1]}</b><span slot="under">${words.needTwoUnder}</span>`
        : best && best.grade !== 'unusable'
          ? html`${words.forRange(range)}${words.take[0]}<b>${best.name}</b>`
          : html`${words.none[0]}<b>${words.none[1]}</b>`
    }</answer-line>
    ${
      found.length > 0
        ? html`<p><b>${words.lead[0]}</b>${words.lead[1]}</p>
      <error-lanes
        .view=${{ lanes: found.map((gauge, k) => this.#lane(gauge, k === 0)), target: { ...target, text: words.target(range) }, tolerance }}
        .laneLabel=${(lane: ErrorLane) => words.laneLabel(lane.name, [lane.figure, lane.gradeWord, ...lane.notes].filter((part) => part).join(', '))}
        .locale=${this.#figures.locale}
      ></error-lanes>
`
        : nothing
    }
    <div class="fields">
      ${this.#end(words.from, target.lowN, (lowN) => ({ lowN, highN: Math.max(target.highN, lowN * 1.01) }))}
      ${this.#end(words.to, target.highN, (highN) => ({ lowN: Math.min(target.lowN, highN / 1.01), highN }))}
      <div>
        <label class="over" for="machine">${words.machine}</label>
        ${selectField({
          id: 'machine',
          value: this.machineId,
          choices: [{ value: '', text: words.noMachine }, ...machines.map(({ id, name }) => ({ value: id, text: name }))],
          onChosen: (id) => {
            this.machineId = id;
          },
        })}
      </div>
      <label class="check low"><input type="checkbox" .checked=${this.usesChart} @change=${(event: Event) => {
        this.usesChart = (event.currentTarget as HTMLInputElement).checked;
      }} />${words.useChart}</label>
    </div>
    ${found.length > 0 ? this.#table(found) : nothing}
    <study-form class="fold" .document=${this.document} .target=${target}></study-form>`;
  }

  #end(label: string, value: number, next: (value: number) => { readonly lowN: number; readonly highN: number }) {
    return html`<told-quantity .label=${label} kind="force" unit="N" .value=${value} .faultText=${faultText}
      @quantity-told=${({ told }: HTMLElementEventMap['quantity-told']) => {
        if (told) this.target = next(told.value);
      }}></told-quantity>`;
  }

  #percent(share: number | undefined, decimals = 0): string {
    return share === undefined ? gaugesEn.proof.none : formatPercent(share, { decimals, format: this.#figures.format });
  }

  #lane(gauge: ComparedGauge, isFirst: boolean): ErrorLane {
    const { grade, worstInTarget, biasRelative, why, fits, verified } = gauge;
    const bias =
      Math.abs(biasRelative) < 0.01
        ? ''
        : biasRelative > 0
          ? words.readsHigh(this.#percent(biasRelative))
          : words.readsLow(this.#percent(-biasRelative));
    const says = why ? words.why[why] : isFirst ? words.best : bias;
    const atStop = verified.kind === 'verified' && (verified.highEnds === 'stop' || verified.highEnds === 'ceiling');
    return {
      name: gauge.name,
      grade,
      gradeWord: words.grades[grade],
      figure: grade === 'unusable' || worstInTarget === undefined ? '' : `±\u00a0${this.#percent(worstInTarget)}`,
      notes: [says, isFirst && bias && !why ? bias : '', fits ? words.fits(fits.count, fits.of) : ''].filter((note) => note !== ''),
      points: gauge.lane,
      ends:
        atStop && verified.kind === 'verified'
          ? words.stopAt(formatQuantity(verified.forceHighN, 'N', { atMostDigits: 3, format: this.#figures.format }))
          : undefined,
    };
  }

  #table(found: readonly ComparedGauge[]) {
    return html`<div class="scrolls" role="region" tabindex="0" aria-label=${words.caption}><table>
      <caption>${words.caption}</caption>
      <thead><tr>${words.columns.map((column) => html`<th scope="col">${column}</th>`)}</tr></thead>
      <tbody>${found.map(
        (gauge) => html`<tr>
        <th scope="row">${gauge.name}</th>
        <td>${gauge.worstInTarget === undefined ? gaugesEn.proof.none : `±\u00a0${this.#percent(gauge.worstInTarget, 1)}`}</td>
        <td>${this.#percent(gauge.biasRelative, 1)}</td>
        <td>${this.#percent(gauge.repeatabilityRelative, 1)}</td>
        <td>${this.#percent(gauge.hysteresisRelative, 1)}</td>
        <td>${this.#percent(gauge.linearityRelative, 1)}</td>
        <td>${gauge.verified.kind === 'verified' ? rangeText(gauge.verified) : gaugesEn.proof.none}</td>
        <td>${gauge.price === undefined ? gaugesEn.proof.none : this.#figures.typed(gauge.price)}</td>
      </tr>`,
      )}</tbody>
    </table></div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'compare-page': ComparePage;
  }
}
