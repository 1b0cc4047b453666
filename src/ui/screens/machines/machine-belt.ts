/** One belt of a machine: what it is, how tight it should be, how it is tightened, and its spans. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { belts as catalogue } from '../../../../shared/belts.ts';
import type { MachineBelt as Belt, Machine } from '../../../../shared/document/machine.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import type { QuantityTold } from '../../parts/told-quantity.ts';
import '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import { emptySpan } from '../../state/machine-new.ts';
import { editorStyles } from './editor-styles.ts';
import './machine-adjuster.ts';
import { type EditMachine, editBelt, faultText, typedText, withoutBelt } from './machine-editing.ts';
import './machine-path.ts';
import './machine-span.ts';
import './machine-target.ts';
import './machine-window.ts';

@customElement('machine-belt')
export class MachineBelt extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    selectFieldStyles,
    css`
      .blocks {
        display: grid;
        gap: var(--space-16);
      }
      h3 {
        margin-block-start: var(--space-8);
      }
    `,
  ];

  @property({ attribute: false }) document!: KeptDocument;
  @property({ attribute: false }) machine!: Machine;
  @property({ attribute: false }) belt!: Belt;
  /** Id of the span that the plan view shows. */
  @property() marked = '';
  @property({ attribute: false }) edit: EditMachine = () => {};

  override render() {
    const { belt, machine, document, edit } = this;
    return html`<section aria-labelledby="title">
      <div class="head">
        <h2 id="title">${words.beltTitle(belt.name)}</h2>
        <button class="quiet" aria-label=${words.removeNamed(words.beltTitle(belt.name))} @click=${() => edit(withoutBelt(belt.id))}>${words.removeBelt}</button>
      </div>
      <div class="blocks">
        <div class="fields">
          <div>
            <label class="over" for="name">${words.beltName}</label>
            <input id="name" type="text" .value=${belt.name} maxlength="20" @change=${this.#renamed} />
          </div>
          <div>
            <label class="over" for="kind">${words.beltKind}</label>
            ${selectField({ id: 'kind', value: belt.beltId, choices: this.#kinds(), onChosen: (beltId) => this.#change({ beltId }) })}
          </div>
          <machine-target class="wide" .document=${document} .machine=${machine} .belt=${belt} .edit=${edit}></machine-target>
        </div>
        <machine-window .document=${document} .machine=${machine} .belt=${belt} .edit=${edit}></machine-window>
        <details>
          <summary>${words.adjuster}</summary>
          <div class="blocks">
            <machine-adjuster .belt=${belt} .edit=${edit}></machine-adjuster>
            <div class="fields">
              <told-quantity
                class="wide"
                .label=${words.beltLength}
                .note=${words.beltLengthNote}
                .value=${belt.lengthM}
                .faultText=${faultText}
                @quantity-told=${({ told }: QuantityTold) => this.#change({ lengthM: told?.value })}
              ></told-quantity>
            </div>
          </div>
        </details>
        ${machine.layout.kind === 'own' ? html`<machine-path .machine=${machine} .belt=${belt} .edit=${edit}></machine-path>` : nothing}
        <div>
          <h3>${words.spans}</h3>
          ${belt.spans.map(
            (span) =>
              html`<machine-span .machine=${machine} .belt=${belt} .span=${span} .gauges=${document.gauges} .shown=${span.id === this.marked} .edit=${edit}></machine-span>`,
          )}
          <button class="quiet" @click=${this.#addSpan}>${words.addSpan}</button>
        </div>
      </div>
    </section>`;
  }

  /** A belt that is gone from both lists stays chosen, by its id. */
  #kinds() {
    const { belts } = this.document;
    const known = [
      ...catalogue.map(({ id, label }) => ({ value: id, text: label })),
      ...belts.map(({ id, name }) => ({ value: id, text: words.ownBelts(name) })),
    ];
    const { beltId } = this.belt;
    return known.some(({ value }) => value === beltId) ? known : [...known, { value: beltId, text: beltId }];
  }

  #change(change: Partial<Belt>): void {
    this.edit(editBelt(this.belt.id, (belt) => ({ ...belt, ...change })));
  }

  readonly #renamed = (event: Event) => {
    const name = typedText(event);
    if (name) this.#change({ name });
  };

  readonly #addSpan = () => {
    const span = emptySpan(words.newSpan);
    this.edit(editBelt(this.belt.id, (belt) => ({ ...belt, spans: [...belt.spans, span] })));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'machine-belt': MachineBelt;
  }
}
