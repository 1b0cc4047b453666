/** Whether the 95 % interval holds the true force in 95 % of spans drawn from what the program takes for granted: the promise behind the ±. */

import { expect, test } from 'vitest';
import { forceFromFrequency } from '../../../../src/core/force/force.ts';
import { knownSpan } from '../../../../src/core/force/known-span.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';
import { spanOf, WEIGHED_BELT } from '../../../support/heard.ts';

const SPANS = 1200;

test.each([
  { name: 'ends not known', ends: undefined },
  {
    name: 'one end clipped, one round a pulley',
    ends: [
      { kind: 'between', low: 0.7, high: 1 },
      { kind: 'between', low: 0, high: 0.5 },
    ],
  },
] as const)('over $name', ({ ends }) => {
  const random = createRandom(5);
  const unknown = () => [0, 1, random.uniform()][Math.floor(3 * random.uniform())]!;
  let held = 0;
  let below = 0;
  let above = 0;
  for (let i = 0; i < SPANS; i++) {
    const trueLengthM = 0.04 * 15 ** random.uniform();
    const trueForceN = 60 ** random.uniform();
    const one = unknown();
    const truth = {
      forceN: trueForceN,
      spanLengthM: trueLengthM,
      linearDensityKgPerM: 0.0078,
      bendingStiffnessNm2: 5e-5 * 6 ** random.uniform(),
      fixity: ends
        ? ([random.between(ends[0].low, ends[0].high), random.between(ends[1].low, ends[1].high)] as const)
        : ([one, random.uniform() < 0.5 ? one : unknown()] as const),
      number: 1,
    };
    const relativeU = 0.005;
    const frequencyHz = partialHz(truth) * Math.exp(relativeU * random.gaussian());
    const told = 0.0078 * Math.exp(0.02 * random.gaussian());
    const setup = spanOf(
      trueLengthM + 0.0005 * random.gaussian(),
      { ...WEIGHED_BELT, linearDensityKgPerM: { value: told, standardUncertainty: 0.02 * told } },
      ends ? { ends } : {},
    );
    const force = forceFromFrequency({ frequencyHz, relativeU }, knownSpan(setup)!);
    if (trueForceN < (force?.low ?? 0)) below++;
    else if (trueForceN > (force?.high ?? 0)) above++;
    else held++;
  }
  // 95 % of 1200 is known to ± 0.6 points; soft edges of the stiffness and of the density's allowance make it a little more than 95.
  expect(held / SPANS).toBeGreaterThan(0.935);
  expect(held / SPANS).toBeLessThan(0.985);
  expect(below / SPANS).toBeLessThan(0.045);
  expect(above / SPANS).toBeLessThan(0.045);
});
