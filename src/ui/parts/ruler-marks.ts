/** Where an interval and its label stand on the ruler, as plain figures for the drawing. */

import type { ShownForce } from './ruler-range.ts';
import type { RulerScale } from './ruler-scale.ts';

/** A label's place: x of its anchor, and whether it stands above the line instead of beside it. */
export interface LabelPlace {
  readonly xPx: number;
  readonly anchor: 'start' | 'end' | 'middle';
  readonly above: boolean;
}

export interface RulerMark {
  readonly fromPx: number;
  readonly toPx: number;
  /** The interval goes on beyond the ruler, or has no end: an arrow instead of a cap. */
  readonly openLow: boolean;
  readonly openHigh: boolean;
  /** Place of the value; missing where the ruler does not reach it, or where there is none. */
  readonly valuePx?: number | undefined;
}

const LABEL_GAP_PX = 8;

const within = (xPx: number, widthPx: number): number => Math.min(widthPx, Math.max(0, xPx));

/** Drawn ends of an interval; undefined where it has neither value nor bounds. */
export const rulerMark = ({ lowN, highN, valueN }: ShownForce, scale: RulerScale): RulerMark | undefined => {
  if (lowN === undefined && highN === undefined && valueN === undefined) return undefined;
  const lowPx = scale.xOf(lowN ?? 0); // where there is no lower bound, an arrow points to zero
  const highPx = highN === undefined ? Number.POSITIVE_INFINITY : scale.xOf(highN);
  const valuePx = valueN === undefined ? undefined : scale.xOf(valueN);
  return {
    fromPx: within(lowPx, scale.widthPx),
    toPx: within(highPx, scale.widthPx),
    openLow: lowN === undefined || lowPx < 0,
    openHigh: highPx > scale.widthPx,
    valuePx: valuePx !== undefined && valuePx >= 0 && valuePx <= scale.widthPx ? valuePx : undefined,
  };
};

/** Right of the interval where there is room, else left of it, else above its right end. */
export const labelPlace = ({ fromPx, toPx }: RulerMark, labelWidthPx: number, widthPx: number): LabelPlace => {
  if (toPx + LABEL_GAP_PX + labelWidthPx <= widthPx) return { xPx: toPx + LABEL_GAP_PX, anchor: 'start', above: false };
  if (fromPx - LABEL_GAP_PX - labelWidthPx >= 0) return { xPx: fromPx - LABEL_GAP_PX, anchor: 'end', above: false };
  return { xPx: Math.max(toPx - LABEL_GAP_PX, labelWidthPx), anchor: 'end', above: true };
};

/**
 * In the upper right corner of the band where it is wide enough, else right of it, else left of it.
 *
 * @returns undefined where there is no room at all
 */
export const bandLabelPlace = (fromPx: number, toPx: number, labelWidthPx: number, widthPx: number): LabelPlace | undefined => {
  if (labelWidthPx + 2 * LABEL_GAP_PX <= toPx - fromPx) return { xPx: toPx - LABEL_GAP_PX, anchor: 'end', above: false };
  if (toPx + LABEL_GAP_PX + labelWidthPx <= widthPx) return { xPx: toPx + LABEL_GAP_PX, anchor: 'start', above: false };
  if (fromPx - LABEL_GAP_PX - labelWidthPx >= 0) return { xPx: fromPx - LABEL_GAP_PX, anchor: 'end', above: false };
  return undefined;
};
