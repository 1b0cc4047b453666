/** Where the parts of the span's drawing stand: two pulleys, the belt over them, the dimension line above. */

export interface SpanGeometry {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Tangent points, where the free belt begins and ends; above the middle of each pulley. */
  readonly leftPx: number;
  readonly rightPx: number;
  /** Middle of the belt's back. */
  readonly beltPx: number;
  readonly dimensionPx: number;
  readonly radiusPx: number;
  /** Axes of the pulleys. */
  readonly axisPx: number;
}

/** From this length on, the drawing is as wide as it gets. */
const FULL_LENGTH_M = 0.15;
const SHORTEST_SHARE = 0.42;

const SIZES = {
  small: { heightPx: 112, radiusPx: 16, beltPx: 56, dimensionPx: 14, marginPx: 14, widestPx: 200 },
  big: { heightPx: 206, radiusPx: 38, beltPx: 78, dimensionPx: 16, marginPx: 14, widestPx: 400 },
  narrow: { heightPx: 134, radiusPx: 22, beltPx: 62, dimensionPx: 14, marginPx: 14, widestPx: 320 },
} as const;

const NARROW_BELOW_PX = 420;
const BACK_TO_PULLEY_PX = 6;

/**
 * @param spanLengthM  a short span is drawn shorter (by its root, so that 45 mm still shows); missing: full width
 */
export const spanGeometry = (variant: 'big' | 'small', widthPx: number, spanLengthM?: number | undefined): SpanGeometry => {
  const size = SIZES[variant === 'big' && widthPx < NARROW_BELOW_PX ? 'narrow' : variant];
  const share = spanLengthM === undefined ? 1 : Math.min(1, Math.max(SHORTEST_SHARE, Math.sqrt(spanLengthM / FULL_LENGTH_M)));
  const fullPx = Math.min(size.widestPx, widthPx - 2 * (size.radiusPx + size.marginPx));
  const spanPx = Math.max(2 * size.radiusPx + 12, fullPx * share);
  return {
    widthPx,
    heightPx: size.heightPx,
    leftPx: (widthPx - spanPx) / 2,
    rightPx: (widthPx + spanPx) / 2,
    beltPx: size.beltPx,
    dimensionPx: size.dimensionPx,
    radiusPx: size.radiusPx,
    axisPx: size.beltPx + BACK_TO_PULLEY_PX + size.radiusPx,
  };
};
