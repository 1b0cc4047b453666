/** Stretch under weights: readings of a mark over hung masses give the belt's longitudinal stiffness. */

import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { KeptBelt } from '../../../../shared/document/belt.ts';
import { forceScaleRelativeU, hungForceN } from '../../../core/belt/hung-load.ts';
import { type LongitudinalStiffness, longitudinalStiffness } from '../../../core/belt/stretch.ts';
import { type ParsedQuantity, parseQuantity } from '../../../core/quantity.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import '../../parts/answer-line.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { shared } from '../../shared-styles.ts';
import { knowledgeOf } from '../../state/own-belts.ts';
import { faultText } from '../setup-words.ts';
import { BeltPage, COVERAGE_FACTOR } from './belt-page.ts';
import { beltStyles } from './belt-styles.ts';
import { valueText } from './value-words.ts';
import { headline } from './weigh-page.ts';

const words = beltsEn.stretchPage;
type StretchTexts = NonNullable<KeptBelt['stretch']>;

const EMPTY: StretchTexts = {
  gaugeLength: '1000',
  readingKnownTo: '0.2',
  readings: Array.from({ length: 4 }, () => ({ weight: '', reading: '' })),
};
/** Marks on a belt are a millimetre wide (our judgement), one standard deviation. */
const GAUGE_LENGTH_U_M = 0.0005;
/** Force under which the stretch of a metre is told. */
const EXAMPLE_N = 10;

@customElement('stretch-page')
export class StretchPage extends BeltPage {
  static override styles = [shared, quantityInputStyles, beltStyles];

  override render() {
    const texts = this.shown.stretch ?? EMPTY;
    const gauge = this.#length(texts.gaugeLength);
    const knownTo = this.#length(texts.readingKnownTo);
    const read = texts.readings.map(({ weight, reading }) => ({ mass: this.#mass(weight), reading: this.#length(reading, true) }));
    const readings = read.flatMap(({ mass, reading }) =>
      mass.ok && reading.ok
        ? [{ forceN: hungForceN({ value: mass.value, standardUncertainty: 0 }, { rig: 'hang' }).value, lengtheningM: reading.value }]
        : [],
    );
    const isReady = gauge.ok && knownTo.ok && readings.length >= 3;
    const found = isReady
      ? longitudinalStiffness({
          gaugeLengthM: { value: gauge.value, standardUncertainty: GAUGE_LENGTH_U_M },
          readings,
          readingUM: knownTo.value / COVERAGE_FACTOR,
          forceScaleRelativeU: forceScaleRelativeU(),
        })
      : undefined;
    const rated = knowledgeOf(this.belt)?.ratedForceN;
    return html`<answer-line>
        <span slot="over">${this.belt.name}</span>
        ${found ? headline(words.result(valueText('axialStiffnessN', found.longitudinalStiffnessN, this.figures))) : words.headline}
        <span slot="under">${words.under}</span>
        ${found ? html`<button slot="actions" class="solid" @click=${() => this.#use(found, readings.length)}>${words.use}</button>` : nothing}
      </answer-line>
      <p role="status">${this.usedText}</p>
      <p class="caution">${beltsEn.bench.cautions} ${rated === undefined ? nothing : beltsEn.bench.rated(this.figures.typed(rated, 'N'))}</p>
      <section class="fields">
        ${this.#field('gaugeLength', words.gauge, texts.gaugeLength, faultText(gauge.ok ? undefined : gauge), words.gaugeNote, (gaugeLength) => ({ gaugeLength }))}
        ${this.#field('readingKnownTo', words.readingKnownTo, texts.readingKnownTo, faultText(knownTo.ok ? undefined : knownTo), '', (readingKnownTo) => ({ readingKnownTo }), '±')}
      </section>
      <section>
        <p class="note" id="reading-note">${words.readingNote}</p>
        <div class="rows">${texts.readings.map((row, index) => this.#row(row, index, texts.readings.length, read[index]!))}</div>
        <button class="quiet" @click=${() => this.#keep((now) => ({ ...now, readings: [...now.readings, { weight: '', reading: '' }] }))}>${words.another}</button>
      </section>
      <section>${found ? this.#explained(found) : html`<p class="note">${isReady ? words.impossible : words.waiting}</p>`}</section>`;
  }

  #row(
    row: StretchTexts['readings'][number],
    index: number,
    count: number,
    { mass, reading }: { mass: ParsedQuantity; reading: ParsedQuantity },
  ) {
    const type = (change: Partial<typeof row>) =>
      this.#keep((now) => ({ ...now, readings: now.readings.map((one, i) => (i === index ? { ...one, ...change } : one)) }));
    const said = [mass, reading].map((one) => faultText(one.ok ? undefined : one)).find((text) => text !== '') ?? '';
    const field = (name: 'weight' | 'reading', label: string, unit: string, isUnreadable: boolean) =>
      quantityInput({
        id: `${name}-${index}`,
        value: row[name],
        unit,
        name: label,
        unreadable: isUnreadable,
        describedBy: said === '' ? 'reading-note' : `row-${index}-fault`,
        onTyped: (text) => type({ [name]: text }),
      });
    const isWrong = (one: { readonly ok: boolean; readonly why?: string | undefined }): boolean => !one.ok && one.why !== 'empty';
    return html`<div>
      <div class="pair">
        ${field('weight', words.row(index + 1), 'g', isWrong(mass))} ${field('reading', words.reading(index + 1), 'mm', isWrong(reading))}
        ${count > 3 ? html`<button class="quiet" aria-label=${words.drop(index + 1)} @click=${() => this.#keep((now) => ({ ...now, readings: now.readings.filter((_, i) => i !== index) }))}>${beltsEn.bench.drop}</button>` : nothing}
      </div>
      ${said === '' ? nothing : html`<p class="note fault" id="row-${index}-fault">${said}</p>`}
    </div>`;
  }

  #field(
    id: string,
    label: string,
    value: string,
    said: string,
    note: string,
    change: (text: string) => Partial<StretchTexts>,
    sign?: string,
  ) {
    return html`<div>
      <label for=${id}>${label}</label>
      ${quantityInput({ id, value, unit: 'mm', sign, unreadable: said !== '', describedBy: `${id}-note`, onTyped: (text) => this.#keep((now) => ({ ...now, ...change(text) })) })}
      <p class=${said ? 'note fault' : 'note'} id="${id}-note">${said || note}</p>
    </div>`;
  }

  #explained({ longitudinalStiffnessN, changesFrom }: LongitudinalStiffness) {
    const stretchMm = (1000 * EXAMPLE_N) / longitudinalStiffnessN.value;
    const kilo = (forceN: number): string => this.figures.rough(forceN / 1000, 'kN');
    return html`<p>${words.explain(this.figures.rough(stretchMm, 'mm'), this.figures.typed(EXAMPLE_N, 'N'))}</p>
      ${changesFrom ? html`<p class="caution">${words.changes(kilo(changesFrom.lowN), kilo(changesFrom.highN))}</p>` : nothing}`;
  }

  #length(text: string, zeroAllowed = false) {
    return parseQuantity(text, { kind: 'length', defaultUnit: 'mm', toothPitchM: this.belt.toothPitchM, zeroAllowed });
  }

  #mass(text: string) {
    return parseQuantity(text, { kind: 'mass', defaultUnit: 'g', zeroAllowed: true });
  }

  #keep(change: (texts: StretchTexts) => StretchTexts): void {
    void this.change((belt) => ({ ...belt, stretch: change(belt.stretch ?? EMPTY) }));
  }

  #use({ longitudinalStiffnessN }: LongitudinalStiffness, count: number): void {
    void this.use({ from: 'stretch', note: words.note(count), values: { axialStiffnessN: longitudinalStiffnessN } });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'stretch-page': StretchPage;
  }
}
