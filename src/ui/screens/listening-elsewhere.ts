/** Says in every other place that Listen goes on listening, and leads back to it. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { placesEn } from '../../words/places-en.ts';
import { hrefOf } from '../route.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';

@customElement('listening-elsewhere')
export class ListeningElsewhere extends LitElement {
  static override styles = [
    shared,
    css`
      a {
        display: flex;
        align-items: center;
        block-size: 100%;
        font-size: var(--note-size);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  readonly #isListening = new Selected(
    this,
    () => this.workbench.store,
    ({ activity }) => activity.kind === 'listening',
  );
  readonly #count = new Selected(
    this,
    () => this.workbench.store,
    ({ answer }) => answer.plucks.length,
  );

  override render() {
    return this.#isListening.value ? html`<a href=${hrefOf('listen')}>${placesEn.listening(this.#count.value)}</a>` : nothing;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'listening-elsewhere': ListeningElsewhere;
  }
}
