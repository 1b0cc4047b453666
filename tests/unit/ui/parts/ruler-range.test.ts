/** The ruler's range shows everything with a fifth to spare, keeps still while a pluck rings, and never moves without need. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundStep, rulerRange } from '../../../../src/ui/parts/ruler-range.ts';

const fallback = { lowN: 0, highN: 20 };
const target = { lowN: 6, highN: 9 };
const asked = { target, shown: [], held: false, fallback };

describe('range of the ruler', () => {
  it('is the target and a fifth, in whole steps', () => {
    // 6 − 20 % = 4.8 and 9 + 20 % = 10.8, rounded outwards
    expect(rulerRange(asked)).toEqual({ lowN: 4, highN: 11 });
  });

  it('takes in every interval', () => {
    const range = rulerRange({ ...asked, shown: [{ lowN: 2, highN: 13, valueN: 8 }] });
    expect(range.lowN).toBeLessThanOrEqual(1.6);
    expect(range.highN).toBeGreaterThanOrEqual(15.6);
  });

  it('reaches down to zero where an interval has no lower bound', () => {
    expect(rulerRange({ ...asked, shown: [{ highN: 0.85, valueN: 0.4 }] })).toMatchObject({ lowN: 0 });
    // 0.85 and a fifth is 1.02, rounded out to steps of 0.2
    expect(rulerRange({ shown: [{ highN: 0.85 }], held: false, fallback }).highN).toBeCloseTo(1.2, 9);
  });

  it('is the fallback where nothing has a figure', () => {
    expect(rulerRange({ shown: [{}], held: false, fallback })).toEqual(fallback);
  });

  it('keeps the very range of before as long as all stands on it', () => {
    const before = rulerRange(asked);
    expect(rulerRange({ ...asked, before, shown: [{ lowN: 4.5, highN: 10.5, valueN: 7 }] })).toBe(before);
  });

  it('stays while a pluck rings, and widens afterwards', () => {
    const before = rulerRange(asked);
    const shown = [{ lowN: 12, highN: 14, valueN: 13 }];
    expect(rulerRange({ ...asked, before, shown, held: true })).toBe(before);
    const after = rulerRange({ ...asked, before, shown });
    expect(after.lowN).toBeLessThanOrEqual(before.lowN);
    expect(after.highN).toBeGreaterThanOrEqual(14);
  });

  it('gives up a range that shows nothing any more', () => {
    expect(rulerRange({ ...asked, before: { lowN: 0, highN: 400 } })).toEqual({ lowN: 4, highN: 11 });
  });

  it('does not let one endless doubt flatten the rest', () => {
    const { highN } = rulerRange({ ...asked, shown: [{ lowN: 5, highN: 4000, valueN: 10 }] });
    expect(highN).toBeLessThanOrEqual(60);
  });

  it('holds the target and all values, whatever was before', () => {
    const force = fc.double({ min: 0.05, max: 900, noNaN: true });
    fc.assert(
      fc.property(
        force,
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.array(force, { maxLength: 6 }),
        force,
        (lowN, times, values, beforeN) => {
          const range = rulerRange({
            target: { lowN, highN: lowN * times },
            shown: values.map((valueN) => ({ valueN, lowN: valueN * 0.9 })),
            before: { lowN: 0, highN: beforeN },
            held: false,
            fallback,
          });
          expect(range.lowN).toBeGreaterThanOrEqual(0);
          expect(range.lowN).toBeLessThanOrEqual(Math.min(lowN, ...values.map((valueN) => valueN * 0.9)) * (1 + 1e-9));
          expect(range.highN).toBeGreaterThanOrEqual(Math.max(lowN * times, ...values) * (1 - 1e-9));
        },
      ),
    );
  });
});

it('steps are 1, 2 or 5 times a power of ten', () => {
  expect([0.034, 0.34, 1, 1.9, 4.99, 5, 72].map(roundStep).map((step) => Number(step.toPrecision(6)))).toEqual([0.02, 0.2, 1, 1, 2, 5, 50]);
});
