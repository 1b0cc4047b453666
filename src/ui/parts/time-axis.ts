/** Dates along an axis: which days carry a figure, and how they are written. */

const DAY_S = 86_400;

export interface TimeRange {
  readonly fromS: number;
  readonly toS: number;
}

export interface TimeTick {
  readonly atS: number;
  readonly text: string;
}

/** Steps in days below a month, then in months. */
const DAY_STEPS = [1, 2, 7, 14];
const MONTH_STEPS = [1, 2, 3, 6, 12, 24, 60];

/**
 * Days with a figure, at most so many: the first of months, or days counted from the first of the month where the range is short.
 *
 * @param short  names of months without the day
 */
export function timeTicks(
  { fromS, toS }: TimeRange,
  { atMost, locale, short }: { atMost: number; locale: string; short: boolean },
): readonly TimeTick[] {
  const days = (toS - fromS) / DAY_S;
  const dayStep = DAY_STEPS.find((step) => days / step <= atMost);
  const starts = dayStep === undefined ? monthStarts(fromS, toS, atMost) : dayStarts(fromS, toS, dayStep);
  const withDay = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short' });
  const monthOnly = new Intl.DateTimeFormat(locale, days > 400 ? { month: 'short', year: '2-digit' } : { month: 'short' });
  const format = dayStep === undefined && (short || days > 400) ? monthOnly : withDay;
  return starts.map((date) => ({ atS: date.getTime() / 1000, text: format.format(date) }));
}

function monthStarts(fromS: number, toS: number, atMost: number): Date[] {
  const months = (toS - fromS) / (30.44 * DAY_S);
  const step = MONTH_STEPS.find((one) => months / one <= atMost) ?? 120;
  const date = new Date(fromS * 1000);
  const starts: Date[] = [];
  for (let month = new Date(date.getFullYear(), Math.ceil((date.getMonth() + 1) / step) * step, 1); month.getTime() / 1000 <= toS; ) {
    starts.push(month);
    month = new Date(month.getFullYear(), month.getMonth() + step, 1);
  }
  return starts;
}

function dayStarts(fromS: number, toS: number, step: number): Date[] {
  const first = new Date(fromS * 1000);
  const starts: Date[] = [];
  for (let day = new Date(first.getFullYear(), first.getMonth(), first.getDate() + 1); day.getTime() / 1000 <= toS; ) {
    starts.push(day);
    day = new Date(day.getFullYear(), day.getMonth(), day.getDate() + step);
  }
  return starts;
}
