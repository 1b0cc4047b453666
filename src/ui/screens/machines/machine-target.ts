/** The target of a belt as it is entered: two ends in any unit of force. What was set before stays in the belt's history. */

import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { currentOf } from '../../../../shared/document/common.ts';
import type { MachineBelt } from '../../../../shared/document/machine.ts';
import type { KeptTarget } from '../../../../shared/document/target.ts';
import { type ParsedQuantity, parseQuantity } from '../../../core/quantity.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import { Figures } from '../../format.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import { shared } from '../../shared-styles.ts';
import { nowWhen } from '../../state/new-item.ts';
import { editorStyles } from './editor-styles.ts';
import { type EditMachine, editBelt, faultText } from './machine-editing.ts';

const FORCE_UNITS = ['N', 'lbf', 'kgf', 'ozf'];

interface Typed {
  readonly from: string;
  readonly to: string;
  readonly unit: string;
}

@customElement('machine-target')
export class MachineTarget extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    quantityInputStyles,
    selectFieldStyles,
    css`
      .range {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) minmax(4.5rem, auto);
        gap: var(--space-8);
      }
    `,
  ];

  @property({ attribute: false }) belt!: MachineBelt;
  @property({ attribute: false }) edit: EditMachine = () => {};
  /** What is being typed, as long as it is not kept. */
  @state() draft: Typed | undefined;
  readonly #figures = new Figures();

  override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('belt') as MachineBelt | undefined;
    if (before && before.id === this.belt.id && before.targets !== this.belt.targets) this.draft = undefined;
  }

  override render() {
    const typed = this.draft ?? typedAs(currentOf(this.belt.targets));
    const ends = [this.#parsed(typed.from, typed.unit), this.#parsed(typed.to, typed.unit)] as const;
    const unreadable = ends.map((end) => !end.ok && end.why !== 'empty');
    const field = (end: 'from' | 'to', index: 0 | 1) =>
      quantityInput({
        id: end,
        value: typed[end],
        name: end === 'from' ? words.targetFrom : words.targetTo,
        unreadable: unreadable[index] ?? false,
        describedBy: 'note',
        onTyped: (text) => this.#type({ [end]: text }),
      });
    return html`<div role="group" aria-labelledby="over">
      <p class="over" id="over">${words.target}</p>
      <div class="range">
        ${field('from', 0)} ${field('to', 1)}
        ${selectField({
          id: 'unit',
          name: words.targetUnit,
          value: typed.unit,
          choices: FORCE_UNITS.map((unit) => ({ value: unit, text: unit })),
          onChosen: (unit) => this.#type({ unit }),
        })}
      </div>
      <p class="note" id="note">${this.#note(ends, typed)}</p>
    </div>`;
  }

  #note([from, to]: readonly [ParsedQuantity, ParsedQuantity], { unit }: Typed) {
    for (const end of [from, to]) if (!end.ok && end.why !== 'empty') return faultText(end);
    if (from.ok !== to.ok) return words.targetHalf;
    if (!from.ok || !to.ok) return nothing;
    if (from.value === to.value) return words.targetSame;
    const target = currentOf(this.belt.targets);
    const range = this.#figures.forceRange({ lowN: Math.min(from.value, to.value), highN: Math.max(from.value, to.value) });
    const source = target ? words.targetSource[target.source.kind] : '';
    return unit === 'N' && target?.source.kind === 'entered' ? nothing : `${words.targetReadAs(range)}${source && `, ${source}`}`;
  }

  readonly #parsed = (text: string, unit: string): ParsedQuantity =>
    parseQuantity(text, { kind: 'force', defaultUnit: unit, zeroAllowed: true });

  /** What was typed a moment ago comes after what was chosen since: each change goes onto what stands there by then. */
  #type(change: Partial<Typed>): void {
    const before = this.draft ?? typedAs(currentOf(this.belt.targets));
    const typed = { ...before, ...change };
    if (before.from === typed.from && before.to === typed.to && before.unit === typed.unit) return;
    this.draft = typed;
    const target = this.#understood(typed);
    if (target) this.edit(editBelt(this.belt.id, (belt) => ({ ...belt, targets: [...settledBefore(belt.targets, target), target] })));
    else if (typed.from === '' && typed.to === '') this.edit(editBelt(this.belt.id, (belt) => ({ ...belt, targets: [] })));
  }

  /** The two ends in whichever order they were typed. */
  #understood({ from, to, unit }: Typed): KeptTarget | undefined {
    const [one, other] = [this.#parsed(from, unit), this.#parsed(to, unit)];
    if (!one.ok || !other.ok || one.value === other.value) return undefined;
    const forceN = { lowN: Math.min(one.value, other.value), highN: Math.max(one.value, other.value) };
    return { forceN, source: { kind: 'entered', from, to, unit }, set: nowWhen() };
  }
}

/** What was typed a moment ago is the same target on its way, not an earlier one. */
const ONE_ENTRY_MS = 300_000;

function settledBefore(targets: readonly KeptTarget[], { set }: KeptTarget): readonly KeptTarget[] {
  const last = targets.at(-1);
  const isSameEntry = last?.source.kind === 'entered' && Date.parse(set.at) - Date.parse(last.set.at) < ONE_ENTRY_MS;
  return isSameEntry ? targets.slice(0, -1) : targets;
}

function typedAs(target: KeptTarget | undefined): Typed {
  if (!target) return { from: '', to: '', unit: 'N' };
  if (target.source.kind === 'entered') return target.source;
  const figures = new Figures();
  return { from: figures.typed(target.forceN.lowN), to: figures.typed(target.forceN.highN), unit: 'N' };
}

declare global {
  interface HTMLElementTagNameMap {
    'machine-target': MachineTarget;
  }
}
