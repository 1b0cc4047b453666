/** Density in place: the span plucked with and without a small mass clipped to its middle. */

import { html, nothing } from 'lit';
import { customElement, query } from 'lit/decorators.js';
import type { KeptBelt } from '../../../../shared/document/belt.ts';
import { currentOf } from '../../../../shared/document/common.ts';
import { type ClipDensity, clipDensity } from '../../../core/belt/clip-mass.ts';
import type { Measured } from '../../../core/math/measured.ts';
import { formatNumber, parseQuantity, type QuantityKind } from '../../../core/quantity.ts';
import type { EndFixity } from '../../../core/setup.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { en } from '../../../words/en.ts';
import '../../parts/answer-line.ts';
import '../../parts/doubt-bars.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import { shared } from '../../shared-styles.ts';
import { priorOf } from '../../state/bench-texts.ts';
import { benchEnd } from '../../state/own-belts.ts';
import { EMPTY_SETUP, understood } from '../../state/span-setup.ts';
import { faultText } from '../setup-words.ts';
import { BeltPage, COVERAGE_FACTOR } from './belt-page.ts';
import { beltStyles } from './belt-styles.ts';
import './bench-listen.ts';
import type { BenchListen, TakeHeard } from './bench-listen.ts';
import { percentText } from './value-words.ts';
import { headline } from './weigh-page.ts';

const words = beltsEn.clipPage;
type ClipTexts = NonNullable<KeptBelt['clip']>;
type Field = Exclude<keyof ClipTexts, 'ends'>;
type End = ClipTexts['ends'];

const EMPTY: ClipTexts = {
  spanLength: '',
  spanKnownTo: '1',
  clipMass: '',
  clipMassKnownTo: '1',
  clipWidth: '3',
  bare: '',
  clipped: '',
  frequencyKnownTo: '0.2',
  ends: 'unknown',
};
const ENDS: readonly End[] = ['unknown', 'pulley', 'idler', 'clip', 'bench'];
const KINDS: Readonly<Record<Field, { readonly kind: QuantityKind; readonly unit: string }>> = {
  spanLength: { kind: 'length', unit: 'mm' },
  spanKnownTo: { kind: 'length', unit: 'mm' },
  clipMass: { kind: 'mass', unit: 'g' },
  clipMassKnownTo: { kind: 'percent', unit: '%' },
  clipWidth: { kind: 'length', unit: 'mm' },
  bare: { kind: 'frequency', unit: 'Hz' },
  clipped: { kind: 'frequency', unit: 'Hz' },
  frequencyKnownTo: { kind: 'percent', unit: '%' },
};
/** The middle is found by eye (our judgement), one standard deviation. */
const CLIP_PLACE_U_M = 0.001;
/** Of ends of which nothing is known: hinged, clamped, or between. */
const OPEN_FIXITY: Measured = { value: 0.5, standardUncertainty: 0.4 };
/** Best shares of clip to span. */
const BEST = [0.2, 0.4] as const;

@customElement('clip-page')
export class ClipPage extends BeltPage {
  static override styles = [shared, quantityInputStyles, selectFieldStyles, beltStyles];

  @query('bench-listen') ear!: BenchListen;

  override render() {
    const texts = this.shown.clip ?? EMPTY;
    const { values, isComplete } = this.#read(texts);
    const found = isComplete ? this.#found(values, texts.ends) : undefined;
    const field = (name: Field, label: string, note = '', sign?: string) => {
      const said = faultText(this.#parsed(texts, name));
      return html`<div>
        <label for=${name}>${label}</label>
        ${quantityInput({
          id: name,
          value: texts[name],
          unit: KINDS[name].unit,
          sign,
          unreadable: said !== '',
          describedBy: `${name}-note`,
          onTyped: (text) => void this.change((belt) => ({ ...belt, clip: { ...(belt.clip ?? EMPTY), [name]: text } })),
        })}
        <p class=${said ? 'note fault' : 'note'} id="${name}-note">${said || note}</p>
        ${
          name === 'bare' || name === 'clipped'
            ? html`<button class="quiet" aria-label=${beltsEn.bench.listenTo(label)} @click=${() => this.#listen(name, label)}>${beltsEn.bench.listen}</button>`
            : nothing
        }
      </div>`;
    };
    return html`<answer-line>
        <span slot="over">${this.belt.name}</span>
        ${found ? headline(beltsEn.weighPage.result(this.density(found.linearDensityKgPerM))) : words.headline}
        <span slot="under">${words.under}</span>
        ${found ? html`<button slot="actions" class="solid" @click=${() => this.#use(found)}>${words.use}</button>` : nothing}
      </answer-line>
      <p role="status">${this.usedText}</p>
      <p class="caution">${beltsEn.bench.cautionsPositions}</p>
      <section class="fields">
        ${field('spanLength', words.span, this.#aim(values.spanLength))} ${field('spanKnownTo', words.spanKnownTo, '', '±')}
        ${field('clipMass', words.mass)} ${field('clipMassKnownTo', words.massKnownTo, '', '±')}
        ${field('clipWidth', words.width, words.widthNote)} ${field('bare', words.bare)}
        ${this.#ends(texts)} ${field('clipped', words.clipped)} ${field('frequencyKnownTo', words.knownTo, '', '±')}
      </section>
      ${found ? this.#budget(found) : html`<section><p class="note">${isComplete ? words.impossible : words.waiting}</p></section>`}
      <bench-listen @take-heard=${this.#heard}></bench-listen>`;
  }

  /** With what is known of the span, for the search of its sound. */
  #listen(name: 'bare' | 'clipped', label: string): void {
    const { spanLength, spanKnownTo } = this.shown.clip ?? EMPTY;
    // The clip lowers the sound beyond what this belt alone would do: then nothing of the belt is told.
    const told = name === 'bare' ? { spanLength, spanKnownTo } : {};
    this.ear.show({ spanId: name, loadId: '', name: label }, { ...EMPTY_SETUP, beltId: this.belt.id, ...told });
  }

  readonly #heard = ({ place, heard }: TakeHeard) => {
    const first = heard.partials.find(({ number }) => number === 1)?.frequencyHz;
    if (!first) return;
    const text = formatNumber(first.value, { significantDigits: 5, format: this.figures.format });
    void this.change((belt) => ({ ...belt, clip: { ...(belt.clip ?? EMPTY), [place.spanId]: text } }));
  };

  #ends({ ends }: ClipTexts) {
    const offered = ENDS.filter((end) => end !== 'bench' || benchEnd(this.belt) !== undefined || ends === 'bench');
    const choices = offered.map((end) => ({ value: end, text: en.setup.ends[end] }));
    const onChosen = (chosen: string) => {
      const end = ENDS.find((one) => one === chosen) ?? 'unknown';
      void this.change((belt) => ({ ...belt, clip: { ...(belt.clip ?? EMPTY), ends: end } }));
    };
    return html`<div><label for="ends">${words.ends}</label>${selectField({ id: 'ends', value: ends, choices, onChosen })}</div>`;
  }

  #parsed(texts: ClipTexts, name: Field) {
    const parsed = parseQuantity(texts[name], {
      kind: KINDS[name].kind,
      defaultUnit: KINDS[name].unit,
      toothPitchM: this.belt.toothPitchM,
      zeroAllowed: name === 'clipWidth',
    });
    return parsed.ok ? undefined : parsed;
  }

  #read(texts: ClipTexts) {
    const entries = (Object.keys(KINDS) as Field[]).map((name) => {
      const { kind, unit } = KINDS[name];
      const parsed = parseQuantity(texts[name], {
        kind,
        defaultUnit: unit,
        toothPitchM: this.belt.toothPitchM,
        zeroAllowed: name === 'clipWidth',
      });
      return [name, parsed.ok ? parsed.value : undefined] as const;
    });
    const values = Object.fromEntries(entries) as Record<Field, number | undefined>;
    return { values, isComplete: entries.every(([, value]) => value !== undefined) };
  }

  #found(values: Record<Field, number | undefined>, ends: End): ClipDensity | undefined {
    const of = (name: Field): number => values[name] ?? 0;
    const known = (value: number, u: number) => ({ value, standardUncertainty: u / COVERAGE_FACTOR });
    const stiffness = currentOf(this.belt.bendingStiffnessNm2);
    const range = stiffness
      ? {
          low: stiffness.value * Math.exp(-stiffness.standardUncertainty / stiffness.value),
          high: stiffness.value * Math.exp(stiffness.standardUncertainty / stiffness.value),
        }
      : priorOf(this.belt).bendingStiffnessNm2;
    if (of('clipWidth') >= of('spanLength') / 2) return undefined;
    return clipDensity({
      bareHz: known(of('bare'), of('bare') * of('frequencyKnownTo')),
      clippedHz: known(of('clipped'), of('clipped') * of('frequencyKnownTo')),
      clipMassKg: known(of('clipMass'), of('clipMass') * of('clipMassKnownTo')),
      clipWidthM: of('clipWidth'),
      clipPlaceUM: CLIP_PLACE_U_M,
      spanLengthM: known(of('spanLength'), of('spanKnownTo')),
      bendingStiffnessNm2: range,
      fixity: fixityOf(understood({ ...EMPTY_SETUP, beltId: this.belt.id, ends: [ends, ends] }, [this.belt]).setup.ends[0]),
    });
  }

  /** How heavy a clip should be. */
  #aim(spanLengthM: number | undefined): string {
    if (spanLengthM === undefined) return '';
    const spanG = 1000 * priorOf(this.belt).linearDensityKgPerM.value * spanLengthM;
    return words.aim(this.figures.rough(BEST[0] * spanG), this.figures.rough(BEST[1] * spanG, 'g'));
  }

  #budget({ contributions, massRatio }: ClipDensity) {
    const lines = contributions
      .map(({ input, standardUncertainty }) => ({
        name: words.inputs[input],
        valueN: 1000 * COVERAGE_FACTOR * standardUncertainty,
        figure: `± ${this.figures.rough(1000 * COVERAGE_FACTOR * standardUncertainty, 'g/m')}`,
      }))
      .filter(({ valueN }) => valueN > 0)
      .sort((a, b) => b.valueN - a.valueN);
    const isOff = massRatio < BEST[0] || massRatio > BEST[1];
    return html`<section>
      <h2>${words.budget}</h2>
      <doubt-bars .groups=${[{ name: '', lines }]} .label=${words.budget}></doubt-bars>
      <p class="note">${words.ratio(percentText(massRatio, this.figures))} ${isOff ? words.outside : nothing}</p>
    </section>`;
  }

  #use({ linearDensityKgPerM, massRatio }: ClipDensity): void {
    void this.use({ from: 'clip', note: words.ratio(percentText(massRatio, this.figures)), values: { linearDensityKgPerM } });
  }
}

/** Middle and spread of what is known of an end. */
function fixityOf(end: EndFixity): Measured {
  switch (end.kind) {
    case 'unknown':
      return OPEN_FIXITY;
    case 'between':
      return { value: (end.low + end.high) / 2, standardUncertainty: (end.high - end.low) / Math.sqrt(12) };
    case 'known':
      return end.value;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'clip-page': ClipPage;
  }
}
