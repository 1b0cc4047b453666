/** The setup of the span as a form. Once it has given a force it stands as a summary, on a phone as one line, and opens where it is touched. */

import { consume } from '@lit/context';
import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { EnteredSetup } from '../../ports.ts';
import { en } from '../../words/en.ts';
import { linkEn } from '../../words/link-en.ts';
import { Figures } from '../format.ts';
import { Narrow } from '../narrow.ts';
import { quantityInputStyles } from '../parts/quantity-input.ts';
import { selectFieldStyles } from '../parts/select-field.ts';
import { hrefOf } from '../route.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { KeptPart } from '../state/kept-part.ts';
import { Selected } from '../state/selected.ts';
import type { ShareDialog } from './link/share-dialog.ts';
import type { RemedyAct } from './remedy-view.ts';
import { setupFormStyles } from './setup-form-styles.ts';
import { machineRow, placeTitle } from './setup-machine.ts';
import { mainRows } from './setup-main.ts';
import { moreRows } from './setup-more.ts';
import { setupSummary, setupSummaryStyles } from './setup-summary.ts';
import { beltName, spanText } from './setup-words.ts';
import './weigh-dialog.ts';
import type { WeighDialog } from './weigh-dialog.ts';

const words = en.setup;

@customElement('setup-form')
export class SetupForm extends LitElement {
  static override styles = [shared, quantityInputStyles, selectFieldStyles, setupFormStyles, setupSummaryStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  /** There is something to look at: the form may give way, unless someone is at it. */
  @property({ type: Boolean, reflect: true }) foldable = false;
  @property({ type: Boolean, reflect: true }) folded = false;
  @state() unfolded = false;
  @query('details') details!: HTMLDetailsElement;
  @query('weigh-dialog') weighDialog!: WeighDialog;
  @query('share-dialog') shareDialog!: ShareDialog;

  readonly #figures = new Figures();
  readonly #narrow = new Narrow(this);
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

  readonly #document = new KeptPart(
    this,
    () => this.workbench.kept,
    (kept) => kept.document,
  );
  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('focusout', this.#left);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.removeEventListener('focusout', this.#left);
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('foldable')) this.unfolded = this.foldable && this.matches(':focus-within');
    this.folded = this.foldable && !this.unfolded;
  }

  /** Opens the form where a remedy is taken up. */
  take(act: RemedyAct): void {
    if (act === 'weigh' && this.#understood.value.beltFrom === 'kept')
      location.hash = hrefOf('belts', this.workbench.store.state.entered.beltId, 'weigh');
    else if (act === 'weigh') this.#weigh();
    else if (act === 'change-span') void this.#goTo('spanLength');
    else {
      this.details.open = true;
      void this.#goTo('firstEnd');
    }
  }

  override render() {
    const { entered } = this.workbench.store.state;
    const understood = this.#understood.value;
    const document = this.#document.value;
    const place = this.#isDemo.value ? undefined : placeTitle(document, entered, this.#figures);
    const fields = { entered, understood, ownBelts: this.workbench.store.state.ownBelts, enter: this.#enter };
    return html`
      <div class="fold">
        <span><strong>${place?.title ?? beltName(entered, understood)}</strong> ${spanText(understood, this.#figures)}</span>
        ${this.#toggleButton()}
      </div>
      <div class="head">
        <h2>${place?.title ?? words.title}</h2>
        ${this.#isDemo.value ? html`<span class="mark">${words.demoMark}</span>` : nothing}
        ${this.foldable ? this.#toggleButton() : nothing}
      </div>
      ${place?.note ? html`<p class="note place">${place.note}</p>` : nothing}
      ${this.#isDemo.value ? this.#demo() : nothing}
      ${this.folded && !this.#narrow.matches ? setupSummary(entered, understood, this.#figures) : nothing}
      <div class="form" @focusin=${this.#unfold}>
        ${this.#isDemo.value ? nothing : machineRow(document, entered, this.#enter)}
        ${mainRows(fields, this.#figures, this.#weigh)}
        <details>
          <summary>${words.more}</summary>
          ${moreRows(fields, this.#figures)}
          <slot name="microphone"></slot>
        </details>
      </div>
      <button class="quiet share" aria-haspopup="dialog" @click=${this.#share}>${linkEn.share}</button>
      <weigh-dialog></weigh-dialog>
      <share-dialog></share-dialog>
    `;
  }

  #toggleButton() {
    return html`<button class="quiet toggle" aria-expanded=${!this.folded} @click=${this.#toggle}>
      ${this.folded ? words.fold : words.unfold}
    </button>`;
  }

  #demo() {
    return html`<div class="demo">
      <button class="quiet" @click=${() => this.workbench.effects.leaveDemo()}>${words.leaveDemo}</button>
    </div>`;
  }

  readonly #weigh = (): void => this.weighDialog.show();

  /** Its code is drawn by a library that nobody else needs. */
  readonly #share = async (): Promise<void> => {
    await import('./link/share-dialog.ts');
    this.shareDialog.show();
  };

  async #goTo(field: string): Promise<void> {
    this.unfolded = true;
    await this.updateComplete;
    const found = this.renderRoot.querySelector<HTMLElement>(`#${field}`);
    found?.focus();
    if (found instanceof HTMLInputElement) found.select(); // the next figure takes the place of the last
  }

  readonly #toggle = () => {
    this.unfolded = !this.unfolded;
  };

  /** The fields stay within reach of keyboard and screen reader while the summary stands in their place. */
  readonly #unfold = () => {
    this.unfolded = true;
  };

  /** Gives way again when the focus has gone to something else on the page. */
  readonly #left = ({ relatedTarget }: FocusEvent) => {
    if (relatedTarget instanceof Node && relatedTarget !== this && !this.contains(relatedTarget)) this.unfolded = false;
  };

  readonly #enter = (change: Partial<EnteredSetup>): void => this.workbench.store.dispatch({ kind: 'setup-entered', change });
}

declare global {
  interface HTMLElementTagNameMap {
    'setup-form': SetupForm;
  }
}
