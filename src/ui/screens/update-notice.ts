/** Says in every place that a newer version is ready; it is used only when the person says so. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { keepingEn as words } from '../../words/keeping-en.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';

@customElement('update-notice')
export class UpdateNotice extends LitElement {
  static override styles = [
    shared,
    css`
      .notice {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-8) var(--space-16);
        padding: var(--space-8) var(--sheet-margin);
        border-block-end: var(--stroke-line) solid var(--line);
      }
      .said {
        flex: 1 1 20rem;
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() putOff = false;

  override connectedCallback(): void {
    super.connectedCallback();
    this.workbench.updates.addEventListener('change', this.#changed);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.workbench.updates.removeEventListener('change', this.#changed);
  }

  override render() {
    const { updates } = this.workbench;
    const { state } = updates;
    if (this.putOff || (state !== 'newer-waits' && state !== 'newer-elsewhere')) return nothing;
    const [what, then] = words.newer[state];
    return html`<div class="notice" role="region" aria-live="polite" aria-label=${what}>
      <p class="said"><strong>${what}.</strong> ${then}</p>
      ${
        state === 'newer-waits'
          ? html`<button @click=${() => updates.use()}>${words.useNewer}</button>
              <button class="quiet" @click=${() => {
                this.putOff = true;
              }}>${words.later}</button>`
          : html`<button @click=${() => location.reload()}>${words.reload}</button>`
      }
    </div>`;
  }

  readonly #changed = (): void => this.requestUpdate();
}

declare global {
  interface HTMLElementTagNameMap {
    'update-notice': UpdateNotice;
  }
}
