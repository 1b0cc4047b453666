/** The takes of a session as a table, and what they come to. */

import { html, nothing } from 'lit';
import { formatMeasured, formatQuantity, type NumberFormat } from '../../../core/quantity.ts';
import { agreementOf, type ComparedTake } from '../../../core/validation/agreement.ts';
import type { SessionTake } from '../../../ports.ts';
import { agreementEn, agreementSentences } from '../../../words/agreement-en.ts';
import { validationEn as words } from '../../../words/validation-en.ts';

export interface TakenView {
  readonly takes: readonly SessionTake[];
  /** What was dropped, in words; empty where nothing can be brought back. */
  readonly dropped: string;
  readonly format: NumberFormat;
  readonly drop: (take: SessionTake) => void;
  readonly undo: () => void;
}

export function takenView({ takes, dropped, format, drop, undo }: TakenView) {
  if (takes.length === 0 && dropped === '') return nothing;
  const { compared } = agreementOf(takes.map(({ known }) => known));
  const { columns } = agreementEn;
  return html`<section>
    <h2>${words.takes}</h2>
    ${dropped ? html`<p role="status">${dropped} <button class="quiet" @click=${undo}>${words.undo}</button></p>` : nothing}
    <div class="scroll"><table>
      <thead><tr>
        <th scope="col">${columns.name}</th><th scope="col">${columns.known}</th><th scope="col">${columns.heard}</th>
        <th scope="col">${columns.difference}</th><th scope="col">${columns.held}</th><td></td>
      </tr></thead>
      <tbody>${takes.map((take) => {
        const found = compared.find(({ name }) => name === take.name);
        return html`<tr>${figures(take, found, format)}<td><button class="quiet" @click=${() => drop(take)}>${words.drop(take.name)}</button></td></tr>`;
      })}</tbody>
    </table></div>
  </section>`;
}

function figures({ known, name }: SessionTake, found: ComparedTake | undefined, format: NumberFormat) {
  const u95 = known.heard?.forceN.u95;
  return html`<th scope="row">${name}</th>
    <td>${formatQuantity(known.knownForceN.value, 'N', { significantDigits: 3, format })}</td>
    <td>${known.heard && found && u95 !== undefined ? formatMeasured({ value: known.heard.forceN.value, u95, unit: 'N', format }) : words.none}</td>
    <td>${found ? agreementEn.difference(found.logRatio, format) : words.none}</td>
    <td>${found ? agreementEn.held(found.isInside) : agreementEn.refusedCell}</td>`;
}

export interface ReportView {
  readonly takes: readonly SessionTake[];
  /** Whether the takes are on this browser's disk; undefined while they are being written. */
  readonly isKept: boolean | undefined;
  readonly format: NumberFormat;
  readonly save: () => void;
  readonly beginAnew: () => void;
}

export function reportView({ takes, isKept, format, save, beginAnew }: ReportView) {
  const [density, ...others] = new Set(takes.map(({ truth }) => truth.linearDensityKgPerM));
  const sentences = agreementSentences(agreementOf(takes.map(({ known }) => known)), {
    toldDensityKgPerM: others.length === 0 ? density : undefined,
    format,
  });
  return html`<section class="report">
    <h2>${words.report}</h2>
    ${sentences.map((sentence) => html`<p>${sentence}</p>`)}
    <div class="acts"><button @click=${save}>${words.save}</button> <button class="quiet" @click=${beginAnew}>${words.beginAnew}</button></div>
    <p class="note">${words.saveNote} ${isKept === undefined ? '' : isKept ? words.stay : words.doNotStay}</p>
    <p class="note">${words.command}</p>
  </section>`;
}
