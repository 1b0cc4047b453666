/** The fields of the bench: spans, weights, and what was plucked of each under each. */

import { html, nothing } from 'lit';
import type { KeptBench } from '../../../../shared/document/belt.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import type { Figures } from '../../format.ts';
import { quantityInput } from '../../parts/quantity-input.ts';
import { selectField } from '../../parts/select-field.ts';
import { type BenchKind, emptyLoad, emptySpan, takeAt, type UnderstoodBench, withTakeAt } from '../../state/bench-texts.ts';
import { newId } from '../../state/new-item.ts';
import { faultText } from '../setup-words.ts';
import { rigFields } from './bench-rig-fields.ts';

const words = beltsEn.bench;

export interface BenchFields {
  readonly bench: KeptBench;
  readonly kind: BenchKind;
  readonly understood: UnderstoodBench;
  readonly figures: Figures;
  readonly ratedForceN: number | undefined;
  readonly keep: (change: (bench: KeptBench) => KeptBench) => void;
  readonly listen: (place: TakePlace) => void;
}

export interface TakePlace {
  readonly spanId: string;
  readonly loadId: string;
  /** '60 mm under 3 N'; of a position '60 mm'. */
  readonly name: string;
}

/** First fault among these fields, in words. */
const fault = ({ understood }: BenchFields, ...keys: readonly string[]): string =>
  keys.map((key) => faultText(understood.faults[key])).find((text) => text !== '') ?? '';

const faultNote = (id: string, text: string) => (text === '' ? nothing : html`<p class="note fault" id=${id}>${text}</p>`);

export function spanRows(fields: BenchFields) {
  const { bench, keep } = fields;
  return html`<h2>${words.spans}</h2>
    <div class="rows">
      ${bench.spans.map(({ id, length, knownTo }, index) => {
        const said = fault(fields, `${id} length`, `${id} knownTo`);
        const type = (change: Partial<KeptBench['spans'][number]>) =>
          keep((now) => ({ ...now, spans: now.spans.map((span) => (span.id === id ? { ...span, ...change } : span)) }));
        const field = (name: 'length' | 'knownTo', value: string, label: string, sign?: string) =>
          quantityInput({
            id: `${id}-${name}`,
            value,
            unit: 'mm',
            sign,
            name: label,
            unreadable: fields.understood.faults[`${id} ${name}`] !== undefined,
            describedBy: said === '' ? undefined : `${id}-fault`,
            onTyped: (text) => type({ [name]: text }),
          });
        return html`<div>
          <div class="pair">
            ${field('length', length, words.spanLength(index + 1))} ${field('knownTo', knownTo, words.spanKnownTo(index + 1), '±')}
            ${bench.spans.length > 1 ? dropButton(words.dropSpan(index + 1), () => keep((now) => withoutSpan(now, id))) : nothing}
          </div>
          ${faultNote(`${id}-fault`, said)}
        </div>`;
      })}
    </div>
    <button class="quiet" @click=${() => keep((now) => ({ ...now, spans: [...now.spans, emptySpan(newId())] }))}>${words.addSpan}</button>`;
}

export function loadRows(fields: BenchFields) {
  const { bench, keep, understood, ratedForceN, figures } = fields;
  const rigs = (['hang', 'roller'] as const).map((value) => ({ value, text: words.rigs[value] }));
  return html`<h2>${words.loads}</h2>
    <div class="rig">
      <label for="rig">${words.rig}</label>
      ${selectField({ id: 'rig', value: bench.rig, choices: rigs, onChosen: (rig) => keep((now) => ({ ...now, rig: rig === 'roller' ? 'roller' : 'hang' })) })}
    </div>
    <div class="rows">
      ${bench.loads.map(({ id, weight, knownTo }, index) => {
        const forceN = understood.forceN[id];
        const isTooMuch = forceN !== undefined && ratedForceN !== undefined && forceN > ratedForceN;
        const over = isTooMuch ? words.overRated(figures.rough(forceN, 'N'), figures.typed(ratedForceN, 'N')) : '';
        const said = fault(fields, `${id} weight`, `${id} knownTo`) || over;
        const type = (change: Partial<KeptBench['loads'][number]>) =>
          keep((now) => ({ ...now, loads: now.loads.map((load) => (load.id === id ? { ...load, ...change } : load)) }));
        const field = (name: 'weight' | 'knownTo', value: string, label: string, unit: string, sign?: string) =>
          quantityInput({
            id: `${id}-${name}`,
            value,
            unit,
            sign,
            name: label,
            unreadable: understood.faults[`${id} ${name}`] !== undefined,
            describedBy: said === '' ? 'load-note' : `${id}-fault`,
            onTyped: (text) => type({ [name]: text }),
          });
        return html`<div>
          <div class="pair">
            ${field('weight', weight, words.load(index + 1), /[a-z]/iu.test(weight) ? '' : 'g')} ${field('knownTo', knownTo, words.loadKnownTo(index + 1), '%', '±')}
            ${bench.loads.length > 1 ? dropButton(words.dropLoad(index + 1), () => keep((now) => withoutLoad(now, id))) : nothing}
          </div>
          ${faultNote(`${id}-fault`, said)}
        </div>`;
      })}
    </div>
    <p class="note" id="load-note">${words.loadNote}</p>
    <button class="quiet" @click=${() => keep((now) => ({ ...now, loads: [...now.loads, emptyLoad(newId())] }))}>${words.addLoad}</button>
    ${rigFields(fields)}`;
}

const dropButton = (name: string, drop: () => void) => html`<button class="quiet" aria-label=${name} @click=${drop}>${words.drop}</button>`;

const withoutSpan = (bench: KeptBench, id: string): KeptBench => ({
  ...bench,
  spans: bench.spans.filter((span) => span.id !== id),
  takes: bench.takes.filter(({ spanId }) => spanId !== id),
});
const withoutLoad = (bench: KeptBench, id: string): KeptBench => ({
  ...bench,
  loads: bench.loads.filter((load) => load.id !== id),
  takes: bench.takes.filter(({ loadId }) => loadId !== id),
});

export function takeRows(fields: BenchFields) {
  const { bench, kind, understood, figures, keep } = fields;
  const places = bench.spans.flatMap(({ id: spanId, length }) =>
    bench.loads.flatMap(({ id: loadId }): TakePlace[] => {
      if (length.trim() === '' || understood.faults[`${spanId} length`]) return [];
      const span = /[a-z"]/iu.test(length) ? length.trim() : `${length.trim()} mm`;
      if (kind === 'positions') return [{ spanId, loadId, name: span }];
      const forceN = understood.forceN[loadId];
      return forceN === undefined ? [] : [{ spanId, loadId, name: words.takeOf(span, figures.typed(Number(forceN.toPrecision(3)), 'N')) }];
    }),
  );
  if (places.length === 0) {
    return html`<h2>${words.takes}</h2><p class="note">${kind === 'weights' ? words.takesEmptyWeights : words.takesEmpty}</p>`;
  }
  return html`<h2>${words.takes}</h2>
    <p class="note" id="takes-note">${words.takesNote}</p>
    <div class="rows takes">${places.map((place) => takeRow(fields, place))}</div>
    <div class="known-to">
      <label for="frequencyKnownTo">${words.frequencyKnownTo}</label>
      ${quantityInput({
        id: 'frequencyKnownTo',
        value: bench.frequencyKnownTo,
        unit: '%',
        sign: '±',
        unreadable: understood.faults.frequencyKnownTo !== undefined,
        onTyped: (frequencyKnownTo) => keep((now) => ({ ...now, frequencyKnownTo })),
      })}
    </div>`;
}

function takeRow(fields: BenchFields, place: TakePlace) {
  const { bench, keep, listen, understood, figures } = fields;
  const { spanId, loadId, name } = place;
  const id = `${spanId}-${loadId}`;
  const take = takeAt(bench, spanId, loadId);
  const said = faultText(understood.faults[`${spanId} ${loadId}`]);
  const heard = take?.heard;
  return html`<div>
    <div class="take">
      <span class="take-name">${name}</span>
      ${
        heard
          ? html`<span class="heard"
              >${heard.partials.map(({ frequencyHz }) => figures.typed(Number(frequencyHz.value.toPrecision(4)))).join(' ')} Hz
              <span class="note">${words.heard(heard.pluckCount)}</span></span
            >
            <button class="quiet" @click=${() => keep((now) => withTakeAt(now, { spanId, loadId, typed: '' }))}>${words.forget}</button>`
          : quantityInput({
              id,
              value: take?.typed ?? '',
              unit: 'Hz',
              name: words.partialsOf(name),
              unreadable: said !== '',
              describedBy: said === '' ? 'takes-note' : `${id}-fault`,
              onTyped: (typed) => keep((now) => withTakeAt(now, { spanId, loadId, typed })),
            })
      }
      <button aria-label=${words.listenTo(name)} @click=${() => listen(place)}>${words.listen}</button>
    </div>
    ${faultNote(`${id}-fault`, said)}
  </div>`;
}
