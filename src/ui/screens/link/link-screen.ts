/** What a link brings, before it takes the place of anything: a setup to look at and to use, or why it cannot be used. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { LinkFault } from '../../../../shared/link.ts';
import { linkEn as words } from '../../../words/link-en.ts';
import { Figures } from '../../format.ts';
import { CurrentRoute, hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { withLinkedBelt } from '../../state/linked-belt.ts';
import { type BroughtSetup, setupFromHash } from '../../state/linked-setup.ts';
import { understood } from '../../state/span-setup.ts';
import { setupSummary, setupSummaryStyles } from '../setup-summary.ts';

@customElement('link-screen')
export class LinkScreen extends LitElement {
  static override styles = [
    shared,
    setupSummaryStyles,
    css`
      main {
        display: grid;
        gap: var(--space-16);
        max-inline-size: 34rem;
        padding: var(--space-32) var(--sheet-margin);
      }
      h1 {
        font-size: var(--answer-size);
        line-height: var(--answer-line);
        font-weight: var(--weight-text);
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-12);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  readonly #figures = new Figures();
  readonly #route = new CurrentRoute(this);

  override render() {
    void this.#route.value; // drawn anew with each address
    const brought = setupFromHash(location.hash);
    return 'kind' in brought ? this.#refusal(brought) : this.#offer(brought);
  }

  #offer(brought: BroughtSetup) {
    const { entered, belt } = brought;
    return html`<main>
      <h1>${words.from.heading}</h1>
      <p>${words.from.lead}</p>
      ${setupSummary(entered, understood(entered, belt ? [belt] : []), this.#figures)}
      <p class="note">${words.from.replaces} ${belt ? words.from.keepsBelt(belt.name) : nothing}</p>
      <p class="acts">
        <button class="solid" @click=${() => this.#use(brought)}>${words.from.use}</button>
        <a class="button" href=${hrefOf('listen')}>${words.from.leave}</a>
      </p>
    </main>`;
  }

  #refusal(fault: LinkFault) {
    return html`<main>
      <h1>${words.refused.heading}</h1>
      <p role="alert">${words.fault(fault)} ${words.refused.safe}</p>
      <p class="acts"><a class="button" href=${hrefOf('listen')}>${words.refused.back}</a></p>
    </main>`;
  }

  async #use({ entered, belt }: BroughtSetup): Promise<void> {
    const { store, effects, kept } = this.workbench;
    if (belt) await kept.change((document) => withLinkedBelt(document, belt));
    if (store.state.ownEntered) await effects.leaveDemo(); // the demo's fields are not the person's
    store.dispatch({ kind: 'setup-entered', change: entered });
    location.hash = hrefOf('listen');
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'link-screen': LinkScreen;
  }
}
