/** From levels in bins to the line of a plot: at most one point for each pixel, and a peak never lost between two. */

export interface PlotFrame {
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly highestHz: number;
  readonly lowDbfs: number;
  readonly highDbfs: number;
}

export interface BinnedLevels {
  readonly binWidthHz: number;
  /** Float32Array [binCount], dB, bin k at k · binWidthHz; −Infinity where there is nothing. */
  readonly levelsDbfs: ArrayLike<number>;
}

export const xOfHz = (frame: PlotFrame, frequencyHz: number): number => frame.leftPx + (frequencyHz / frame.highestHz) * frame.widthPx;

/** Place of a level; levels beyond the frame stand at its edge. */
export const yOfDbfs = (frame: PlotFrame, levelDbfs: number): number => {
  const share = (frame.highDbfs - levelDbfs) / (frame.highDbfs - frame.lowDbfs);
  return frame.topPx + Math.min(1, Math.max(0, share)) * frame.heightPx;
};

const tenth = (px: number): number => Math.round(px * 10) / 10;

/**
 * Strongest level of each column, in columns of a given width.
 *
 * @returns points from left to right, px
 */
const columnPeaks = (frame: PlotFrame, { binWidthHz, levelsDbfs }: BinnedLevels, columnPx: number): { x: number; y: number }[] => {
  const binCount = Math.min(levelsDbfs.length, Math.floor(frame.highestHz / binWidthHz) + 1);
  const points: { x: number; y: number; column: number }[] = [];
  for (let bin = 0; bin < binCount; bin++) {
    const x = xOfHz(frame, bin * binWidthHz);
    const y = yOfDbfs(frame, levelsDbfs[bin] ?? Number.NEGATIVE_INFINITY);
    const column = Math.floor((x - frame.leftPx) / columnPx);
    const last = points.at(-1);
    if (!last || last.column !== column) points.push({ x, y, column });
    else if (y < last.y) points[points.length - 1] = { x, y, column };
  }
  return points;
};

/** SVG path data of the line; empty where there are no levels. */
export const linePath = (frame: PlotFrame, levels: BinnedLevels): string => {
  const points = columnPeaks(frame, levels, 1);
  return points.length === 0 ? '' : `M${points.map(({ x, y }) => `${tenth(x)},${tenth(y)}`).join('L')}`;
};

const BOX_COLUMN_PX = 6;

/** What the line covers, column by column, so that labels can keep clear of it. */
export const lineBoxes = (frame: PlotFrame, levels: BinnedLevels): { xPx: number; yPx: number; widthPx: number; heightPx: number }[] => {
  const points = columnPeaks(frame, levels, 1);
  const columns = new Map<number, { top: number; bottom: number }>();
  points.forEach(({ x, y }, index) => {
    const next = points[index + 1]?.y ?? y;
    const column = Math.floor((x - frame.leftPx) / BOX_COLUMN_PX);
    const { top, bottom } = columns.get(column) ?? { top: y, bottom: y };
    columns.set(column, { top: Math.min(top, y, next), bottom: Math.max(bottom, y, next) });
  });
  return [...columns].map(([column, { top, bottom }]) => ({
    xPx: frame.leftPx + column * BOX_COLUMN_PX,
    yPx: top - 1,
    widthPx: BOX_COLUMN_PX,
    heightPx: bottom - top + 2,
  }));
};

const FLOOR_COLUMN_PX = 8;

/** SVG path data of the area under the levels, coarser than the line: a floor is looked at, not read. */
export const floorPath = (frame: PlotFrame, levels: BinnedLevels): string => {
  const points = columnPeaks(frame, levels, FLOOR_COLUMN_PX);
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return '';
  const bottom = frame.topPx + frame.heightPx;
  const right = tenth(Math.max(last.x, Math.min(frame.leftPx + frame.widthPx, last.x + FLOOR_COLUMN_PX)));
  const line = points.map(({ x, y }) => `${tenth(x)},${tenth(y)}`).join('L');
  return `M${frame.leftPx},${bottom}L${frame.leftPx},${tenth(first.y)}L${line}L${right},${tenth(last.y)}L${right},${bottom}Z`;
};

/** Strongest level within a reach of a frequency, px, so that a disc sits on the line; undefined outside the bins. */
export const levelNear = (
  frame: PlotFrame,
  { binWidthHz, levelsDbfs }: BinnedLevels,
  frequencyHz: number,
  reachPx: number,
): number | undefined => {
  const reachHz = Math.max(binWidthHz, (reachPx * frame.highestHz) / frame.widthPx);
  const from = Math.max(0, Math.ceil((frequencyHz - reachHz) / binWidthHz));
  const to = Math.min(levelsDbfs.length - 1, Math.floor((frequencyHz + reachHz) / binWidthHz));
  if (to < from) return undefined;
  let strongest = Number.NEGATIVE_INFINITY;
  for (let bin = from; bin <= to; bin++) strongest = Math.max(strongest, levelsDbfs[bin] ?? strongest);
  return strongest;
};
