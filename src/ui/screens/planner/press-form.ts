/** A weight on the middle and a ruler: what was read goes in, the force with its own doubt comes out. No sound is needed. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { knownSpan } from '../../../core/force/known-span.ts';
import { givingLength } from '../../../core/machine/improve.ts';
import { setupAt } from '../../../core/machine/plan.ts';
import { PRESS_DOUBT, type PressedForce, pressedForce } from '../../../core/machine/press.ts';
import { formatMeasured, formatPercent, type ParsedQuantity, parseQuantity } from '../../../core/quantity.ts';
import { plannerEn } from '../../../words/planner-en.ts';
import { Figures } from '../../format.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { Selected } from '../../state/selected.ts';
import { faultText } from '../setup-words.ts';

const words = plannerEn.doing.pressing;
/** Every ± on the page is the half of a 95 % interval. */
const COVERAGE_FACTOR = 2;

@customElement('press-form')
export class PressForm extends LitElement {
  static override styles = [
    shared,
    quantityInputStyles,
    css`
      :host {
        display: block;
        margin-block-start: var(--space-12);
        max-inline-size: 52rem;
      }
      summary {
        min-block-size: var(--target-size);
        align-content: center;
        font-weight: var(--weight-strong);
        cursor: pointer;
      }
      .two {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr));
        gap: var(--space-12);
        max-inline-size: 30rem;
        margin-block: var(--space-12) var(--space-8);
      }
      label {
        display: block;
        margin-block-end: var(--space-4);
        font-size: var(--note-size);
        font-weight: var(--weight-strong);
      }
      [role='status'] {
        min-block-size: 3.75rem; /* what comes below stays where it is while figures are typed */
      }
      .result {
        margin-block-start: var(--space-8);
        font-size: var(--lead-size);
        line-height: var(--lead-line);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property({ type: Number }) spanLengthM = 0;
  /** Which weight would tell most, and what it should do. */
  @property() expected = '';
  @state() mass = '';
  @state() deflection = '';
  readonly #figures = new Figures();
  readonly #setup = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.understood.setup,
  );

  override render() {
    return html`<details>
      <summary>${words.title}</summary>
      <p class="note">${words.caution}</p>
      <p class="note">${this.expected}</p>
      <div class="two">
        ${this.#field('mass', words.mass, 'g', this.#mass)} ${this.#field('deflection', words.deflection, 'mm', this.#deflection)}
      </div>
      <p class="note">${words.knownTo}</p>
      <div role="status">${this.#result()}</div>
    </details>`;
  }

  #field(id: 'mass' | 'deflection', label: string, unit: string, parsed: ParsedQuantity) {
    const unreadable = !parsed.ok && parsed.why !== 'empty';
    return html`<div>
      <label for=${id}>${label}</label>
      ${quantityInput({
        id,
        value: this[id],
        unit,
        unreadable,
        describedBy: unreadable ? `${id}-note` : undefined,
        onTyped: (text) => {
          this[id] = text;
        },
      })}
      ${unreadable ? html`<p class="note" id=${`${id}-note`}>${faultText(parsed)}</p>` : nothing}
    </div>`;
  }

  get #mass(): ParsedQuantity {
    return parseQuantity(this.mass, { kind: 'mass', defaultUnit: 'g' });
  }

  get #deflection(): ParsedQuantity {
    return parseQuantity(this.deflection, { kind: 'length', defaultUnit: 'mm' });
  }

  #result() {
    const [mass, deflection] = [this.#mass, this.#deflection];
    const setup = setupAt({ setup: this.#setup.value }, this.spanLengthM);
    const span = knownSpan(setup);
    if (!mass.ok || !deflection.ok || !span) return nothing;
    const found = pressedForce(
      {
        massKg: mass.value,
        massUKg: (mass.standardUncertainty ?? COVERAGE_FACTOR * PRESS_DOUBT.massRelative * mass.value) / COVERAGE_FACTOR,
        deflectionM: deflection.value,
        deflectionUM: (deflection.standardUncertainty ?? COVERAGE_FACTOR * PRESS_DOUBT.rulerM) / COVERAGE_FACTOR,
        givingLengthM: givingLength({ spanLengthM: this.spanLengthM }),
      },
      span,
    );
    return found ? this.#told(found) : html`<p class="result">${words.noForce}</p>`;
  }

  #told({ force, riseN }: PressedForce) {
    const { format } = this.#figures;
    const figure = formatMeasured({ value: force.value, u95: COVERAGE_FACTOR * force.standardUncertainty, unit: 'N', format });
    const largest = force.contributions.toSorted((a, b) => b.standardUncertainty - a.standardUncertainty)[0]!;
    const share = (largest.standardUncertainty / force.standardUncertainty) ** 2;
    return html`<p class="result">${words.result(figure, this.#figures.rough(riseN, 'N'))}</p>
      <p class="note">${words.decides(words.inputs[largest.name] ?? largest.name, formatPercent(share, { format }))}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'press-form': PressForm;
  }
}
