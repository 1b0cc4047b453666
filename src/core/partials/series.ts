/** The partials of one stiff span as a series: where number m lies, and which number a frequency is. */

/** A span's fundamental with its inharmonicity coefficient B in f_m = m f0 sqrt(1 + B m²). */
export interface Series {
  /** Frequency of partial 1, Hz: f0 sqrt(1 + B). */
  readonly firstHz: number;
  readonly inharmonicity: number;
}

/** f_m / f_1 = m sqrt((1 + B m²) / (1 + B)): hinged ends exactly; clamping moves f1 and all others alike, hardly their ratios. */
export const partialRatio = (number: number, inharmonicity: number): number =>
  number * Math.sqrt((1 + inharmonicity * number ** 2) / (1 + inharmonicity));

/**
 * By how much clamped ends make partial m lie lower than the law says once B is taken from the first two, relative: found from the beam's
 * exact eigenfrequencies (eps 0.01 to 0.12, m up to 8, within a third); hinged ends obey the law, others lie between.
 */
export const endsBend = (number: number, inharmonicity: number): number =>
  Math.min(MOST_BEND, (0.03 * inharmonicity ** 2 * (number ** 2 - 1) * (number ** 2 - 4)) / (1 + inharmonicity * number ** 2));

/** Beyond it a partial's place says next to nothing. */
const MOST_BEND = 0.05;

export const partialOfSeriesHz = (series: Series, number: number): number => series.firstHz * partialRatio(number, series.inharmonicity);

/** Number of the partial that lies nearest to a frequency; 0 below half the first. */
export function nearestPartial(series: Series, frequencyHz: number): number {
  const { inharmonicity: b, firstHz } = series;
  const squared = (frequencyHz / firstHz) ** 2 * (1 + b); // m² (1 + B m²)
  return Math.round(b < 1e-9 ? Math.sqrt(squared) : Math.sqrt((Math.sqrt(1 + 4 * b * squared) - 1) / (2 * b)));
}

/**
 * The series in which two frequencies are partials a < b: with g = (f_b/f_a)² a²/b², B = (g − 1)/(b² − g a²).
 *
 * @returns undefined where no B >= 0 does it; a slightly negative B within `slack` counts as 0
 */
export function seriesThrough(
  lower: { readonly number: number; readonly frequencyHz: number },
  upper: { readonly number: number; readonly frequencyHz: number },
  slack: number,
): Series | undefined {
  const g = (upper.frequencyHz / lower.frequencyHz) ** 2 * (lower.number / upper.number) ** 2;
  const below = upper.number ** 2 - g * lower.number ** 2;
  if (below <= 0) return undefined;
  const exact = (g - 1) / below;
  if (exact < -slack) return undefined;
  const inharmonicity = Math.max(0, exact);
  return { firstHz: lower.frequencyHz / partialRatio(lower.number, inharmonicity), inharmonicity };
}
