/**
 * Which series of partials the sound is: every way to number the heard sinusoids is a candidate, and each candidate is scored as a
 * log-likelihood ratio against clutter (natural units). A missing first partial is allowed; a comb twice as dense has to pay for it.
 */

import { nearestPartial, partialOfSeriesHz, type Series } from '../partials/series.ts';
import { candidateSeries } from './candidates.ts';
import type { SearchBounds } from './search-bounds.ts';
import { type Candidate, type HeardStretch, hitsOf, scoreOf } from './series-score.ts';
import { settledSeries } from './settle.ts';

export interface Fundamental {
  readonly best: Candidate;
  /** Best candidate with another fundamental. */
  readonly rival?: Candidate | undefined;
  /** Score and half the lead over the rival (up to 4): what the numbering is worth. */
  readonly evidence: number;
}

/** What lies so near to a partial, in ln f, belongs to it. */
const BELONGS_WITHIN = 0.017;
/** Numberings that are scored in full. */
const MOST_PROMISING = 40;
/** Candidates closer than this are the same fundamental. */
const SAME_FUNDAMENTAL = 0.03;
const NO_RIVAL_LEAD = 20;
/** What makes a second series complete, and how far above it the torsion of the same belt lies. */
const SECOND_SERIES = { leastWeight: 0.8, leastPartials: 2, leastScore: 3, lowestRatio: 1.25, highestRatio: 3.2 };
/** Without a span nothing bounds the stiffness, but few things are stiffer than a short belt; at twice that the whole penalty is due. */
const STIFF_UNTOLD = { penalty: 2.5, from: 0.06 };
/** A fundamental outside the expected forces has to be this much better. */
const OUTSIDE_EXPECTED = 2;

/**
 * @param stretches  the same ring from two or more starts; the first names the partials, the scores add
 * @returns undefined where no series within the bounds explains anything
 */
export function fundamentalOf(stretches: readonly HeardStretch[], bounds: SearchBounds): Fundamental | undefined {
  const scored = scoredCandidates(stretches, bounds);
  const first = largest(scored);
  if (!first || first.heard.size === 0) return undefined;
  const best = bounds.spanTold ? lowerOfTwoSeries(first, stretches, bounds) : first;
  const rival = largest(scored.filter(({ series }) => Math.abs(Math.log(series.firstHz / best.series.firstHz)) > SAME_FUNDAMENTAL));
  return { best, rival, evidence: best.score + 0.5 * Math.min(4, leadOver(best, rival)) };
}

function scoredCandidates(stretches: readonly HeardStretch[], bounds: SearchBounds): Candidate[] {
  return promising(stretches[0]!, bounds).map((series) => {
    const [first, ...others] = stretches.map((stretch) => scoreOf(series, stretch, bounds.spanTold));
    const total = others.reduce((sum, other) => sum + other.score, first!.score) / stretches.length;
    const outside = bounds.expectedFirstHz && (series.firstHz < bounds.expectedFirstHz.low || series.firstHz > bounds.expectedFirstHz.high);
    const stiff = bounds.spanTold ? 0 : STIFF_UNTOLD.penalty * Math.min(1, Math.max(0, series.inharmonicity / STIFF_UNTOLD.from - 1));
    return { ...first!, score: total - stiff - (outside ? OUTSIDE_EXPECTED : 0) };
  });
}

/** Of the many candidates those that may win: one for each way to number the sinusoids, settled on them, the best by their hits alone. */
function promising({ sinusoids }: HeardStretch, bounds: SearchBounds): Series[] {
  const byNumbering = new Map<string, { series: Series; rough: number }>();
  for (const series of candidateSeries(sinusoids, bounds)) {
    const { hits, explained } = hitsOf(series, sinusoids);
    if (hits.length === 0) continue;
    let rough = 0;
    let key = '';
    for (const { number, index, gain } of hits) {
      rough += gain;
      key += `${index}:${number} `;
    }
    for (let index = 0; index < explained.length; index++) if (explained[index] === 0) rough -= sinusoids[index]!.weight;
    const known = byNumbering.get(key);
    if (!known || rough > known.rough) byNumbering.set(key, { series, rough });
  }
  return [...byNumbering.values()]
    .toSorted((a, b) => b.rough - a.rough)
    .slice(0, MOST_PROMISING)
    .map(({ series }) => settledSeries(series, sinusoids, bounds.inharmonicityAt(series.firstHz)));
}

/**
 * Where what the best series leaves over is a complete series of its own, some way below, the best one is the torsion of a wide belt or
 * another span's, and the lower one is the span: nothing of a span rings below its first partial.
 */
function lowerOfTwoSeries(best: Candidate, stretches: readonly HeardStretch[], bounds: SearchBounds): Candidate {
  const { series, unexplained } = best;
  if (unexplained < SECOND_SERIES.leastWeight) return best;
  const rests = stretches.map((stretch) => ({
    ...stretch,
    sinusoids: stretch.sinusoids.filter(({ frequencyHz }) => !belongsTo(series, frequencyHz)),
  }));
  if (rests.some(({ sinusoids }) => sinusoids.length < SECOND_SERIES.leastPartials)) return best;
  const second = largest(scoredCandidates(rests, bounds).filter(({ heard }) => heard.has(1) && heard.size >= SECOND_SERIES.leastPartials));
  if (!second || second.score < SECOND_SERIES.leastScore) return best;
  const ratio = series.firstHz / second.series.firstHz;
  if (ratio < SECOND_SERIES.lowestRatio || ratio > SECOND_SERIES.highestRatio) return best;
  const asWhole = stretches.map((stretch) => scoreOf(second.series, stretch, bounds.spanTold));
  return { ...asWhole[0]!, score: second.score };
}

const belongsTo = (series: Series, frequencyHz: number): boolean => {
  const number = nearestPartial(series, frequencyHz);
  return number >= 1 && Math.abs(Math.log(frequencyHz / partialOfSeriesHz(series, number))) < BELONGS_WITHIN;
};

/** Score over the rival's; without a rival as much as none could ever take back. */
export const leadOver = (best: Candidate, rival: Candidate | undefined): number => (rival ? best.score - rival.score : NO_RIVAL_LEAD);

const largest = (candidates: readonly Candidate[]): Candidate | undefined =>
  candidates.reduce<Candidate | undefined>((top, candidate) => (top && top.score >= candidate.score ? top : candidate), undefined);
