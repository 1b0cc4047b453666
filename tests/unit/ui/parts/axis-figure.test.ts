/** Axis figures have the decimals of their step, a true minus and the decimal sign of the language. */

import { expect, it } from 'vitest';
import { axisFigure } from '../../../../src/ui/parts/axis-figure.ts';

it.each([
  [-20, 20, 'en', '−20'],
  [0.5, 0.5, 'de', '0,5'],
  [3, 0.5, 'en', '3.0'],
  [0.30000000000000004, 0.1, 'en', '0.3'],
  [-0, 20, 'en', '0'],
  [12, 1, 'en', '12'],
])('%f in steps of %f is printed in %s as %s', (value, step, locale, text) => {
  expect(axisFigure(value, step, locale)).toBe(text);
});
