/** A numbering's own series: fundamental and inharmonicity coefficient that bring all its partials to their places. */

import type { HeardSinusoid } from '../partials/extract.ts';
import { endsBend, partialRatio, type Series } from '../partials/series.ts';
import { ENDS, hitsOf, PLACE } from './series-score.ts';

const ROUNDS = 3;
/** What the numbering that it began with says of B, relative and at least: keeps B where the partials say nothing of it. */
const BEFORE = { relative: 0.3, least: 0.002 };

/** Least squares of ln f over the partials that the series explains, weighted by what each is worth. */
export function settledSeries(
  start: Series,
  sinusoids: readonly HeardSinusoid[],
  allowed: { readonly low: number; readonly high: number },
): Series {
  const { hits } = hitsOf(start, sinusoids);
  let lnFirst = Math.log(start.firstHz);
  let b = start.inharmonicity;
  for (let round = 0; round < ROUNDS; round++) {
    const before = 1 / Math.max(BEFORE.least, BEFORE.relative * start.inharmonicity) ** 2;
    let [aa, ab, bb, ay, by] = [0, 0, before, 0, before * (start.inharmonicity - b)];
    for (const { number: m, index } of hits) {
      const { frequencyHz, frequencyU, weight } = sinusoids[index]!;
      const bend = endsBend(m, b);
      const variance = (frequencyU / frequencyHz) ** 2 + (ENDS.spread * bend) ** 2 + PLACE.usual ** 2;
      const residual = Math.log(frequencyHz) - lnFirst - Math.log(partialRatio(m, b)) + ENDS.mean * bend;
      const slope = 0.5 * (m ** 2 / (1 + b * m ** 2) - 1 / (1 + b));
      const w = weight / variance;
      aa += w;
      ab += w * slope;
      bb += w * slope * slope;
      ay += w * residual;
      by += w * slope * residual;
    }
    const determinant = aa * bb - ab * ab;
    if (!(determinant > 0)) break;
    lnFirst += (ay * bb - by * ab) / determinant;
    b = Math.min(allowed.high, Math.max(0, b + (by * aa - ay * ab) / determinant));
  }
  return { firstHz: Math.exp(lnFirst), inharmonicity: b };
}
