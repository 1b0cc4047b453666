/** Several plucks of one span, one frequency: which of them belong together, their mean, and how well plucks repeat. */

import type { Measured } from '../math/measured.ts';
import { coverageFactor } from '../math/student-t.ts';
import type { FrequencyHz } from '../outcome.ts';

/** Expanded over standard uncertainty of a frequency: 95 % of a normal distribution, rounded as the GUM does (JCGM 100:2008, G.6.6). */
export const COVERAGE_FACTOR = 2;

/**
 * How well plucks of one span repeat before any were compared: 0.5 % of the frequency (standard deviation), held as firmly as four
 * degrees of freedom hold it. With it the force's interval keeps its 95 % from one pluck on; the scatter of two plucks alone does not.
 */
export const REPEATABILITY_PRIOR = { relative: 0.005, degreesOfFreedom: 4 } as const;

/** Share of a Student t distribution outside which a pluck must lie, seen from the others, before it is left out. */
const LEFT_OUT_BEYOND = 0.999;
/** 80 % point of the normal distribution, one side. Beyond the like of it in χ² plucks are said to differ: to be wrong costs only width. */
const ONE_SIDED_80 = 0.841621;
/** Correlation of what plucks of one take are wrong by: the room and the law of the glide are the same for all (found on the corpus). */
const SHARED = 0.3;
/** No pluck is known better than to a part in a hundred million. */
const LEAST_VARIANCE = 1e-16;
/** Median absolute deviation to standard deviation of a normal distribution. */
const MAD_TO_SD = 1.4826;

export interface CombinedPlucks {
  /** Weighted mean of the plucks that were used. */
  readonly frequencyHz: FrequencyHz;
  /** For each pluck, in the given order. */
  readonly used: readonly boolean[];
  /** For each pluck: how far it lies from the mean of those used, relative. */
  readonly differenceRelative: readonly number[];
  /** Relative standard uncertainty of the mean from the plucks' own uncertainties. */
  readonly withinRelative: number;
  /** Relative standard uncertainty of the mean from how plucks repeat, prior included. */
  readonly repeatabilityRelative: number;
  /** Whether the plucks that were used differ by more than their own uncertainties allow. */
  readonly differ: boolean;
}

/**
 * Combines the fundamentals of several plucks of one span.
 *
 * Weights are the inverse of each pluck's variance, its own and the pooled scatter together, so that no pluck rules for being told too
 * good. The expanded uncertainty of the mean says what the sounds tell: twice what their own uncertainties leave where the plucks agree
 * within these; where they differ, the scatter comes in, pooled with the prior, and Student's t for its few degrees of freedom. The prior
 * alone never widens a frequency: it belongs to the force, which asks what another pluck would give.
 *
 * @param frequenciesHz  at least one, each > 0 with its standard uncertainty within the pluck
 */
export function combinedPlucks(frequenciesHz: readonly Measured[]): CombinedPlucks {
  if (frequenciesHz.length === 0) throw new RangeError('combinedPlucks needs at least one pluck, got 0');
  const strange = frequenciesHz.find(
    ({ value, standardUncertainty }) => !(value > 0 && Number.isFinite(value) && standardUncertainty >= 0),
  );
  if (strange) throw new RangeError(`combinedPlucks needs frequencies > 0 Hz with their uncertainty, got ${strange.value}`);
  const logs = frequenciesHz.map((f) => Math.log(f.value));
  const own = frequenciesHz.map((f) => Math.max((f.standardUncertainty / f.value) ** 2, LEAST_VARIANCE));
  const used = usedPlucks(logs, own);
  const chosen = [...logs.keys()].filter((i) => used[i]);
  const x = chosen.map((i) => logs[i]!);
  const variances = chosen.map((i) => own[i]!);
  const count = x.length;

  const { relative, degreesOfFreedom: ν0 } = REPEATABILITY_PRIOR;
  const ν = ν0 + count - 1;
  const plain = mean(x);
  const squares = x.reduce((sum, value) => sum + (value - plain) ** 2, 0);
  const explained = mean(variances) * (count - 1); // what the plucks' own uncertainties let one expect of `squares`
  const between = (ν0 * relative ** 2 + Math.max(0, squares - explained)) / ν;

  const weights = variances.map((variance) => 1 / (variance + between));
  const total = weights.reduce((sum, w) => sum + w, 0);
  const centre = x.reduce((sum, value, i) => sum + weights[i]! * value, 0) / total;
  const apart = weights.reduce((sum, w, i) => sum + w * w * variances[i]!, 0);
  const alike = weights.reduce((sum, w, i) => sum + w * Math.sqrt(variances[i]!), 0) ** 2;
  const within = Math.sqrt((1 - SHARED) * apart + SHARED * alike) / total;
  const repeatability = Math.sqrt(between / count);

  const differ = count > 1 && !agree(x, variances);
  const value = Math.exp(centre);
  const u = differ ? Math.hypot(within, repeatability) : within;
  const k = differ ? coverageFactor({ degreesOfFreedom: ν, coverage: 0.95 }) : COVERAGE_FACTOR;
  return {
    frequencyHz: { value, standardUncertainty: value * u, u95: value * u * k },
    used,
    differenceRelative: logs.map((log) => Math.expm1(log - centre)),
    withinRelative: within,
    repeatabilityRelative: repeatability,
    differ,
  };
}

/** Leaves out what clearly is another thing: at least three plucks, evidence beyond doubt, and more than half always stay. */
function usedPlucks(logs: readonly number[], own: readonly number[]): boolean[] {
  const count = logs.length;
  if (count < 3) return logs.map(() => true);
  const middle = median(logs);
  const deviations = logs.map((log) => Math.abs(log - middle));
  const { relative, degreesOfFreedom: ν0 } = REPEATABILITY_PRIOR;
  const ν = ν0 + count - 1;
  const scatter = (ν0 * relative ** 2 + (count - 1) * (MAD_TO_SD * median(deviations)) ** 2) / ν;
  const limit = coverageFactor({ degreesOfFreedom: ν, coverage: LEFT_OUT_BEYOND });
  const distance = deviations.map((deviation, i) => deviation / Math.sqrt(scatter + own[i]! + median(own)));
  const far = [...distance.keys()].filter((i) => distance[i]! > limit);
  return far.length * 2 < count ? logs.map((_, i) => !far.includes(i)) : logs.map(() => true);
}

/** Whether values differ no more than their own variances allow. */
function agree(x: readonly number[], variances: readonly number[]): boolean {
  const weights = variances.map((v) => 1 / v);
  const total = weights.reduce((sum, w) => sum + w, 0);
  const centre = x.reduce((sum, value, i) => sum + weights[i]! * value, 0) / total;
  const chiSquare = x.reduce((sum, value, i) => sum + weights[i]! * (value - centre) ** 2, 0);
  return chiSquare <= chiSquareLimit(x.length - 1);
}

/** 80 % point of χ² by Wilson and Hilferty's cube (Abramowitz & Stegun 26.4.17), within 2 % from one degree of freedom on. */
function chiSquareLimit(ν: number): number {
  return ν * (1 - 2 / (9 * ν) + ONE_SIDED_80 * Math.sqrt(2 / (9 * ν))) ** 3;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
