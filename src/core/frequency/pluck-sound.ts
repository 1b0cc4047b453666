/** One pluck's chain: segment → damped sinusoids → numbered partials → partial 1 at small amplitude, with what speaks for and against it. */

import type { Measured } from '../math/measured.ts';
import type { HeardPartial, NothingWhy, PluckSound, SoundEvidence } from '../outcome.ts';
import { extractSinusoids, type HeardSinusoid, overNoise } from '../partials/extract.ts';
import { partialOfSeriesHz, type Series } from '../partials/series.ts';
import { type PluckSegment, type Stretch, stretchOf } from '../pluck/segment.ts';
import type { SteadyLine } from '../pluck/steady-lines.ts';
import { straightened } from '../pluck/straighten.ts';
import { amplitude, decayEnergySamples, decayS, halfWidthHz, qualityFactor } from '../spectrum/damped-sinusoid.ts';
import { levelDbfs } from '../spectrum/spectrum.ts';
import { type Fundamental, fundamentalOf, leadOver } from './fundamental.ts';
import { glideOf, type LaterFit } from './glide.ts';
import { type FirstPartial, type FittedPartial, firstPartialOf, fitPartials } from './refine.ts';
import type { SearchBounds } from './search-bounds.ts';
import { type HeardStretch, isSatellite } from './series-score.ts';
import { type Likeness, likenessOf, type Unlike, unlikeSpan } from './span-likeness.ts';

/** Both starts lie behind the finger's noise; two that agree tell a ring from a knock. */
const STARTS_S = [0.012, 0.026] as const;
/** Share of the segment's mean power that no sum of damped sinusoids explains: while searching, and in the last fit. */
const SEARCH_FLOOR = 1e-5;
const FIT_FLOOR = 3e-6;
/** When the ring is looked at anew where it was no clear span from the touch on, and how much of it must be left then. */
const LATER_STARTS_S = [0.05, 0.1, 0.18];
const SHORTEST_LATER_S = 0.12;
const BEYOND_DOUBT = { evidence: 6, ownShare: 0.75, decayMisfitDb: 3, decayS: 0.5 };
/** With so much evidence partials may beat. */
const OVERWHELMING = { evidence: 12, decayMisfitDb: 6 };
/** What swelled from its beginning on is a voice more often than a second pluck. */
const BEYOND_DOUBT_SWELLED = { evidence: 10, ownShare: 0.85, decayMisfitDb: 2, decayS: 0.4 };
const FAIR = { evidence: 7 };
const SHAKY_OWN_SHARE = 0.7;
const AGREE_WITHIN = 0.01;
/** Log-likelihood ratio at which a sinusoid would be heard. */
const AUDIBLE = 16;
const MOST_OWN = 7;
const MOST_FOREIGN = 4;
/** A stranger is fitted along when it is this near to a partial, but not so near that it would be the partial's own glide. */
const FOREIGN_WITHIN_HZ = 60;
const FOREIGN_BEYOND = 0.05;
/** A partial that is placed less well than this share of its frequency. */
const VAGUE = 0.02;
/** Later stretches for the glide, in decay times. */
const LATER_DECAYS = [0.6, 1.2];
const LEAST_STRETCH_S = 0.05;
/** Errors of real rings have heavier tails than noise: the standard uncertainty that makes the 95 % interval hold. */
const TAILS = 1.7;
const GLIDE_SHARE = { uncertainty: 0.35, value: 0.075 };
const CLOCK_AND_MODEL = 5e-5;
/** A glide beyond both is undone by bending time: a damped sinusoid cannot follow it, and splits into several. */
const HARD_GLIDE = 0.005;
const HARD_SIGNIFICANCE = 4;
/** Doubt that bending leaves, relative to the frequency: a share of the glide, and always. */
const STRAIGHTENED = { share: 0.12, always: 0.002 };

interface PluckOptions {
  readonly bounds: SearchBounds;
  /** Share of the segment's samples at the rails. */
  readonly clippedShare: number;
  /** Highest frequency that the recording can hold. */
  readonly bandwidthHz: number;
}

/** No pluck, and where something rang, what speaks against a span. */
interface Refusal {
  readonly why: Extract<NothingWhy, 'not-a-span' | 'too-quiet'>;
  readonly unlike?: Unlike | undefined;
  readonly likeness?: Likeness | undefined;
}

export type PluckAnswer = { readonly sound: PluckSound; readonly likeness: Likeness } | Refusal;

export function soundOfPluck(segment: PluckSegment, options: PluckOptions): PluckAnswer {
  const { part, analysis } = options.bounds.spanTold ? convincing(segment, options.bounds) : attempt(segment, 0, options.bounds);
  if ('why' in analysis) return analysis;
  const sound = withoutGlide(part, analysis, options);
  const toS = segment.samples.length / segment.rateHz;
  const fromS = toS - part.samples.length / part.rateHz + STARTS_S[0];
  return { sound: { ...sound, window: { fromS, toS } }, likeness: analysis.likeness };
}

interface Attempt {
  readonly part: PluckSegment;
  readonly analysis: Analysis | Refusal;
}

interface Heard {
  readonly part: PluckSegment;
  readonly analysis: Analysis;
}

/** The ring from some time after the touch on, as a pluck of its own. */
function attempt(segment: PluckSegment, laterS: number, bounds: SearchBounds): Attempt {
  const skip = Math.round(laterS * segment.rateHz);
  const part = { ...segment, samples: segment.samples.subarray(skip), heard: segment.heard.subarray(skip) };
  return { part, analysis: analyse(part, bounds) };
}

/**
 * The ring from the touch on, or where that is no clear span, what is left of it a little later: a second finger, a belt that slaps
 * its frame, a hand that was too fast are over by then, and the span still rings. What is heard only later has to be beyond doubt, or
 * two later parts have to agree; what is shaky from the touch on has to agree with what is beyond doubt later.
 */
function convincing(segment: PluckSegment, bounds: SearchBounds): Attempt {
  const fromTouch = attempt(segment, 0, bounds);
  if (isHeard(fromTouch) && !isShaky(fromTouch.analysis)) return fromTouch;
  const later: Heard[] = [];
  for (const laterS of LATER_STARTS_S) {
    if (segment.samples.length < (laterS + SHORTEST_LATER_S) * segment.rateHz) break;
    const heard = attempt(segment, laterS, bounds);
    if (isHeard(heard)) later.push(heard);
  }
  const swelled = 'why' in fromTouch.analysis && fromTouch.analysis.unlike === 'swells';
  const clear = later.filter(({ analysis }) => isBeyondDoubt(analysis.likeness, swelled ? BEYOND_DOUBT_SWELLED : BEYOND_DOUBT));
  if (isHeard(fromTouch)) {
    const better = strongestEvidence(clear.filter(({ analysis }) => analysis.likeness.evidence > fromTouch.analysis.likeness.evidence));
    return better && !agree(better.analysis, fromTouch.analysis) ? better : fromTouch;
  }
  const agreeing = (swelled ? [] : later).filter((one) =>
    later.some((other) => other !== one && isFair(other) && isFair(one) && agree(one.analysis, other.analysis)),
  );
  return strongestEvidence([...clear, ...agreeing]) ?? fromTouch;
}

const isHeard = (one: Attempt): one is Heard => !('why' in one.analysis);

const strongestEvidence = (heard: readonly Heard[]): Heard | undefined =>
  heard.reduce<Heard | undefined>(
    (top, one) => (top && top.analysis.likeness.evidence >= one.analysis.likeness.evidence ? top : one),
    undefined,
  );

const agree = (a: Analysis, b: Analysis): boolean => Math.abs(Math.log(a.first.firstHz.value / b.first.firstHz.value)) < AGREE_WITHIN;

const isShaky = ({ likeness, glide }: Analysis): boolean => likeness.ownShare < SHAKY_OWN_SHARE || glide.value > HARD_GLIDE;

const isFair = ({ analysis: { likeness } }: Heard): boolean =>
  likeness.evidence >= FAIR.evidence && likeness.decayMisfitDb <= BEYOND_DOUBT.decayMisfitDb && likeness.decayS <= BEYOND_DOUBT.decayS;

const isBeyondDoubt = ({ evidence, ownShare, decayMisfitDb, decayS: ringS }: Likeness, needed: typeof BEYOND_DOUBT): boolean =>
  evidence >= needed.evidence &&
  ownShare >= needed.ownShare &&
  decayMisfitDb <= (evidence >= OVERWHELMING.evidence ? OVERWHELMING.decayMisfitDb : needed.decayMisfitDb) &&
  ringS <= needed.decayS;

function withoutGlide(segment: PluckSegment, gentle: Analysis, options: PluckOptions): PluckSound {
  const { glide, strongest } = gentle;
  const isHard = glide.value > Math.max(HARD_GLIDE, HARD_SIGNIFICANCE * glide.standardUncertainty);
  if (!isHard) return soundFrom(segment, gentle, options);
  const straight = straightened(segment, {
    offset: glide.value,
    frequencyHz: strongest.sinusoid.frequencyHz,
    decayS: decayS(strongest.sinusoid),
    fromS: STARTS_S[0],
  });
  const again = analyse(straight.segment, options.bounds);
  if ('why' in again) return soundFrom(segment, gentle, options);
  const doubt = Math.hypot(again.glide.standardUncertainty, STRAIGHTENED.share * straight.glideAtTouch, STRAIGHTENED.always);
  const rest = { value: again.glide.value, standardUncertainty: doubt };
  return soundFrom(straight.segment, { ...again, glide: rest, straightenedBy: straight.glideAtTouch }, options);
}

/** What one pass over a segment finds. */
interface Analysis {
  readonly stretch: Stretch;
  readonly sinusoids: readonly HeardSinusoid[];
  readonly fundamental: Fundamental;
  readonly fitted: readonly FittedPartial[];
  readonly strongest: FittedPartial;
  readonly first: FirstPartial;
  /** Offset of the first stretch from small amplitude, relative. */
  readonly glide: Measured;
  readonly likeness: Likeness;
  /** Glide at the touch that was taken away before. */
  readonly straightenedBy?: number | undefined;
}

function analyse(segment: PluckSegment, bounds: SearchBounds): Analysis | Refusal {
  const stretches = STARTS_S.map((fromS) => stretchOf(segment, { fromS, modelFloor: SEARCH_FLOOR }));
  const heard = stretches.map(heardIn);
  const sinusoids = heard[0]!.sinusoids;
  if (sinusoids.length === 0) return { why: 'too-quiet' };
  const fundamental = fundamentalOf(heard, bounds);
  if (!fundamental) return { why: 'not-a-span', unlike: 'no-series' };
  const { series } = fundamental.best;
  const fitted = fitFrom(segment, { fromS: STARTS_S[0], fundamental, sinusoids });
  const first = firstPartialOf(fitted, series, inharmonicityPrior(series, bounds));
  const strongest = fitted.reduce((a, b) => (energyOf(b) > energyOf(a) ? b : a));
  const later = laterFits(segment, { fundamental, sinusoids, decayS: decayS(strongest.sinusoid) });
  const glide = glideOf(fitted, later, decayS(strongest.sinusoid));
  const likeness = likenessOf(segment, { fundamental, fitted, later });
  const unlike = unlikeSpan(likeness, bounds.spanTold);
  if (unlike) return { why: 'not-a-span', unlike, likeness };
  return { stretch: stretches[0]!, sinusoids, fundamental, fitted, strongest, first, glide, likeness };
}

/** Energy of the whole ring of a partial, up to a factor. */
const energyOf = ({ sinusoid }: FittedPartial): number => amplitude(sinusoid) ** 2 * decayS(sinusoid);

function soundFrom(segment: PluckSegment, analysis: Analysis, options: { clippedShare: number; bandwidthHz: number }): PluckSound {
  const { first, fitted, glide } = analysis;
  const frequencyHz = smallAmplitude(first.firstHz, glide);
  return {
    startS: segment.startS,
    frequencyHz,
    partials: fitted.map((partial) => heardPartial(partial, first.firstHz, frequencyHz)),
    ...(fitted.length > 1 ? { inharmonicity: first.inharmonicity } : {}),
    evidence: evidenceOf({ ...analysis, segment, frequencyHz, ...options }),
  };
}

function heardIn(stretch: Stretch): HeardStretch {
  return {
    sinusoids: extractSinusoids(stretch),
    audibleAmplitude(frequencyHz, decay) {
      const { grid, noise } = stretch;
      const bin = Math.max(1, Math.min(grid.binCount - 1, Math.round(frequencyHz / grid.binWidthHz)));
      const length = decayEnergySamples({ decayPerS: 1 / decay, rateHz: grid.rateHz, length: grid.length });
      return Math.sqrt((4 * AUDIBLE * noise[bin]!) / length);
    },
  };
}

/** The series' own partials, those of most weight and always partial 1, and the strangers near them, fitted together. */
function fitFrom(
  segment: PluckSegment,
  options: { readonly fromS: number; readonly fundamental: Fundamental; readonly sinusoids: readonly HeardSinusoid[] },
): FittedPartial[] {
  const { heard } = options.fundamental.best;
  const own = [...heard]
    .map(([number, index]) => ({ number, sinusoid: placed(options.sinusoids[index]!, number, options) }))
    .toSorted((a, b) => Number(b.number === 1) - Number(a.number === 1) || b.sinusoid.weight - a.sinusoid.weight)
    .slice(0, MOST_OWN)
    .toSorted((a, b) => a.number - b.number);
  const ownIndices = new Set(heard.values());
  const foreign = options.sinusoids.filter(
    (stranger, index) =>
      !ownIndices.has(index) &&
      own.some(({ sinusoid }) => Math.abs(sinusoid.frequencyHz - stranger.frequencyHz) < FOREIGN_WITHIN_HZ) &&
      !own.some(({ sinusoid }) => isSatellite(stranger, sinusoid)) && // a glide's own leftovers, fitted along, would hide it
      own.every(({ sinusoid }) => Math.abs(Math.log(sinusoid.frequencyHz / stranger.frequencyHz)) > FOREIGN_BEYOND),
  );
  return fitPartials(stretchOf(segment, { fromS: options.fromS, modelFloor: FIT_FLOOR }), own, foreign.slice(0, MOST_FOREIGN));
}

/** A partial of which only about where it lies was heard, beside a tone of the room or under the finger's noise, begins at its place in the series. */
function placed(
  heard: HeardSinusoid,
  number: number,
  { fundamental, sinusoids }: { readonly fundamental: Fundamental; readonly sinusoids: readonly HeardSinusoid[] },
): HeardSinusoid {
  if (heard.frequencyU < VAGUE * heard.frequencyHz) return heard;
  const others = [...fundamental.best.heard.values()].map((index) => sinusoids[index]!).filter((other) => other !== heard);
  if (others.length === 0) return heard;
  const clearest = others.reduce((a, b) => (b.weight > a.weight ? b : a));
  return { ...heard, frequencyHz: partialOfSeriesHz(fundamental.best.series, number), decayPerS: clearest.decayPerS };
}

function laterFits(
  segment: PluckSegment,
  options: { readonly fundamental: Fundamental; readonly sinusoids: readonly HeardSinusoid[]; readonly decayS: number },
): LaterFit[] {
  const endS = segment.samples.length / segment.rateHz;
  return LATER_DECAYS.map((decays) => decays * options.decayS)
    .filter((laterS) => STARTS_S[0] + laterS + LEAST_STRETCH_S < endS)
    .map((laterS) => ({ laterS, partials: fitFrom(segment, { ...options, fromS: STARTS_S[0] + laterS }) }));
}

function inharmonicityPrior(series: Series, bounds: SearchBounds): Measured {
  const { low, high } = bounds.inharmonicityAt(series.firstHz);
  const inRange = Math.min(high, Math.max(low, series.inharmonicity));
  return { value: inRange, standardUncertainty: Math.max(1e-5, (high - low) / 2) };
}

function smallAmplitude(first: Measured, glide: Measured): Measured {
  const value = first.value * Math.exp(-glide.value);
  const relative = Math.hypot(
    (TAILS * first.standardUncertainty) / first.value,
    GLIDE_SHARE.uncertainty * glide.standardUncertainty,
    GLIDE_SHARE.value * glide.value,
    CLOCK_AND_MODEL,
  );
  return { value, standardUncertainty: value * relative };
}

function heardPartial(partial: FittedPartial, first: Measured, frequencyHz: Measured): HeardPartial {
  const { number, sinusoid } = partial;
  return {
    number,
    frequencyHz:
      number === 1
        ? { value: (partial.frequencyHz.value * frequencyHz.value) / first.value, standardUncertainty: frequencyHz.standardUncertainty }
        : partial.frequencyHz,
    levelDbfs: levelDbfs(amplitude(sinusoid) * Math.exp(sinusoid.decayPerS * STARTS_S[0])),
    decayS: decayS(sinusoid),
  };
}

/**
 * A fit weighted by the ring's own energy, exp(−2t/τ), reads a frequency that falls as exp(−2t/τ) high by a quarter of what it was at
 * the start: Σw (1 − e^−u)(u − 1) over Σw (u − 1)² with w = e^−u, u = 2t/τ, is 1/4.
 */
const glideAtTouch = (offset: number, strongestDecayS: number): number =>
  Math.max(0, 4 * offset * Math.exp((2 * STARTS_S[0]) / strongestDecayS));

/** A partial that is alone has its number from the silence of the others only: odds of some 4 to 1 at most. */
const ALONE_LEAD = 1.4;

const HUM_HZ = [50, 60];
const HIGHEST_HUM_NUMBER = 20;
const HUM_WANDERS = 0.004;

function evidenceOf(given: {
  readonly segment: PluckSegment;
  readonly stretch: Stretch;
  readonly fundamental: Fundamental;
  readonly sinusoids: readonly HeardSinusoid[];
  readonly fitted: readonly FittedPartial[];
  readonly strongest: FittedPartial;
  readonly glide: Measured;
  readonly straightenedBy?: number | undefined;
  readonly frequencyHz: Measured;
  readonly clippedShare: number;
  readonly bandwidthHz: number;
}): SoundEvidence {
  const { fundamental, fitted, sinusoids, frequencyHz } = given;
  const { best, rival } = fundamental;
  const first = fitted.find(({ number }) => number === 1);
  const longest = Math.max(...fitted.map(({ sinusoid }) => decayS(sinusoid)));
  const own = new Set(best.heard.values());
  const strangers = sinusoids
    .filter((s, index) => !own.has(index) && s.weight > 0.3 && decayS(s) > 0.012 && qualityFactor(s) > 6)
    .toSorted((a, b) => b.weight - a.weight);
  const lines = linesOnPartials(given.segment.background.lines, fitted);
  const hum = lines.find(({ line }) => isHum(line.frequencyHz));
  const tone = lines.find(({ line }) => !isHum(line.frequencyHz));
  return {
    cyclesToDecay: frequencyHz.value * (first ? decayS(first.sinusoid) : longest),
    levelOverBackgroundDb: 10 * Math.log10(Math.max(...fitted.map(({ sinusoid }) => overNoise(sinusoid, given.stretch)))),
    clippedShare: given.clippedShare,
    glideRelative: given.straightenedBy ?? glideAtTouch(given.glide.value, decayS(given.strongest.sinusoid)),
    ...(rival ? { rivalHz: rival.series.firstHz } : best.heard.size === 1 ? { rivalHz: frequencyHz.value / 2 } : {}),
    leadOverRival: Math.min(leadOver(best, rival), best.heard.size === 1 ? ALONE_LEAD : Number.POSITIVE_INFINITY),
    ...(hum ? { humOn: { partialNumber: hum.number, humHz: hum.line.frequencyHz } } : {}),
    ...(tone ? { toneOn: { partialNumber: tone.number, toneHz: tone.line.frequencyHz } } : {}),
    foreignHz: strangers.map((s) => s.frequencyHz),
    ownShare: best.ownShare,
    firstPartialHeard: first !== undefined,
    ...(given.segment.touchMissed ? { touchMissed: true } : {}),
    bandwidthHz: given.bandwidthHz,
  };
}

const isHum = (frequencyHz: number): boolean =>
  HUM_HZ.some((mainsHz) => {
    const number = Math.round(frequencyHz / mainsHz);
    return number >= 1 && number <= HIGHEST_HUM_NUMBER && Math.abs(frequencyHz - number * mainsHz) < HUM_WANDERS * frequencyHz + 0.2;
  });

/** Steady lines that stand within a partial's own width and are not much weaker than it. */
function linesOnPartials(lines: readonly SteadyLine[], fitted: readonly FittedPartial[]) {
  return fitted.flatMap(({ number, sinusoid }) =>
    lines
      .filter((line) => Math.abs(line.frequencyHz - sinusoid.frequencyHz) < Math.max(2, halfWidthHz(sinusoid)))
      .filter((line) => Math.hypot(line.re, line.im) > 0.1 * amplitude(sinusoid))
      .map((line) => ({ number, line })),
  );
}
