/** The layout of a machine: its plan view, and the sizes that it follows while they are typed. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { beltById } from '../../../../shared/belts.ts';
import type { Machine } from '../../../../shared/document/machine.ts';
import { beltPath } from '../../../core/machine/belt-path.ts';
import { type LayoutSize, layoutOf, usualSection } from '../../../core/machine/layouts.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import { Figures } from '../../format.ts';
import type { MarkedSpan } from '../../parts/plan-view.ts';
import '../../parts/plan-view.ts';
import type { QuantityTold } from '../../parts/told-quantity.ts';
import '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import { laidMachine, relaid } from '../../state/machine-new.ts';
import { editorStyles } from './editor-styles.ts';
import { type EditMachine, faultText } from './machine-editing.ts';

@customElement('machine-layout')
export class MachineLayout extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    css`
      .two {
        display: grid;
        grid-template-columns: minmax(0, 1.4fr) minmax(0, 1fr);
        gap: var(--space-32);
        align-items: start;
      }
      .sizes {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(9.5rem, 1fr));
        gap: var(--space-12);
        align-items: end;
      }
      .fault {
        font-weight: var(--weight-strong);
      }
      @media (max-width: 59.99rem) {
        .two {
          grid-template-columns: minmax(0, 1fr);
        }
        .sizes {
          grid-template-columns: repeat(auto-fill, minmax(8.5rem, 1fr));
        }
      }
    `,
  ];

  @property({ attribute: false }) machine!: Machine;
  /** Id of the span that is drawn heavy. */
  @property() marked = '';
  @property({ attribute: false }) edit: EditMachine = () => {};
  readonly #figures = new Figures();

  override render() {
    const { machine } = this;
    const laid = laidMachine(machine);
    if (!laid) return nothing;
    const sizes = layoutOf(machine.layout.kind)?.sizes ?? [];
    const section = usualSection(beltById(machine.belts[0]?.beltId ?? '')?.toothPitchM ?? 0.002);
    const overlaps = laid.belts.some((belt) => beltPath(belt, section).kind === 'overlap');
    const marked = this.#marked();
    const title = machine.layout.kind === 'bed-lift' ? words.planFront : words.plan;
    return html`<h2 class="visually-hidden">${title}</h2>
      <div class="two">
        <div>
          <plan-view .layout=${laid} .section=${section} .marked=${marked?.mark}
            .label=${words.planLabel(words.layouts[machine.layout.kind], marked?.sentence ?? '')}></plan-view>
          ${overlaps ? html`<p class="fault" role="alert">${words.overlap}</p>` : nothing}
        </div>
        ${
          sizes.length === 0
            ? nothing
            : html`<div role="group" aria-labelledby="sizes">
                <p class="over" id="sizes">${words.planSizes}</p>
                <div class="sizes">${sizes.map((size) => this.#size(size))}</div>
                <p class="note">${words.planNote}</p>
              </div>`
        }
      </div>`;
  }

  #size({ name, unit, usual }: LayoutSize) {
    const { kind, sizes } = this.machine.layout;
    const label = kind === 'bed-lift' && name === 'carriageYM' ? words.lengthwiseBed : words.sizes[name];
    return html`<told-quantity
      .label=${label}
      .kind=${unit === 'm' ? 'length' : 'number'}
      .unit=${unit === 'm' ? 'mm' : ''}
      .value=${sizes[name] ?? usual}
      .faultText=${faultText}
      @quantity-told=${(event: QuantityTold) => this.#told(name, event)}
    ></told-quantity>`;
  }

  #told(name: string, { told }: QuantityTold): void {
    if (told) this.edit((machine) => relaid(machine, { ...machine.layout.sizes, [name]: told.value }));
  }

  #marked(): { readonly mark: MarkedSpan; readonly sentence: string } | undefined {
    for (const belt of this.machine.belts) {
      const span = belt.spans.find(({ id }) => id === this.marked);
      if (!span?.place) continue;
      const text = span.lengthM ? this.#figures.typed(span.lengthM.value * 1000, 'mm') : '';
      return {
        mark: { belt: span.place.belt, from: span.place.from, text: `${belt.name} ${text}` },
        sentence: words.planMarked(belt.name, span.name, text),
      };
    }
    return undefined;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'machine-layout': MachineLayout;
  }
}
