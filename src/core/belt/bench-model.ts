/** The beam's law as a least-squares problem: density, stiffness and fixity of the ends together, and every shared error as a parameter with what is known of it. */

import { whiten } from '../math/linear-solve.ts';
import type { Residuals } from '../math/nonlinear-least-squares.ts';
import { stretchAt } from '../vibration/beam-sensitivity.ts';
import { BENCH_MODEL_ERROR_EACH, type BenchData, type BenchTake } from './bench-data.ts';

/** Places of the three wanted parameters; shared errors follow, each in its own standard uncertainties. */
export const LN_DENSITY = 0;
export const LN_STIFFNESS = 1;
export const FIXITY = 2;

export interface BenchModel {
  /** How many parameters there are. */
  readonly size: number;
  /** Place of the error that all known forces share, and of each span's and load's own; partials' numbers in ascending order. */
  readonly forceScale: number;
  readonly ofSpan: (span: number) => number;
  readonly ofLoad: (load: number) => number;
  readonly numbers: readonly number[];
  /** How many residuals come from plucks; those after them from what was known before. */
  readonly heardCount: number;
  readonly start: (fixity: number) => number[];
  readonly residualsAt: (parameters: Float64Array) => Residuals | undefined;
  /** Force of a load, shared errors included, N. */
  readonly forceN: (load: number, parameters: ArrayLike<number>) => number;
}

/** A force that nobody knows may be this factor off the one that the string's law guesses, one standard deviation. */
const UNKNOWN_FORCE_LN_U = Math.log(3);

export function benchModel(data: BenchData): BenchModel {
  const { spans, loads, takes, prior } = data;
  const numbers = [...new Set(takes.flatMap((take) => take.partials.map(({ number }) => number)))].sort((a, b) => a - b);
  const forceScale = FIXITY + 1;
  const ofSpan = (span: number): number => forceScale + 1 + span;
  const ofLoad = (load: number): number => ofSpan(spans.length) + load;
  const ofNumber = (number: number): number => ofLoad(loads.length) + numbers.indexOf(number);
  const size = ofLoad(loads.length) + numbers.length;
  const heardCount = takes.reduce((sum, take) => sum + take.partials.length, 0);
  const lnDensity = { value: Math.log(prior.linearDensityKgPerM.value), u: relative(prior.linearDensityKgPerM) };
  const { low, high } = prior.bendingStiffnessNm2;
  const lnStiffness = { value: Math.log(low * high) / 2, u: Math.log(high / low) / 2 };
  const lnForces = loads.map(({ forceN, aboutN }, load) =>
    forceN
      ? { value: Math.log(forceN.value), u: relative(forceN), scaleU: data.forceScaleRelativeU }
      : { value: Math.log(aboutN ?? guessedForceN(data, load)), u: UNKNOWN_FORCE_LN_U, scaleU: 0 },
  );
  const lnForceOf = (load: number, parameters: ArrayLike<number>): number => {
    const { value, u, scaleU } = lnForces[load]!;
    return value + u * parameters[ofLoad(load)]! + scaleU * parameters[forceScale]!;
  };
  const rows = heardCount + size - 1; // nothing is known of the fixity but its bounds

  /** ln f of each partial of a take, with its slopes, less what was heard; whitened. */
  const heard = (take: BenchTake, parameters: Float64Array, out: Residuals, first: number): boolean => {
    const length = spans[take.span]!.lengthM;
    const lengthU = relative(length);
    const lnLength = Math.log(length.value) + lengthU * parameters[ofSpan(take.span)]!;
    const { u: forceU, scaleU } = lnForces[take.load]!;
    const lnForce = lnForceOf(take.load, parameters);
    const slackness = Math.exp((parameters[LN_STIFFNESS]! - lnForce) / 2 - lnLength);
    const fixity = Math.min(1, Math.max(0, parameters[FIXITY]!));
    const count = take.partials.length;
    const columns = Array.from({ length: size + 1 }, () => new Float64Array(count)); // the last are the residuals
    take.partials.forEach(({ number, frequencyHz }, i) => {
      const { lnStretch, perLnSlackness: e, perFixity } = stretchAt({ slackness, fixity: [fixity, fixity], number });
      const model = BENCH_MODEL_ERROR_EACH * number;
      const lnHz =
        (lnForce - parameters[LN_DENSITY]!) / 2 + Math.log(number / 2) - lnLength + lnStretch + model * parameters[ofNumber(number)]!;
      columns[LN_DENSITY]![i] = -1 / 2;
      columns[LN_STIFFNESS]![i] = e / 2;
      columns[FIXITY]![i] = perFixity[0] + perFixity[1];
      columns[forceScale]![i] = ((1 - e) / 2) * scaleU;
      columns[ofSpan(take.span)]![i] = -(1 + e) * lengthU;
      columns[ofLoad(take.load)]![i] = ((1 - e) / 2) * forceU;
      columns[ofNumber(number)]![i] = model;
      columns[size]![i] = lnHz - Math.log(frequencyHz.value);
    });
    if (!whiten(covarianceOf(take), columns)) return false;
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < size; j++) out.slopes[(first + i) * size + j] = columns[j]![i]!;
      out.values[first + i] = columns[size]![i]!;
    }
    return true;
  };

  const residualsAt = (parameters: Float64Array): Residuals | undefined => {
    const out = { values: new Float64Array(rows), slopes: new Float64Array(rows * size) };
    let row = 0;
    for (const take of takes) {
      if (!heard(take, parameters, out, row)) return undefined;
      row += take.partials.length;
    }
    for (let j = 0; j < size; j++) {
      if (j === FIXITY) continue;
      const { value, u } = j === LN_DENSITY ? lnDensity : j === LN_STIFFNESS ? lnStiffness : { value: 0, u: 1 };
      out.values[row] = (parameters[j]! - value) / u;
      out.slopes[row * size + j] = 1 / u;
      row++;
    }
    return out;
  };

  const start = (fixity: number): number[] =>
    Array.from({ length: size }, (_, j) =>
      j === LN_DENSITY ? lnDensity.value : j === LN_STIFFNESS ? lnStiffness.value : j === FIXITY ? fixity : 0,
    );
  return {
    size,
    forceScale,
    ofSpan,
    ofLoad,
    numbers,
    heardCount,
    start,
    residualsAt,
    forceN: (load, parameters) => Math.exp(lnForceOf(load, parameters)),
  };
}

/** Of ln f: each partial's own doubt, and what moves all of the take alike. */
function covarianceOf({ partials, sharedRelativeU }: BenchTake): Float64Array {
  const n = partials.length;
  const covariance = new Float64Array(n * n).fill(sharedRelativeU ** 2);
  partials.forEach(({ frequencyHz }, i) => {
    covariance[i * n + i]! += relative(frequencyHz) ** 2;
  });
  return covariance;
}

/** The string's law for the first take under a load that nobody knows. */
function guessedForceN({ takes, spans, prior }: BenchData, load: number): number {
  const take = takes.find((one) => one.load === load && one.partials.length > 0);
  const partial = take?.partials[0];
  if (!take || !partial) return 1;
  return 4 * prior.linearDensityKgPerM.value * ((spans[take.span]!.lengthM.value * partial.frequencyHz.value) / partial.number) ** 2;
}

const relative = ({ value, standardUncertainty }: { value: number; standardUncertainty: number }): number => standardUncertainty / value;
