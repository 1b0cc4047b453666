/** Turns of a screw as a person makes them: '3/8 turn', '1 1/4 turns', down to thirty-seconds; millimetres of a slide. */

import { formatNumber, type NumberFormat } from '../core/quantity.ts';
import { adjustEn as words } from '../words/adjust-en.ts';

const FINEST = 32;
/** Below an eighth people think in degrees. */
const DEGREES_BELOW = 1 / 8;
const FULL_TURN_DEGREES = 360;

/** '1 1/4'; the sign is left to the words around it. */
export function fractionText(turns: number): string {
  const parts = Math.round(Math.abs(turns) * FINEST);
  const whole = Math.floor(parts / FINEST);
  let [top, bottom] = [parts % FINEST, FINEST];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return [whole > 0 || top === 0 ? String(whole) : '', top > 0 ? `${top}/${bottom}` : ''].filter(Boolean).join('\u00a0');
}

export const turnsText = (turns: number): string => words.turn(fractionText(turns), Math.abs(turns) > 1).replace(' ', '\u00a0');

export const millimetresText = (amount: number, format: NumberFormat): string =>
  `${formatNumber(Math.abs(amount), { atMostDigits: 3, format })}\u00a0mm`;

/** '11' for a thirty-second; undefined from an eighth on. */
export const degreesText = (turns: number): string | undefined =>
  Math.abs(turns) < DEGREES_BELOW ? String(Math.round(Math.abs(turns) * FULL_TURN_DEGREES)) : undefined;
