/** 'On 60 mm, what can be done': every way with the doubt that it would leave, the best first, those that do not help named as such. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Improvement, WhatToDo as Ways } from '../../../core/machine/improve.ts';
import type { PlannedSpan } from '../../../core/machine/plan.ts';
import { formatPercent, formatQuantity } from '../../../core/quantity.ts';
import { plannerEn } from '../../../words/planner-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/grade-mark.ts';
import './press-form.ts';
import { shared } from '../../shared-styles.ts';
import { shareText, spanText } from './planner-view.ts';

const words = plannerEn.doing;
/** Wider than this a doubt is more than the force and not drawn to scale. */
const FULL = 0.6;

@customElement('what-to-do')
export class WhatToDo extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .best {
        margin-block: var(--space-4) var(--space-12);
        color: var(--ink-2);
      }
      table {
        inline-size: 100%;
        max-inline-size: 52rem;
        border-collapse: collapse;
      }
      th,
      td {
        padding-block: var(--space-8);
        padding-inline-end: var(--space-16);
        border-block-end: var(--stroke-line) solid var(--line);
        font-weight: var(--weight-text);
        text-align: start;
        vertical-align: middle;
      }
      thead th {
        font-size: var(--note-size);
        color: var(--ink-2);
      }
      tr.now th {
        font-weight: var(--weight-strong);
      }
      tr.no-help :is(th, td) {
        color: var(--ink-2);
      }
      .bar {
        display: block;
        inline-size: 12rem;
        block-size: 8px;
      }
      .bar rect {
        fill: var(--ink);
      }
      tr.no-help .bar rect {
        fill: var(--ink-3);
      }
      .figure {
        white-space: nowrap;
      }
      @media (max-width: 40rem) {
        .drawn {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) now!: PlannedSpan;
  @property({ attribute: false }) what!: Ways;
  readonly #figures = new Figures();

  override render() {
    const { now, what } = this;
    const span = spanText(now.spanLengthM, this.#figures);
    const press = what.ranked.find(({ kind }) => kind === 'pressed')?.press;
    return html`<h2>${words.title(span)}</h2>
      <p class="best">${what.bestHere ? words.best(shareText(what.bestHere.forceU95Relative, this.#figures)) : words.noBest}</p>
      <table aria-label=${words.label}>
        <thead>
          <tr>
            <th scope="col">${words.columns[0]}</th>
            <th scope="col">${words.columns[1]}</th>
            <th scope="col" class="drawn"><span class="visually-hidden">${words.label}</span></th>
            <th scope="col">${words.columns[2]}</th>
          </tr>
        </thead>
        <tbody>
          ${this.#row(words.now(span), now.worst.forceU95Relative, now.worst.grade, 'now')}
          ${what.ranked.map((way) => this.#way(way))}
        </tbody>
      </table>
      ${press ? html`<press-form .expected=${this.#press(press)} .spanLengthM=${now.spanLengthM}></press-form>` : nothing}`;
  }

  #way({ kind, forceU95Relative, grade, helps, spanLengthM }: Improvement) {
    const name = words.names[kind](spanLengthM === undefined ? '' : spanText(spanLengthM, this.#figures));
    return this.#row(helps ? name : `${name} (${words.noHelp})`, forceU95Relative, grade, helps ? '' : 'no-help');
  }

  #row(name: string, doubt: number | undefined, grade: Improvement['grade'], kind: string) {
    const share = doubt ?? Number.POSITIVE_INFINITY;
    const figure = share > 1 ? words.more : plannerEn.doubt(shareText(share, this.#figures));
    return html`<tr class=${kind}>
      <th scope="row">${name}</th>
      <td class="figure">${figure}</td>
      <td class="drawn"><svg class="bar" viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true"><rect width=${(100 * Math.min(share, FULL)) / FULL} height="8" /></svg></td>
      <td><grade-mark .grade=${grade} .word=${plannerEn.grades[grade]}></grade-mark></td>
    </tr>`;
  }

  #press({ massKg, deflectionM, riseRelative }: NonNullable<Improvement['press']>): string {
    const { format } = this.#figures;
    const mass = formatQuantity(1000 * massKg, 'g', { decimals: 0, format });
    const deflection = formatQuantity(1000 * deflectionM, 'mm', { decimals: 1, format });
    return words.pressing.expected(mass, deflection, formatPercent(riseRelative, { format }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'what-to-do': WhatToDo;
  }
}
