/** The offer of a second position below a reading: only where the budget says, beforehand, that it pays. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { LOWEST_HEARD_HZ } from '../../../core/machine/plan.ts';
import type { PlannedSecond } from '../../../core/machine/second-position.ts';
import { USUAL_REACH } from '../../../core/machine/zones.ts';
import type { Reading } from '../../../core/outcome.ts';
import { plannerEn } from '../../../words/planner-en.ts';
import { Figures } from '../../format.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { Selected } from '../../state/selected.ts';
import { shareText, spanText } from '../planner/planner-view.ts';
import { ENOUGH_PLUCKS } from './two-session.ts';

const words = plannerEn.two;
/** Nobody is told of a gain while plucks still come. */
const REST_MS = 1200;

@customElement('second-offer')
export class SecondOffer extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      p {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-16);
        margin-block-start: var(--space-12);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() planned: PlannedSecond | undefined;

  readonly #figures = new Figures();
  #of: Reading | undefined;
  #asking: AbortController | undefined;
  #resting: ReturnType<typeof setTimeout> | undefined;
  readonly #reading = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.answer.reading,
  );

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#giveUp();
    this.#of = undefined;
  }

  override willUpdate(): void {
    const reading = this.#reading.value;
    if (reading === this.#of) return;
    this.#of = reading;
    this.#giveUp();
    this.planned = undefined;
    const { understood, answer, ownEntered } = this.workbench.store.state;
    const spanM = understood.setup.spanLengthM?.value;
    if (!reading?.forceN || spanM === undefined || answer.plucks.length < ENOUGH_PLUCKS || ownEntered) return;
    const forceN = reading.forceN.value;
    const asking = new AbortController();
    this.#asking = asking;
    this.#resting = setTimeout(async () => {
      const question = { setup: understood.setup, forceN: { lowN: forceN, highN: forceN }, lowestHz: LOWEST_HEARD_HZ };
      const planned = await this.workbench.effects.planner
        .second({ question, firstM: spanM, reach: USUAL_REACH }, { signal: asking.signal })
        .catch(() => undefined);
      if (!asking.signal.aborted) this.planned = planned;
    }, REST_MS);
  }

  override render() {
    const { planned } = this;
    if (!planned) return nothing;
    const share = (value: number) => shareText(value, this.#figures);
    return html`<p>
      <span>${words.offer(spanText(planned.secondM, this.#figures), share(planned.firstAlone), share(planned.together))}</span>
      <a class="button quiet" href=${hrefOf('listen', 'two')}>${words.open}</a>
    </p>`;
  }

  #giveUp(): void {
    clearTimeout(this.#resting);
    this.#asking?.abort();
    this.#asking = undefined;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'second-offer': SecondOffer;
  }
}
