/** A reminder for any calendar: the day that the readings tell, or one that the person chooses, as a file. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { calendarText } from '../../../core/logbook/calendar.ts';
import type { Outlook } from '../../../core/logbook/outlook.ts';
import { logbookEn } from '../../../words/logbook-en.ts';
import { dialogStyles } from '../../dialog-styles.ts';
import type { Figures } from '../../format.ts';
import { shared } from '../../shared-styles.ts';
import { nowAt } from '../../state/new-item.ts';
import { saveFile } from '../../state/save-document.ts';
import { answerView } from './answer-view.ts';
import { type Dates, isoDay } from './dates.ts';
import { fieldStyles } from './field-styles.ts';

const words = logbookEn.reminder;
const GUESS_S = 91 * 86_400;

export interface Reminded {
  readonly outlook: Outlook;
  readonly machineName: string;
  readonly bookId: string;
  readonly nowS: number;
  readonly dates: Dates;
  readonly figures: Figures;
}

@customElement('reminder-dialog')
export class ReminderDialog extends LitElement {
  static override styles = [
    shared,
    dialogStyles,
    fieldStyles,
    css`
      h2 {
        font-size: var(--title-size);
        line-height: var(--title-line);
      }
    `,
  ];

  @state() about: Reminded | undefined;
  @state() day = '';
  @state() fault = '';
  @query('dialog') dialog!: HTMLDialogElement;

  show(about: Reminded): void {
    this.about = about;
    const forecast = about.outlook.first?.forecast;
    const atS = forecast?.kind === 'by-about' ? forecast.atS : forecast?.kind === 'not-before' ? forecast.earliestS : about.nowS + GUESS_S;
    this.day = isoDay(Math.max(atS, about.nowS + 86_400));
    this.fault = '';
    void this.updateComplete.then(() => {
      if (!this.dialog.open) this.dialog.showModal();
    });
  }

  override render() {
    return html`<dialog aria-labelledby="title">${this.about ? this.#form(this.about) : nothing}</dialog>`;
  }

  #form({ outlook, dates, nowS }: Reminded) {
    const forecast = outlook.first?.forecast;
    const day = (atS: number) => dates.day(atS, nowS);
    return html`<form class="form" @submit=${this.#save} novalidate>
      <h2 id="title">${words.heading}</h2>
      <p>${forecast?.kind === 'by-about' ? words.fromTrend(day(forecast.atS), day(forecast.earliestS), day(forecast.latestS)) : words.noTrend}</p>
      <label>${words.day}<input type="date" .value=${this.day} @input=${({ target }: Event) => {
        this.day = (target as HTMLInputElement).value;
      }} aria-describedby="fault" /></label>
      <p id="fault" class="fault" role="status">${this.fault}</p>
      <p class="note">${words.note}</p>
      <p class="acts">
        <button class="solid">${words.save}</button>
        <button type="button" @click=${() => this.dialog.close()}>${logbookEn.entry.close}</button>
      </p>
    </form>`;
  }

  readonly #save = (event: Event) => {
    event.preventDefault();
    const { about } = this;
    if (!about) return;
    if (!/^\d{4}-\d{2}-\d{2}$/u.test(this.day) || this.day <= isoDay(about.nowS)) {
      this.fault = words.needsDay;
      return;
    }
    const { outlook, machineName, bookId } = about;
    const belt = outlook.belts.find(({ belt: { id } }) => id === outlook.first?.beltId)?.belt.name ?? '';
    const text = calendarText({
      uid: `${bookId}@spanwright`,
      day: this.day,
      summary: words.summary(machineName, outlook.first?.forecast.kind === 'by-about' ? belt : ''),
      description: words.description(answerView(outlook, about).under),
      madeAt: nowAt(),
      sequence: Math.floor(about.nowS), // a later reminder of the same machine takes the place of an earlier one
    });
    saveFile(new Blob([text], { type: 'text/calendar' }), words.fileName);
    this.dialog.close();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'reminder-dialog': ReminderDialog;
  }
}
