/** Days and moments as the logbook writes them, in the reader's language and zone. */

const DAY_S = 86_400;

export class Dates {
  readonly #long: Intl.DateTimeFormat;
  readonly #withYear: Intl.DateTimeFormat;
  readonly #short: Intl.DateTimeFormat;
  readonly #moment: Intl.DateTimeFormat;

  constructor(locale: string) {
    this.#long = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long' });
    this.#withYear = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', year: 'numeric' });
    this.#short = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short' });
    this.#moment = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' });
  }

  /** '18 January', with the year where it is not within some nine months of now. */
  day(atS: number, nowS: number): string {
    return (Math.abs(atS - nowS) > 270 * DAY_S ? this.#withYear : this.#long).format(atS * 1000);
  }

  short = (atS: number): string => this.#short.format(atS * 1000);
  moment = (atS: number): string => this.#moment.format(atS * 1000);
}

/** `YYYY-MM-DD` of the local day, as date fields and calendars have it. */
export function isoDay(atS: number): string {
  const date = new Date(atS * 1000);
  return `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`;
}

/** `YYYY-MM-DDTHH:MM` of the local clock, as date and time fields have it. */
export const isoMinute = (atS: number): string => `${isoDay(atS)}T${new Date(atS * 1000).toTimeString().slice(0, 5)}`;
