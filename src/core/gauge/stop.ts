/** Where readings stop following the force: the plunger at its stop, or the contacts level. Saturation is no slip. */

import { median } from '../math/quantile.ts';
import { quadraticForm } from '../math/refined-least-squares.ts';
import { type Fit, fitCurve } from './fit.ts';
import { type LoadedReading, loadsOf, positionsBy } from './loaded-reading.ts';

export interface Stop {
  /** Reading at which the gauge is held; of a gauge that rises, readings from here on say nothing. */
  readonly reading: number;
  /** Smallest load that was held there. */
  readonly heldFromN: number;
  /** Largest load that was not. */
  readonly freeToN: number;
  /** Rows that were held. */
  readonly rows: readonly number[];
  /** `plateau`: several loads give one reading. `short`: only the largest load reads less than the curve below foretells. */
  readonly seen: 'plateau' | 'short';
}

/** Shortfall in standard deviations from which on it is no chance. */
const SURE_DEVIATIONS = 4.5;
/** Two loads stand at one reading where they differ by less than this many standard deviations of their difference. */
const ALIKE_DEVIATIONS = 3;
/** On a plateau the reading rises by less than this share of what the loads below foretell. */
const PLATEAU_RISE = 0.25;
/** The same for a single load, which every smooth way on must foretell. */
const SURE_ALONE_DEVIATIONS = 3.5;
/** A single load that rises by more than this share of what is foretold is a bend and no stop. */
const SINGLE_RISE = 0.75;

interface Level {
  readonly forceN: number;
  readonly reading: number;
  readonly u: number;
}

/**
 * @param run.deviation  of one reading, robust, > 0
 * @param run.step       of the readings
 */
export function stopOf({ rows, deviation, step }: { rows: readonly LoadedReading[]; deviation: number; step: number }): Stop | undefined {
  const loads = loadsOf(rows);
  if (loads.length < 4) return undefined;
  const at = positionsBy(rows, ({ forceN }) => forceN);
  const bottom = median(at.get(loads[0]!)!.map((i) => rows[i]!.reading));
  const top = median(at.get(loads[loads.length - 1]!)!.map((i) => rows[i]!.reading));
  const middle = median(at.get(loads[Math.floor(loads.length / 2)]!)!.map((i) => rows[i]!.reading));
  const sign = Math.sign(top - bottom) || Math.sign(middle - bottom);
  if (sign === 0) return undefined;
  const levels = loads.map((forceN): Level => {
    const here = at.get(forceN)!;
    const u = Math.hypot((1.25 * deviation) / Math.sqrt(here.length), step / Math.sqrt(12)); // 1.25: a median's
    return { forceN, reading: sign * median(here.map((i) => rows[i]!.reading)), u };
  });
  const count = plateauLength(levels) ?? (isShort(levels) ? 1 : 0);
  if (count === 0) return undefined;
  const heldFromN = levels[levels.length - count]!.forceN;
  const held = rows.filter(({ forceN }) => forceN >= heldFromN);
  return {
    reading: median(held.map(({ reading }) => reading)),
    heldFromN,
    freeToN: levels[levels.length - count - 1]!.forceN,
    rows: held.map(({ row }) => row),
    seen: count > 1 ? 'plateau' : 'short',
  };
}

/** How many of the largest loads give one reading although those below foretell a rise; undefined where fewer than two do. */
function plateauLength(levels: readonly Level[]): number | undefined {
  const last = levels.length - 1;
  let best: number | undefined;
  for (let count = 2; count <= levels.length - 3; count++) {
    const first = last - count + 1;
    const held = levels.slice(first);
    const mean = held.reduce((sum, { reading }) => sum + reading, 0) / count;
    if (!held.every(({ reading, u }) => Math.abs(reading - mean) <= ALIKE_DEVIATIONS * u)) break;
    // The flattest way up among the three loads before the plateau begins.
    const [a, b] = [levels[first - 2]!, levels[first - 1]!];
    const slope = (b.reading - a.reading) / (b.forceN - a.forceN);
    const foretold = slope * (levels[last]!.forceN - levels[first]!.forceN);
    const risen = levels[last]!.reading - levels[first]!.reading;
    const sure = foretold > SURE_DEVIATIONS * Math.hypot(levels[first]!.u, levels[last]!.u);
    if (sure && risen < PLATEAU_RISE * foretold) best = count;
  }
  return best;
}

/** Whether the largest load alone falls short of every smooth way on from the loads below it. */
function isShort(levels: readonly Level[]): boolean {
  const below = levels.slice(0, -1);
  const top = levels[levels.length - 1]!;
  if (below.length < 4) return false;
  const rows = below.map(({ forceN, reading }, i) => ({ row: i + 1, forceN, reading }));
  const near = rows.slice(-Math.max(4, Math.round(NEAR_SHARE * rows.length)));
  const previous = below[below.length - 1]!;
  const shortOf = (fit: Fit): { u: number; shortfall: number; isShort: boolean } => {
    const way = fit.curve.gradient(top.forceN);
    const scatter = Number.isFinite(fit.residualStandardDeviation) ? fit.residualStandardDeviation : 0;
    const u = Math.hypot(top.u, previous.u * Math.sqrt(quadraticForm(fit.inverse, way)), scatter);
    const foretold = fit.curve.reading(top.forceN);
    const shortfall = foretold - top.reading;
    const rises = top.reading - previous.reading < SINGLE_RISE * (foretold - previous.reading);
    return { u, shortfall, isShort: shortfall > SURE_ALONE_DEVIATIONS * u && rises };
  };
  const ways = [fitCurve({ kind: 'quadratic', rows }), fitCurve({ kind: 'saturating', rows }), fitCurve({ kind: 'quadratic', rows: near })]
    .filter((fit) => fit !== undefined)
    .map(shortOf);
  if (!ways.every((way) => way.isShort)) return false;
  // A cubic way on excuses the load only where the readings are good enough to carry a cubic.
  const cubic = fitCurve({ kind: 'spline', rows: rows.slice(-4) });
  const excuse = cubic && shortOf(cubic);
  return !excuse || excuse.isShort || excuse.u > CARRIES_CUBIC * Math.min(...ways.map(({ shortfall }) => shortfall));
}

/** The part of the loads that a way on is drawn from, at least four. */
const NEAR_SHARE = 0.4;
/** A way on excuses nothing where its own uncertainty is more than this share of what it should excuse. */
const CARRIES_CUBIC = 0.4;
