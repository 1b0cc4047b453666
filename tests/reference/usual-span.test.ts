import { expect, test } from 'vitest';
import { belts } from '../../shared/belts.ts';
import { referenceValues } from '../../shared/reference-values.ts';
import { beltKnowledge } from '../../src/core/belt/catalogue.ts';
import { expectedFrequencyHz } from '../../src/core/force/expected.ts';
import { UNKNOWN_ENDS } from '../../src/core/setup.ts';

const { belt, spanLengthM, rows } = referenceValues.usualSpan;
/** 'Near': tables of the density differ by a fifth, which is a tenth of frequency, and ends and stiffness add a few percent. */
const NEAR = 0.13;

// Common practice, no source: 150 mm of 6 mm wide 2 mm pitch belt at 9 to 14 N lie near 105 to 140 Hz.
test.each(rows)('$forceN N lie near $aboutHz Hz', ({ forceN, aboutHz }) => {
  const entry = belts.find(({ id }) => id === belt)!;
  const setup = { spanLengthM: { value: spanLengthM, standardUncertainty: 0.0005 }, belt: beltKnowledge(entry), ends: UNKNOWN_ENDS };
  const { lowHz } = expectedFrequencyHz(setup, { lowN: forceN, highN: forceN })!;
  expect(Math.abs(lowHz / aboutHz - 1)).toBeLessThan(NEAR);
});
