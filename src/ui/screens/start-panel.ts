/** What stands below the ruler before the first reading: where to measure and pluck, other ways in, and the cautions. */

import { consume } from '@lit/context';
import { css, html, LitElement } from 'lit';
import { customElement } from 'lit/decorators.js';
import { en } from '../../words/en.ts';
import { Figures } from '../format.ts';
import '../parts/span-drawing.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';
import './live-spectrum.ts';
import { lowerPanelStyles } from './lower-panel-styles.ts';
import { spanDrawing } from './span-view.ts';
import './take-sources.ts';

@customElement('start-panel')
export class StartPanel extends LitElement {
  static override styles = [
    shared,
    lowerPanelStyles,
    css`
      ul {
        display: grid;
        gap: var(--space-8);
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        align-items: baseline;
        gap: var(--space-8);
        color: var(--ink-2);
      }
      li::before {
        content: '';
        flex: none;
        inline-size: 7px;
        block-size: 7px;
        background: var(--ink-3);
      }
      @media (max-width: 59.99rem) {
        .drawing {
          display: none;
        }
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;

  readonly #figures = new Figures();
  readonly #listening = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.activity.kind === 'listening',
  );
  readonly #understood = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.understood,
  );

  override render() {
    return html`
      <div class="left ${this.#listening.value ? '' : 'drawing'}">
        ${
          this.#listening.value
            ? html`<h2>${en.spectrum.title}</h2>
                <live-spectrum></live-spectrum>`
            : html`<h2>${en.span.title}</h2>
                ${spanDrawing(this.#understood.value, this.#figures, { variant: 'big' })}`
        }
      </div>
      <div class="right">
        <section>
          <h2>${en.sources.title}</h2>
          <take-sources></take-sources>
        </section>
        <section>
          <h2>${en.beforeYouPluck.title}</h2>
          <ul>
            ${en.beforeYouPluck.points.map((point) => html`<li>${point}</li>`)}
          </ul>
        </section>
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'start-panel': StartPanel;
  }
}
