import { expect, test } from 'vitest';
import { referenceValues } from '../../shared/reference-values.ts';
import { coverageFactor } from '../../src/core/math/student-t.ts';

const { coverage, rows } = referenceValues.studentT;

// NIST Technical Note 1297 (1994), Table B.1 (GUM Table G.2): two decimals printed, tolerance half of the last one.
test.each(rows)('t with $degreesOfFreedom degrees of freedom', ({ degreesOfFreedom, factors }) => {
  factors.forEach((printed, i) => {
    const factor = coverageFactor({ degreesOfFreedom, coverage: coverage[i]! });
    expect(Math.abs(factor - printed)).toBeLessThan(0.005001);
  });
});
