/** How figures of a take are drawn. */

import { createRandom, type Random } from '../../../src/core/synthesis/random.ts';

/** Even on a logarithmic scale. */
export const logBetween = (random: Random, low: number, high: number): number => low * (high / low) ** random.uniform();

export const oneOf = <T>(random: Random, choices: readonly T[]): T => choices[Math.floor(random.uniform() * choices.length)]!;

export const happens = (random: Random, share: number): boolean => random.uniform() < share;

/** Source of all figures of one take: of the seed, the kind's name and the take's number alone, so that other kinds may come and go. */
export function takeRandom(seed: number, kind: string, index: number): Random {
  let word = 0x811c9dc5;
  for (const letter of `${kind}/${index}`) word = Math.imul(word ^ letter.codePointAt(0)!, 0x01000193);
  return createRandom(seed, word);
}

/** A seed for the sounds of one take. */
export const drawnSeed = (random: Random): number => Math.floor(random.uniform() * 2 ** 31);
