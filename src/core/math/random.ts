/** Random numbers that come out the same on every run: what is drawn follows from a seed and nothing else. */

export interface Random {
  /** Even in 0 <= x < 1. */
  uniform(): number;
  /** Even between two values. */
  between(low: number, high: number): number;
  /** Normal, mean 0, standard deviation 1. */
  gaussian(): number;
}

/**
 * A small fast counting generator of four 32-bit words.
 *
 * @param seed   any integer
 * @param stream sounds of one take draw from streams of their own, so that adding one leaves the others as they were
 */
export function createRandom(seed: number, stream = 0): Random {
  let [a, b, c, counter] = [seed | 0, stream | 0, 0x9e3779b9 | 0, 1];
  const word = (): number => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + sum) | 0;
    return sum >>> 0;
  };
  for (let round = 0; round < 20; round++) word(); // until close seeds have parted
  const uniform = () => (word() * 2 ** 21 + (word() >>> 11)) / 2 ** 53;
  let spare: number | undefined;
  // Polar method: a point even in the unit disc gives two independent normal numbers.
  const gaussian = (): number => {
    if (spare !== undefined) {
      const value = spare;
      spare = undefined;
      return value;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square === 0 || square >= 1) continue;
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * factor;
      return x * factor;
    }
  };
  return { uniform, gaussian, between: (low, high) => low + (high - low) * uniform() };
}
