/** A card to print and keep at the machine: for each belt and span the length, the force and the frequencies to expect. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { currentOf } from '../../../../shared/document/common.ts';
import type { Machine, MachineBelt } from '../../../../shared/document/machine.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import { formatPercent, formatQuantity } from '../../../core/quantity.ts';
import { adjustEn } from '../../../words/adjust-en.ts';
import { en } from '../../../words/en.ts';
import { targetsEn } from '../../../words/targets-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/answer-line.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { expectedOn, setupOn, targetForceNow } from '../../state/target-view.ts';

const words = targetsEn.card;

@customElement('target-card')
export class TargetCard extends LitElement {
  static override styles = [
    shared,
    css`
      main {
        max-inline-size: 56rem;
        padding: var(--space-24) var(--sheet-margin) calc(var(--space-64) + var(--thumb-bar-height));
      }
      .actions {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-12);
      }
      .table {
        overflow-x: auto;
      }
      table {
        inline-size: 100%;
        border-collapse: collapse;
      }
      th,
      td {
        padding: var(--space-8) var(--space-16) var(--space-8) 0;
        border-block-end: var(--stroke-line) solid var(--line);
        text-align: start;
        vertical-align: baseline;
      }
      thead th {
        font-size: var(--note-size);
        color: var(--ink-2);
      }
      td b {
        white-space: nowrap;
      }
      .notes {
        display: grid;
        gap: var(--space-4);
        margin-block: var(--space-16);
      }
      @media (max-width: 40rem) {
        thead {
          position: absolute;
          inline-size: 1px;
          block-size: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
        tr {
          display: grid;
          grid-template-columns: repeat(2, minmax(0, 1fr));
          padding-block: var(--space-8);
          border-block-end: var(--stroke-line) solid var(--line);
        }
        th,
        td {
          padding-block: var(--space-4);
          border: 0;
        }
      }
      @media print {
        main {
          padding: 0;
        }
        .actions {
          display: none;
        }
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property() machineId = '';
  readonly #figures = new Figures();
  readonly #document = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document, keeping }) => (keeping.isOpen ? document : undefined),
  );

  override render() {
    const document = this.#document.value;
    const machine = document?.machines.find(({ id, deletedAt }) => id === this.machineId && deletedAt === undefined);
    if (document === undefined) return html`<main aria-busy="true"></main>`;
    if (machine === undefined) {
      return html`<main><h1>${adjustEn.lacking.gone}</h1><a class="button" href=${hrefOf('machines')}>${adjustEn.lacking.all}</a></main>`;
    }
    return html`<main>
      <answer-line>
        <b>${words.title(machine.name)}</b>
        <span slot="under">${machine.note ?? ''}</span>
        <div slot="actions" class="actions">
          <button class="solid" @click=${() => window.print()}>${words.print}</button>
          <a class="button" href=${hrefOf('machines', machine.id)}>${words.back}</a>
        </div>
      </answer-line>
      <div class="table" role="region" aria-label=${words.title(machine.name)} tabindex="0">
        <table>
          <thead>
            <tr>${words.columns.map((column) => html`<th scope="col">${column}</th>`)}</tr>
          </thead>
          <tbody>${machine.belts.flatMap((belt) => this.#rows(document, machine, belt))}</tbody>
        </table>
      </div>
      <div class="notes note">${this.#notes(document, machine).map((note) => html`<p>${note}</p>`)}</div>
    </main>`;
  }

  #rows(document: KeptDocument, machine: Machine, belt: MachineBelt) {
    const forceN = targetForceNow(document, machine, belt);
    const force = forceN
      ? this.#figures.forceRange({ lowN: Number(forceN.lowN.toPrecision(3)), highN: Number(forceN.highN.toPrecision(3)) })
      : words.noTarget;
    return belt.spans.map((span) => {
      const range = expectedOn(document, machine, belt, span);
      const length = span.lengthM ? this.#figures.typed(span.lengthM.value * 1000, 'mm') : '';
      const frequency = range ? en.range(this.#hertz(range.lowHz), this.#hertz(range.highHz, 'Hz')) : targetsEn.noFrequency;
      return html`<tr>
        <th scope="row">${belt.name}</th>
        <td>${span.name}${span.carriageNote ? html`<br /><span class="note">${span.carriageNote}</span>` : nothing}</td>
        <td>${length}</td>
        <td><b>${force}</b></td>
        <td><b>${frequency}</b></td>
      </tr>`;
    });
  }

  readonly #hertz = (value: number, unit = ''): string =>
    formatQuantity(value, unit, { significantDigits: 3, format: this.#figures.format });

  /** What the figures rest on, each sentence once. */
  #notes(document: KeptDocument, machine: Machine): readonly string[] {
    const { format } = this.#figures;
    const names = (ids: readonly string[]): string =>
      adjustEn.list(machine.belts.filter(({ id }) => ids.includes(id)).map(({ name }) => name));
    const matches = machine.groups.map(({ beltIds, toleranceRelative }) =>
      words.match(names(beltIds), formatPercent(toleranceRelative, { format })),
    );
    const about = machine.belts.flatMap((belt) => {
      const { belt: known } = setupOn(document, machine, belt, belt.spans[0]);
      const isHz = currentOf(belt.targets)?.source.kind === 'frequency';
      const limit = known?.ratedForceN === undefined ? [] : [words.limit(belt.name, this.#figures.rough(known.ratedForceN, 'N'))];
      return [...(isHz ? [words.told] : known ? [words[known.densityFrom]] : []), ...limit];
    });
    return [...new Set([...matches, ...about, words.care])];
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'target-card': TargetCard;
  }
}
