/** The smallest step that a gauge's readings were taken in, from the readings themselves. */

const MOST_DECIMALS = 6;

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** Six readings that are all multiples of this many last digits are so by no chance; of two or three last digits it takes more of them. */
const SURE_STEPS = 4;
const DISTINCT_FOR_TWO = 10;

/**
 * Largest step of which all readings are multiples; 0 where they have more than six decimals, or are fewer than six or all alike.
 *
 * A few readings may share a larger step by chance, with six or more it is rare.
 */
export function stepOfReadings(readings: readonly number[]): number {
  if (readings.length < 6) return 0;
  for (let decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
    const scaled = readings.map((reading) => reading * 10 ** decimals);
    if (!scaled.every((value) => Math.abs(value - Math.round(value)) < 1e-6 * Math.max(1, Math.abs(value) * 1e-6))) continue;
    const steps = scaled.reduce((divisor, value) => commonDivisor(divisor, Math.abs(Math.round(value))), 0);
    const isSure = steps >= SURE_STEPS || new Set(readings).size >= DISTINCT_FOR_TWO;
    return (isSure ? steps : 1) / 10 ** decimals;
  }
  return 0;
}
