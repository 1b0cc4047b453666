/**
 * Which series of partials the sound is: every way to number the heard sinusoids is a candidate, and each candidate is scored as a
 * log-likelihood ratio against clutter (natural units). A missing first partial is allowed; a comb twice as dense has to pay for it.
 */

import type { HeardSinusoid } from '../partials/extract.ts';
import { nearestPartial, partialOfSeriesHz, type Series, seriesThrough } from '../partials/series.ts';
import { amplitude, decayS, qualityFactor } from '../spectrum/damped-sinusoid.ts';
import type { SearchBounds } from './search-bounds.ts';

/** The sinusoids heard in one stretch, and how faint a sinusoid would still have been heard there. */
export interface HeardStretch {
  readonly sinusoids: readonly HeardSinusoid[];
  /** Amplitude of a sinusoid that just reaches the threshold at a frequency, for a decay time. */
  audibleAmplitude(frequencyHz: number, decayS: number): number;
}

export interface Candidate {
  readonly series: Series;
  readonly score: number;
  /** Partials heard, by number, as indices into the sinusoids of the first stretch. */
  readonly heard: ReadonlyMap<number, number>;
  /** Weight of narrow sinusoids that belong to no partial. */
  readonly unexplained: number;
  /** Share of all weight that the series explains, 0 to 1. */
  readonly ownShare: number;
}

export interface Fundamental {
  readonly best: Candidate;
  /** Best candidate with another fundamental. */
  readonly rival?: Candidate | undefined;
  /** Score and half the lead over the rival (up to 4): what the numbering is worth. */
  readonly evidence: number;
}

/** A partial lies within about this share of its place; it grows where stiffness matters, since ends bend the law. */
const PLACE_SIGMA = 0.0035;
const FARTHEST_SIGMAS = 3.2;
/** Density of clutter in ln f against which a hit is judged. */
const CLUTTER_WIDTH = 0.4;
const HIGHEST_NUMBER_STARTED_FROM = 9;
const PAIR_DISTANCE = 4;
const GRID_OF_INHARMONICITY = 21;
const LARGEST_GRID_INHARMONICITY = 0.5;
/** Candidates closer than this are the same fundamental. */
const SAME_FUNDAMENTAL = 0.03;
const MISSING_SPREAD_DB = 9;
const MOST_FOR_MISSING = 2.5;
const MOST_FOR_MISSING_SECOND = 1.2;
const NODE_DISCOUNT = 0.15;
const MASKED_DISCOUNT = 0.3;
const MASKED_WITHIN = 0.03;
const MOST_FOR_UNEXPLAINED = 4;
const BELOW_FIRST = 0.83;
const FOR_BELOW_FIRST = 3;
/** Of an instrument with a body this is less true. */
const FOR_BELOW_FIRST_UNTOLD = 1.5;
const FIRST_NOT_HEARD = 1.5;
const NO_RIVAL_LEAD = 20;
/** What makes a second series complete, and how far above it the torsion of the same belt lies. */
const SECOND_SERIES = { leastWeight: 0.8, leastPartials: 2, leastScore: 3, lowestRatio: 1.25, highestRatio: 3.2 };
const SATELLITE = { withinHz: 25, ofAmplitude: 0.6, ofDecay: 0.75 };
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
  return candidateSeries(stretches[0]!.sinusoids, bounds).map((series) => {
    const [first, ...others] = stretches.map((stretch) => scoreOf(series, stretch, bounds.spanTold));
    const total = others.reduce((sum, other) => sum + other.score, first!.score) / stretches.length;
    const outside = bounds.expectedFirstHz && (series.firstHz < bounds.expectedFirstHz.low || series.firstHz > bounds.expectedFirstHz.high);
    const stiff = bounds.spanTold ? 0 : STIFF_UNTOLD.penalty * Math.min(1, Math.max(0, series.inharmonicity / STIFF_UNTOLD.from - 1));
    return { ...first!, score: total - stiff - (outside ? OUTSIDE_EXPECTED : 0) };
  });
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
  return number >= 1 && Math.abs(Math.log(frequencyHz / partialOfSeriesHz(series, number))) < FARTHEST_SIGMAS * PLACE_SIGMA * 1.5;
};

/** Score over the rival's; without a rival as much as none could ever take back. */
export const leadOver = (best: Candidate, rival: Candidate | undefined): number => (rival ? best.score - rival.score : NO_RIVAL_LEAD);

const largest = (candidates: readonly Candidate[]): Candidate | undefined =>
  candidates.reduce<Candidate | undefined>((top, candidate) => (top && top.score >= candidate.score ? top : candidate), undefined);

/** Each strong sinusoid as partial 1 to 9 on a grid of B, and each pair of sinusoids as two partials, which gives B exactly. */
function candidateSeries(sinusoids: readonly HeardSinusoid[], bounds: SearchBounds): Series[] {
  const candidates: Series[] = [];
  const add = (series: Series) => {
    if (series.firstHz < bounds.lowestFirstHz || series.firstHz > bounds.highestFirstHz) return;
    const allowed = bounds.inharmonicityAt(series.firstHz);
    if (series.inharmonicity >= 0.5 * allowed.low - 1e-4 && series.inharmonicity <= allowed.high) candidates.push(series);
  };
  const strong = sinusoids.filter(({ weight }) => weight > 0.02);
  for (const { frequencyHz } of strong) {
    for (let number = 1; number <= HIGHEST_NUMBER_STARTED_FROM; number++) {
      for (let i = 0; i < GRID_OF_INHARMONICITY; i++) {
        const inharmonicity = i === 0 ? 0 : LARGEST_GRID_INHARMONICITY * 10 ** (-4 * (1 - i / (GRID_OF_INHARMONICITY - 1)));
        const firstHz = frequencyHz / partialOfSeriesHz({ firstHz: 1, inharmonicity }, number);
        add({ firstHz, inharmonicity });
      }
    }
  }
  const ascending = strong.toSorted((a, b) => a.frequencyHz - b.frequencyHz);
  ascending.forEach((lower, i) => {
    for (const upper of ascending.slice(i + 1)) {
      for (let a = 1; a <= HIGHEST_NUMBER_STARTED_FROM; a++) {
        for (let b = a + 1; b <= a + PAIR_DISTANCE; b++) {
          const slack = (2 * PLACE_SIGMA * 2) / (b * b - a * a);
          const series = seriesThrough({ number: a, frequencyHz: lower.frequencyHz }, { number: b, frequencyHz: upper.frequencyHz }, slack);
          if (series) add(series);
        }
      }
    }
  });
  return candidates;
}

interface Hit {
  readonly index: number;
  readonly gain: number;
}

function scoreOf(series: Series, stretch: HeardStretch, spanTold: boolean): Candidate {
  const { sinusoids } = stretch;
  const hits = new Map<number, Hit>();
  const explained = new Uint8Array(sinusoids.length);
  sinusoids.forEach((sinusoid, index) => {
    const number = nearestPartial(series, sinusoid.frequencyHz);
    if (number < 1) return;
    const place = PLACE_SIGMA * (1 + Math.min(1, series.inharmonicity * number ** 2));
    const sigma = Math.hypot(place, sinusoid.frequencyU / sinusoid.frequencyHz);
    const z = Math.log(sinusoid.frequencyHz / partialOfSeriesHz(series, number)) / sigma;
    if (Math.abs(z) > FARTHEST_SIGMAS) return;
    explained[index] = 1;
    const gain = sinusoid.weight * (Math.log(CLUTTER_WIDTH / (sigma * number)) - z ** 2 / 2);
    if (gain > (hits.get(number)?.gain ?? 0)) hits.set(number, { index, gain });
  });
  let score = 0;
  for (const { gain } of hits.values()) score += gain;
  score -= missingPenalty(series, stretch, hits);
  const ownSinusoids = [...hits.values()].map(({ index }) => sinusoids[index]!);
  let unexplained = 0;
  let strongestBelow = 0;
  let weightOfAll = 0;
  let weightOfOwn = 0;
  sinusoids.forEach((sinusoid, index) => {
    if (explained[index]) {
      weightOfAll += sinusoid.weight;
      weightOfOwn += sinusoid.weight;
      return;
    }
    if (ownSinusoids.some((own) => isSatellite(sinusoid, own))) return;
    weightOfAll += sinusoid.weight;
    if (decayS(sinusoid) < 0.012 || qualityFactor(sinusoid) < 6) return;
    unexplained += sinusoid.weight;
    if (sinusoid.frequencyHz < BELOW_FIRST * series.firstHz) strongestBelow = Math.max(strongestBelow, sinusoid.weight);
  });
  score -= Math.min(MOST_FOR_UNEXPLAINED, unexplained) + (spanTold ? FOR_BELOW_FIRST : FOR_BELOW_FIRST_UNTOLD) * strongestBelow;
  if (!hits.has(1)) score -= FIRST_NOT_HEARD;
  const heard = new Map([...hits].map(([number, { index }]) => [number, index] as const));
  return { series, score, heard, unexplained, ownShare: weightOfAll > 0 ? weightOfOwn / weightOfAll : 0 };
}

/** What a room or a glide leaves beside a stronger partial: near it, weaker, sooner gone. It is no source of its own. */
export const isSatellite = (stranger: HeardSinusoid, own: HeardSinusoid): boolean =>
  Math.abs(stranger.frequencyHz - own.frequencyHz) < SATELLITE.withinHz &&
  amplitude(stranger) < SATELLITE.ofAmplitude * amplitude(own) &&
  decayS(stranger) < SATELLITE.ofDecay * decayS(own);

/** What the silence of the partials below the highest one heard costs: as improbable as they would have been loud. */
function missingPenalty(series: Series, stretch: HeardStretch, hits: ReadonlyMap<number, Hit>): number {
  const numbers = [...hits.keys()].sort((a, b) => a - b);
  const highest = numbers.at(-1) ?? 0;
  let total = 0;
  for (let number = 1; number < highest; number++) {
    if (hits.has(number)) continue;
    const above = numbers.find((n) => n > number)!;
    const below = numbers.findLast((n) => n < number) ?? above;
    const at = (n: number) => stretch.sinusoids[hits.get(n)!.index]!;
    const share = above === below ? 0 : (number - below) / (above - below);
    const decibels = (n: number) => 20 * Math.log10(amplitude(at(n)));
    const expectedDb = decibels(below) + share * (decibels(above) - decibels(below));
    const frequencyHz = partialOfSeriesHz(series, number);
    const audibleDb = 20 * Math.log10(stretch.audibleAmplitude(frequencyHz, decayS(at(below))));
    const excess = Math.max(0, expectedDb - audibleDb);
    let penalty = Math.min(MOST_FOR_MISSING, excess ** 2 / (2 * MISSING_SPREAD_DB ** 2));
    if (number === 2 && hits.has(1)) penalty = Math.min(penalty, MOST_FOR_MISSING_SECOND);
    if (hasMissingDivisor(number, hits)) penalty *= NODE_DISCOUNT;
    if (isMasked(frequencyHz, stretch.sinusoids, hits)) penalty *= MASKED_DISCOUNT;
    total += penalty;
  }
  return total;
}

/** Plucked or heard at a node, all multiples of a partial are gone together. */
function hasMissingDivisor(number: number, hits: ReadonlyMap<number, Hit>): boolean {
  for (let divisor = 2; divisor < number; divisor++) {
    if (number % divisor === 0 && !hits.has(divisor)) return true;
  }
  return false;
}

function isMasked(frequencyHz: number, sinusoids: readonly HeardSinusoid[], hits: ReadonlyMap<number, Hit>): boolean {
  const own = new Set([...hits.values()].map(({ index }) => index));
  return sinusoids.some((s, i) => !own.has(i) && s.weight > 0.2 && Math.abs(Math.log(s.frequencyHz / frequencyHz)) < MASKED_WITHIN);
}
