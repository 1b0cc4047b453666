/** One machine over time: readings by belt, what happened between them, and which readings a trend may still count. */

import type { ForceN, Grade } from '../outcome.ts';

/** A reading that was kept, of one belt of the machine. */
export interface LoggedReading {
  readonly kind: 'reading';
  readonly id: string;
  /** Seconds since 1970, UTC. */
  readonly atS: number;
  readonly beltId: string;
  readonly spanId?: string | undefined;
  /** Missing where span or density was not told. */
  readonly forceN?: ForceN | undefined;
  /** Relative standard uncertainty of the frequency: what one reading does not share with the next one on the same span. */
  readonly frequencyRelativeU: number;
  readonly frequencyHz: number;
  readonly grade: Grade;
  readonly temperatureC?: number | undefined;
  readonly note?: string | undefined;
}

export type EventKind = 'note' | 'belt-changed' | 'adjusted' | 'gauge-reading' | 'temperature';

export interface LoggedEvent {
  readonly kind: EventKind;
  readonly id: string;
  readonly atS: number;
  readonly text: string;
  /** Belts that it is about; empty: the whole machine. */
  readonly beltIds: readonly string[];
  /** Of a gauge reading. */
  readonly forceN?: ForceN | undefined;
  /** The gauge that it was read from, where its record keeps the reading. */
  readonly gaugeId?: string | undefined;
  readonly temperatureC?: number | undefined;
}

export type Logged = LoggedReading | LoggedEvent;

/** After these a belt is another one, or as good as: earlier readings say nothing of where it is going. */
const RESETS: readonly EventKind[] = ['belt-changed', 'adjusted'];
export const isReset = (event: Logged, beltId: string): boolean =>
  event.kind !== 'reading' && RESETS.includes(event.kind) && (event.beltIds.length === 0 || event.beltIds.includes(beltId));

/** Moment of the last reset of a belt; −Infinity where there was none. */
export function lastResetS(logged: readonly Logged[], beltId: string): number {
  return logged.reduce((latest, event) => (isReset(event, beltId) ? Math.max(latest, event.atS) : latest), Number.NEGATIVE_INFINITY);
}

/** A trend looks at no more readings than this, the latest: more make it no surer and cost time. */
const MOST_READINGS = 200;

/** Readings of a belt that a trend may count: with a force that can be used, since its last reset, in order of time. */
export function countedReadings(logged: readonly Logged[], beltId: string): readonly LoggedReading[] {
  const since = lastResetS(logged, beltId);
  return logged
    .filter((one): one is LoggedReading => one.kind === 'reading' && one.beltId === beltId && one.atS >= since && isUsable(one))
    .sort((a, b) => a.atS - b.atS)
    .slice(-MOST_READINGS);
}

const isUsable = ({ forceN, grade }: LoggedReading): boolean => forceN !== undefined && grade !== 'unusable';

/** Force goes with the square of frequency. */
const FORCE_OVER_FREQUENCY = 2;
/** Lengths, ends and place of pluck change a little from one time to the next, whatever the frequency says (our judgement). */
const SMALLEST_RELATIVE_U = 0.003;

/** Relative standard uncertainty that a reading's force does not share with the next one. */
export const ownRelativeU = ({ frequencyRelativeU }: LoggedReading): number =>
  Math.max(SMALLEST_RELATIVE_U, FORCE_OVER_FREQUENCY * frequencyRelativeU);

/** Standard uncertainty that all readings of a belt share: what is left of the whole once a reading's own part is taken out. */
export function sharedUN(readings: readonly LoggedReading[]): number {
  const last = readings.at(-1);
  if (!last?.forceN?.u95) return 0;
  const own = ownRelativeU(last) * last.forceN.value;
  return Math.sqrt(Math.max(0, (last.forceN.u95 / 1.96) ** 2 - own ** 2));
}
