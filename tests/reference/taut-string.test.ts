import { describe, expect, test } from 'vitest';
import { referenceValues } from '../../shared/reference-values.ts';
import { forceOfString, fundamentalOfString } from '../../src/core/vibration/string.ts';

describe('Mersenne’s law, worked examples of textbooks (source of each in shared/reference-values.json)', () => {
  test.each(referenceValues.strings)('$source', ({ asked, linearDensityKgPerM, forceN, waveSpeedMPerS, halfLastDigit }) => {
    // The first partial of a span L is the wave speed over 2 L; the speed does not depend on L.
    for (const spanLengthM of [0.33, 2]) {
      const span = { spanLengthM, linearDensityKgPerM };
      const speed = 2 * spanLengthM * fundamentalOfString({ ...span, forceN });
      const force = forceOfString({ ...span, fundamentalHz: waveSpeedMPerS / (2 * spanLengthM) });
      const [found, printed] = asked === 'force' ? [force, forceN] : [speed, waveSpeedMPerS];
      expect(Math.abs(found - printed)).toBeLessThanOrEqual(halfLastDigit);
    }
  });

  // Giambattista et al., College Physics, 4th ed., chapter 11, problem 55: the tension raised by 1.0 % raises the frequency by 0.50 %.
  test('1.0 % more force is 0.50 % more frequency', () => {
    const at = (forceN: number) => fundamentalOfString({ forceN, spanLengthM: 0.6, linearDensityKgPerM: 0.001 });
    expect(Math.abs(100 * (at(70.7) / at(70) - 1) - 0.5)).toBeLessThan(0.005);
  });
});

describe('the same law as handbooks of belt drives write it: T = 4 M W S² f² 10⁻⁹ (form from memory, in several handbooks alike)', () => {
  test.each(referenceValues.handbookSpan.rows)(
    'M $gramsPerMetrePerMm g/m per mm, W $widthMm mm, S $spanMm mm, f $frequencyHz Hz: $forceN N',
    ({ gramsPerMetrePerMm, widthMm, spanMm, frequencyHz, forceN }) => {
      const linearDensityKgPerM = (gramsPerMetrePerMm * widthMm) / 1000;
      const found = forceOfString({ fundamentalHz: frequencyHz, spanLengthM: spanMm / 1000, linearDensityKgPerM });
      expect(Math.abs(found - forceN)).toBeLessThan(0.005);
    },
  );
});
