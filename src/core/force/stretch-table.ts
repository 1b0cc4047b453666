/** How far a partial lies above the string's, as a table over slackness for one pair of ends: solved once, then read a thousand times. */

import type { EndFixities } from '../vibration/beam-phase.ts';
import { stretchAt } from '../vibration/beam-sensitivity.ts';

/** ln(f_n / (n f_string)) with its slopes at one slackness. */
export interface Stretch {
  lnStretch: number;
  /** e, by ln ε. */
  perLnSlackness: number;
  /** g, by the fixity of each end. */
  perFixity1: number;
  perFixity2: number;
}

/** Table over x = ln ε, ε = sqrt(EI/(T L²)), from a span that is a string in all but name to one whose force is next to nothing. */
const FIRST = Math.log(1e-4);
const LAST = Math.log(100);
/** Step of x; Hermite's cubic through values and slopes then errs by less than 1e-6. */
const STEP = 0.1;
const COUNT = Math.round((LAST - FIRST) / STEP) + 1;

export interface StretchTable {
  readonly lnStretch: Float64Array;
  readonly perLnSlackness: Float64Array;
  readonly perFixity1: Float64Array;
  readonly perFixity2: Float64Array;
}

/** Tables already made: the cells of unknown ends come again with every answer. */
const made = new Map<string, StretchTable>();
const MOST_KEPT = 600;

/** The same by the very pair of ends: a cell asks for its tables with every partial. */
const ofEnds = new WeakMap<EndFixities, StretchTable[]>();

/** @param number  of the partial, counted from 1 */
export function stretchTable(fixity: EndFixities, number = 1): StretchTable {
  let tables = ofEnds.get(fixity);
  if (tables === undefined) {
    tables = [];
    ofEnds.set(fixity, tables);
  }
  const table = tables[number] ?? tableFor(fixity, number);
  tables[number] = table;
  return table;
}

function tableFor(fixity: EndFixities, number: number): StretchTable {
  const key = `${number} ${fixity[0]} ${fixity[1]}`;
  const known = made.get(key);
  if (known !== undefined) return known;
  const empty = (): Float64Array => new Float64Array(COUNT);
  const table = { lnStretch: empty(), perLnSlackness: empty(), perFixity1: empty(), perFixity2: empty() };
  for (let i = 0; i < COUNT; i++) {
    const stretch = stretchAt({ slackness: Math.exp(FIRST + i * STEP), fixity, number });
    table.lnStretch[i] = stretch.lnStretch;
    table.perLnSlackness[i] = stretch.perLnSlackness;
    table.perFixity1[i] = stretch.perFixity[0];
    table.perFixity2[i] = stretch.perFixity[1];
  }
  if (made.size >= MOST_KEPT) made.clear();
  made.set(key, table);
  return table;
}

/**
 * Reads the table into `into`, which is overwritten and returned: nothing is allocated, for this runs once for each cell and force tried.
 * Below the table the stretch is proportional to ε. Above it, it grows as ε does: so little force no longer moves the frequency.
 *
 * @param lnSlackness  ln ε; −Infinity for a belt without stiffness
 */
export function readStretch(table: StretchTable, lnSlackness: number, into: Stretch): Stretch {
  const { lnStretch, perLnSlackness, perFixity1, perFixity2 } = table;
  const place = (lnSlackness - FIRST) / STEP;
  const i = Math.min(Math.max(Math.floor(place), 0), COUNT - 2);
  const t = place - i;
  if (t < 0) {
    const share = Math.exp(lnSlackness - FIRST);
    into.lnStretch = share * lnStretch[0]!;
    into.perLnSlackness = share * perLnSlackness[0]!;
    into.perFixity1 = share * perFixity1[0]!;
    into.perFixity2 = share * perFixity2[0]!;
    return into;
  }
  const e1 = perLnSlackness[i + 1]!;
  if (t > 1) {
    into.lnStretch = lnStretch[i + 1]! + (t - 1) * STEP;
    into.perLnSlackness = 1;
    into.perFixity1 = perFixity1[i + 1]!;
    into.perFixity2 = perFixity2[i + 1]!;
    return into;
  }
  const e0 = perLnSlackness[i]!;
  const k0 = lnStretch[i]!;
  const rise = lnStretch[i + 1]! - k0;
  const bend0 = STEP * e0 - rise;
  const bend1 = rise - STEP * e1;
  into.lnStretch = k0 + t * rise + t * (1 - t) * ((1 - t) * bend0 + t * bend1);
  into.perLnSlackness = e0 + t * (e1 - e0);
  into.perFixity1 = perFixity1[i]! + t * (perFixity1[i + 1]! - perFixity1[i]!);
  into.perFixity2 = perFixity2[i]! + t * (perFixity2[i + 1]! - perFixity2[i]!);
  return into;
}
