/** 'Check by random draws' below the budget: the same force by drawing every input, in a worker, beside the reading's own interval. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { DrawnAnswer } from '../../core/drawn-answer.ts';
import type { ForceN } from '../../core/outcome.ts';
import { formatNumber, formatPercent } from '../../core/quantity.ts';
import { en } from '../../words/en.ts';
import { Figures } from '../format.ts';
import '../parts/draw-histogram.ts';
import type { PlotTable } from '../parts/spoken-table.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';

const words = en.draws;
const NO_BREAK = '\u00a0';

type Check =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly share: number; readonly aborting: AbortController }
  | { readonly kind: 'drawn'; readonly answer: DrawnAnswer }
  | { readonly kind: 'broken' };

@customElement('draws-check')
export class DrawsCheck extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
        margin-block-start: var(--space-12);
      }
      h2 {
        margin-block-end: var(--space-8);
      }
      .running {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-4) var(--space-12);
      }
      progress {
        flex: 1 1 8rem;
        block-size: 8px;
        accent-color: var(--ink);
      }
      .sentence {
        margin-block: var(--space-8);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() check: Check = { kind: 'none' };

  readonly #figures = new Figures();
  #checked: ForceN | undefined;
  readonly #force = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.answer.reading?.forceN,
  );

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#giveUp();
  }

  /** Another reading makes the check of the last one void. */
  override willUpdate(): void {
    if (this.check.kind === 'none' || this.#force.value === this.#checked) return;
    this.#giveUp();
  }

  override render() {
    const told = this.#force.value;
    if (!told) return nothing;
    switch (this.check.kind) {
      case 'running':
        return html`<div class="running">
          <span class="note">${words.running}</span>
          <progress max="1" .value=${this.check.share} aria-label=${words.progress}></progress>
          <button class="quiet" @click=${this.#giveUp}>${words.cancel}</button>
        </div>`;
      case 'drawn':
        return this.#result(told, this.check.answer);
      default:
        return html`<button class="quiet" @click=${this.#start}>${words.start}</button>
          ${this.check.kind === 'broken' ? html`<p class="note">${words.broken}</p>` : nothing}`;
    }
  }

  #result(told: ForceN, { forceN, histogram, agreement, draws, shareWithoutForce }: DrawnAnswer) {
    const bounds = (force: ForceN | undefined) => (force ? `${this.#figures.bounds(force)}${NO_BREAK}N` : words.noForce);
    const { format } = this.#figures;
    const sentence = words.verdicts[agreement];
    const intervals = [
      { name: words.ofDraws, lowN: forceN?.low, highN: forceN?.high },
      { name: words.ofReading, lowN: told.low, highN: told.high },
    ];
    return html`<h2>${words.title(formatNumber(draws, { decimals: 0, format }))}</h2>
      <draw-histogram
        .bins=${histogram}
        .intervals=${intervals}
        .label=${words.label(bounds(forceN), bounds(told))}
        .table=${this.#table(histogram)}
        .figure=${(valueN: number, decimals: number) => formatNumber(valueN, { decimals, format })}
      ></draw-histogram>
      <p class="sentence">${words.beside(bounds(forceN), bounds(told))} ${sentence}</p>
      ${shareWithoutForce >= 0.005 ? html`<p class="note">${words.without(formatPercent(shareWithoutForce, { format }))}</p>` : nothing}`;
  }

  /** Bins in fives: forty rows would be read to nobody's use. */
  #table({ fromN, binWidthN, shares }: DrawnAnswer['histogram']): PlotTable {
    const { format } = this.#figures;
    const groups = Array.from({ length: Math.ceil(shares.length / IN_ONE_ROW) }, (_, index) => index * IN_ONE_ROW);
    return {
      caption: words.caption,
      columns: words.columns,
      rows: groups.map((first) => {
        const inRow = shares.slice(first, first + IN_ONE_ROW);
        const [low, high] = [fromN + first * binWidthN, fromN + (first + inRow.length) * binWidthN];
        const share = inRow.reduce((sum, one) => sum + one, 0);
        return [`${this.#figures.bounds({ value: low, low, high })}${NO_BREAK}N`, formatPercent(share, { decimals: 1, format })];
      }),
    };
  }

  readonly #start = async () => {
    const aborting = new AbortController();
    this.#checked = this.#force.value;
    this.check = { kind: 'running', share: 0, aborting };
    const onProgress = (share: number) => {
      if (this.#isOf(aborting)) this.check = { kind: 'running', share, aborting };
    };
    try {
      const answer = await this.workbench.effects.checkByDraws({ onProgress, signal: aborting.signal });
      if (this.#isOf(aborting)) this.check = answer ? { kind: 'drawn', answer } : { kind: 'none' };
    } catch {
      if (this.#isOf(aborting)) this.check = { kind: 'broken' };
    }
  };

  #isOf(aborting: AbortController): boolean {
    return this.check.kind === 'running' && this.check.aborting === aborting;
  }

  readonly #giveUp = () => {
    const { check } = this;
    this.check = { kind: 'none' };
    if (check.kind === 'running') check.aborting.abort();
  };
}

const IN_ONE_ROW = 5;

declare global {
  interface HTMLElementTagNameMap {
    'draws-check': DrawsCheck;
  }
}
