/** The setup of the span: which belt, how long, how tight it should be, and on request how it is held. Folds to one line on a phone. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { belts } from '../../../shared/belts.ts';
import { expectedFrequencyHz } from '../../core/force/expected.ts';
import { relativeUncertainty } from '../../core/math/measured.ts';
import { formatPercent } from '../../core/quantity.ts';
import type { EnteredSetup } from '../../ports.ts';
import { en } from '../../words/en.ts';
import { Figures } from '../format.ts';
import { quantityInputStyles } from '../parts/quantity-input.ts';
import { selectField, selectFieldStyles } from '../parts/select-field.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';
import { isOwnBelt, OWN_BELT } from '../state/span-setup.ts';
import { type SetupFields, setupNote, setupQuantity, setupRow } from './setup-fields.ts';
import { setupFormStyles } from './setup-form-styles.ts';
import { moreRows } from './setup-more.ts';
import { beltName, firstFault, halfTarget, lengthReadAs, spanText, targetReadAs } from './setup-words.ts';

const words = en.setup;
const FORCE_UNITS = ['N', 'lbf', 'kgf', 'ozf'];
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
    const fields = { entered, understood: this.#understood.value, enter: this.#enter };
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
        ${this.#isDemo.value ? this.#demo() : nothing} ${this.#belt(fields)} ${this.#span(fields)} ${this.#target(fields)}
        <details>
          <summary>${words.more}</summary>
          ${moreRows(fields, this.#figures)}
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

  #belt(fields: SetupFields) {
    const { entered } = fields;
    const own = isOwnBelt(entered);
    const choices = [...belts.map(({ id, label }) => ({ value: id, text: label })), { value: OWN_BELT, text: words.ownBelt }];
    const belt = { id: 'belt', value: own ? OWN_BELT : entered.beltId, choices, describedBy: own ? undefined : 'belt-note' };
    return html`<div class="row">
        <label class="label" for="belt">${words.belt}</label>
        <div>
          ${selectField({ ...belt, onChosen: (beltId) => this.#enter({ beltId }) })}
          ${
            own
              ? nothing
              : html`<p class="note" id="belt-note">
                  ${this.#densityText()} <button class="quiet" @click=${this.#weigh}>${words.weigh}</button>
                </p>`
          }
        </div>
      </div>
      ${own ? setupRow(fields, 'linearDensity', { label: words.linearDensity, unit: 'g/m', note: words.linearDensityNote }) : nothing}`;
  }

  #densityText(): string {
    const density = this.#understood.value.setup.belt?.linearDensityKgPerM;
    if (!density) return '';
    const doubt = formatPercent(COVERAGE_FACTOR * relativeUncertainty(density), { format: this.#figures.format });
    return words.densityCatalogue(this.#figures.typed(density.value * 1000, 'g/m'), doubt);
  }

  #span(fields: SetupFields) {
    const { entered, understood } = fields;
    const fault = firstFault(understood, ['spanLength', 'spanKnownTo']);
    return html`<div class="row span">
      <label class="label" for="spanLength">${words.spanLength}</label>
      <div>
        <div class="fields">
          ${setupQuantity(fields, 'spanLength', { unit: 'mm', describedBy: 'span-note' })}
          ${setupQuantity(fields, 'spanKnownTo', { unit: 'mm', sign: '±', name: words.knownTo })}
        </div>
        ${setupNote('span-note', fault, lengthReadAs(entered, understood, this.#figures) || words.spanNote)}
      </div>
    </div>`;
  }

  #target(fields: SetupFields) {
    const { entered, understood } = fields;
    const fault = firstFault(understood, ['targetFrom', 'targetTo']);
    const hint = [halfTarget(entered) ? words.targetHalf : '', targetReadAs(entered, understood, this.#figures), this.#expected()];
    const units = FORCE_UNITS.map((unit) => ({ value: unit, text: unit }));
    const unit = { id: 'forceUnit', name: words.forceUnit, value: entered.forceUnit, choices: units };
    return html`<div class="row target" role="group" aria-labelledby="target-label">
      <span class="label" id="target-label">${words.target} <small>${words.targetOptional}</small></span>
      <div>
        <div class="fields">
          ${setupQuantity(fields, 'targetFrom', { name: words.targetFrom, describedBy: 'target-note' })}
          ${setupQuantity(fields, 'targetTo', { name: words.targetTo, describedBy: 'target-note' })}
          ${selectField({ ...unit, onChosen: (forceUnit) => this.#enter({ forceUnit }) })}
        </div>
        ${setupNote('target-note', fault, hint.filter((text) => text !== '').join('. '))}
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

  /** The catalogue's belt becomes the person's own, of the same pitch, and waits for its density. */
  readonly #weigh = async () => {
    const toothPitchM = this.#understood.value.setup.belt?.toothPitchM;
    const toothPitch = toothPitchM === undefined ? '' : this.#figures.typed(toothPitchM * 1000);
    this.#enter({ beltId: OWN_BELT, linearDensity: '', toothPitch });
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLInputElement>('#linearDensity')?.focus();
  };

  readonly #toggle = () => {
    this.unfolded = !this.unfolded;
  };

  readonly #enter = (change: Partial<EnteredSetup>): void => this.workbench.store.dispatch({ kind: 'setup-entered', change });
}

declare global {
  interface HTMLElementTagNameMap {
    'setup-form': SetupForm;
  }
}
