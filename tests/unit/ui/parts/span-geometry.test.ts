/** The span's drawing stays inside its width, and a short span looks short. */

import { describe, expect, it } from 'vitest';
import { spanGeometry } from '../../../../src/ui/parts/span-geometry.ts';

describe('drawing of the span', () => {
  it.each(['small', 'big'] as const)('%s: pulleys and belt stay inside', (variant) => {
    for (const widthPx of [200, 264, 320, 390, 480, 900]) {
      const { leftPx, rightPx, axisPx, beltPx } = spanGeometry(variant, widthPx);
      const reachPx = axisPx - beltPx;
      expect(leftPx - reachPx).toBeGreaterThanOrEqual(0);
      expect(rightPx + reachPx).toBeLessThanOrEqual(widthPx);
      expect(leftPx + rightPx).toBeCloseTo(widthPx, 9);
    }
  });

  it('draws a short span shorter, never so short that the pulleys touch', () => {
    const length = (spanLengthM?: number) => {
      const { leftPx, rightPx } = spanGeometry('small', 264, spanLengthM);
      return rightPx - leftPx;
    };
    expect(length(0.045)).toBeLessThan(length(0.12));
    expect(length(0.15)).toBe(length());
    expect(length(0.9)).toBe(length());
    expect(length(0.001)).toBeGreaterThan(2 * spanGeometry('small', 264).radiusPx);
  });
});
