/** A report on one machine as plain data: what a page prints, a table lists and a file holds. No words, no formats. */

import type { BudgetLine, ForceN, Grade } from '../outcome.ts';
import type { ForceRange } from '../setup.ts';
import type { Change } from './compare.ts';
import { changeAt } from './compare.ts';
import type { Outlook } from './outlook.ts';
import type { EventKind, Logged, LoggedEvent, LoggedReading } from './time-line.ts';
import type { Forecast } from './trend.ts';

export interface Report {
  /** ISO 8601 in UTC. */
  readonly madeAt: string;
  readonly program: string;
  readonly machineName: string;
  readonly machineNote: string;
  readonly belts: readonly ReportedBelt[];
  readonly pairs: readonly ReportedPair[];
  /** Latest first. */
  readonly readings: readonly ReportedReading[];
  /** Latest first. */
  readonly events: readonly ReportedEvent[];
  readonly gauges: readonly ReportedGauge[];
}

export interface ReportedBelt {
  readonly id: string;
  readonly name: string;
  readonly targetForceN?: ForceRange | undefined;
  readonly last?: ReportedReading | undefined;
  /** Of the last reading, largest first. */
  readonly budget: readonly BudgetLine[];
  readonly course?: { readonly kind: string; readonly perMonthN: number; readonly perMonthU95N: number } | undefined;
  readonly forecast?: Forecast | undefined;
}

export interface ReportedPair {
  readonly oneName: string;
  readonly otherName: string;
  readonly toleranceRelative: number;
  /** Latest difference of the other from the one, with half of its 95 % interval. */
  readonly last?: { readonly atS: number; readonly value: number; readonly u95: number } | undefined;
  readonly forecast?: Forecast | undefined;
}

export interface ReportedReading {
  readonly id: string;
  readonly atS: number;
  readonly beltName: string;
  readonly forceN?: ForceN | undefined;
  readonly frequencyHz: number;
  readonly grade: Grade;
  readonly temperatureC?: number | undefined;
  readonly note: string;
}

export interface ReportedEvent {
  readonly id: string;
  readonly atS: number;
  readonly kind: EventKind;
  readonly beltNames: readonly string[];
  readonly text: string;
  readonly forceN?: ForceN | undefined;
  readonly temperatureC?: number | undefined;
  /** What it did to the force of each belt that it is about, where the readings can tell. */
  readonly changes: readonly { readonly beltName: string; readonly change: Change }[];
}

export interface ReportedGauge {
  readonly name: string;
  /** Forces between which it was proved; missing where it was not. */
  readonly verifiedN?: ForceRange | undefined;
}

export const MONTH_S = 30.44 * 86_400;
const Z95 = 1.959964;

export function reportOf(told: {
  readonly madeAt: string;
  readonly program: string;
  readonly machineName: string;
  readonly machineNote: string;
  readonly logged: readonly Logged[];
  readonly outlook: Outlook;
  /** Budget of a kept reading by its id; empty where it has none. */
  readonly budgetOf: (readingId: string) => readonly BudgetLine[];
  readonly gauges: readonly ReportedGauge[];
}): Report {
  const { logged, outlook } = told;
  const nameOf = (beltId: string): string => outlook.belts.find(({ belt }) => belt.id === beltId)?.belt.name ?? beltId;
  const latestFirst = [...logged].sort((a, b) => b.atS - a.atS);
  const readings = latestFirst.filter((one): one is LoggedReading => one.kind === 'reading');
  return {
    madeAt: told.madeAt,
    program: told.program,
    machineName: told.machineName,
    machineNote: told.machineNote,
    belts: outlook.belts.map(({ belt, trend, forecast }) => {
      const last = readings.find(({ beltId }) => beltId === belt.id);
      const slope = trend?.best.slopeAt(trend.untilS);
      return {
        id: belt.id,
        name: belt.name,
        targetForceN: belt.targetForceN,
        last: last && reported(last, nameOf),
        budget: last ? [...told.budgetOf(last.id)].sort((a, b) => b.forceUN - a.forceUN) : [],
        course: slope && {
          kind: trend!.best.course,
          perMonthN: slope.value * MONTH_S,
          perMonthU95N: Z95 * slope.standardUncertainty * MONTH_S,
        },
        forecast,
      };
    }),
    pairs: outlook.pairs.map(({ pair, all, forecast }) => {
      const last = all.at(-1);
      return {
        oneName: nameOf(pair.oneId),
        otherName: nameOf(pair.otherId),
        toleranceRelative: pair.toleranceRelative,
        last: last && { atS: last.atS, value: last.value, u95: Z95 * last.standardUncertainty },
        forecast,
      };
    }),
    readings: readings.map((reading) => reported(reading, nameOf)),
    events: latestFirst
      .filter((one): one is LoggedEvent => one.kind !== 'reading')
      .map((event) => reportedEvent(event, readings, outlook, nameOf)),
    gauges: told.gauges,
  };
}

const reported = (reading: LoggedReading, nameOf: (beltId: string) => string): ReportedReading => ({
  id: reading.id,
  atS: reading.atS,
  beltName: nameOf(reading.beltId),
  forceN: reading.forceN,
  frequencyHz: reading.frequencyHz,
  grade: reading.grade,
  temperatureC: reading.temperatureC,
  note: reading.note ?? '',
});

function reportedEvent(
  event: LoggedEvent,
  readings: readonly LoggedReading[],
  outlook: Outlook,
  nameOf: (beltId: string) => string,
): ReportedEvent {
  const about = event.beltIds.length > 0 ? event.beltIds : outlook.belts.map(({ belt }) => belt.id);
  const usable = readings.filter(({ grade, forceN }) => grade !== 'unusable' && forceN !== undefined);
  return {
    id: event.id,
    atS: event.atS,
    kind: event.kind,
    beltNames: event.beltIds.map(nameOf),
    text: event.text,
    forceN: event.forceN,
    temperatureC: event.temperatureC,
    changes: about.flatMap((beltId) => {
      const change = changeAt(
        usable.filter((reading) => reading.beltId === beltId),
        event.atS,
      );
      return change ? [{ beltName: nameOf(beltId), change }] : [];
    }),
  };
}
