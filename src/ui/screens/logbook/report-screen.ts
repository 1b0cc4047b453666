/** A report on one machine, to be read and printed: how it stands, what the doubt is made of, what happened, every reading, cautions. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { isAlive } from '../../../../shared/document/common.ts';
import type { KeptTake } from '../../../../shared/document/take.ts';
import { outlookOf } from '../../../core/logbook/outlook.ts';
import {
  type Report,
  type ReportedBelt,
  type ReportedEvent,
  type ReportedPair,
  type ReportedReading,
  reportOf,
} from '../../../core/logbook/report.ts';
import type { BudgetInput } from '../../../core/outcome.ts';
import { formatNumber, formatPercent } from '../../../core/quantity.ts';
import { againstTarget } from '../../../core/verdict/against-target.ts';
import { en } from '../../../words/en.ts';
import { logbookEn } from '../../../words/logbook-en.ts';
import { PROGRAM_VERSION } from '../../../words/program.ts';
import { reportEn as words } from '../../../words/report-en.ts';
import { Figures, pageLocale, together } from '../../format.ts';
import '../../parts/grade-mark.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { answerOfKept } from '../../state/keep-take.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { bookOf, verifiedForce } from '../../state/logbook.ts';
import { nowAt } from '../../state/new-item.ts';
import { saveFile } from '../../state/save-document.ts';
import { answerView } from './answer-view.ts';
import { Dates } from './dates.ts';
import './logbook-plots.ts';
import { reportStyles } from './report-styles.ts';

const NO_BREAK = '\u00a0';

@customElement('report-screen')
export class ReportScreen extends LitElement {
  static override styles = [shared, reportStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property() bookId = '';
  readonly #figures = new Figures();
  readonly #dates = new Dates(pageLocale());
  readonly #document = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document }) => document,
  );

  override render() {
    const document = this.#document.value;
    const book = bookOf(document, this.bookId);
    if (!book?.machine) {
      return html`<main><h1>${logbookEn.gone[0]}</h1><p>${logbookEn.gone[1]}</p>
        <p class="acts"><a class="button" href=${hrefOf('logbook')}>${words.back}</a></p></main>`;
    }
    const nowS = Date.now() / 1000;
    const outlook = outlookOf({ logged: book.logged, belts: book.belts, pairs: book.pairs, nowS });
    const report = reportOf({
      madeAt: nowAt(),
      program: PROGRAM_VERSION,
      machineName: book.machine.name,
      machineNote: book.machine.note ?? '',
      logged: book.logged,
      outlook,
      budgetOf: (id) => budgetOf(document.takes.find((take) => take.id === id)),
      gauges: document.gauges.filter(isAlive).map((gauge) => ({ name: gauge.name, verifiedN: verifiedForce(gauge, document) })),
    });
    const { answer, under } = answerView(outlook, { nowS, dates: this.#dates, figures: this.#figures });
    return html`<main>
      <p class="acts">
        <button class="solid" @click=${() => window.print()}>${words.print}</button>
        <button @click=${() => this.#save(report, 'csv')}>${words.csv}</button>
        <button @click=${() => this.#save(report, 'json')}>${words.json}</button>
        <a class="button" href=${hrefOf('logbook', this.bookId)}>${words.back}</a>
      </p>
      <header>
        <h1>${words.title(report.machineName)}</h1>
        <p class="note">${report.machineNote}</p>
        <p class="note">${words.made(this.#dates.moment(nowS), report.program)}</p>
      </header>
      <section>
        <h2>${words.now}</h2>
        <p class="lead">${answer[0]}<b>${answer[1]}</b>. ${under}</p>
        ${this.#standing(report.belts)} ${this.#matches(report.pairs)}
      </section>
      <logbook-plots .book=${book} .outlook=${outlook} .nowS=${nowS}></logbook-plots>
      ${this.#doubts(report.belts)} ${this.#gauges(report)}
      ${this.#events(report.events)} ${this.#readings(report.readings)}
      <section class="cautions">
        <h2>${words.cautions}</h2>
        <p>${en.cautions.lead}</p>
        <ul>${en.cautions.points.map((point) => html`<li>${point}</li>`)}</ul>
        <p>${words.limits}</p>
      </section>
    </main>`;
  }

  #standing(belts: readonly ReportedBelt[]) {
    const { columns } = words;
    return html`<table>
      <thead><tr>${Object.values(columns).map((name) => html`<th scope="col">${name}</th>`)}</tr></thead>
      <tbody>${belts.map(
        ({ name, last, targetForceN, course }) => html`<tr>
          <th scope="row">${name}</th>
          <td>${last ? this.#force(last) : words.notTold}</td>
          <td>${last ? this.#dates.moment(last.atS) : words.notTold}</td>
          <td>${last ? this.#grade(last) : words.notTold}</td>
          <td>${targetForceN ? this.#figures.forceRange(targetForceN) : words.notTold}</td>
          <td>${last?.forceN && targetForceN ? this.#verdict(last, targetForceN) : words.notTold}</td>
          <td>${course ? (course.kind === 'steady' ? words.steady : together(this.#figures.measured(course.perMonthN, course.perMonthU95N), 'N')) : words.notTold}</td>
        </tr>`,
      )}</tbody>
    </table>`;
  }

  #matches(pairs: readonly ReportedPair[]) {
    if (pairs.length === 0) return nothing;
    const percent = (share: number) => formatPercent(share, { decimals: 1, format: this.#figures.format });
    return html`<h3>${words.match}</h3>${pairs.map(
      ({ oneName, otherName, last, toleranceRelative }) =>
        html`<p>${last ? words.matchLine(otherName, oneName, percent(last.value), percent(last.u95), percent(toleranceRelative)) : words.matchOpen(otherName, oneName)}</p>`,
    )}`;
  }

  #doubts(belts: readonly ReportedBelt[]) {
    const told = belts.filter(({ budget }) => budget.length > 0);
    const inputs = [...new Set(told.flatMap(({ budget }) => budget.map(({ input }) => input)))];
    const cell = (belt: ReportedBelt, input: BudgetInput) => {
      const line = belt.budget.find((one) => one.input === input);
      return line ? formatNumber(line.forceUN, { significantDigits: 2, format: this.#figures.format }) : words.notTold;
    };
    return html`<section>
      <h2>${words.doubt}</h2>
      ${
        told.length === 0
          ? html`<p>${words.doubtNone}</p>`
          : html`<table>
              <thead><tr><th scope="col">${words.doubtColumns.input}</th>${told.map(({ name }) => html`<th scope="col">${name}</th>`)}</tr></thead>
              <tbody>${inputs.map((input) => html`<tr><th scope="row">${en.doubt.names[input]}</th>${told.map((belt) => html`<td>${cell(belt, input)}</td>`)}</tr>`)}</tbody>
            </table>`
      }
    </section>`;
  }

  #gauges({ gauges }: Report) {
    if (gauges.length === 0) return nothing;
    return html`<section><h2>${words.gauges}</h2>${gauges.map(
      ({ name, verifiedN }) => html`<p>${verifiedN ? words.gauge(name, this.#range(verifiedN)) : words.gaugeUnproved(name)}</p>`,
    )}</section>`;
  }

  /** A verified range is no target: it has the digits that it was proved with. */
  #range({ lowN, highN }: { lowN: number; highN: number }): string {
    return `${this.#figures.bounds({ value: lowN, low: lowN, high: highN })}${NO_BREAK}N`;
  }

  #events(events: readonly ReportedEvent[]) {
    if (events.length === 0) return nothing;
    return html`<section><h2>${words.events}</h2><table><tbody>${events.map(
      ({ atS, kind, beltNames, text, changes, forceN }) => html`<tr>
        <th scope="row">${this.#dates.moment(atS)}</th>
        <td>${[logbookEn.rowKinds[kind], beltNames.join(', ')].filter(Boolean).join(': ')}</td>
        <td>${[
          text === '' || /[.!?]$/u.test(text) ? text : `${text}.`,
          forceN ? `${this.#figures.rough(forceN.value, 'N')}` : '',
          ...changes.map(({ beltName, change }) => logbookEn.entry.changed[change.verdict](beltName, this.#change(change))),
        ]
          .filter(Boolean)
          .join(' ')}</td>
      </tr>`,
    )}</tbody></table></section>`;
  }

  #change({ differenceN, u95N, verdict }: { differenceN: number; u95N: number; verdict: string }): string {
    return together(this.#figures.measured(verdict === 'not-seen' ? differenceN : Math.abs(differenceN), u95N), 'N');
  }

  #readings(readings: readonly ReportedReading[]) {
    const { readingColumns: columns } = words;
    return html`<section>
      <h2>${words.readings}</h2>
      <table class="readings">
        <thead><tr>${Object.values(columns).map((name) => html`<th scope="col">${name}</th>`)}</tr></thead>
        <tbody>${readings.map(
          (reading) => html`<tr>
            <td>${this.#dates.moment(reading.atS)}</td>
            <td>${reading.beltName}</td>
            <td>${this.#force(reading)}</td>
            <td>${reading.forceN ? `${this.#figures.bounds(reading.forceN)}${NO_BREAK}N` : words.notTold}</td>
            <td>${formatNumber(reading.frequencyHz, { decimals: 1, format: this.#figures.format })}${NO_BREAK}Hz</td>
            <td>${this.#grade(reading)}</td>
            <td>${[reading.temperatureC === undefined ? '' : `${Math.round(reading.temperatureC)}${NO_BREAK}°C`, reading.note].filter(Boolean).join(', ')}</td>
          </tr>`,
        )}</tbody>
      </table>
    </section>`;
  }

  #grade({ grade }: ReportedReading) {
    return html`<grade-mark .grade=${grade} .word=${en.reading.grades[grade]}></grade-mark>`;
  }

  #force({ forceN, grade }: ReportedReading): string {
    const figure = forceN && grade !== 'unusable' ? this.#figures.force(forceN) : undefined;
    return figure ? together(figure, 'N') : words.notTold;
  }

  #verdict({ forceN }: ReportedReading, target: { lowN: number; highN: number }): string {
    const verdict = againstTarget(forceN!, target);
    const by = 'byN' in verdict ? this.#figures.rough(verdict.byN, 'N') : '';
    return verdict.kind === 'low' || verdict.kind === 'high' ? words.verdict[verdict.kind](by) : words.verdict[verdict.kind];
  }

  #save(report: Report, kind: 'csv' | 'json'): void {
    const { reportFiles } = this.workbench;
    const name = report.machineName.replace(/[^\p{L}\p{N}-]+/gu, '-');
    // Spreadsheets of a language with a decimal comma part columns with semicolons.
    const separator = this.#figures.format.decimalSign === ',' ? ';' : ',';
    if (kind === 'csv') saveFile(new Blob(['\ufeff', reportFiles.csv(report, separator)], { type: 'text/csv' }), words.csvName(name));
    else saveFile(new Blob([reportFiles.json(report)], { type: 'application/json' }), words.jsonName(name));
  }
}

/** Of a kept take, as this version of the program reckons it. */
const budgetOf = (take: KeptTake | undefined) => (take ? (answerOfKept(take)?.budget ?? []) : []);

declare global {
  interface HTMLElementTagNameMap {
    'report-screen': ReportScreen;
  }
}
