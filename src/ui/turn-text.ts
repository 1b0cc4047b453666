/** Turns of a screw as a person makes them: '3/8 turn', '1 1/4 turns', down to thirty-seconds; millimetres of a slide. */

import { formatNumber, type NumberFormat } from '../core/quantity.ts';
import { adjustEn as words } from '../words/adjust-en.ts';

const FINEST = 32;
/** Below an eighth people think in degrees. */
const DEGREES_BELOW = 1 / 8;
const FULL_TURN_DEGREES = 360;

type Bottom = 1 | 2 | 4 | 8 | 16 | 32;

/** Whole turns and what is left as a fraction in its lowest terms; the sign is left to the words around it. */
function fractionOf(turns: number): { readonly whole: number; readonly top: number; readonly bottom: Bottom } {
  const parts = Math.round(Math.abs(turns) * FINEST);
  let [top, bottom] = [parts % FINEST, FINEST];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return { whole: Math.floor(parts / FINEST), top, bottom: bottom as Bottom };
}

/** '1 1/4' */
function fractionText(turns: number): string {
  const { whole, top, bottom } = fractionOf(turns);
  return [whole > 0 || top === 0 ? String(whole) : '', top > 0 ? `${top}/${bottom}` : ''].filter(Boolean).join('\u00a0');
}

export const turnsText = (turns: number): string => words.turn(fractionText(turns), Math.abs(turns) > 1).replace(' ', '\u00a0');

export const millimetresText = (amount: number, format: NumberFormat): string =>
  `${formatNumber(Math.abs(amount), { atMostDigits: 3, format })}\u00a0mm`;

/** For the ear. */
export function spokenTurns(turns: number): string {
  const { whole, top, bottom } = fractionOf(turns);
  return words.spokenTurn(whole, top, bottom);
}

/** '11' for a thirty-second; undefined from an eighth on. */
export const degreesText = (turns: number): string | undefined =>
  Math.abs(turns) < DEGREES_BELOW ? String(Math.round(Math.abs(turns) * FULL_TURN_DEGREES)) : undefined;
