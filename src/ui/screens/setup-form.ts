/** The setup of the span: which belt, how long, how tight it should be, and on request how it is held. Folds to one line on a phone. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { belts } from '../../../shared/belts.ts';
import { expectedFrequencyHz } from '../../core/force/expected.ts';
import { relativeUncertainty } from '../../core/math/measured.ts';
import { formatPercent } from '../../core/quantity.ts';
import { DEFAULT_TOLERANCE_RELATIVE } from '../../core/setup.ts';
import type { EnteredEnd, EnteredSetup } from '../../ports.ts';
import { en } from '../../words/en.ts';
import { Figures } from '../format.ts';
import { quantityInput, quantityInputStyles } from '../parts/quantity-input.ts';
import { selectField, selectFieldStyles } from '../parts/select-field.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';
import { isOwnBelt, OWN_BELT, type SetupField } from '../state/span-setup.ts';
import { setupFormStyles } from './setup-form-styles.ts';
import { beltName, firstFault, halfTarget, lengthReadAs, spanText, targetReadAs } from './setup-words.ts';

const words = en.setup;
const FORCE_UNITS = ['N', 'lbf', 'kgf', 'ozf'];
const ENDS: readonly EnteredEnd[] = ['unknown', 'pulley', 'clip'];
/** What a catalogue density's doubt is shown with: a 95 % interval, like every ± on the page. */
const COVERAGE_FACTOR = 2;

@customElement('setup-form')
export class SetupForm extends LitElement {
  static override styles = [shared, quantityInputStyles, selectFieldStyles, setupFormStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  /** On a narrow page the setup is one line while there is something to look at. */
  @property({ type: Boolean, reflect: true }) foldable = false;
  @property({ type: Boolean, reflect: true }) folded = false;
  @state() unfolded = false;

  readonly #figures = new Figures();
  readonly #understood = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.understood,
  );
  readonly #isDemo = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.ownEntered !== undefined,
  );

  override willUpdate(): void {
    if (!this.foldable) this.unfolded = false;
    this.folded = this.foldable && !this.unfolded;
  }

  override render() {
    const { entered } = this.workbench.store.state;
    return html`
      <div class="fold">
        <span><strong>${beltName(entered)}</strong> ${spanText(this.#understood.value, this.#figures)}</span>
        <button class="quiet" aria-expanded=${!this.folded} @click=${this.#toggle}>${this.folded ? words.fold : words.unfold}</button>
      </div>
      <div class="form">
        <div class="head">
          <h2>${words.title}</h2>
          ${this.#isDemo.value ? html`<span class="mark">${words.demoMark}</span>` : nothing}
        </div>
        ${this.#isDemo.value ? this.#demo() : nothing} ${this.#belt(entered)} ${this.#span(entered)} ${this.#target(entered)}
        <details>
          <summary>${words.more}</summary>
          ${this.#more(entered)}
          <slot name="microphone"></slot>
        </details>
      </div>
    `;
  }

  #demo() {
    return html`<div class="demo">
      <button class="quiet" @click=${() => this.workbench.effects.leaveDemo()}>${words.leaveDemo}</button>
    </div>`;
  }

  #belt(entered: EnteredSetup) {
    const own = isOwnBelt(entered);
    const choices = [...belts.map(({ id, label }) => ({ value: id, text: label })), { value: OWN_BELT, text: words.ownBelt }];
    const belt = { id: 'belt', value: own ? OWN_BELT : entered.beltId, choices, describedBy: own ? undefined : 'belt-note' };
    return html`<div class="row">
        <label class="label" for="belt">${words.belt}</label>
        <div>
          ${selectField({ ...belt, onChosen: (beltId) => this.#enter({ beltId }) })}
          ${own ? nothing : html`<p class="note" id="belt-note">${this.#densityText()}</p>`}
        </div>
      </div>
      ${own ? this.#single('linearDensity', { label: words.linearDensity, unit: 'g/m', note: words.linearDensityNote }) : nothing}`;
  }

  #densityText(): string {
    const density = this.#understood.value.setup.belt?.linearDensityKgPerM;
    if (!density) return '';
    const doubt = formatPercent(COVERAGE_FACTOR * relativeUncertainty(density), { format: this.#figures.format });
    return words.densityCatalogue(this.#figures.typed(density.value * 1000, 'g/m'), doubt);
  }

  #span(entered: EnteredSetup) {
    const understood = this.#understood.value;
    const fault = firstFault(understood, ['spanLength', 'spanKnownTo']);
    return html`<div class="row span">
      <label class="label" for="spanLength">${words.spanLength}</label>
      <div>
        <div class="fields">
          ${this.#quantity('spanLength', { unit: 'mm', describedBy: 'span-note' })}
          ${this.#quantity('spanKnownTo', { unit: 'mm', sign: '±', name: words.knownTo })}
        </div>
        ${this.#note('span-note', fault, lengthReadAs(entered, understood, this.#figures) || words.spanNote)}
      </div>
    </div>`;
  }

  #target(entered: EnteredSetup) {
    const understood = this.#understood.value;
    const fault = firstFault(understood, ['targetFrom', 'targetTo']);
    const hint = [halfTarget(entered) ? words.targetHalf : '', targetReadAs(entered, understood, this.#figures), this.#expected()];
    const units = FORCE_UNITS.map((unit) => ({ value: unit, text: unit }));
    const unit = { id: 'forceUnit', name: words.forceUnit, value: entered.forceUnit, choices: units };
    return html`<div class="row target" role="group" aria-labelledby="target-label">
      <span class="label" id="target-label">${words.target} <small>${words.targetOptional}</small></span>
      <div>
        <div class="fields">
          ${this.#quantity('targetFrom', { name: words.targetFrom, describedBy: 'target-note' })}
          ${this.#quantity('targetTo', { name: words.targetTo, describedBy: 'target-note' })}
          ${selectField({ ...unit, onChosen: (forceUnit) => this.#enter({ forceUnit }) })}
        </div>
        ${this.#note('target-note', fault, hint.filter((text) => text !== '').join('. '))}
      </div>
    </div>`;
  }

  /** 'Expect 112 to 139 Hz on this span': what the target sounds like. */
  #expected(): string {
    const { setup } = this.#understood.value;
    const expected = setup.targetForceN && expectedFrequencyHz(setup, setup.targetForceN);
    if (!expected) return '';
    return words.expect(`${this.#figures.whole(expected.lowHz)} to ${this.#figures.whole(expected.highHz, 'Hz')}`);
  }

  #more(entered: EnteredSetup) {
    const ends = ENDS.map((end) => ({ value: end, text: words.ends[end] }));
    const choose = (index: 0 | 1) => (value: string) => {
      const end = ENDS.find((one) => one === value) ?? 'unknown';
      this.#enter({ ends: index === 0 ? [end, entered.ends[1]] : [entered.ends[0], end] });
    };
    const assumed = this.#understood.value.setup.targetForceN
      ? words.toleranceFromTarget
      : formatPercent(DEFAULT_TOLERANCE_RELATIVE, { format: this.#figures.format });
    return html`
      <div class="row">
        <label class="label" for="firstEnd">${words.firstEnd}</label>
        ${selectField({ id: 'firstEnd', value: entered.ends[0], choices: ends, onChosen: choose(0) })}
      </div>
      <div class="row">
        <label class="label" for="secondEnd">${words.secondEnd}</label>
        ${selectField({ id: 'secondEnd', value: entered.ends[1], choices: ends, onChosen: choose(1) })}
      </div>
      ${this.#single('bendingStiffness', { label: words.stiffness, unit: 'N m²', note: words.stiffnessNote })}
      ${this.#single('tolerance', { label: words.tolerance, unit: '%', note: words.toleranceNote(assumed) })}
    `;
  }

  #single(field: SetupField, { label, unit, note }: { label: string; unit: string; note: string }) {
    return html`<div class="row">
      <label class="label" for=${field}>${label}</label>
      <div>
        ${this.#quantity(field, { unit, describedBy: `${field}-note` })}
        ${this.#note(`${field}-note`, firstFault(this.#understood.value, [field]), note)}
      </div>
    </div>`;
  }

  #quantity(field: SetupField, options: { unit?: string; sign?: string; name?: string; describedBy?: string }) {
    return quantityInput({
      id: field,
      value: this.workbench.store.state.entered[field],
      unreadable: this.#understood.value.faults[field] !== undefined,
      onTyped: (text) => this.#enter({ [field]: text }),
      ...options,
    });
  }

  #note(id: string, fault: string, note: string) {
    return html`<p class="note ${fault ? 'fault' : ''}" id=${id}>${fault || note}</p>`;
  }

  readonly #toggle = () => {
    this.unfolded = !this.unfolded;
  };

  #enter(change: Partial<EnteredSetup>): void {
    this.workbench.store.dispatch({ kind: 'setup-entered', change });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'setup-form': SetupForm;
  }
}
