/** Finds room for labels in a drawing: the first place that is free, in the order of their weight; a label without room is left out. */

export interface LabelBox {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface LabelChoice extends LabelBox {
  readonly text: string;
}

export const overlaps = (a: LabelBox, b: LabelBox): boolean =>
  a.xPx < b.xPx + b.widthPx && b.xPx < a.xPx + a.widthPx && a.yPx < b.yPx + b.heightPx && b.yPx < a.yPx + a.heightPx;

const contains = (outer: LabelBox, inner: LabelBox): boolean =>
  inner.xPx >= outer.xPx &&
  inner.yPx >= outer.yPx &&
  inner.xPx + inner.widthPx <= outer.xPx + outer.widthPx &&
  inner.yPx + inner.heightPx <= outer.yPx + outer.heightPx;

/**
 * @param wishes  for each label its possible places, best first; the weightiest label first
 * @param room    no label leaves it
 * @param taken   what no label may cover
 * @returns for each label its place, or undefined where all are taken
 */
export const labelPlaces = (
  wishes: readonly (readonly LabelChoice[])[],
  room: LabelBox,
  taken: readonly LabelBox[] = [],
): (LabelChoice | undefined)[] => {
  const occupied: LabelBox[] = [...taken];
  return wishes.map((choices) => {
    const free = choices.find((choice) => contains(room, choice) && !occupied.some((box) => overlaps(box, choice)));
    if (free) occupied.push(free);
    return free;
  });
};
