/** What a series is worth as the explanation of the sinusoids that were heard: a log-likelihood ratio against clutter, natural units. */

import type { HeardSinusoid } from '../partials/extract.ts';
import { endsBend, nearestPartial, partialRatio, type Series } from '../partials/series.ts';
import { amplitude, decayS, qualityFactor } from '../spectrum/damped-sinusoid.ts';

/** The sinusoids heard in one stretch, and how faint a sinusoid would still have been heard there. */
export interface HeardStretch {
  readonly sinusoids: readonly HeardSinusoid[];
  /** Amplitude of a sinusoid that just reaches the threshold at a frequency, for a decay time. */
  audibleAmplitude(frequencyHz: number, decayS: number): number;
}

export interface Candidate {
  readonly series: Series;
  readonly score: number;
  /** Partials heard, by number, as indices into the sinusoids of the stretch. */
  readonly heard: ReadonlyMap<number, number>;
  /** Weight of narrow sinusoids that belong to no partial. */
  readonly unexplained: number;
  /** Share of all weight that the series explains, 0 to 1. */
  readonly ownShare: number;
}

/** A partial lies within about this share of its place: of most belts, and of those that are uneven or held oddly, which are the given share. */
export const PLACE = { usual: 0.0015, odd: 0.0045, oddShare: 0.3 };
/** Where stiffness matters the ends bend the law: mean and spread of the share of what clamped ends would do. */
export const ENDS = { mean: 0.45, spread: 0.35 };
const FARTHEST_SIGMAS = 3.2;
/** Density of clutter in ln f against which a hit is judged. */
const CLUTTER_WIDTH = 0.4;
/** What may well be a tone of the room is worth less as a partial. */
const OF_ROOM = 0.5;
const MISSING_SPREAD_DB = 9;
const MOST_FOR_MISSING = 2;
const MOST_FOR_MISSING_SECOND = 1.2;
const NODE_DISCOUNT = 0.08;
const MASKED_DISCOUNT = 0.15;
const MASKED_WITHIN = 0.03;
const FOR_UNEXPLAINED = 1.5;
const MOST_FOR_UNEXPLAINED = 5;
const BELOW_FIRST = 0.83;
const FOR_BELOW_FIRST = 3;
/** Of an instrument with a body this is less true. */
const FOR_BELOW_FIRST_UNTOLD = 1.5;
const FIRST_NOT_HEARD = 0.8;
const SATELLITE = { withinHz: 25, ofAmplitude: 0.6, ofDecay: 0.75 };
/** What dies within this time, or with so low a quality, is no source of its own. */
const NARROW = { decayS: 0.012, quality: 6 };

export interface Hit {
  readonly number: number;
  readonly index: number;
  readonly gain: number;
}

/** Which sinusoid is which partial, the best one for each number; `explained` marks all that lie at a partial. */
export function hitsOf(series: Series, sinusoids: readonly HeardSinusoid[]): { hits: Hit[]; explained: Uint8Array } {
  const hits: Hit[] = [];
  const explained = new Uint8Array(sinusoids.length);
  for (let index = 0; index < sinusoids.length; index++) {
    const { frequencyHz, frequencyU, weight, isOfRoom } = sinusoids[index]!;
    const number = nearestPartial(series, frequencyHz);
    if (number < 1) continue;
    const bend = endsBend(number, series.inharmonicity);
    const own = (frequencyU / frequencyHz) ** 2 + (ENDS.spread * bend) ** 2;
    const odd = Math.sqrt(own + PLACE.odd ** 2);
    const off = Math.log(frequencyHz / (series.firstHz * partialRatio(number, series.inharmonicity))) + ENDS.mean * bend;
    if (Math.abs(off) > FARTHEST_SIGMAS * odd) continue;
    explained[index] = 1;
    const usual = Math.sqrt(own + PLACE.usual ** 2);
    const density =
      ((1 - PLACE.oddShare) / usual) * Math.exp(-0.5 * (off / usual) ** 2) + (PLACE.oddShare / odd) * Math.exp(-0.5 * (off / odd) ** 2);
    const gain = (isOfRoom ? OF_ROOM : 1) * weight * Math.log((CLUTTER_WIDTH * density) / number);
    if (gain <= 0) continue;
    const same = hits.findIndex((hit) => hit.number === number);
    if (same < 0) hits.push({ number, index, gain });
    else if (gain > hits[same]!.gain) hits[same] = { number, index, gain };
  }
  return { hits, explained };
}

/** The whole score of a series in one stretch. */
export function scoreOf(series: Series, stretch: HeardStretch, spanTold: boolean): Candidate {
  const { sinusoids } = stretch;
  const { hits: list, explained } = hitsOf(series, sinusoids);
  const hits = new Map(list.map((hit) => [hit.number, hit] as const));
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
    if (sinusoid.isOfRoom || ownSinusoids.some((own) => isSatellite(sinusoid, own))) return;
    weightOfAll += sinusoid.weight;
    if (decayS(sinusoid) < NARROW.decayS || qualityFactor(sinusoid) < NARROW.quality) return;
    unexplained += sinusoid.weight;
    if (sinusoid.frequencyHz < BELOW_FIRST * series.firstHz) strongestBelow = Math.max(strongestBelow, sinusoid.weight);
  });
  score -=
    Math.min(MOST_FOR_UNEXPLAINED, FOR_UNEXPLAINED * unexplained) + (spanTold ? FOR_BELOW_FIRST : FOR_BELOW_FIRST_UNTOLD) * strongestBelow;
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
    const frequencyHz = series.firstHz * partialRatio(number, series.inharmonicity);
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
