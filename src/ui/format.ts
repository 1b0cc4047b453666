/** Numbers to the words of the page: which unit, and how a force or a frequency is put. How many digits is decided in core/quantity.ts. */

import type { ForceN, FrequencyHz } from '../core/outcome.ts';
import { formatNumber, formatQuantity, intervalTexts, measuredTexts, type NumberFormat, numberFormatOf } from '../core/quantity.ts';
import type { ForceRange } from '../core/setup.ts';
import { en } from '../words/en.ts';

const NO_BREAK = '\u00a0';
/** What people type as a target has no uncertainty; nobody types more digits. */
const TYPED_DIGITS = 4;

/** How the reader of this page writes numbers; outside a browser as in English. */
export const pageLocale = (): string => globalThis.navigator?.language ?? 'en';

export interface Figure {
  readonly value: string;
  readonly doubt: string;
}

export class Figures {
  readonly format: NumberFormat;
  readonly locale: string;

  constructor(locale: string = pageLocale()) {
    this.locale = locale;
    this.format = numberFormatOf(locale);
  }

  /** Value and doubt of a force in newtons; undefined where the sound gives no bound on one side. */
  force({ value, u95 }: ForceN): Figure | undefined {
    return u95 === undefined ? undefined : this.measured(value, u95);
  }

  frequency({ value, u95 }: FrequencyHz): Figure {
    return this.measured(value, u95);
  }

  /** '2.3 to 5.7', without unit; one bound alone in words. */
  bounds({ low, high }: ForceN): string {
    if (low !== undefined && high !== undefined) {
      const texts = intervalTexts({ low, high, format: this.format });
      return en.range(texts.low, texts.high);
    }
    if (high !== undefined) return en.reading.below(this.rough(high));
    return low === undefined ? en.reading.noBounds : en.reading.above(this.rough(low));
  }

  /** '± 0.29 N' for a part of a doubt: one decimal more than the whole of it has. */
  part(u95: number, whole: Figure): string {
    const decimals = (whole.doubt.split(this.format.decimalSign)[1]?.length ?? 0) + 1;
    return `±${NO_BREAK}${formatNumber(u95, { decimals, format: this.format })}${NO_BREAK}N`;
  }

  rough(value: number, unit = ''): string {
    return formatQuantity(value, unit, { significantDigits: 2, format: this.format });
  }

  /** As people type it: '150 mm', '6'. */
  typed(value: number, unit = ''): string {
    return formatQuantity(value, unit, { atMostDigits: TYPED_DIGITS, format: this.format });
  }

  whole(value: number, unit = ''): string {
    return formatQuantity(value, unit, { decimals: 0, format: this.format });
  }

  forceRange({ lowN, highN }: ForceRange): string {
    return en.range(this.typed(lowN), this.typed(highN, 'N'));
  }

  /** A value with the half of its 95 % interval, in the digits that the interval earns. */
  measured(value: number, u95: number): Figure {
    const texts = measuredTexts({ value, u95, format: this.format });
    return { value: texts.value, doubt: texts.u95 };
  }
}

/** '9.7 N ± 0.5 N', held together. */
export const together = ({ value, doubt }: Figure, unit: string): string => [value, unit, '±', doubt, unit].join(NO_BREAK);

const BYTE_STEPS = ['B', 'kB', 'MB', 'GB', 'TB'] as const;

/** '412 kB': thousands, three digits at most. */
export function bytesText(bytes: number): string {
  const step = Math.min(BYTE_STEPS.length - 1, Math.floor(Math.log10(Math.max(1, bytes)) / 3));
  return formatQuantity(bytes / 1000 ** step, BYTE_STEPS[step] ?? '', { atMostDigits: 3, format: numberFormatOf(pageLocale()) });
}
