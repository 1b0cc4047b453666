/** From what is kept to one machine's time line: takes as readings, entries as events, belts with their targets, groups as pairs. */

import { currentOf, isAlive } from '../../../shared/document/common.ts';
import type { KeptEntry } from '../../../shared/document/entry.ts';
import type { KeptGauge } from '../../../shared/document/gauge.ts';
import type { Machine } from '../../../shared/document/machine.ts';
import type { KeptTake } from '../../../shared/document/take.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import type { WatchedBelt, WatchedPair } from '../../core/logbook/outlook.ts';
import type { Logged, LoggedEvent, LoggedReading } from '../../core/logbook/time-line.ts';
import type { ForceRange } from '../../core/setup.ts';
import { crossLines } from './gauge-cross.ts';
import { proofOf } from './gauge-proof.ts';
import { ZERO_CELSIUS_K } from './temperature.ts';

/** Stands for the takes that were made on no machine; each name that they carry is a belt of its own. */
export const ELSEWHERE = 'elsewhere';

export interface Book {
  readonly id: string;
  /** None for takes on no machine. */
  readonly machine?: Machine | undefined;
  readonly logged: readonly Logged[];
  readonly belts: readonly WatchedBelt[];
  readonly pairs: readonly WatchedPair[];
}

const secondsOf = (iso: string): number => Date.parse(iso) / 1000;
const celsius = (kelvin: number | undefined): number | undefined => (kelvin === undefined ? undefined : kelvin - ZERO_CELSIUS_K);

export function bookOf(document: KeptDocument, id: string): Book | undefined {
  return id === ELSEWHERE ? bookElsewhere(document) : bookOfMachine(document, id);
}

/** Books that have something in them or could: every machine, and takes on none where there are any. */
export function booksOf(
  document: KeptDocument,
): readonly { readonly id: string; readonly machine?: Machine | undefined; readonly count: number }[] {
  const machines = document.machines.filter(isAlive).map((machine) => ({
    id: machine.id,
    machine,
    count:
      document.takes.filter((take) => isAlive(take) && take.on?.machineId === machine.id).length +
      document.entries.filter((entry) => isAlive(entry) && entry.machineId === machine.id).length,
  }));
  const elsewhere = document.takes.filter((take) => isAlive(take) && isElsewhere(document, take)).length;
  return elsewhere > 0 ? [...machines, { id: ELSEWHERE, count: elsewhere }] : machines;
}

const isElsewhere = ({ machines }: KeptDocument, { on }: KeptTake): boolean =>
  on === undefined || !machines.some((machine) => machine.id === on.machineId && isAlive(machine));

function bookOfMachine(document: KeptDocument, id: string): Book | undefined {
  const machine = document.machines.find((one) => one.id === id && isAlive(one));
  if (!machine) return undefined;
  const takes = document.takes.filter((take) => isAlive(take) && take.on?.machineId === id);
  const entries = document.entries.filter((entry) => isAlive(entry) && entry.machineId === id);
  return {
    id,
    machine,
    logged: withTemperature([
      ...takes.map((take) => readingOf(take, take.on!.machineBeltId)),
      ...entries.map(eventOf),
      ...gaugeEvents(document, takes),
    ]),
    belts: machine.belts.map((belt) => ({ id: belt.id, name: belt.name, targetForceN: currentOf(belt.targets)?.forceN })),
    pairs: machine.groups.flatMap(({ beltIds, toleranceRelative }) => pairsOf(beltIds, toleranceRelative)),
  };
}

/** A temperature holds for readings without one of their own within so much time. */
const CARRIED_S = 6 * 3600;

/** Readings that tell no temperature take that of the nearest entry or reading that does. */
function withTemperature(logged: readonly Logged[]): readonly Logged[] {
  const told = logged.filter(({ temperatureC }) => temperatureC !== undefined).sort((a, b) => a.atS - b.atS);
  if (told.length === 0) return logged;
  let next = 0;
  const carried = new Map<string, number>();
  for (const { id, kind, atS, temperatureC } of [...logged].sort((a, b) => a.atS - b.atS)) {
    while (next < told.length - 1 && told[next + 1]!.atS <= atS) next++;
    if (kind !== 'reading' || temperatureC !== undefined) continue;
    const [nearest] = told.slice(next, next + 2).sort((a, b) => Math.abs(a.atS - atS) - Math.abs(b.atS - atS));
    if (nearest && Math.abs(nearest.atS - atS) <= CARRIED_S) carried.set(id, nearest.temperatureC!);
  }
  return logged.map((one) => (carried.has(one.id) ? { ...one, temperatureC: carried.get(one.id) } : one));
}

/** Of a group of more than two, each further belt is set against the first. */
const pairsOf = ([oneId, ...others]: readonly string[], toleranceRelative: number): readonly WatchedPair[] =>
  oneId === undefined ? [] : others.map((otherId) => ({ oneId, otherId, toleranceRelative }));

function bookElsewhere(document: KeptDocument): Book | undefined {
  const takes = document.takes.filter((take) => isAlive(take) && isElsewhere(document, take));
  const names = [...new Set(takes.map(({ name }) => name ?? ''))];
  return {
    id: ELSEWHERE,
    logged: takes.map((take) => readingOf(take, take.name ?? '')),
    belts: names.map((name) => ({ id: name, name })),
    pairs: [],
  };
}

function readingOf(take: KeptTake, beltId: string): LoggedReading {
  const { frequencyHz, forceN, grade } = take.now.answer;
  return {
    kind: 'reading',
    id: take.id,
    atS: secondsOf(take.heard.at),
    beltId,
    spanId: take.on?.spanId,
    forceN,
    frequencyHz: frequencyHz.value,
    frequencyRelativeU: frequencyHz.standardUncertainty / frequencyHz.value,
    grade,
    temperatureC: celsius(take.temperatureK),
    note: take.note,
  };
}

function eventOf(entry: KeptEntry): LoggedEvent {
  const { forceN } = entry;
  return {
    kind: entry.kind,
    id: entry.id,
    atS: secondsOf(entry.happened.at),
    text: entry.text,
    beltIds: entry.machineBeltIds,
    forceN: forceN && {
      value: forceN.value,
      u95: forceN.u95,
      ...(forceN.u95 === undefined ? {} : { low: forceN.value - forceN.u95, high: forceN.value + forceN.u95 }),
    },
    temperatureC: celsius(entry.temperatureK),
  };
}

/** Temperature and note of readings that were taken together. */
export function withReadingNotes(
  document: KeptDocument,
  ids: readonly string[],
  { temperatureC, note }: { readonly temperatureC: number | undefined; readonly note: string },
): KeptDocument {
  const temperatureK = temperatureC === undefined ? undefined : temperatureC + ZERO_CELSIUS_K;
  return {
    ...document,
    takes: document.takes.map((take) => (ids.includes(take.id) ? { ...take, temperatureK, note: note === '' ? undefined : note } : take)),
  };
}

/** Cross-checks that gauges keep of this machine's readings: what each gauge said beside the sound, with its interval. */
function gaugeEvents(document: KeptDocument, takes: readonly KeptTake[]): readonly LoggedEvent[] {
  return document.gauges.filter(isAlive).flatMap((gauge) => {
    const own = (gauge.crossChecks ?? []).filter(({ takeId }) => takes.some(({ id }) => id === takeId));
    if (own.length === 0) return [];
    const lines = crossLines(gauge, proofOf(gauge, document.belts), document);
    return own.map((check): LoggedEvent => {
      const found = lines.find(({ id }) => id === check.id)?.gauge;
      const take = takes.find(({ id }) => id === check.takeId);
      return {
        kind: 'gauge-reading',
        id: `${gauge.id}.${check.id}`,
        atS: secondsOf(check.at.at),
        text: gauge.name,
        beltIds: take?.on ? [take.on.machineBeltId] : [],
        forceN: found && {
          value: found.valueN,
          low: found.lowN,
          high: found.highN,
          u95: Math.max(found.valueN - found.lowN, found.highN - found.valueN),
        },
        gaugeId: gauge.id,
      };
    });
  });
}

/** Forces between which a gauge was proved; undefined where it was not. */
export function verifiedForce(gauge: KeptGauge, document: KeptDocument): ForceRange | undefined {
  const { calibration } = proofOf(gauge, document.belts);
  if (calibration.kind !== 'calibration' || calibration.verified.kind !== 'verified') return undefined;
  return { lowN: calibration.verified.forceLowN, highN: calibration.verified.forceHighN };
}

/** Takes and entries of these ids as deleted; what they were stays with them. */
export function withDeleted(document: KeptDocument, ids: readonly string[], deletedAt: string | undefined): KeptDocument {
  const marked = <Item extends { readonly id: string; readonly deletedAt?: string | undefined }>(
    items: readonly Item[],
  ): readonly Item[] => {
    if (!items.some(({ id }) => ids.includes(id))) return items;
    return items.map((item) => (ids.includes(item.id) ? { ...item, deletedAt } : item));
  };
  return { ...document, takes: marked(document.takes), entries: marked(document.entries) };
}
