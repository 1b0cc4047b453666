/** The demo take through the whole chain, as someone sees it who presses its button. */
import { expect, it } from 'vitest';
import { measure } from '../../src/core/measure.ts';
import { demoTake } from '../../src/core/synthesis/demo.ts';

it('gives a trusted reading of three plucks that holds the force it was made with', () => {
  const { recording, setup, truth } = demoTake();
  const { outcome, plucks } = measure(recording, setup);
  if (outcome.kind !== 'reading') throw new Error(`nothing heard: ${outcome.why}`);
  expect(plucks.map(({ used }) => used)).toEqual([true, true, true]);
  expect(outcome.grade).toBe('trusted');
  expect(outcome.soundGrade).toBe('trusted');
  expect(outcome.forceN!.low).toBeLessThan(truth.span.forceN);
  expect(outcome.forceN!.high).toBeGreaterThan(truth.span.forceN);
});
