import { expect, test } from 'vitest';
import { againstTarget } from '../../../../src/core/verdict/against-target.ts';

const TARGET = { lowN: 9, highN: 14 };
const force = (value: number, low?: number, high?: number) => ({ value, low, high });

test.each([
  [force(7.7, 7.2, 8.2), { kind: 'low', byN: expect.closeTo(1.3) }],
  [force(14.8, 14.1, 15.5), { kind: 'high', byN: expect.closeTo(0.8) }],
  [force(9.7, 9.2, 10.2), { kind: 'inside', part: 'lower' }],
  [force(13, 12, 13.9), { kind: 'inside', part: 'upper' }],
  [force(11.5, 10, 13), { kind: 'inside', part: 'whole' }],
  [force(9.5, 9, 14), { kind: 'inside', part: 'whole' }],
  [force(13, 13, 13), { kind: 'inside', part: 'upper' }],
  [force(9.7, 7.7, 11.7), { kind: 'probably-inside' }],
  [force(13.5, 11, 16), { kind: 'probably-inside' }],
  [force(8.6, 7.9, 9.2), { kind: 'low', byN: expect.closeTo(0.4) }],
  [force(8.8, 8.1, 9.4), { kind: 'cannot-tell' }],
  [force(14.5, 13.8, 15.2), { kind: 'high', byN: expect.closeTo(0.5) }],
  [force(14.2, 13.5, 14.9), { kind: 'cannot-tell' }],
  [force(11, 6, 16), { kind: 'cannot-tell' }],
  [force(10, undefined, 12), { kind: 'probably-inside' }],
  [force(10, undefined, 16), { kind: 'cannot-tell' }],
  [force(4, undefined, 6), { kind: 'low', byN: 5 }],
  [force(10, 9.5, undefined), { kind: 'probably-inside' }],
] as const)('%o is %o', (heard, expected) => {
  expect(againstTarget(heard, TARGET)).toEqual(expected);
});
