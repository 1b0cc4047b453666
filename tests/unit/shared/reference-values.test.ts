import { expect, test } from 'vitest';
import { referenceValues, referenceValuesSchema } from '../../../shared/reference-values.ts';

test('a value without its source is refused', () => {
  const { source: _, ...sourceless } = referenceValues.stiffWire;
  expect(referenceValuesSchema.safeParse({ ...referenceValues, stiffWire: sourceless }).success).toBe(false);
  expect(referenceValuesSchema.safeParse(referenceValues).success).toBe(true);
});

test('every row of the t table has a factor for each coverage', () => {
  const { coverage, rows } = referenceValues.studentT;
  for (const { factors } of rows) expect(factors).toHaveLength(coverage.length);
});
