/** Gauge against sound on the same belt: kept takes beside readings, whether they agree, and what is large enough to part them. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import { agreementPlot, FEWEST_PAIRS } from '../../../core/gauge/agreement-plot.ts';
import { formatNumber, formatPercent } from '../../../core/quantity.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures, together } from '../../format.ts';
import '../../parts/grade-mark.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import '../../parts/spread-plot.ts';
import type { SpreadView } from '../../parts/spread-plot.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type CrossLine, crossLines, takeLabel } from '../../state/gauge-cross.ts';
import type { GaugeProof } from '../../state/gauge-proof.ts';
import { riseIn, usualStiffnessN } from '../../state/gauge-rise.ts';
import { newId, nowWhen } from '../../state/new-item.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import { type EditGauge, typedReading } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';

const words = gaugesEn.cross;

@customElement('cross-page')
export class CrossPage extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    selectFieldStyles,
    gaugeStyles,
    css`
      .lead {
        margin-block-end: var(--space-16);
      }
      .answer {
        font-size: var(--title-size);
        line-height: var(--title-line);
        font-weight: var(--weight-strong);
      }
      h3 {
        margin-block-start: var(--space-24);
      }
    `,
  ];

  @property({ attribute: false }) document!: KeptDocument;
  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) proof!: GaugeProof;
  @property({ attribute: false }) edit: EditGauge = () => {};
  @state() takeId = '';
  @state() takesRiseOff = true;
  @state() fault = '';
  readonly #figures = new Figures();

  override render() {
    const lines = crossLines(this.gauge, this.proof, this.document);
    const last = lines.at(-1);
    return html`<h2>${words.title}</h2>
      <p class="lead">${words.lead}</p>
      ${last?.check ? html`<p class="answer" role="status">${(last.check.agrees ? words.answerAgree : words.answerDiffer).join('')}</p><p class="lead">${words.en(formatNumber(last.check.en, { decimals: 2, format: this.#figures.format }))}</p>` : nothing}
      ${this.#form()} ${lines.length > 0 ? this.#table(lines) : nothing} ${last?.check ? this.#causes(last) : nothing} ${this.#plot(lines)}`;
  }

  #form() {
    const takes = this.document.takes.filter(({ now }) => now.answer.forceN);
    if (takes.length === 0) {
      return html`<p class="note">${words.noTakes}</p><div class="acts"><a class="button" href=${hrefOf('listen')}>${words.toListen}</a></div>`;
    }
    const chosen = takes.find(({ id }) => id === this.takeId) ?? takes.at(-1)!;
    const rise = this.#riseFor(chosen.id);
    return html`<form class="fields" @submit=${(event: Event) => this.#add(event, chosen.id)}>
        <div class="wide">
          <label class="over" for="take">${words.take}</label>
          ${selectField({
            id: 'take',
            value: chosen.id,
            choices: [...takes].reverse().map((take) => ({ value: take.id, text: takeLabel(take, this.document, this.#figures) })),
            onChosen: (id) => {
              this.takeId = id;
            },
          })}
        </div>
        <div><label class="over" for="reading">${words.reading}</label><input id="reading" name="reading" type="text" inputmode="decimal" autocomplete="off" /></div>
        <div>
          <label class="check"><input type="checkbox" .checked=${this.takesRiseOff && rise !== undefined} ?disabled=${rise === undefined}
            @change=${(event: Event) => {
              this.takesRiseOff = (event.currentTarget as HTMLInputElement).checked;
            }} />${words.takeOff}</label>
          <p class="note">${rise ? words.takeOffNote(together(this.#figures.measured(rise.value, 2 * rise.standardUncertainty), 'N')) : words.takeOffNeeds}</p>
        </div>
        <div class="acts"><button class="solid" type="submit">${words.add}</button></div>
      </form>
      ${this.fault ? html`<p class="note" role="alert">${this.fault}</p>` : nothing}`;
  }

  #riseFor(takeId: string) {
    const spanM = this.document.takes.find(({ id }) => id === takeId)?.now.setup.spanLengthM?.value;
    if (spanM === undefined) return undefined;
    return riseIn(this.gauge, { axialStiffnessN: usualStiffnessN(this.gauge, this.document), givingLengthM: spanM });
  }

  #table(lines: readonly CrossLine[]) {
    return html`<div class="scrolls"><table>
      <caption>${words.caption}</caption>
      <thead><tr>${words.columns.map((column) => html`<th scope="col">${column}</th>`)}<td></td></tr></thead>
      <tbody>${[...lines].reverse().map((line) => this.#line(line))}</tbody>
    </table></div>`;
  }

  #line({ id, belt, gauge, sound, check, why }: CrossLine) {
    const force = (interval: typeof gauge) =>
      interval
        ? together(
            this.#figures.measured(interval.valueN, Math.max(interval.valueN - interval.lowN, interval.highN - interval.valueN)),
            'N',
          )
        : gaugesEn.proof.none;
    const verdict = check
      ? html`<grade-mark .grade=${check.agrees ? 'trusted' : 'unusable'} .word=${check.agrees ? words.agrees : words.differs}></grade-mark>`
      : html`<span class="note">${why === 'take' ? words.takeWithoutForce : words.unusable}</span>`;
    return html`<tr>
      <th scope="row">${belt}</th><td>${force(gauge)}</td><td>${force(sound)}</td>
      <td>${check ? together(this.#figures.measured(check.differenceN, check.differenceU95N), 'N') : gaugesEn.proof.none}</td>
      <td>${check ? formatNumber(check.en, { decimals: 2, format: this.#figures.format }) : gaugesEn.proof.none}</td>
      <td>${verdict}</td>
      <td><button class="quiet" @click=${() => this.edit((one) => ({ ...one, crossChecks: one.crossChecks?.filter((other) => other.id !== id) }))}>${words.remove}</button></td>
    </tr>`;
  }

  #causes({ causes }: CrossLine) {
    return html`<h3>${words.causes}</h3>
      <table><tbody>${causes.map(
        ({ cause, sizeN, hasSign, explains }) => html`<tr>
        <th scope="row">${words.causeNames[cause]}</th>
        <td class="number">${hasSign ? '' : '±\u00a0'}${this.#figures.rough(hasSign ? sizeN : Math.abs(sizeN), 'N')}</td>
        <td>${explains ? words.causeExplains : words.causeTooSmall}</td></tr>`,
      )}</tbody></table>`;
  }

  #plot(lines: readonly CrossLine[]) {
    const pairs = lines.flatMap(({ gauge, sound, belt }) => (gauge && sound ? [{ gaugeN: gauge.valueN, soundN: sound.valueN, belt }] : []));
    if (pairs.length === 0) return nothing;
    const plot = agreementPlot(pairs.map((pair) => ({ ...pair, belt: pair.belt || undefined })));
    if (!plot || plot.count < FEWEST_PAIRS)
      return html`<p class="note">${words.plotNeeds(plot?.count ?? new Set(pairs.map(({ belt }) => belt)).size, FEWEST_PAIRS)}</p>`;
    const isRatio = plot.scale === 'ratio';
    const text = (value: number) =>
      isRatio ? formatPercent(Math.expm1(value), { decimals: 1, format: this.#figures.format }) : this.#figures.rough(value, 'N');
    const view: SpreadView = {
      points: plot.points.map(({ meanN, difference }) => ({ x: meanN, y: isRatio ? 100 * Math.expm1(difference) : difference })),
      lines: [plot.lower, plot.bias, plot.upper].map(({ value, low, high }, k) => ({
        at: isRatio ? 100 * Math.expm1(value) : value,
        low: isRatio ? 100 * Math.expm1(low) : low,
        high: isRatio ? 100 * Math.expm1(high) : high,
        text: k === 1 ? words.bias(text(value), text(low), text(high)) : text(value),
        weight: k === 1 ? 'middle' : 'outer',
      })),
      xUnit: 'N',
      yUnit: isRatio ? '%' : 'N',
      hasX: true,
    };
    const label = `${words.plotTitle}. ${words.bias(text(plot.bias.value), text(plot.bias.low), text(plot.bias.high))}. ${words.limits(text(plot.lower.value), text(plot.upper.value))}.`;
    return html`<section class="block"><h3>${words.plotTitle}</h3>
      <spread-plot .view=${view} .label=${label} .locale=${this.#figures.locale}
        .table=${{ caption: words.plotTitle, columns: ['N', 'N'], rows: plot.points.map(({ meanN, difference }) => [this.#figures.typed(meanN), text(difference)]) }}></spread-plot>
      <p class="note">${words.limits(text(plot.lower.value), text(plot.upper.value))}. ${words.plotNote}</p></section>`;
  }

  #add(event: Event, takeId: string): void {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const reading = typedReading(String(new FormData(form).get('reading') ?? ''));
    this.fault = reading === undefined ? gaugesEn.run.notANumber : '';
    if (reading === undefined) return;
    const rise = this.takesRiseOff ? this.#riseFor(takeId) : undefined;
    const check = { id: newId(), at: nowWhen(), reading, takeId, riseN: rise };
    this.edit((gauge) => ({ ...gauge, crossChecks: [...(gauge.crossChecks ?? []), check] }));
    const field = form.querySelector<HTMLInputElement>('#reading');
    if (field) field.value = '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'cross-page': CrossPage;
  }
}
