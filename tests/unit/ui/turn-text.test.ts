import { expect, it } from 'vitest';
import { ENGLISH, numberFormatOf } from '../../../src/core/quantity.ts';
import { degreesText, millimetresText, spokenTurns, turnsText } from '../../../src/ui/turn-text.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

it.each([
  [1 / 8, '1/8 turn', 'an eighth turn'],
  [-3 / 8, '3/8 turn', 'three eighths of a turn'],
  [1 / 4, '1/4 turn', 'a quarter turn'],
  [1, '1 turn', 'one turn'],
  [1.25, '1 1/4 turns', 'one and a quarter turns'],
  [-2.125, '2 1/8 turns', 'two and an eighth turns'],
  [3, '3 turns', 'three turns'],
  [1 / 32, '1/32 turn', 'a thirty-second turn'],
  [3 / 16, '3/16 turn', 'three sixteenths of a turn'],
])('%s of a turn is written and said', (turns, written, said) => {
  expect([plain(turnsText(turns)), spokenTurns(turns)]).toEqual([written, said]);
});

it('says what small parts of a turn are in degrees', () => {
  expect([degreesText(1 / 32), degreesText(-1 / 16), degreesText(1 / 8)]).toEqual(['11', '23', undefined]); // 360/32, 360/16
});

it('writes millimetres of a slide in the sign of the language', () => {
  expect([plain(millimetresText(-0.5, ENGLISH)), plain(millimetresText(0.15, numberFormatOf('de')))]).toEqual(['0.5 mm', '0,15 mm']);
});
