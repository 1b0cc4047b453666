/** Which belts of a machine must match, how closely, and the way to adjusting them. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { BeltGroup, Machine } from '../../../../shared/document/machine.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import type { QuantityTold } from '../../parts/told-quantity.ts';
import '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import { newGroup } from '../../state/machine-new.ts';
import { editorStyles } from './editor-styles.ts';
import { type EditMachine, editGroup, faultText } from './machine-editing.ts';

@customElement('machine-groups')
export class MachineGroups extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    css`
      .group {
        padding-block: var(--space-12);
        border-block-start: var(--stroke-line) solid var(--line);
      }
      .members {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-8) var(--space-16);
        align-items: center;
      }
    `,
  ];

  @property({ attribute: false }) machine!: Machine;
  @property({ attribute: false }) edit: EditMachine = () => {};
  /** Belts that are to make a group, by id. */
  @state() chosen: readonly string[] = [];

  override render() {
    const { belts, groups } = this.machine;
    const grouped = new Set(groups.flatMap(({ beltIds }) => beltIds));
    const free = belts.filter(({ id }) => !grouped.has(id));
    return html`<section aria-labelledby="title">
      <div class="head"><h2 id="title">${words.groups}</h2></div>
      ${groups.length === 0 && free.length < 2 ? html`<p class="note">${words.groupNone}</p>` : nothing}
      ${groups.map((group) => this.#group(group))}
      ${free.length < 2 ? nothing : this.#choice(free)}
    </section>`;
  }

  #group(group: BeltGroup) {
    const names = this.machine.belts
      .filter(({ id }) => group.beltIds.includes(id))
      .map(({ name }) => name)
      .join(', ');
    const check = (name: string, checked: boolean, change: (is: boolean) => Partial<BeltGroup>) =>
      html`<label class="check"><input type="checkbox" .checked=${checked}
        @change=${(event: Event) => this.#change(group.id, change((event.currentTarget as HTMLInputElement).checked))} />${name}</label>`;
    return html`<div class="group" role="group" aria-label=${names}>
      <div class="fields">
        <div><p class="over">${words.groupMembers}</p><strong>${names}</strong></div>
        <told-quantity
          .label=${words.groupTolerance}
          kind="percent"
          unit="%"
          .value=${group.toleranceRelative}
          .faultText=${faultText}
          @quantity-told=${({ told }: QuantityTold) => told && told.value <= 1 && this.#change(group.id, { toleranceRelative: told.value })}
        ></told-quantity>
        <div>
          ${check(words.groupCrossed, group.crossed, (crossed) => ({ crossed }))}
          ${check(words.groupSameRoll, group.sameRoll ?? false, (sameRoll) => ({ sameRoll }))}
        </div>
      </div>
      <button class="quiet" @click=${() => this.edit((machine) => ({ ...machine, groups: machine.groups.filter(({ id }) => id !== group.id) }))}>
        ${words.removeGroup}
      </button>
    </div>`;
  }

  #choice(free: Machine['belts']) {
    const chosen = free.filter(({ id }) => this.chosen.includes(id));
    return html`<div class="members">
      ${free.map(
        ({ id, name }) =>
          html`<label class="check"><input type="checkbox" .checked=${this.chosen.includes(id)} @change=${() => this.#toggle(id)} />${name}</label>`,
      )}
      <button ?disabled=${chosen.length < 2} @click=${() => this.#add(chosen)}>${words.addGroup}</button>
    </div>`;
  }

  #toggle(id: string): void {
    this.chosen = this.chosen.includes(id) ? this.chosen.filter((one) => one !== id) : [...this.chosen, id];
  }

  #add(members: Machine['belts']): void {
    const group = newGroup(members, { crossed: false });
    this.chosen = [];
    this.edit((machine) => ({ ...machine, groups: [...machine.groups, group] }));
  }

  #change(id: string, change: Partial<BeltGroup>): void {
    this.edit(editGroup(id, (group) => ({ ...group, ...change })));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'machine-groups': MachineGroups;
  }
}
