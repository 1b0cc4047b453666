/** Weighing: what lies on the scale and what the scale says, in; the belt's density with its doubt, out, one press from the setup. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { en } from '../../words/en.ts';
import { dialogStyles } from '../dialog-styles.ts';
import { Figures, together } from '../format.ts';
import { quantityInput, quantityInputStyles } from '../parts/quantity-input.ts';
import { selectField, selectFieldStyles } from '../parts/select-field.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import {
  EMPTY_WEIGHING,
  type UnderstoodWeighing,
  understoodWeighing,
  type WeighingField,
  type WeighingTexts,
  withWeighing,
} from '../state/weighing.ts';
import { faultText, toothPitchOf } from './setup-words.ts';
import { weighDialogStyles } from './weigh-dialog-styles.ts';

const words = en.weighing;
/** Every ± on the page is the half of a 95 % interval. */
const COVERAGE_FACTOR = 2;

@customElement('weigh-dialog')
export class WeighDialog extends LitElement {
  static override styles = [shared, dialogStyles, quantityInputStyles, selectFieldStyles, weighDialogStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() open = false;
  @state() texts: WeighingTexts = EMPTY_WEIGHING;
  @query('dialog') dialog!: HTMLDialogElement;

  readonly #figures = new Figures();
  /** Belt that the texts are about: those of another belt are not offered for this one. */
  #beltId: string | undefined;

  /** Opens with what was typed before about this belt. */
  show(): void {
    const { beltId, weighing } = this.workbench.store.state.entered;
    if (this.#beltId !== beltId) this.texts = weighing?.beltId === beltId ? weighing : EMPTY_WEIGHING;
    this.#beltId = beltId;
    this.open = true;
    void this.updateComplete.then(() => {
      if (!this.dialog.open) this.dialog.showModal();
      this.renderRoot.querySelector<HTMLInputElement>('#length')?.focus();
    });
  }

  override render() {
    return html`<dialog aria-labelledby="title" @close=${this.#closed}>${this.open ? this.#form() : nothing}</dialog>`;
  }

  #form() {
    const { kind } = this.texts;
    const weighing = this.#understood();
    const kinds = (['piece', 'loop'] as const).map((value) => ({ value, text: words.kinds[value] }));
    const lengthUnit = kind === 'loop' ? 'teeth' : 'mm';
    return html`<form @submit=${this.#use} novalidate>
      <h2 id="title">${words.title}</h2>
      <p class="note">${words.lead}</p>
      <div class="row">
        <label for="kind">${words.kind}</label>
        ${selectField({ id: 'kind', value: kind, choices: kinds, onChosen: (chosen) => this.#type({ kind: chosen === 'loop' ? 'loop' : 'piece' }) })}
      </div>
      ${this.#row(weighing, 'length', { label: words.length[kind], unit: lengthUnit, note: words.lengthNote[kind] })}
      ${this.#row(weighing, 'mass', { label: words.mass, unit: 'g', note: words.massNote })}
      ${this.#row(weighing, 'scaleStep', { label: words.scaleStep, unit: 'g', note: words.scaleStepNote })}
      <div class="result" aria-live="polite">${this.#result(weighing)}</div>
      <div class="buttons">
        <button class="solid" type="submit">${weighing.expected ? words.useAllTheSame : words.use}</button>
        <button type="button" @click=${() => this.dialog.close()}>${words.close}</button>
      </div>
    </form>`;
  }

  #row({ faults }: UnderstoodWeighing, field: WeighingField, { label, unit, note }: { label: string; unit: string; note: string }) {
    const fault = faults[field];
    const said = fault ? weighingFaultText(fault) : '';
    const describedBy = `${field}-note`;
    const onTyped = (text: string) => this.#type({ [field]: text });
    return html`<div class="row">
      <label for=${field}>${label}</label>
      <div>
        ${quantityInput({ id: field, value: this.texts[field], unit, unreadable: fault !== undefined, describedBy, onTyped })}
        <p class=${said ? 'note fault' : 'note'} id=${describedBy}>${said || note}</p>
      </div>
    </div>`;
  }

  #result({ linearDensityKgPerM, expected, missing }: UnderstoodWeighing) {
    if (!linearDensityKgPerM) {
      const names = missing.map((field) => (field === 'length' ? words.length[this.texts.kind] : words[field]).toLowerCase());
      return names.length > 0 ? html`<p class="note">${words.missing(names.join(words.and))}</p>` : nothing;
    }
    const { value, standardUncertainty } = linearDensityKgPerM;
    const figure = this.#figures.measured(value * 1000, COVERAGE_FACTOR * standardUncertainty * 1000);
    const typed = (density: number, unit = '') => this.#figures.rough(density * 1000, unit);
    return html`<p class="answer">${words.result(together(figure, 'g/m'))}</p>
      ${expected ? html`<p>${words.outside(en.range(typed(expected.low), typed(expected.high, 'g/m')))}</p>` : nothing}`;
  }

  #understood(): UnderstoodWeighing {
    const { entered, understood } = this.workbench.store.state;
    return understoodWeighing(this.texts, { beltId: entered.beltId, toothPitchM: toothPitchOf(entered, understood) });
  }

  /** What was typed in the last moment counts too, though its pause is not over. */
  readonly #use = (event: Event) => {
    event.preventDefault();
    const latest = (field: WeighingField) => this.renderRoot.querySelector<HTMLInputElement>(`#${field}`)?.value ?? this.texts[field];
    this.#type({ length: latest('length'), mass: latest('mass'), scaleStep: latest('scaleStep') });
    const { linearDensityKgPerM, faults, missing } = this.#understood();
    const wrong = Object.keys(faults)[0] ?? missing[0];
    if (!linearDensityKgPerM) {
      this.renderRoot.querySelector<HTMLInputElement>(`#${wrong}`)?.focus();
      return;
    }
    const { store } = this.workbench;
    store.dispatch({ kind: 'setup-entered', change: withWeighing(store.state.entered, this.texts, linearDensityKgPerM) });
    this.dialog.close();
  };

  #type(change: Partial<WeighingTexts>): void {
    const { kind, length, mass, scaleStep } = { ...this.texts, ...change };
    this.texts = { kind, length, mass, scaleStep };
  }

  readonly #closed = () => {
    this.open = false;
  };
}

export function weighingFaultText(fault: NonNullable<UnderstoodWeighing['faults'][WeighingField]>): string {
  if (fault.why === 'not-whole-teeth') return words.wholeTeeth;
  return fault.why === 'needs-tooth-pitch' ? words.pitchMissing : faultText(fault);
}

declare global {
  interface HTMLElementTagNameMap {
    'weigh-dialog': WeighDialog;
  }
}
