/** The target of a belt as it is entered: two ends in any unit of force, or as a frequency on a span of some length. What was set before stays in the belt's history. */

import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { currentOf } from '../../../../shared/document/common.ts';
import type { Machine, MachineBelt } from '../../../../shared/document/machine.ts';
import type { KeptTarget } from '../../../../shared/document/target.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import { forceOfTarget } from '../../../core/machine/target.ts';
import { type ParsedQuantity, parseQuantity } from '../../../core/quantity.ts';
import { en } from '../../../words/en.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import { targetsEn } from '../../../words/targets-en.ts';
import { Figures } from '../../format.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import { shared } from '../../shared-styles.ts';
import { nowWhen } from '../../state/new-item.ts';
import { HERTZ, TARGET_UNITS } from '../../state/span-setup.ts';
import { expectedOn, setupOn, targetForceNow } from '../../state/target-view.ts';
import { editorStyles } from './editor-styles.ts';
import { type EditMachine, editBelt, faultText } from './machine-editing.ts';

interface Typed {
  readonly from: string;
  readonly to: string;
  readonly unit: string;
  /** Length of the span that a frequency was told for. */
  readonly span: string;
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
      .span {
        display: grid;
        grid-template-columns: auto minmax(0, 12rem);
        gap: var(--space-8);
        align-items: center;
        margin-block-start: var(--space-8);
      }
    `,
  ];

  @property({ attribute: false }) document!: KeptDocument;
  @property({ attribute: false }) machine!: Machine;
  @property({ attribute: false }) belt!: MachineBelt;
  @property({ attribute: false }) edit: EditMachine = () => {};
  /** What is being typed, as long as it is not kept. */
  @state() draft: Typed | undefined;
  readonly #figures = new Figures();

  override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('belt') as MachineBelt | undefined;
    // The order in which two frequencies were typed is not kept, so that they stay as they stand here.
    const stays = this.draft?.unit === HERTZ && before?.id === this.belt.id;
    if (before && before.targets !== this.belt.targets && !stays) this.draft = undefined;
  }

  override render() {
    const typed = this.#typed;
    const ends = [parsed(typed.from, typed.unit), parsed(typed.to, typed.unit)] as const;
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
            choices: TARGET_UNITS.map((unit) => ({ value: unit, text: unit })),
            onChosen: (unit) => this.#chooseUnit(unit),
          })}
        </div>
        ${typed.unit === HERTZ ? this.#span(typed) : nothing}
        <p class="note" id="note">${this.#note(ends, typed)}</p>
        ${this.#expected()}
      </div>`;
  }

  get #typed(): Typed {
    return this.draft ?? typedAs(currentOf(this.belt.targets), this.#firstSpan());
  }

  #firstSpan(): string {
    const lengthM = this.belt.spans.find((span) => span.lengthM)?.lengthM?.value;
    return lengthM === undefined ? '' : this.#figures.typed(lengthM * 1000);
  }

  #span(typed: Typed) {
    const length = parsedLength(typed.span);
    return html`<div class="span">
      <label class="note" for="span">${targetsEn.onSpan}</label>
      ${quantityInput({
        id: 'span',
        value: typed.span,
        unit: 'mm',
        unreadable: !length.ok && length.why !== 'empty',
        describedBy: 'note',
        onTyped: (span) => this.#type({ span }),
      })}
    </div>`;
  }

  #note([from, to]: readonly [ParsedQuantity, ParsedQuantity], typed: Typed) {
    for (const end of [from, to]) if (!end.ok && end.why !== 'empty') return faultText(end);
    if (from.ok !== to.ok) return words.targetHalf;
    if (!from.ok || !to.ok) return nothing;
    if (from.value === to.value) return words.targetSame;
    if (typed.unit === HERTZ) {
      if (!parsedLength(typed.span).ok) return targetsEn.needsLength;
      return this.#understood(typed) ? targetsEn.asForce(this.#rangeNow()) : targetsEn.noForce;
    }
    const target = currentOf(this.belt.targets);
    const range = this.#figures.forceRange({ lowN: Math.min(from.value, to.value), highN: Math.max(from.value, to.value) });
    const source = target ? words.targetSource[target.source.kind] : '';
    return typed.unit === 'N' && target?.source.kind === 'entered' ? nothing : `${words.targetReadAs(range)}${source && `, ${source}`}`;
  }

  #rangeNow(): string {
    const forceN = targetForceNow(this.document, this.machine, this.belt);
    return forceN ? en.range(this.#figures.rough(forceN.lowN), this.#figures.rough(forceN.highN, 'N')) : '';
  }

  /** What each span should sound like. */
  #expected() {
    const lines = this.belt.spans.flatMap((span) => {
      const range = expectedOn(this.document, this.machine, this.belt, span);
      return range
        ? [targetsEn.expected(span.name, en.range(this.#figures.rough(range.lowHz), this.#figures.rough(range.highHz, 'Hz')))]
        : [];
    });
    return lines.length === 0 ? nothing : html`<p class="note">${targetsEn.expectTitle}: ${lines.join('; ')}.</p>`;
  }

  /** A force is no frequency: between the two, what stands in the fields means nothing. */
  #chooseUnit(unit: string): void {
    const typed = this.#typed;
    if ((unit === HERTZ) === (typed.unit === HERTZ)) this.#type({ unit });
    else this.draft = { ...typed, from: '', to: '', unit };
  }

  /** What was typed a moment ago comes after what was chosen since: each change goes onto what stands there by then. */
  #type(change: Partial<Typed>): void {
    const before = this.#typed;
    const typed = { ...before, ...change };
    if (before.from === typed.from && before.to === typed.to && before.unit === typed.unit && before.span === typed.span) return;
    this.draft = typed;
    const target = this.#understood(typed);
    if (target) this.edit(editBelt(this.belt.id, (belt) => ({ ...belt, targets: [...settledBefore(belt.targets, target), target] })));
    else if (typed.from === '' && typed.to === '') this.edit(editBelt(this.belt.id, (belt) => ({ ...belt, targets: [] })));
  }

  /** The two ends in whichever order they were typed. */
  #understood({ from, to, unit, span }: Typed): KeptTarget | undefined {
    const [one, other] = [parsed(from, unit), parsed(to, unit)];
    if (!one.ok || !other.ok || one.value === other.value) return undefined;
    const [low, high] = [Math.min(one.value, other.value), Math.max(one.value, other.value)];
    if (unit !== HERTZ) return { forceN: { lowN: low, highN: high }, source: { kind: 'entered', from, to, unit }, set: nowWhen() };
    const length = parsedLength(span);
    if (!length.ok || !(low > 0)) return undefined;
    const source = { kind: 'frequency' as const, lowHz: low, highHz: high, spanLengthM: length.value };
    const forceN = forceOfTarget(source, setupOn(this.document, this.machine, this.belt, this.belt.spans[0]));
    return forceN && { forceN, source, set: nowWhen() };
  }
}

const parsed = (text: string, unit: string): ParsedQuantity =>
  parseQuantity(text, { kind: unit === HERTZ ? 'frequency' : 'force', defaultUnit: unit, zeroAllowed: unit !== HERTZ });

const parsedLength = (text: string): ParsedQuantity => parseQuantity(text, { kind: 'length', defaultUnit: 'mm' });

/** What was typed a moment ago is the same target on its way, not an earlier one. */
const ONE_ENTRY_MS = 300_000;

function settledBefore(targets: readonly KeptTarget[], { set }: KeptTarget): readonly KeptTarget[] {
  const last = targets.at(-1);
  const isSameEntry = last !== undefined && last.source.kind !== 'computed' && Date.parse(set.at) - Date.parse(last.set.at) < ONE_ENTRY_MS;
  return isSameEntry ? targets.slice(0, -1) : targets;
}

function typedAs(target: KeptTarget | undefined, span: string): Typed {
  if (!target) return { from: '', to: '', unit: 'N', span };
  const figures = new Figures();
  const { source, forceN } = target;
  if (source.kind === 'entered') return { from: source.from, to: source.to, unit: source.unit, span };
  if (source.kind === 'frequency') {
    return {
      from: figures.typed(source.lowHz),
      to: figures.typed(source.highHz),
      unit: HERTZ,
      span: figures.typed(source.spanLengthM * 1000),
    };
  }
  return { from: figures.typed(forceN.lowN), to: figures.typed(forceN.highN), unit: 'N', span };
}

declare global {
  interface HTMLElementTagNameMap {
    'machine-target': MachineTarget;
  }
}
