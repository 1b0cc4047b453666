/** Temperatures as people type and read them, degrees Celsius; kelvin inside. */

import { readDecimal } from '../../core/quantity/decimal.ts';

export const ZERO_CELSIUS_K = 273.15;

/** Degrees Celsius; undefined where nothing was typed. */
export function readTemperature(text: string): number | undefined | 'unreadable' {
  if (text.trim() === '') return undefined;
  const read = readDecimal(text.replace(/\s*°?\s*C?\s*$/u, ''));
  return read.kind === 'decimal' && read.value > -ZERO_CELSIUS_K ? read.value : 'unreadable';
}
