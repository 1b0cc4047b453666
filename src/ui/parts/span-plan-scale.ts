/** Where things stand in the plot of doubt against span length: both axes, the curves, the zones. */

export interface PlanPoint {
  readonly spanM: number;
  /** Doubt of the force at the low and at the high force, relative; missing where it has no bound. */
  readonly atLow?: number | undefined;
  readonly atHigh?: number | undefined;
}

export interface PlanScale {
  readonly leftPx: number;
  readonly rightPx: number;
  readonly topPx: number;
  readonly bottomPx: number;
  readonly fromM: number;
  readonly toM: number;
  /** Doubt at the top of the plot. */
  readonly most: number;
  /** Least distance of two ticks of the lengths. */
  readonly tickPx: number;
}

const TOP_PX = 52;
const PLOT_PX = 210;
const LEFT_PX = 46;
/** Room for the names of the rows, where there are rows. */
const LEFT_OF_ROWS_PX = 124;
const RIGHT_PX = 24;
const STEPS_MM = [5, 10, 20, 25, 50, 100, 200];
const FIGURE_PX = 52;
/** A range of frequencies below a figure is wider than the figure. */
const FIGURE_OF_ROWS_PX = 84;

/** @param options.most  doubt that must be on the plot; what lies above is cut off */
export function planScale(
  widthPx: number,
  reach: { readonly fromM: number; readonly toM: number },
  { most, hasRows = false }: { readonly most: number; readonly hasRows?: boolean | undefined },
): PlanScale {
  const leftPx = hasRows ? LEFT_OF_ROWS_PX : LEFT_PX;
  return {
    leftPx,
    rightPx: Math.max(leftPx + 60, widthPx - RIGHT_PX),
    tickPx: hasRows ? FIGURE_OF_ROWS_PX : FIGURE_PX,
    topPx: TOP_PX,
    bottomPx: TOP_PX + PLOT_PX,
    ...reach,
    most: Math.ceil(most * 10 - 1e-9) / 10,
  };
}

export const xOf = (scale: PlanScale, spanM: number): number => {
  const share = (spanM - scale.fromM) / (scale.toM - scale.fromM);
  return scale.leftPx + Math.min(1, Math.max(0, share)) * (scale.rightPx - scale.leftPx);
};

export const yOf = (scale: PlanScale, doubt: number): number =>
  scale.bottomPx - Math.min(1, Math.max(0, doubt / scale.most)) * (scale.bottomPx - scale.topPx);

/** Whole millimetres with room for their figures. */
export function spanTicksM({ fromM, toM, leftPx, rightPx, tickPx }: PlanScale): readonly number[] {
  const perMm = (rightPx - leftPx) / (1000 * (toM - fromM));
  const step = STEPS_MM.find((mm) => mm * perMm >= tickPx) ?? 200;
  const first = Math.ceil((1000 * fromM) / step - 1e-9) * step;
  const ticks: number[] = [];
  for (let mm = first; mm <= 1000 * toM + 1e-6; mm += step) ticks.push(mm / 1000);
  return ticks;
}

export function doubtTicks({ most }: PlanScale): readonly number[] {
  const step = most > 0.65 ? 0.2 : 0.1;
  return Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, i) => i * step);
}

/** A curve from the first length at which it is on the plot; empty where it nowhere is. */
export function curvePath(scale: PlanScale, points: readonly PlanPoint[], of: 'atLow' | 'atHigh'): string {
  return joined(crossing(scale, points, of));
}

/** Between both curves, as far as both are on the plot or cut off at its top. */
export function bandPath(scale: PlanScale, points: readonly PlanPoint[]): string {
  const above = outline(scale, points, 'atLow');
  const below = outline(scale, points, 'atHigh');
  return above === '' || below === '' ? '' : `${above} L${below.slice(1).split(' L').reverse().join(' L')} Z`;
}

const at = (scale: PlanScale, spanM: number, doubt: number): string => `${xOf(scale, spanM).toFixed(1)},${yOf(scale, doubt).toFixed(1)}`;

/** Those on the plot, with one at its right edge, in between its neighbours. */
function within({ fromM, toM }: PlanScale, points: readonly PlanPoint[]): readonly PlanPoint[] {
  const inside = points.filter(({ spanM }) => spanM >= fromM - 1e-9 && spanM <= toM + 1e-9);
  const last = inside.at(-1);
  const next = points.find(({ spanM }) => spanM > toM + 1e-9);
  if (!last || !next || last.spanM > toM - 1e-9) return inside;
  const share = (toM - last.spanM) / (next.spanM - last.spanM);
  const mixed = (one: number | undefined, other: number | undefined) =>
    one === undefined || other === undefined ? undefined : one + share * (other - one);
  return [...inside, { spanM: toM, atLow: mixed(last.atLow, next.atLow), atHigh: mixed(last.atHigh, next.atHigh) }];
}

function crossing(scale: PlanScale, points: readonly PlanPoint[], of: 'atLow' | 'atHigh'): readonly string[] {
  const on: string[] = [];
  let before: { spanM: number; doubt: number } | undefined;
  for (const point of within(scale, points)) {
    const doubt = point[of] ?? Number.POSITIVE_INFINITY;
    if (doubt <= scale.most) {
      if (on.length === 0 && before && before.doubt < Number.POSITIVE_INFINITY) {
        const share = (before.doubt - scale.most) / (before.doubt - doubt);
        on.push(at(scale, before.spanM + share * (point.spanM - before.spanM), scale.most));
      }
      on.push(at(scale, point.spanM, doubt));
    }
    before = { spanM: point.spanM, doubt };
  }
  return on;
}

function outline(scale: PlanScale, points: readonly PlanPoint[], of: 'atLow' | 'atHigh'): string {
  return joined(within(scale, points).map((point) => at(scale, point.spanM, Math.min(scale.most, point[of] ?? scale.most))));
}

const joined = (places: readonly string[]): string => (places.length === 0 ? '' : `M${places.join(' L')}`);
