/** Two numberings that both fit: what force each means, how likely it is, and the one pluck that decides. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Numbering } from '../../../core/octave.ts';
import { formatPercent } from '../../../core/quantity.ts';
import { octaveEn } from '../../../words/octave-en.ts';
import { Figures, together } from '../../format.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { Selected } from '../../state/selected.ts';

@customElement('octave-choice')
export class OctaveChoice extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
        padding-block-end: var(--space-12);
        border-block-end: var(--stroke-line) solid var(--line);
      }
      table {
        inline-size: 100%;
        max-inline-size: 34rem;
        margin-block: var(--space-8);
        border-collapse: collapse;
      }
      th,
      td {
        padding: var(--space-4) var(--space-16) var(--space-4) 0;
        text-align: start;
        white-space: nowrap;
      }
      thead th {
        font-size: var(--note-size);
        color: var(--ink-2);
      }
      tbody th {
        font-size: var(--lead-size);
        line-height: var(--lead-line);
      }
      .bar {
        inline-size: 40%;
      }
      .bar div {
        display: grid;
        grid-template-columns: 3.25rem minmax(2rem, 1fr);
        align-items: center;
        gap: var(--space-8);
      }
      .bar svg {
        inline-size: 100%;
        block-size: 10px;
        fill: var(--ink);
        forced-color-adjust: none;
      }
      @media (max-width: 36rem) {
        .bar svg {
          display: none;
        }
        .bar,
        .bar div {
          display: block;
          inline-size: auto;
        }
        td.bar {
          display: table-cell;
        }
        th,
        td {
          padding-inline-end: var(--space-8);
        }
        thead th {
          white-space: normal;
        }
        tbody th {
          font-size: var(--text-size);
        }
      }
      button {
        margin-block-start: var(--space-12);
      }
      .unsettled {
        margin-block-start: var(--space-8);
        font-weight: var(--weight-strong);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  readonly #figures = new Figures();
  readonly #state = new Selected(
    this,
    () => this.workbench.store,
    (state) => state,
  );

  override render() {
    const { answer, take, deciding } = this.#state.value;
    const { octave } = answer;
    if (!octave) return nothing;
    return html`<h2>${octaveEn.title}</h2>
      <p>${octaveEn.lead}</p>
      <table>
        <caption class="visually-hidden">${octaveEn.caption}</caption>
        <thead>
          <tr>${octaveEn.columns.map((column) => html`<th scope="col">${column}</th>`)}</tr>
        </thead>
        <tbody>
          ${[octave.own, octave.rival].map((numbering) => this.#row(numbering))}
        </tbody>
      </table>
      <p class="how">${octaveEn.how}</p>
      ${(take?.touched?.length ?? 0) > 0 ? html`<p class="unsettled">${octaveEn.unsettled}</p>` : nothing}
      ${deciding ? nothing : html`<button class="solid" @click=${this.#settle}>${octaveEn.settle}</button>`}`;
  }

  #row({ forceN, frequencyHz, probability }: Numbering) {
    const force = forceN && this.#figures.force(forceN);
    const text = force ? together(force, 'N') : forceN ? `${this.#figures.bounds(forceN)}\u00a0N` : octaveEn.noForce;
    return html`<tr>
      <th scope="row">${text}</th>
      <td>${this.#figures.typed(frequencyHz.value, 'Hz')}</td>
      <td class="bar"><div>${formatPercent(probability, { format: this.#figures.format })}<svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true"><rect width=${Math.max(1, 100 * probability)} height="10" /></svg></div></td>
    </tr>`;
  }

  readonly #settle = () => void this.workbench.effects.decideOctave();
}

declare global {
  interface HTMLElementTagNameMap {
    'octave-choice': OctaveChoice;
  }
}
