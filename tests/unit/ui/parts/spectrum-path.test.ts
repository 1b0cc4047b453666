/** The drawn line keeps every peak, whatever the width, and never leaves its frame. */

import { describe, expect, it } from 'vitest';
import { floorPath, levelNear, lineBoxes, linePath, xOfHz, yOfDbfs } from '../../../../src/ui/parts/spectrum-path.ts';

const frame = { leftPx: 40, topPx: 20, widthPx: 300, heightPx: 200, highestHz: 600, lowDbfs: -80, highDbfs: 0 };
const binWidthHz = 0.7;
const levelsDbfs = Float32Array.from({ length: 2000 }, (_, bin) => (bin === 333 ? -12 : -60));
const points = (path: string) =>
  path
    .replace(/[MZ]/g, '')
    .split('L')
    .map((point) => point.split(',').map(Number) as [number, number]);

describe('line of a spectrum', () => {
  it('shows a peak of one bin at its own place and height', () => {
    const [x, y] = points(linePath(frame, { binWidthHz, levelsDbfs })).reduce((top, point) => (point[1] < top[1] ? point : top));
    expect(Math.abs(x - xOfHz(frame, 333 * binWidthHz))).toBeLessThan(0.06);
    expect(Math.abs(y - yOfDbfs(frame, -12))).toBeLessThan(0.06);
  });

  it('has at most one point for each pixel, from left to right, inside the frame', () => {
    const line = points(linePath(frame, { binWidthHz, levelsDbfs }));
    expect(line.length).toBeLessThanOrEqual(frame.widthPx + 1);
    expect(line.every(([x], index) => index === 0 || x > line[index - 1]![0])).toBe(true);
    expect(line.every(([x, y]) => x >= 40 && x <= 340 && y >= 20 && y <= 220)).toBe(true);
  });

  it('is covered by its boxes, column by column', () => {
    const boxes = lineBoxes(frame, { binWidthHz, levelsDbfs });
    for (const [x, y] of points(linePath(frame, { binWidthHz, levelsDbfs }))) {
      const covers = boxes.some(
        ({ xPx, yPx, widthPx, heightPx }) => x >= xPx - 0.1 && x <= xPx + widthPx + 0.1 && y >= yPx && y <= yPx + heightPx,
      );
      expect(covers, `${x}, ${y}`).toBe(true);
    }
  });

  it('puts silence on the bottom', () => {
    const silence = new Float32Array(100).fill(Number.NEGATIVE_INFINITY);
    expect(points(linePath(frame, { binWidthHz, levelsDbfs: silence })).every(([, y]) => y === 220)).toBe(true);
    expect(linePath(frame, { binWidthHz, levelsDbfs: [] })).toBe('');
  });

  it('closes the floor along the bottom', () => {
    const floor = floorPath(frame, { binWidthHz, levelsDbfs });
    expect(floor.startsWith('M40,220')).toBe(true);
    expect(floor.endsWith('L340,220Z')).toBe(true);
    expect(floorPath(frame, { binWidthHz, levelsDbfs: [] })).toBe('');
  });
});

it('finds the level near a frequency', () => {
  expect(levelNear(frame, { binWidthHz, levelsDbfs }, 333 * binWidthHz + 2, 3)).toBe(-12);
  expect(levelNear(frame, { binWidthHz, levelsDbfs }, 333 * binWidthHz + 20, 3)).toBe(-60);
  expect(levelNear(frame, { binWidthHz, levelsDbfs }, 9000, 3)).toBeUndefined();
});
