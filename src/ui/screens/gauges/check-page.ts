/** The piece that is kept with a gauge, its control chart, and a wire that stands for a force. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import { type ControlChart, controlChart } from '../../../core/gauge/check-piece.ts';
import { STEEL_WIRE_YOUNG_PA, wireForceN } from '../../../core/gauge/reference-wire.ts';
import type { Measured } from '../../../core/math/measured.ts';
import { formatInterval, formatNumber } from '../../../core/quantity.ts';
import { readingText } from '../../../words/gauge-en.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures, together } from '../../format.ts';
import '../../parts/grade-mark.ts';
import '../../parts/spread-plot.ts';
import type { SpreadView } from '../../parts/spread-plot.ts';
import '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import { type GaugeProof, toleranceOf } from '../../state/gauge-proof.ts';
import { newId, nowWhen } from '../../state/new-item.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import { type EditGauge, faultText, typedReading } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';

const words = gaugesEn.check;
const FEWEST = 3;
/** Micrometer and ruler, where nothing else is told. */
const DIAMETER_U_M = 5e-6;
const BASE_U_M = 2e-4;

@customElement('check-page')
export class CheckPage extends LitElement {
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
        margin-block: var(--space-12);
      }
      form > div {
        flex: 0 1 12rem;
      }
    `,
  ];

  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) proof!: GaugeProof;
  @property({ attribute: false }) edit: EditGauge = () => {};
  @state() fault = '';
  @state() diameterM: { value: number; standardUncertainty: number } = { value: 0.001, standardUncertainty: DIAMETER_U_M };
  @state() youngPa = STEEL_WIRE_YOUNG_PA.value;
  readonly #figures = new Figures();

  override render() {
    const piece = this.gauge.checkPiece;
    const chart = piece && this.#chart(piece);
    return html`<h2>${words.title}</h2>
      <p>${words.lead}</p>
      ${chart ? this.#verdict(chart) : nothing}
      <form @submit=${(event: Event) => this.#note(event, chart ? 'later' : 'atCalibration')}>
        <div><label class="over" for="name">${words.name}</label><input id="name" type="text" maxlength="120" .value=${piece?.name ?? words.usualName} @change=${this.#named} /></div>
        <div><label class="over" for="reading">${chart ? words.today : words.atCalibration}</label><input id="reading" name="reading" type="text" inputmode="decimal" autocomplete="off" /></div>
        <button class="solid" type="submit">${words.noteIt}</button>
      </form>
      ${this.fault ? html`<p class="note" role="alert">${this.fault}</p>` : nothing}
      ${chart ? this.#plot(chart) : html`<p class="note">${words.atCalibrationNote} ${words.needs(piece?.atCalibration.length ?? 0)}</p>`}
      ${this.#wire()}`;
  }

  #chart(piece: NonNullable<KeptGauge['checkPiece']>): ControlChart | undefined {
    const { calibration } = this.proof;
    const step = calibration.kind === 'calibration' ? calibration.step : 0;
    const target = this.gauge.targetForceN;
    const middleN = target && (target.lowN + target.highN) / 2;
    const toleranceReading =
      calibration.kind === 'calibration' && middleN !== undefined
        ? Math.abs(calibration.fit.curve.slope(middleN)) * toleranceOf(this.gauge) * middleN
        : undefined;
    return controlChart({
      atCalibration: piece.atCalibration,
      later: piece.later.map(({ at, reading }) => ({ at: Date.parse(at.at), reading })),
      step,
      toleranceReading,
    });
  }

  #verdict({ verdict }: ControlChart) {
    const word = words.verdicts[verdict.kind === 'recalibrate' ? verdict.why : verdict.kind];
    const grade = verdict.kind === 'recalibrate' ? 'unusable' : verdict.kind === 'steady' ? 'trusted' : 'nothing';
    return html`<p role="status"><grade-mark .grade=${grade} .word=${word}></grade-mark></p>`;
  }

  #plot(chart: ControlChart) {
    const step = this.proof.calibration.kind === 'calibration' ? this.proof.calibration.step : 0;
    const piece = this.gauge.checkPiece!;
    const range = ({ low, high }: { low: number; high: number }) => formatInterval({ low, high, unit: '', format: this.#figures.format });
    const view: SpreadView = {
      points: [
        ...piece.atCalibration.map((reading, k) => ({ x: k - piece.atCalibration.length, y: reading })),
        ...chart.points.map(({ reading, lies }, k) => ({ x: k, y: reading, odd: lies !== 'inside' })),
      ],
      lines: [
        { at: chart.centre, text: readingText(chart.centre, step), weight: 'middle' },
        ...[chart.warning.low, chart.warning.high].map((at) => ({ at, text: '', weight: 'inner' as const })),
        ...[chart.action.low, chart.action.high].map((at) => ({ at, text: '', weight: 'outer' as const })),
      ],
      xUnit: '',
      yUnit: '',
      hasX: false,
    };
    const limits = words.limits(range(chart.warning), range(chart.action));
    const when = new Intl.DateTimeFormat(this.#figures.locale, { day: 'numeric', month: 'short' });
    const rows = chart.points.map(({ at, reading, lies }) => [when.format(new Date(at)), readingText(reading, step), words.lies[lies]]);
    return html`<spread-plot .view=${view} .label=${`${words.plot}, ${limits}`} .locale=${this.#figures.locale}
        .table=${{ caption: words.plot, columns: words.columns, rows }}></spread-plot>
      <p class="note">${limits}</p>`;
  }

  #wire() {
    const { baseM } = this.gauge;
    const wire = words.wire;
    const force =
      baseM === undefined
        ? undefined
        : wireForceN({
            diameterM: this.diameterM,
            youngPa: {
              value: this.youngPa,
              standardUncertainty: (STEEL_WIRE_YOUNG_PA.standardUncertainty / STEEL_WIRE_YOUNG_PA.value) * this.youngPa,
            },
            baseM: { value: baseM, standardUncertainty: BASE_U_M },
          });
    return html`<section class="block" aria-labelledby="wire">
      <h2 id="wire">${wire.title}</h2>
      <p>${wire.lead}</p>
      <p class="note">${wire.caution}</p>
      <div class="fields">
        <told-quantity .label=${wire.diameter} kind="length" unit="mm" .value=${this.diameterM.value} .standardUncertainty=${this.diameterM.standardUncertainty} .note=${wire.note} .faultText=${faultText}
          @quantity-told=${({ told }: HTMLElementEventMap['quantity-told']) => {
            if (told) this.diameterM = { value: told.value, standardUncertainty: told.standardUncertainty ?? DIAMETER_U_M };
          }}></told-quantity>
        <div>
          <label class="over" for="young">${wire.young}</label>
          <input id="young" type="text" inputmode="decimal" aria-describedby="young-note" .value=${`${formatNumber(this.youngPa / 1e9, { atMostDigits: 4 })} GPa`} @change=${this.#young} />
          <p class="note" id="young-note">${wire.youngNote}</p>
        </div>
        <told-quantity .label=${wire.base} kind="length" unit="mm" .value=${baseM} .faultText=${faultText}
          @quantity-told=${({ told }: HTMLElementEventMap['quantity-told']) => this.edit((gauge) => ({ ...gauge, baseM: told?.value }))}></told-quantity>
      </div>
      ${
        force
          ? html`<div class="acts"><p class="strong">${wire.result(together(this.#figures.measured(force.value, 2 * force.standardUncertainty), 'N'))}</p>
        ${this.gauge.weights?.some(({ knownN }) => knownN) ? html`<p class="note">${wire.inUse}</p>` : html`<button @click=${() => this.#useWire(force)}>${wire.use}</button>`}</div>`
          : nothing
      }
    </section>`;
  }

  /** A load like the weights: its force is known, and nothing hangs. */
  #useWire(knownN: Measured): void {
    const name = words.wire.name(formatNumber(this.diameterM.value * 1000, { atMostDigits: 3 }));
    const weight = { id: newId(), name: `${name} mm`, massKg: 0, knownN };
    this.edit((gauge) => ({ ...gauge, weights: [...(gauge.weights ?? []), weight] }));
  }

  readonly #young = (event: Event) => {
    const value = typedReading((event.currentTarget as HTMLInputElement).value.replace(/\s*gpa$/iu, ''));
    if (value !== undefined && value > 0) this.youngPa = value * 1e9;
  };

  readonly #named = (event: Event) => {
    const name = (event.currentTarget as HTMLInputElement).value.trim();
    if (name) this.edit((gauge) => ({ ...gauge, checkPiece: { atCalibration: [], later: [], ...gauge.checkPiece, name } }));
  };

  #note(event: Event, which: 'atCalibration' | 'later'): void {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const reading = typedReading(String(new FormData(form).get('reading') ?? ''));
    this.fault = reading === undefined ? gaugesEn.run.notANumber : '';
    if (reading === undefined) return;
    const at = nowWhen();
    this.edit((gauge) => {
      const piece = gauge.checkPiece ?? { name: words.usualName, atCalibration: [], later: [] };
      const isFirst = which === 'atCalibration' && piece.atCalibration.length < FEWEST;
      const next = isFirst
        ? { ...piece, atCalibration: [...piece.atCalibration, reading] }
        : { ...piece, later: [...piece.later, { at, reading }] };
      return { ...gauge, checkPiece: next };
    });
    form.querySelector<HTMLInputElement>('#reading')!.value = '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'check-page': CheckPage;
  }
}
