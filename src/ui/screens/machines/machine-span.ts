/** One span of a belt: how long it is and where that comes from, where the carriage stands for it, and what can be done with it. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { KeptSpan, Machine, MachineBelt } from '../../../../shared/document/machine.ts';
import { ASSUMED_UNCERTAINTY } from '../../../core/setup.ts';
import { en } from '../../../words/en.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import { Figures } from '../../format.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import type { QuantityTold } from '../../parts/told-quantity.ts';
import '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import { asLaid } from '../../state/machine-new.ts';
import { editorStyles } from './editor-styles.ts';
import { type EditMachine, editBelt, editSpan, faultText, typedText } from './machine-editing.ts';

/** A person wants the span drawn, or wants to listen on it. */
export class SpanChosen extends Event {
  readonly spanId: string;

  constructor(type: 'span-shown' | 'span-listened', spanId: string) {
    super(type, { bubbles: true, composed: true });
    this.spanId = spanId;
  }
}

@customElement('machine-span')
export class MachineSpan extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    selectFieldStyles,
    css`
      .row {
        display: grid;
        grid-template-columns: minmax(9rem, 1.2fr) minmax(9rem, 1fr) auto;
        gap: var(--space-8) var(--space-16);
        align-items: start;
        padding-block: var(--space-12);
        border-block-start: var(--stroke-line) solid var(--line);
      }
      .actions {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-8) var(--space-16);
        margin-block-start: 1.375rem;
      }
      .rest {
        grid-column: 1 / -1;
        margin-block: calc(-1 * var(--space-8)) 0;
      }
      details .fields {
        margin-block: var(--space-8);
      }
      @media (max-width: 40rem) {
        .row {
          grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
        }
        .actions {
          grid-column: 1 / -1;
          margin-block-start: 0;
        }
      }
    `,
  ];

  @property({ attribute: false }) machine!: Machine;
  @property({ attribute: false }) belt!: MachineBelt;
  @property({ attribute: false }) span!: KeptSpan;
  @property({ attribute: false }) gauges: readonly KeptGauge[] = [];
  @property({ type: Boolean }) shown = false;
  @property({ attribute: false }) edit: EditMachine = () => {};
  readonly #figures = new Figures();

  override render() {
    const { span, belt } = this;
    const { lengthM } = span;
    const named = words.listenOnNamed(belt.name, span.name);
    return html`<div class="row">
      <div>
        <label class="over" for="name">${words.spanName}</label>
        <input id="name" type="text" .value=${span.name} maxlength="120" @change=${this.#renamed} />
      </div>
      <told-quantity
        .label=${words.spanLength}
        .note=${words.spanLengthFrom[span.lengthFrom]}
        .value=${lengthM?.value}
        .standardUncertainty=${lengthM?.standardUncertainty}
        .faultText=${faultText}
        @quantity-told=${this.#measured}
      ></told-quantity>
      <div class="actions">
        <button title=${named} aria-label=${named} @click=${() => this.#choose('span-listened')}>${words.listenOn}</button>
        ${span.place ? html`<button class="quiet" aria-pressed=${this.shown} @click=${() => this.#choose('span-shown')}>${words.show}</button>` : nothing}
      </div>
      <div class="rest">
        ${this.#fits()}
        <details>
          <summary>${words.details}</summary>
          <div class="fields">
            <div class="wide">
              <label class="over" for="carriage">${words.carriage}</label>
              <input id="carriage" type="text" .value=${span.carriageNote ?? ''} maxlength="200" placeholder=${words.carriageHint} @change=${this.#carriage} />
              ${this.#carriageText()}
            </div>
            ${this.#end(0)} ${this.#end(1)}
            <div>
              <label class="over" for="lie">${words.lie}</label>
              ${selectField({
                id: 'lie',
                value: span.lie ?? 'edge',
                choices: (['edge', 'flat'] as const).map((value) => ({ value, text: en.setup.lies[value] })),
                onChosen: (lie) => this.#change((one) => ({ ...one, lie: lie === 'flat' ? 'flat' : 'edge' })),
              })}
            </div>
          </div>
          ${
            span.place && span.lengthFrom === 'measured'
              ? html`<button class="quiet" @click=${this.#fromLayout}>${words.useLayout}</button>`
              : nothing
          }
          <button class="quiet" aria-label=${words.removeNamed(span.name)} @click=${this.#remove}>${words.removeSpan}</button>
        </details>
      </div>
    </div>`;
  }

  #end(index: 0 | 1) {
    const kinds = ['unknown', 'pulley', 'idler', 'clip'] as const;
    return html`<div>
      <label class="over" for=${`end${index}`}>${index === 0 ? words.firstEnd : words.secondEnd}</label>
      ${selectField({
        id: `end${index}`,
        value: this.span.ends[index],
        choices: kinds.map((value) => ({ value, text: en.setup.ends[value] })),
        onChosen: (chosen) => {
          const kind = kinds.find((one) => one === chosen) ?? 'unknown';
          this.#change((one) => ({ ...one, ends: index === 0 ? [kind, one.ends[1]] : [one.ends[0], kind] }));
        },
      })}
    </div>`;
  }

  #carriageText() {
    const at = this.span.carriageM;
    if (!at) return nothing;
    const text = words.carriageNote(this.#figures.typed(at.x * 1000, 'mm'), this.#figures.typed(at.y * 1000, 'mm'));
    return html`<p class="note">${text}</p>`;
  }

  /** Which gauges find room on a span of this length. */
  #fits() {
    const { lengthM } = this.span;
    const told = this.gauges.filter(({ needsSpanM }) => needsSpanM !== undefined);
    if (!lengthM || told.length === 0) return nothing;
    const names = (fits: boolean) =>
      told
        .filter(({ needsSpanM = 0 }) => needsSpanM <= lengthM.value === fits)
        .map(({ name }) => name)
        .join(', ');
    const [room, short] = [names(true), names(false)];
    return html`<p class="note">${room ? words.gaugesFit(room) : nothing} ${short ? words.gaugesTooLong(short) : nothing}</p>`;
  }

  #change(edit: (span: KeptSpan) => KeptSpan): void {
    this.edit(editSpan(this.belt.id, this.span.id, edit));
  }

  #choose(type: 'span-shown' | 'span-listened'): void {
    this.dispatchEvent(new SpanChosen(type, this.span.id));
  }

  readonly #renamed = (event: Event) => {
    const name = typedText(event);
    if (name) this.#change((span) => ({ ...span, name }));
  };

  /** The carriage stands for a measured length where it stands now. */
  readonly #measured = ({ told }: QuantityTold) => {
    const standardUncertainty = told?.standardUncertainty ?? ASSUMED_UNCERTAINTY.spanLengthM;
    const lengthM = told && { value: told.value, standardUncertainty };
    this.#change((span) => ({ ...span, lengthM, lengthFrom: 'measured' }));
  };

  readonly #carriage = (event: Event) => {
    const carriageNote = typedText(event) || undefined;
    this.#change((span) => ({ ...span, carriageNote }));
  };

  readonly #fromLayout = () => this.#change((span) => asLaid(this.machine, this.belt, span));

  readonly #remove = () => {
    const { id } = this.span;
    this.edit(editBelt(this.belt.id, (belt) => ({ ...belt, spans: belt.spans.filter((span) => span.id !== id) })));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'machine-span': MachineSpan;
  }
  interface HTMLElementEventMap {
    'span-shown': SpanChosen;
    'span-listened': SpanChosen;
  }
}
