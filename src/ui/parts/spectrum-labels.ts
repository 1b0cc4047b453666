/** Where the labels of a spectrum may stand, best place first; `label-places.ts` settles which of them get it. */

import { type LabelBox, type LabelChoice, overlaps } from './label-places.ts';
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
 * @param topOf    highest point of the drawn line within a reach of a frequency, px
 * @param shunned  where it stands only if there is no other place
 */
export const toneChoices = (
  { x, frequencyHz, label }: LabelledPoint & { readonly frequencyHz: number },
  frame: PlotFrame,
  topOf: (frequencyHz: number, reachPx: number) => number,
  widthOf: WidthOf,
  shunned: readonly LabelBox[] = [],
): LabelChoice[] => {
  const lines = inTwoLines(label, widthOf);
  const widthPx = Math.max(...lines.map(widthOf));
  const heightPx = TEXT_PX * lines.length;
  const pxPerHz = frame.widthPx / frame.highestHz;
  const choices = [-widthPx / 2, 8 - widthPx, -8].flatMap((offsetPx) => {
    const xPx = Math.max(frame.leftPx + 4, x + offsetPx);
    const lineTop = topOf(frequencyHz + (xPx + widthPx / 2 - x) / pxPerHz, widthPx / 2);
    return [12, 32, 52].map((abovePx) => ({ text: lines.join('\n'), widthPx, heightPx, xPx, yPx: lineTop - abovePx - heightPx }));
  });
  const isShunned = (choice: LabelChoice) => Number(shunned.some((box) => overlaps(box, choice)));
  return choices.toSorted((one, two) => isShunned(one) - isShunned(two));
};

const FLOOR_STEP_PX = 12;

/**
 * On the floor, as far right as may be; where the line takes that room, over the line where it is lowest; each in one line or in two.
 *
 * @param lineTopOf  highest point of the drawn line within a reach of a place, px
 */
export const floorChoices = (
  label: string,
  frame: PlotFrame,
  lineTopOf: (xPx: number, reachPx: number) => number,
  widthOf: WidthOf,
): LabelChoice[] => {
  const [right, bottom] = [frame.leftPx + frame.widthPx, frame.topPx + frame.heightPx];
  const inEachForm = (topOfBox: (box: { text: string; widthPx: number; heightPx: number }, xPx: number) => number): LabelChoice[] =>
    [[label], inTwoLines(label, widthOf)].flatMap((lines) => {
      const box = { text: lines.join('\n'), widthPx: Math.max(...lines.map(widthOf)), heightPx: TEXT_PX * lines.length };
      const count = Math.max(0, Math.floor((frame.widthPx - box.widthPx - 12) / FLOOR_STEP_PX) + 1);
      return Array.from({ length: count }, (_, step) => {
        const xPx = right - box.widthPx - 6 - step * FLOOR_STEP_PX;
        return { ...box, xPx, yPx: topOfBox(box, xPx) };
      });
    });
  const on = inEachForm(({ heightPx }) => bottom - heightPx - 4);
  const over = inEachForm(({ widthPx, heightPx }, xPx) => lineTopOf(xPx + widthPx / 2, widthPx / 2) - heightPx - 4);
  return [...on, ...over.toSorted((one, two) => two.yPx + two.heightPx - one.yPx - one.heightPx)];
};
