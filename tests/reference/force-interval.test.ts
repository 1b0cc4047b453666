import { expect, test } from 'vitest';
import { referenceValues } from '../../shared/reference-values.ts';
import { forceFromFrequency } from '../../src/core/force/force.ts';
import type { KnownSpan } from '../../src/core/force/known-span.ts';
import { fixityCells } from '../../src/core/force/prior.ts';

/**
 * What the direct integration knew: EI log-even with hard edges, each end on its own, density log-normal 2 %. Sixteen cells of stiffness, as
 * in use; the program's own priors differ only in soft edges and in half the weight on both ends alike.
 */
function integratedSpan(spanLengthM: number, spanLengthUM: number): KnownSpan {
  const [low, high] = [Math.log(5e-5), Math.log(3e-4)];
  const widthLn = (high - low) / 16;
  const end = fixityCells({ kind: 'unknown' });
  return {
    spanLengthM,
    spanLengthRelativeU: spanLengthUM / spanLengthM,
    linearDensityKgPerM: 0.0078,
    linearDensityRelativeU: 0.02,
    stiffness: Array.from({ length: 16 }, (_, i) => ({ lnStiffness: low + (i + 0.5) * widthLn, widthLn, weight: 1 / 16 })),
    ends: end.flatMap((one) =>
      end.map((two) => ({
        fixity: [one.at, two.at] as const,
        width: [one.width, two.width] as const,
        alike: false,
        weight: one.weight * two.weight,
      })),
    ),
  };
}

// Values by direct integration of the same knowledge (Gauss-Legendre over ln EI and each end, 24 × 14 and 40 × 24 nodes): no published ones exist.
test.each(referenceValues.forceIntervals.rows)(
  'direct integration: $frequencyHz Hz on $spanLengthM m, span ± $spanLengthUM m',
  ({ frequencyHz, spanLengthM, spanLengthUM, lowN, medianN, highN }) => {
    const force = forceFromFrequency({ frequencyHz, relativeU: 0.001 }, integratedSpan(spanLengthM, spanLengthUM))!;
    // The cells cost up to a thousandth where the stiffness holds the span (60 mm, low end), else a ten-thousandth.
    const slack = spanLengthM < 0.1 ? 1.5e-3 : 1e-4;
    expect(Math.abs(force.low! / lowN - 1)).toBeLessThan(slack);
    expect(Math.abs(force.value / medianN - 1)).toBeLessThan(2e-4);
    expect(Math.abs(force.high! / highN - 1)).toBeLessThan(1e-4);
  },
);
