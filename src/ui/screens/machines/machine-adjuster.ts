/** How a belt is tightened: by a screw, a slide, or a spring, and what a turn or a millimetre does to its path. */

import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Adjuster, MachineBelt } from '../../../../shared/document/machine.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import type { QuantityTold } from '../../parts/told-quantity.ts';
import '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import { editorStyles } from './editor-styles.ts';
import { type EditMachine, editBelt, faultText } from './machine-editing.ts';

/** An M3 screw that pushes the wheel which the belt turns round: the commonest (common practice, no source). */
const USUAL = {
  screw: { kind: 'screw', leadM: 0.0005, pathPerTravel: 2, clockwiseTightens: true },
  slide: { kind: 'slide', pathPerTravel: 2 },
  spring: { kind: 'spring' },
} as const satisfies Record<Adjuster['kind'], Adjuster>;

@customElement('machine-adjuster')
export class MachineAdjuster extends LitElement {
  static override styles = [shared, editorStyles, selectFieldStyles];

  @property({ attribute: false }) belt!: MachineBelt;
  @property({ attribute: false }) edit: EditMachine = () => {};

  override render() {
    const { adjuster } = this.belt;
    const kinds = ['none', 'screw', 'slide', 'spring'] as const;
    return html`<div class="fields">
      <div>
        <label class="over" for="kind">${words.adjuster}</label>
        ${selectField({
          id: 'kind',
          value: adjuster?.kind ?? 'none',
          choices: kinds.map((value) => ({ value, text: words.adjusters[value] })),
          onChosen: (kind) => this.#set(kind === 'screw' || kind === 'slide' || kind === 'spring' ? USUAL[kind] : undefined),
        })}
        ${adjuster?.kind === 'spring' ? html`<p class="note">${words.springNote}</p>` : nothing}
      </div>
      ${adjuster?.kind === 'screw' ? this.#screw(adjuster) : nothing}
      ${adjuster && adjuster.kind !== 'spring' ? this.#path(adjuster) : nothing}
    </div>`;
  }

  #screw(screw: Extract<Adjuster, { kind: 'screw' }>) {
    return html`<told-quantity
        .label=${words.lead}
        .value=${screw.leadM}
        .faultText=${faultText}
        @quantity-told=${({ told }: QuantityTold) => told && this.#set({ ...screw, leadM: told.value })}
      ></told-quantity>
      <div>
        <label class="over" for="turns">${words.turnTightens}</label>
        ${selectField({
          id: 'turns',
          value: screw.clockwiseTightens ? 'tightens' : 'loosens',
          choices: (['tightens', 'loosens'] as const).map((value) => ({ value, text: words.turns[value] })),
          onChosen: (turn) => this.#set({ ...screw, clockwiseTightens: turn === 'tightens' }),
        })}
      </div>`;
  }

  #path(adjuster: Exclude<Adjuster, { kind: 'spring' }>) {
    return html`<told-quantity
      class="wide"
      .label=${words.pathPerTravel}
      .note=${words.pathPerTravelNote}
      kind="number"
      .unit=${''}
      .value=${adjuster.pathPerTravel}
      .faultText=${faultText}
      @quantity-told=${({ told }: QuantityTold) => told && this.#set({ ...adjuster, pathPerTravel: told.value })}
    ></told-quantity>`;
  }

  #set(adjuster: Adjuster | undefined): void {
    this.edit(editBelt(this.belt.id, (belt) => ({ ...belt, adjuster })));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'machine-adjuster': MachineAdjuster;
  }
}
