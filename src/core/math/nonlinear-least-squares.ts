/** Nonlinear least squares within bounds: Levenberg's and Marquardt's steps with Nielsen's rule for the damping, the last ones undamped. */

import { columnLengths, leastSquares, type Matrix } from './least-squares.ts';

/** What is left at a point, each divided by its standard uncertainty (or by nothing, where none is known), and how it moves. */
export interface Residuals {
  /** Float64Array [rows]. */
  readonly values: Float64Array;
  /** By rows, Float64Array [rows · parameters]: change of each residual with each parameter. */
  readonly slopes: Float64Array;
}

export interface LeastSquaresProblem {
  /** `undefined` where the model has no value: such a step is not taken. */
  readonly residualsAt: (parameters: Float64Array) => Residuals | undefined;
  readonly start: readonly number[];
  /** One for each parameter, −Infinity where it is free. */
  readonly lowest?: readonly number[] | undefined;
  readonly highest?: readonly number[] | undefined;
}

export interface LeastSquaresFit {
  readonly parameters: Float64Array;
  readonly residuals: Float64Array;
  readonly sumOfSquares: number;
  /** Rows less parameters. */
  readonly degreesOfFreedom: number;
  /**
   * (JᵀJ)⁻¹ by rows: the covariance where residuals are in standard uncertainties, else times sumOfSquares/degreesOfFreedom. A parameter that its
   * bound holds counts as known. Missing where the data leave a parameter open.
   */
  readonly covariance?: Float64Array | undefined;
  readonly isAtBound: readonly boolean[];
  readonly steps: number;
}

const MOST_STEPS = 2000;
/** Relative to each parameter's longest column so far. */
const FIRST_DAMPING = 1e-3;
/** Damped steps end where another promises less than this of the sum of squares; what is left is the undamped steps' part. */
const LEAST_PROMISE = 1e-13;
/** Of the fall that a step promises, so much has to come. */
const LEAST_GAIN = 1e-4;
const STRONGEST_DAMPING = 1e100;
const MOST_LAST_STEPS = 100;
/** Relative; beyond a double's digits. */
const SHORTEST_STEP = 1e-15;

/** @returns `undefined` where the model has no value at the start, or where the search did not come to rest */
export function nonlinearLeastSquares(problem: LeastSquaresProblem): LeastSquaresFit | undefined {
  const bounds = boundsOf(problem);
  let here = placeAt(problem, Float64Array.from(problem.start, bounds.within));
  if (!here) return undefined;
  const lengths = new Float64Array(problem.start.length);
  let damping = FIRST_DAMPING;
  let growth = 2;
  for (let steps = 1; steps <= MOST_STEPS; steps++) {
    columnLengths(here.jacobian).forEach((length, j) => {
      lengths[j] = Math.max(lengths[j]!, length);
    });
    const damped = Float64Array.from(lengths, (length) => Math.sqrt(damping) * (length || 1));
    const next = stepped(here, bounds, damped);
    const promise = next ? here.sum - squares(linear(here, next)) : Infinity;
    if (promise <= LEAST_PROMISE * here.sum || damping > STRONGEST_DAMPING) return rested(problem, bounds, here, steps);
    const trial = next && placeAt(problem, next);
    const gain = trial ? (here.sum - trial.sum) / promise : -1;
    if (trial && gain >= LEAST_GAIN) {
      here = trial;
      damping *= Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
      growth = 2;
    } else {
      damping *= growth;
      growth *= 2;
    }
  }
  return undefined;
}

interface Bounds {
  readonly within: (value: number, parameter: number) => number;
  /** Whether a bound keeps the parameter from going downhill. */
  readonly holds: (value: number, parameter: number, slope: number) => boolean;
}

interface Place {
  readonly x: Float64Array;
  readonly residuals: Float64Array;
  readonly jacobian: Matrix;
  readonly sum: number;
}

function boundsOf({ lowest, highest }: LeastSquaresProblem): Bounds {
  const low = (j: number): number => lowest?.[j] ?? -Infinity;
  const high = (j: number): number => highest?.[j] ?? Infinity;
  return {
    within: (value, j) => Math.min(high(j), Math.max(low(j), value)),
    holds: (value, j, slope) => low(j) === high(j) || (value <= low(j) && slope > 0) || (value >= high(j) && slope < 0),
  };
}

function placeAt(problem: LeastSquaresProblem, x: Float64Array): Place | undefined {
  const at = problem.residualsAt(x);
  if (!at?.values.every(Number.isFinite)) return undefined;
  const jacobian = { rows: at.values.length, columns: x.length, values: at.slopes };
  return { x, residuals: at.values, jacobian, sum: squares(at.values) };
}

/** Where one step leads, damped parameter by parameter; a step over a bound ends there. */
function stepped(here: Place, bounds: Bounds, damping?: Float64Array): Float64Array | undefined {
  const free = freeParameters(here, bounds);
  const { rows, columns, values } = here.jacobian;
  const more = damping ? free.length : 0;
  const A = new Float64Array((rows + more) * free.length);
  free.forEach((j, k) => {
    for (let i = 0; i < rows; i++) A[i * free.length + k] = values[i * columns + j]!;
    if (damping) A[(rows + k) * free.length + k] = damping[j]!;
  });
  const right = new Float64Array(rows + more);
  here.residuals.forEach((value, i) => {
    right[i] = -value;
  });
  if (free.length === 0) return here.x;
  const fit = leastSquares({ rows: rows + more, columns: free.length, values: A }, right);
  if (!fit) return undefined;
  const next = here.x.slice();
  free.forEach((j, k) => {
    next[j] = bounds.within(next[j]! + fit.solution[k]!, j);
  });
  return next;
}

/** Undamped steps for the last digits, as long as each is shorter than the one before. */
function rested(problem: LeastSquaresProblem, bounds: Bounds, settled: Place, steps: number): LeastSquaresFit {
  let here = settled;
  let shortest = Infinity;
  for (let step = 0; step < MOST_LAST_STEPS; step++) {
    const next = stepped(here, bounds);
    const length = next ? Math.max(...next.map((value, j) => Math.abs(value - here.x[j]!) / (Math.abs(value) || 1))) : Infinity;
    if (!next || !(length < shortest) || length < SHORTEST_STEP) break;
    const trial = placeAt(problem, next);
    if (!trial || trial.sum > here.sum * (1 + 1e-9)) break;
    shortest = length;
    here = trial;
  }
  const free = freeParameters(here, bounds);
  return {
    parameters: here.x,
    residuals: here.residuals,
    sumOfSquares: here.sum,
    degreesOfFreedom: here.residuals.length - here.x.length,
    covariance: covarianceOf(here, free),
    isAtBound: Array.from(here.x, (_, j) => !free.includes(j)),
    steps,
  };
}

function covarianceOf({ jacobian: { rows, columns, values } }: Place, free: readonly number[]): Float64Array | undefined {
  const covariance = new Float64Array(columns * columns);
  if (free.length === 0) return covariance;
  const A = Float64Array.from({ length: rows * free.length }, (_, at) => {
    const [i, k] = [Math.floor(at / free.length), at % free.length];
    return values[i * columns + free[k]!]!;
  });
  const inverse = leastSquares({ rows, columns: free.length, values: A }, new Float64Array(rows))?.inverseNormal;
  if (!inverse) return undefined;
  free.forEach((i, a) => {
    free.forEach((j, b) => {
      covariance[i * columns + j] = inverse[a * free.length + b]!;
    });
  });
  return covariance;
}

function freeParameters({ x, residuals, jacobian: { columns, values } }: Place, bounds: Bounds): number[] {
  return Array.from(x.keys()).filter((j) => {
    let slope = 0;
    residuals.forEach((residual, i) => {
      slope += residual * values[i * columns + j]!;
    });
    return !bounds.holds(x[j]!, j, slope);
  });
}

/** Residuals as the slopes promise them at another place. */
function linear({ x, residuals, jacobian: { columns, values } }: Place, next: Float64Array): Float64Array {
  return residuals.map((residual, i) => next.reduce((sum, value, j) => sum + (value - x[j]!) * values[i * columns + j]!, residual));
}

const squares = (values: Float64Array): number => values.reduce((sum, value) => sum + value * value, 0);
