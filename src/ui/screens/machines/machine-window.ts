/** A target computed from what the belt moves: the fields, the window with its bounds, or why there is none and what to change. */

import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { currentOf } from '../../../../shared/document/common.ts';
import type { Machine, MachineBelt } from '../../../../shared/document/machine.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import type { Bound, ForceWindow } from '../../../core/machine/force-window.ts';
import { formatPercent } from '../../../core/quantity.ts';
import { targetsEn as words } from '../../../words/targets-en.ts';
import { Figures } from '../../format.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import { shared } from '../../shared-styles.ts';
import { nowWhen } from '../../state/new-item.ts';
import { setupOn } from '../../state/target-view.ts';
import { editorStyles } from './editor-styles.ts';
import { type EditMachine, editBelt } from './machine-editing.ts';
import { type DriveKind, driveOf, fieldsFor, parsedField, type TypedFields, type WindowField, windowFrom } from './window-inputs.ts';

@customElement('machine-window')
export class MachineWindow extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    quantityInputStyles,
    selectFieldStyles,
    css`
      .blocks {
        display: grid;
        gap: var(--space-16);
        margin-block-start: var(--space-12);
      }
      .found {
        font-size: var(--title-size);
        line-height: var(--title-line);
        font-weight: var(--weight-strong);
      }
      ul {
        margin: var(--space-8) 0;
        padding-inline-start: var(--space-24);
      }
      .result button {
        margin-block: var(--space-8);
      }
      .result {
        padding-block-start: var(--space-12);
        border-block-start: var(--stroke-line) solid var(--line);
      }
    `,
  ];

  @property({ attribute: false }) document!: KeptDocument;
  @property({ attribute: false }) machine!: Machine;
  @property({ attribute: false }) belt!: MachineBelt;
  @property({ attribute: false }) edit: EditMachine = () => {};
  @state() typed: TypedFields = {};
  readonly #figures = new Figures();

  override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('belt') as MachineBelt | undefined;
    if (!changed.has('belt') || before?.id === this.belt.id) return;
    const source = currentOf(this.belt.targets)?.source;
    const known = source?.kind === 'computed' ? source.typed : undefined;
    const { lengthM } = this.belt;
    this.typed = known ?? (lengthM === undefined ? {} : { loop: this.#figures.typed(lengthM * 1000) });
  }

  override render() {
    const drive = this.#drive;
    return html`<details>
      <summary>${words.window}</summary>
      <div class="blocks">
        <div class="fields">
          <div class="wide">
            <label class="over" for="drive">${words.drive}</label>
            ${selectField({
              id: 'drive',
              value: drive,
              choices: Object.entries(words.drives).map(([value, text]) => ({ value, text })),
              onChosen: (value) => this.#type({ drive: value }),
            })}
          </div>
          ${fieldsFor(drive).map((field) => this.#field(field))}
        </div>
        <div class="result" role="status">${this.#result()}</div>
      </div>
    </details>`;
  }

  get #drive(): DriveKind {
    const chosen = this.typed.drive;
    return chosen !== undefined && chosen in words.drives ? (chosen as DriveKind) : driveOf(this.machine.layout.kind);
  }

  #field(field: WindowField) {
    const { name, shownUnit } = field;
    const value = this.typed[name] ?? '';
    const parsed = parsedField(field, value);
    const note = name === 'margin' ? words.notes.margin : name === 'shaftLoad' ? words.notes.shaft : '';
    return html`<div>
      <label class="over" for=${name}>${words.fields[name]}</label>
      ${quantityInput({
        id: name,
        value,
        unit: shownUnit,
        unreadable: !parsed.ok && parsed.why !== 'empty',
        describedBy: note ? `${name}-note` : undefined,
        onTyped: (text) => this.#type({ [name]: text }),
      })}
      ${note ? html`<p class="note" id="${name}-note">${note}</p>` : nothing}
    </div>`;
  }

  #result() {
    const { belt: known } = setupOn(this.document, this.machine, this.belt, this.belt.spans[0]);
    const window = windowFrom({
      drive: this.#drive,
      typed: this.typed,
      linearDensityKgPerM: known?.linearDensityKgPerM.value,
      beltForceN: known?.ratedForceN,
    });
    const belt = known?.ratedForceN === undefined ? words.notes.noBelt : words.notes.belt(this.#force(known.ratedForceN));
    if (window === undefined) return html`<p>${words.fill} ${belt}</p>`;
    return html`${this.#outcome(window)}
      <p>${words.driveForce(this.#force(window.driveForceN), formatPercent(window.tightShare, { format: this.#figures.format }))}</p>
      <ul>
        ${window.lower.map((bound) => html`<li>${this.#atLeast(bound)}</li>`)}
        ${window.upper.map((bound) => html`<li>${this.#atMost(bound)}</li>`)}
      </ul>
      <p class="note">${words.careSource}</p>`;
  }

  #outcome({ outcome, driveForceN }: ForceWindow) {
    if (outcome.kind === 'window') {
      const { lowN, highN } = outcome;
      const found = highN === undefined ? words.from(this.#force(lowN)) : words.between(this.#figures.rough(lowN), this.#force(highN));
      return html`<p class="found">${found}</p>
        ${highN === undefined ? nothing : html`<button @click=${() => this.#use(lowN, highN)}>${words.use}</button>`}`;
    }
    const { needed, allowed, driveShare } = outcome;
    const change = allowed.name === 'shaft' || allowed.name === 'bearing' ? words.change[allowed.name] : words.change.belt;
    const remedy = driveShare > 0 ? words.remedy(change, this.#force(driveShare * driveForceN)) : words.remedyOnly(change);
    return html`<p class="found">${words.noWindow}</p>
      <p>${words.noWindowWhy(this.#atLeast(needed), this.#atMost(allowed))} ${remedy}</p>`;
  }

  readonly #force = (forceN: number): string => this.#figures.rough(forceN, 'N');
  readonly #atLeast = ({ name, forceN }: Bound): string => words.atLeast(this.#force(forceN), words.bounds[name]);
  readonly #atMost = ({ name, forceN }: Bound): string => words.atMost(this.#force(Math.max(0, forceN)), words.bounds[name]);

  #type(change: TypedFields): void {
    this.typed = { ...this.typed, ...change };
  }

  #use(lowN: number, highN: number): void {
    const typed = Object.fromEntries(
      Object.entries({ ...this.typed, drive: this.#drive }).filter(([, text]) => text !== '' && text !== undefined),
    ) as Record<string, string>;
    // To a hundredth of a newton: nobody sets a belt closer.
    const forceN = { lowN: Math.round(100 * lowN) / 100, highN: Math.round(100 * highN) / 100 };
    const target = { forceN, source: { kind: 'computed' as const, note: words.noteOf(words.drives[this.#drive]), typed }, set: nowWhen() };
    this.edit(editBelt(this.belt.id, (belt) => ({ ...belt, targets: [...belt.targets, target] })));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'machine-window': MachineWindow;
  }
}
