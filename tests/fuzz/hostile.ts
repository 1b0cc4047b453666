/** What hostile or broken input is made of: numbers at the ends of their range, text that means something elsewhere, and bytes that moved. */

import { createRandom, type Random } from '../../src/core/math/random.ts';

export interface Draw extends Random {
  /** Whole, 0 <= n < count. */
  below(count: number): number;
  pick<T>(items: readonly T[]): T;
  /** True with this chance. */
  chance(share: number): boolean;
}

/** Everything that a case is made of follows from seed and number. */
export function drawOf(seed: number, number: number): Draw {
  const random = createRandom(seed, number);
  const below = (count: number) => Math.floor(random.uniform() * count);
  return { ...random, below, pick: (items) => items[below(items.length)]!, chance: (share) => random.uniform() < share };
}

export const NUMBERS: readonly number[] = [
  0,
  -0,
  1,
  -1,
  0.5,
  1e-9,
  5e-324,
  1e-300,
  1e9,
  2 ** 31,
  2 ** 32,
  2 ** 53,
  1e300,
  -1e300,
  Number.MAX_VALUE,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
];

export const TEXTS: readonly string[] = [
  '',
  ' ',
  'NaN',
  'Infinity',
  '-Infinity',
  '1e999',
  '1e-999',
  '0x10',
  '1,234',
  '1.234,5',
  '1 234',
  '--1',
  '+-1',
  '±',
  '±1',
  '1±',
  '1±2±3',
  '1e',
  '1e5e5',
  '１２',
  '٣',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  '=1+1',
  '@cmd',
  '<img src=x onerror=alert(1)>',
  '"; drop',
  '../../../x',
  '\u0000',
  '\u202e1',
  '\ufeff1',
  '\ud800',
  '💥',
  '\r\n',
  '"',
  "'",
  ',',
  ';',
  'a'.repeat(5000),
  '9'.repeat(400),
  '('.repeat(300),
  '150 mm',
  '5,9 in',
  '75 teeth',
  '8.4 g/m ± 1 %',
  '(150 ± 0.5) mm',
];

/** A number as somebody might have written it. */
export function numberText(draw: Draw): string {
  const value = draw.chance(0.3) ? draw.pick(NUMBERS) : draw.between(-5, 500);
  const text = draw.chance(0.3) ? value.toExponential(draw.below(6)) : String(draw.chance(0.6) ? Number(value.toPrecision(4)) : value);
  return draw.chance(0.3) ? text.replace('.', ',') : text;
}

/** Text with letters struck out, doubled, changed, or with something hostile put in. */
export function damagedText(text: string, draw: Draw, most = 4): string {
  let damaged = text;
  for (let count = draw.below(most + 1); count > 0; count--) {
    const at = draw.below(damaged.length + 1);
    const until = at + draw.below(4);
    const put = draw.pick([() => '', () => draw.pick(TEXTS), () => String.fromCharCode(draw.below(0x2100)), () => numberText(draw)])();
    damaged = damaged.slice(0, at) + put + damaged.slice(until);
  }
  return damaged;
}

const BYTES = [0, 1, 2, 3, 0x10, 0x40, 0x7f, 0x80, 0xfe, 0xff];

/** Bytes with some of the first ones overwritten, and now and then cut off. */
export function damagedBytes(bytes: Uint8Array, draw: Draw): Uint8Array {
  const damaged = bytes.slice(0, draw.chance(0.15) ? draw.below(bytes.length + 1) : bytes.length);
  for (let count = draw.below(7); count > 0; count--) {
    const at = draw.below(Math.min(damaged.length, draw.chance(0.8) ? 96 : damaged.length));
    if (at < damaged.length) damaged[at] = draw.chance(0.7) ? draw.pick(BYTES) : draw.below(256);
  }
  return damaged;
}
