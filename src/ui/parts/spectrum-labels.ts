/** Where the labels of a spectrum may stand, best place first; `label-places.ts` settles which of them get it. */

import type { LabelBox, LabelChoice } from './label-places.ts';
import type { PlotFrame } from './spectrum-path.ts';
import { inTwoLines } from './text-width.ts';

/** Something found in the spectrum: its place in the drawing and its label. */
export interface LabelledPoint {
  readonly x: number;
  readonly y: number;
  readonly label: string;
}

type WidthOf = (text: string) => number;

export const TEXT_PX = 16;
const BESIDE_DISC_PX = 11;

/** The place of a disc itself, which no label may cover. */
export const discBox = ({ x, y }: LabelledPoint): LabelBox => ({ xPx: x - 6, yPx: y - 6, widthPx: 12, heightPx: 12 });

/** Right of the disc, left of it, above it. */
export const peakChoices = ({ x, y, label }: LabelledPoint, widthOf: WidthOf): LabelChoice[] => {
  const widthPx = widthOf(label);
  const box = { text: label, widthPx, heightPx: TEXT_PX };
  return [
    { ...box, xPx: x + BESIDE_DISC_PX, yPx: y - TEXT_PX / 2 },
    { ...box, xPx: x - BESIDE_DISC_PX - widthPx, yPx: y - TEXT_PX / 2 },
    { ...box, xPx: x - widthPx / 2, yPx: y - TEXT_PX - 8 },
  ];
};

/**
 * In two lines over the tone, clear of the line below: above its middle, else with its right or left end there.
 *
 * @param topOf  highest point of the drawn line within a reach of a frequency, px
 */
export const toneChoices = (
  { x, frequencyHz, label }: LabelledPoint & { readonly frequencyHz: number },
  frame: PlotFrame,
  topOf: (frequencyHz: number, reachPx: number) => number,
  widthOf: WidthOf,
): LabelChoice[] => {
  const lines = inTwoLines(label, widthOf);
  const widthPx = Math.max(...lines.map(widthOf));
  const heightPx = TEXT_PX * lines.length;
  const pxPerHz = frame.widthPx / frame.highestHz;
  return [-widthPx / 2, 8 - widthPx, -8].flatMap((offsetPx) => {
    const xPx = Math.max(frame.leftPx + 4, x + offsetPx);
    const lineTop = topOf(frequencyHz + (xPx + widthPx / 2 - x) / pxPerHz, widthPx / 2);
    return [12, 32].map((abovePx) => ({ text: lines.join('\n'), widthPx, heightPx, xPx, yPx: lineTop - abovePx - heightPx }));
  });
};

/** In the lower right corner, on the floor. */
export const floorChoices = (label: string, frame: PlotFrame, widthOf: WidthOf): LabelChoice[] => {
  const widthPx = widthOf(label);
  const [right, bottom] = [frame.leftPx + frame.widthPx, frame.topPx + frame.heightPx];
  return [{ text: label, widthPx, heightPx: TEXT_PX, xPx: right - widthPx - 6, yPx: bottom - TEXT_PX - 4 }];
};
