/** What may have happened to a reading that breaks the pattern, from its digits alone. */

/** `short`: less response than expected. `beyond`: more. */
export type SlipGuess = 'digits-swapped' | 'digit-misread' | 'short' | 'beyond';

/**
 * @param slip.step       of the readings; 0 where it is not known: then digits say nothing
 * @param slip.direction  +1 where readings rise with the force, −1 where they fall
 * @param slip.deviation  of one reading, > 0
 */
export function slipGuess(slip: { reading: number; expected: number; step: number; direction: number; deviation: number }): SlipGuess {
  const { reading, expected, step, direction, deviation } = slip;
  const near = (value: number): boolean => Math.abs(value - expected) <= Math.max(3 * deviation, step);
  if (step > 0) {
    const digits = Math.round(Math.abs(reading) / step).toString();
    const sign = Math.sign(reading) || 1;
    for (let k = 0; k + 1 < digits.length; k++) {
      if (digits[k] === digits[k + 1]) continue;
      const swapped = digits.slice(0, k) + digits[k + 1] + digits[k] + digits.slice(k + 2);
      if (near(sign * Number(swapped) * step)) return 'digits-swapped';
    }
    for (let place = 1; place < digits.length; place++) {
      const one = step * 10 ** place;
      if (near(reading + one) || near(reading - one)) return 'digit-misread';
    }
  }
  return direction * (reading - expected) < 0 ? 'short' : 'beyond';
}
