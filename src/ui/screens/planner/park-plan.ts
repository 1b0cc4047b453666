/** The machine in plan with the carriage where the span has the length to park for, and that place in words. */

import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { carriageFor } from '../../../core/machine/carriage.ts';
import { layoutOf, usualSection } from '../../../core/machine/layouts.ts';
import { machinesEn } from '../../../words/machines-en.ts';
import { plannerEn } from '../../../words/planner-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/plan-view.ts';
import { shared } from '../../shared-styles.ts';
import type { PlaceOnMachine } from '../../state/span-of-machine.ts';
import { parkPlanStyles } from './park-plan-styles.ts';
import { spanText } from './planner-view.ts';

const words = plannerEn.carriage;
const PITCH_IF_NOT_TOLD_M = 0.002;

@customElement('park-plan')
export class ParkPlan extends LitElement {
  static override styles = [shared, parkPlanStyles];

  @property({ attribute: false }) place!: PlaceOnMachine;
  @property({ type: Number }) spanLengthM = 0;
  @property({ attribute: false }) toothPitchM: number | undefined;
  readonly #figures = new Figures();

  override render() {
    const { machine, belt, span } = this.place;
    const layout = layoutOf(machine.layout.kind);
    if (!layout || !span?.place) return nothing;
    const section = usualSection(this.toothPitchM ?? PITCH_IF_NOT_TOLD_M);
    const text = spanText(this.spanLengthM, this.#figures);
    const found = carriageFor(layout, machine.layout.sizes, { ...span.place, lengthM: this.spanLengthM, section });
    if (!found) return html`<p>${words.none(span.name, text)}</p>`;
    const mark = { belt: span.place.belt, from: span.place.from, text };
    const at = this.#figures.whole(1000 * found.atM, 'mm');
    return html`<div class="drawing">
        <plan-view
          .layout=${layout.lay(found.sizes)}
          .section=${section}
          .marked=${mark}
          .label=${machinesEn.planLabel(machinesEn.layouts[machine.layout.kind], machinesEn.planMarked(belt.name, span.name, text))}
        ></plan-view>
      </div>
      <div>
        <h2>${words.title(found.axis, at)}</h2>
        <p>${words.makes(span.name, text)}</p>
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'park-plan': ParkPlan;
  }
}
