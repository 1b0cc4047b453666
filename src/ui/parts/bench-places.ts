/** Where the points, curves and labels of the bench's drawing stand, in px. */

import { type LabelBox, type LabelChoice, labelPlaces } from './label-places.ts';

/** `mark`: 0 disc, 1 ring, 2 triangle, 3 square; further ones begin anew. */
export interface BenchPoint {
  readonly forceN: number;
  readonly y: number;
  /** Half of the 95 % interval. */
  readonly yDoubt: number;
  readonly mark: number;
  /** Of the lower drawing, percent. */
  readonly off: number;
  readonly offDoubt: number;
}

export interface Spot {
  readonly forceN: number;
  readonly y: number;
}

export interface BenchCurve {
  readonly name: string;
  readonly points: readonly Spot[];
}

export interface BenchDrawing {
  readonly points: readonly BenchPoint[];
  readonly curves: readonly BenchCurve[];
  /** The level that the curves rise to, with its 95 % interval. */
  readonly level: { readonly low: number; readonly value: number; readonly high: number; readonly name: string };
}

/** The upper drawing. */
export const PLOT = { heightPx: 250, leftPx: 44, rightPx: 12, topPx: 24 } as const;
const LABEL_HEIGHT_PX = 16;

export interface BenchScale {
  readonly x: (forceN: number) => number;
  readonly y: (value: number) => number;
  readonly ends: readonly [number, number];
  readonly yFrom: number;
  readonly yTo: number;
}

export function benchScale({ points, curves, level }: BenchDrawing, width: number): BenchScale {
  const forces = [...points, ...curves.flatMap((curve) => curve.points)].map(({ forceN }) => forceN);
  const ends = [Math.min(...forces) / 1.05, Math.max(...forces) * 1.05] as const;
  const all = [...points.flatMap(({ y, yDoubt }) => [y - yDoubt, y + yDoubt]), level.low, level.high];
  const margin = (Math.max(...all) - Math.min(...all)) * 0.08 || 1;
  const [yFrom, yTo] = [Math.min(...all) - margin, Math.max(...all) + margin];
  const share = (forceN: number): number => Math.log(forceN / ends[0]) / Math.log(ends[1] / ends[0]);
  return {
    ends,
    yFrom,
    yTo,
    x: (forceN) => PLOT.leftPx + share(forceN) * (width - PLOT.leftPx - PLOT.rightPx),
    y: (value) => PLOT.topPx + PLOT.heightPx * (1 - (value - yFrom) / (yTo - yFrom)),
  };
}

/** Room that a piece of a curve takes. */
function pieceOf(one: Spot, other: Spot, { x, y }: BenchScale): LabelBox {
  const [xs, ys] = [
    [x(one.forceN), x(other.forceN)],
    [y(one.y), y(other.y)],
  ];
  return {
    xPx: Math.min(...xs),
    yPx: Math.min(...ys) - 1,
    widthPx: Math.max(...xs) - Math.min(...xs),
    heightPx: Math.max(...ys) - Math.min(...ys) + 2,
  };
}

/** The level's name above it, then the names of the curves beside them where nothing is in the way; what finds no room is left out. */
export function benchLabels(
  { points, curves, level }: BenchDrawing,
  scale: BenchScale,
  widthPx: (text: string) => number,
): (LabelChoice | undefined)[] {
  const { x, y, ends } = scale;
  const right = x(ends[1]);
  const taken: LabelBox[] = [
    ...points.map((point) => ({ xPx: x(point.forceN) - 5, yPx: y(point.y) - 5, widthPx: 10, heightPx: 10 })),
    ...curves.flatMap((curve) => curve.points.slice(1).map((spot, i) => pieceOf(curve.points[i]!, spot, scale))),
    { xPx: PLOT.leftPx, yPx: y(level.value) - 2, widthPx: right - PLOT.leftPx, heightPx: 4 },
  ];
  const box = (text: string, xPx: number, yPx: number): LabelChoice => ({
    text,
    xPx,
    yPx,
    widthPx: widthPx(text),
    heightPx: LABEL_HEIGHT_PX,
  });
  const above = y(level.value) - LABEL_HEIGHT_PX - 4;
  const wishes = [
    [
      box(level.name, PLOT.leftPx + 4, above),
      box(level.name, right - widthPx(level.name), above),
      box(level.name, PLOT.leftPx + 4, y(level.value) + 4),
    ],
    ...curves.map(({ name, points: along }) =>
      along
        .filter((_, i) => i % 2 === 0)
        .flatMap(({ forceN, y: value }) => [
          box(name, x(forceN), y(value) + 5),
          box(name, x(forceN) - widthPx(name), y(value) - LABEL_HEIGHT_PX - 5),
        ]),
    ),
  ];
  const room = { xPx: PLOT.leftPx + 2, yPx: 14, widthPx: right - PLOT.leftPx - 2, heightPx: PLOT.heightPx + PLOT.topPx - 14 };
  return labelPlaces(wishes, room, taken);
}
