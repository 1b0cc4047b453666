/** The wheels and clips of one belt where no ready layout fits: placed one by one, so that its spans follow from them and it can be drawn. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KeptWheel, Machine, MachineBelt } from '../../../../shared/document/machine.ts';
import { machinesEn } from '../../../words/machines-en.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import type { QuantityTold } from '../../parts/told-quantity.ts';
import '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import { relaid, spanAfterWheel } from '../../state/machine-new.ts';
import { editorStyles } from './editor-styles.ts';
import { type EditMachine, editBelt, faultText } from './machine-editing.ts';

const words = machinesEn.path;
const KINDS = ['pulley', 'idler', 'back', 'clamp'] as const;
type Kind = (typeof KINDS)[number];

/** To start from; 20 teeth and 12 mm are common on small machines (common practice, no source). */
const made = (kind: Kind, { xM, yM }: { readonly xM: number; readonly yM: number }): KeptWheel => {
  if (kind === 'pulley') return { kind, teeth: 20, xM, yM };
  if (kind === 'clamp') return { kind, xM, yM };
  return { kind: 'idler', diameterM: 0.012, touches: kind === 'back' ? 'back' : 'teeth', xM, yM };
};
const kindOf = (wheel: KeptWheel): Kind => (wheel.kind === 'idler' && wheel.touches === 'back' ? 'back' : wheel.kind);
const STEP_M = 0.2;

@customElement('machine-path')
export class MachinePath extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    selectFieldStyles,
    css`
      ol {
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: minmax(10rem, 1.6fr) repeat(3, minmax(5.5rem, 1fr)) auto;
        gap: var(--space-8) var(--space-12);
        align-items: end;
        padding-block: var(--space-8);
        border-block-start: var(--stroke-line) solid var(--line);
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-8) var(--space-16);
      }
      @media (max-width: 48rem) {
        li {
          grid-template-columns: repeat(3, minmax(0, 1fr));
        }
        li > :is(:first-child, :last-child) {
          grid-column: 1 / -1;
        }
      }
    `,
  ];

  @property({ attribute: false }) machine!: Machine;
  @property({ attribute: false }) belt!: MachineBelt;
  @property({ attribute: false }) edit: EditMachine = () => {};

  override render() {
    const { closed = false, wheels = [] } = this.belt.path ?? {};
    return html`<details ?open=${wheels.length > 0}>
      <summary>${words.title}</summary>
      <p class="note">${words.lead}</p>
      <label class="check"><input type="checkbox" .checked=${closed} @change=${this.#close} />${words.closed}</label>
      <ol>
        ${wheels.map((wheel, index) => this.#wheel(wheel, index))}
      </ol>
      <button @click=${this.#add}>${words.add}</button>
    </details>`;
  }

  #wheel(wheel: KeptWheel, index: number) {
    const number = index + 1;
    const { closed = false, wheels = [] } = this.belt.path ?? {};
    const hasNext = wheels.length > 1 && (closed || index < wheels.length - 1);
    const isPlucked = this.belt.spans.some(({ place }) => place?.belt === this.belt.id && place.from === index);
    return html`<li>
      <div>
        <label class="over" for=${`kind${index}`}>${words.kindLabel(number)}</label>
        ${selectField({
          id: `kind${index}`,
          value: kindOf(wheel),
          choices: KINDS.map((value) => ({ value, text: words.kinds[value] })),
          onChosen: (value) => this.#set(index, made(KINDS.find((kind) => kind === value) ?? 'pulley', wheel)),
        })}
      </div>
      ${this.#place(wheel, index, 'xM', words.x)} ${this.#place(wheel, index, 'yM', words.y)} ${this.#size(wheel, index)}
      <div class="acts">
        ${hasNext && !isPlucked ? html`<button aria-label=${words.pluckFrom(number)} @click=${() => this.#pluck(index)}>${words.pluck}</button>` : nothing}
        <button class="quiet" aria-label=${words.removeNumber(number)} @click=${() => this.#remove(index)}>${words.remove}</button>
      </div>
    </li>`;
  }

  #place(wheel: KeptWheel, index: number, axis: 'xM' | 'yM', label: string) {
    return html`<told-quantity .label=${label} .value=${wheel[axis]} zeroAllowed .faultText=${faultText}
      @quantity-told=${({ told }: QuantityTold) => told && this.#set(index, { ...wheel, [axis]: told.value })}></told-quantity>`;
  }

  #size(wheel: KeptWheel, index: number) {
    if (wheel.kind === 'clamp') return html`<span></span>`;
    if (wheel.kind === 'pulley')
      return html`<told-quantity .label=${words.teeth} kind="number" .unit=${''} .value=${wheel.teeth} .faultText=${faultText}
        @quantity-told=${({ told }: QuantityTold) => told && this.#set(index, { ...wheel, teeth: Math.min(400, Math.max(6, Math.round(told.value))) })}
      ></told-quantity>`;
    return html`<told-quantity .label=${words.diameter} .value=${wheel.diameterM} .faultText=${faultText}
      @quantity-told=${({ told }: QuantityTold) => told && this.#set(index, { ...wheel, diameterM: told.value })}></told-quantity>`;
  }

  /** Spans that follow from the wheels follow them. */
  #change(change: (path: NonNullable<MachineBelt['path']>) => NonNullable<MachineBelt['path']>): void {
    this.edit((machine) =>
      relaid(editBelt(this.belt.id, (belt) => ({ ...belt, path: change(belt.path ?? { closed: false, wheels: [] }) }))(machine)),
    );
  }

  #set(index: number, wheel: KeptWheel): void {
    this.#change(({ closed, wheels }) => ({ closed, wheels: wheels.map((one, at) => (at === index ? wheel : one)) }));
  }

  readonly #close = (event: Event): void => {
    const closed = (event.currentTarget as HTMLInputElement).checked;
    this.#change(({ wheels }) => ({ closed, wheels }));
  };

  readonly #add = (): void => {
    const last = this.belt.path?.wheels.at(-1);
    const next = made('pulley', last ? { xM: last.xM + STEP_M, yM: last.yM } : { xM: 0, yM: 0 });
    this.#change(({ closed, wheels }) => ({ closed, wheels: [...wheels, next] }));
  };

  /** Spans of wheels that are gone are measured ones from then on; those behind it move up by one. */
  #remove(index: number): void {
    const { id } = this.belt;
    this.edit((machine) =>
      relaid(
        editBelt(id, (belt) => ({
          ...belt,
          path: belt.path && { ...belt.path, wheels: belt.path.wheels.filter((_, at) => at !== index) },
          spans: belt.spans.map(({ place, ...span }) => {
            if (place?.belt !== id) return { ...span, place };
            if (place.from === index || place.from === index - 1) return { ...span, lengthFrom: 'measured' as const };
            return { ...span, place: { ...place, from: place.from > index ? place.from - 1 : place.from } };
          }),
        }))(machine),
      ),
    );
  }

  #pluck(index: number): void {
    const count = this.belt.path?.wheels.length ?? 0;
    const span = spanAfterWheel(this.machine, this.belt, index, words.span(index + 1, ((index + 1) % count) + 1));
    this.edit(editBelt(this.belt.id, (belt) => ({ ...belt, spans: [...belt.spans, span] })));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'machine-path': MachinePath;
  }
}
