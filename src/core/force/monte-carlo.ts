/** The force by drawing (JCGM 101:2008): every input from its distribution, the beam solved for each draw. The check on the closed form, on demand. */

import { type DrawnDistribution, drawnDistribution } from '../math/drawn-distribution.ts';
import { createRandom, type Random } from '../math/random.ts';
import type { ForceN } from '../outcome.ts';
import { forceFromPartial, partialHz } from '../vibration/beam.ts';
import type { KnownSpan } from './known-span.ts';
import { type HeardSet, MODEL_ERROR_EACH } from './partial-nodes.ts';

export interface DrawnForce {
  /** Median and 95 % interval; missing where hardly any draw leaves room for a force. */
  readonly forceN: ForceN | undefined;
  /** Of the force, N, draws without one counted as 0. */
  readonly distribution: DrawnDistribution;
  /** Share of the weight that leaves no room for a force. */
  readonly shareWithoutForce: number;
}

/** Draws by default: a bound is then known to about half a percent of the force. */
export const DRAWS = 100_000;
const PROGRESS_STEPS = 100;

/**
 * The lowest partial gives the force of each draw; how well the others then fit is the draw's weight.
 *
 * @param given.seed      the same seed, the same draws
 * @param given.progress  told the share done, about a hundred times
 */
export function monteCarloForce(given: {
  readonly heard: HeardSet;
  readonly span: KnownSpan;
  readonly seed: number;
  readonly draws?: number | undefined;
  readonly progress?: ((share: number) => void) | undefined;
}): DrawnForce {
  const { heard, span, seed, draws = DRAWS, progress } = given;
  const [lowest, ...others] = heard.partials;
  if (lowest === undefined) throw new RangeError('monteCarloForce needs at least one partial, got 0');
  const random = createRandom(seed);
  const stiffness = picker(span.stiffness);
  const ends = picker(span.ends);
  const values = new Float64Array(draws);
  const weights = new Float64Array(draws);
  let without = 0;
  let total = 0;
  const stride = Math.max(1, Math.floor(draws / PROGRESS_STEPS));
  for (let i = 0; i < draws; i++) {
    const drawn = {
      spanLengthM: span.spanLengthM * Math.exp(span.spanLengthRelativeU * random.gaussian()),
      linearDensityKgPerM: span.linearDensityKgPerM * Math.exp(span.linearDensityRelativeU * random.gaussian()),
      bendingStiffnessNm2: drawnStiffness(random, stiffness),
      fixity: drawnFixity(random, ends),
    };
    const shared = heard.sharedRelativeU * random.gaussian();
    const own = Math.hypot(lowest.relativeU, MODEL_ERROR_EACH * lowest.number) * random.gaussian();
    const heardHz = lowest.frequencyHz * Math.exp(shared + own);
    const forceN = forceFromPartial({ ...drawn, number: lowest.number, partialHz: heardHz });
    let lnWeight = 0;
    for (const { number, frequencyHz, relativeU } of others) {
      const hz = partialHz({ ...drawn, number, forceN: Math.max(forceN ?? 0, LEAST_FORCE_N) });
      lnWeight -= ((Math.log(frequencyHz / hz) + shared) / Math.hypot(relativeU, MODEL_ERROR_EACH * number)) ** 2 / 2;
    }
    values[i] = forceN ?? 0;
    weights[i] = Math.exp(lnWeight);
    total += weights[i]!;
    if (forceN === undefined) without += weights[i]!;
    if (progress && (i + 1) % stride === 0) progress((i + 1) / draws);
  }
  const distribution = drawnDistribution(values, total > 0 ? weights : undefined);
  const shareWithoutForce = total > 0 ? without / total : 0;
  return { forceN: intervalOf(distribution, shareWithoutForce), distribution, shareWithoutForce };
}

/** As good as none, for the shape of a slack span's partials. */
const LEAST_FORCE_N = 1e-6;

function intervalOf(distribution: DrawnDistribution, without: number): ForceN | undefined {
  if (without >= 0.975) return undefined;
  const value = distribution.quantile(without < 0.5 ? 0.5 : (1 + without) / 2);
  const low = without < 0.025 ? distribution.quantile(0.025) : undefined;
  const high = distribution.quantile(0.975);
  return { value, low, high, u95: low === undefined ? undefined : Math.max(value - low, high - value) };
}

type Picker<Cell> = (share: number) => Cell;

/** Cell by the share of the weight that lies before it. */
function picker<Cell extends { readonly weight: number }>(cells: readonly Cell[]): Picker<Cell> {
  let sum = 0;
  const upTo = cells.map(({ weight }) => (sum += weight));
  return (share) => cells[upTo.findIndex((end) => share * sum < end)] ?? cells[cells.length - 1]!;
}

function drawnStiffness(random: Random, pick: Picker<KnownSpan['stiffness'][number]>): number {
  const { lnStiffness, widthLn } = pick(random.uniform());
  return Math.exp(lnStiffness + widthLn * (random.uniform() - 0.5));
}

function drawnFixity(random: Random, pick: Picker<KnownSpan['ends'][number]>): readonly [number, number] {
  const { fixity, width, alike } = pick(random.uniform());
  const place = random.uniform() - 0.5;
  const other = alike ? place : random.uniform() - 0.5;
  const clipped = (φ: number): number => Math.min(1, Math.max(0, φ));
  return [clipped(fixity[0] + width[0] * place), clipped(fixity[1] + width[1] * other)];
}
