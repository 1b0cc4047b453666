/** Every way in which the heard sinusoids may be numbered as partials of one span, as fundamentals with their inharmonicity coefficient. */

import type { HeardSinusoid } from '../partials/extract.ts';
import { partialRatio, type Series, seriesThrough } from '../partials/series.ts';
import type { SearchBounds } from './search-bounds.ts';

const HIGHEST_NUMBER_STARTED_FROM = 9;
const PAIR_DISTANCE = 4;
/** Values of B for a sinusoid that stands alone: 0, and from 5e-5 to the stiffest span, evenly in the logarithm. */
const INHARMONICITIES = [0, ...Array.from({ length: 20 }, (_, i) => 10 ** (-4 * (1 - (i + 1) / 20)))];
/** A pair may ask for so much less than no stiffness, in relative frequency, and still count as none. */
const PAIR_SLACK = 0.014;
/** Sinusoids of less weight start no series. */
const LEAST_WEIGHT = 0.02;
/** Room below the least inharmonicity that the bounds allow. */
const LESS_STIFF = { share: 0.5, less: 1e-4 };

/** Each strong sinusoid as partial 1 to 9 on a grid of B, and each pair of sinusoids as two partials, which gives B exactly. */
export function candidateSeries(sinusoids: readonly HeardSinusoid[], bounds: SearchBounds): Series[] {
  const candidates: Series[] = [];
  const add = (series: Series) => {
    if (series.firstHz < bounds.lowestFirstHz || series.firstHz > bounds.highestFirstHz) return;
    const allowed = bounds.inharmonicityAt(series.firstHz);
    if (series.inharmonicity < LESS_STIFF.share * allowed.low - LESS_STIFF.less || series.inharmonicity > allowed.high) return;
    candidates.push(series);
  };
  const ascending = sinusoids.filter(({ weight }) => weight > LEAST_WEIGHT).toSorted((a, b) => a.frequencyHz - b.frequencyHz);
  ascending.forEach((lower, i) => {
    for (let number = 1; number <= HIGHEST_NUMBER_STARTED_FROM; number++) {
      for (const inharmonicity of INHARMONICITIES) add({ firstHz: lower.frequencyHz / partialRatio(number, inharmonicity), inharmonicity });
    }
    for (const upper of ascending.slice(i + 1)) {
      for (let a = 1; a <= HIGHEST_NUMBER_STARTED_FROM; a++) {
        for (let b = a + 1; b <= a + PAIR_DISTANCE; b++) {
          const slack = PAIR_SLACK / (b * b - a * a);
          const series = seriesThrough({ number: a, frequencyHz: lower.frequencyHz }, { number: b, frequencyHz: upper.frequencyHz }, slack);
          if (series) add(series);
        }
      }
    }
  });
  return candidates;
}
