/** Several people, one gauge, the same loads: how much of the spread is the gauge's and theirs, by crossed analysis of variance. */

import { shareAboveF } from '../math/f-test.ts';

export interface StudyReading {
  readonly person: string;
  readonly load: string;
  /** In newtons or divisions; the target window must be in the same. */
  readonly value: number;
}

export interface Row {
  readonly sumOfSquares: number;
  readonly degreesOfFreedom: number;
  readonly meanSquare: number;
}

export interface GaugeStudy {
  readonly load: Row;
  readonly person: Row;
  readonly interaction: Row;
  readonly within: Row;
  /** Chance of the interaction by scatter alone; above a quarter it is counted as scatter. */
  readonly interactionChance: number;
  readonly isPooled: boolean;
  /** Standard deviations. */
  readonly repeatability: number;
  readonly reproducibility: number;
  readonly gauge: number;
  readonly loads: number;
  /** 6 s of the gauge over the width of the target window; under 10 % is good, over 30 % poor (common practice). */
  readonly shareOfWindow?: number | undefined;
  /** Share of the total spread; the spread of the loads is the experimenter's own choice, so that this says little. */
  readonly shareOfSpread: number;
}

/** α above which the interaction is pooled (common practice). */
const POOLED_FROM = 0.25;

/**
 * @param study.readings  every person read every load equally often, at least twice
 * @returns undefined where it is not so, or fewer than two persons or loads
 */
export function gaugeStudy({
  readings,
  window,
}: {
  readings: readonly StudyReading[];
  window?: number | undefined;
}): GaugeStudy | undefined {
  const persons = [...new Set(readings.map(({ person }) => person))];
  const loads = [...new Set(readings.map(({ load }) => load))];
  const cells = new Map<string, number[]>();
  const key = (person: string, load: string): string => JSON.stringify([person, load]);
  for (const { person, load, value } of readings) cells.set(key(person, load), [...(cells.get(key(person, load)) ?? []), value]);
  const r = cells.values().next().value?.length ?? 0;
  const [p, o] = [loads.length, persons.length];
  if (p < 2 || o < 2 || r < 2 || cells.size !== p * o || [...cells.values()].some(({ length }) => length !== r)) return undefined;

  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const grand = mean(readings.map(({ value }) => value));
  const squares = (groups: readonly (readonly number[])[]): number =>
    groups.reduce((sum, group) => sum + group.length * (mean(group) - grand) ** 2, 0);
  const of = (test: (reading: StudyReading) => boolean): number[] => readings.filter(test).map(({ value }) => value);
  const ssLoad = squares(loads.map((load) => of((reading) => reading.load === load)));
  const ssPerson = squares(persons.map((person) => of((reading) => reading.person === person)));
  const ssCells = squares([...cells.values()]);
  const ssWithin = [...cells.values()].reduce((sum, cell) => sum + cell.reduce((own, value) => own + (value - mean(cell)) ** 2, 0), 0);
  const row = (sumOfSquares: number, degreesOfFreedom: number): Row => ({
    sumOfSquares,
    degreesOfFreedom,
    meanSquare: sumOfSquares / degreesOfFreedom,
  });
  const load = row(ssLoad, p - 1);
  const person = row(ssPerson, o - 1);
  const interaction = row(Math.max(0, ssCells - ssLoad - ssPerson), (p - 1) * (o - 1));
  const within = row(ssWithin, p * o * (r - 1));
  const interactionChance = shareAboveF({
    ratio: interaction.meanSquare / within.meanSquare,
    between: interaction.degreesOfFreedom,
    within: within.degreesOfFreedom,
  });
  const isPooled = !(interactionChance < POOLED_FROM);
  const error = isPooled
    ? row(interaction.sumOfSquares + within.sumOfSquares, interaction.degreesOfFreedom + within.degreesOfFreedom)
    : within;
  const against = isPooled ? error : interaction;
  const ofPerson = Math.max(0, (person.meanSquare - against.meanSquare) / (p * r));
  const ofInteraction = isPooled ? 0 : Math.max(0, (interaction.meanSquare - within.meanSquare) / r);
  const ofLoad = Math.max(0, (load.meanSquare - against.meanSquare) / (o * r));
  const reproducibility = Math.sqrt(ofPerson + ofInteraction);
  const gauge = Math.hypot(Math.sqrt(error.meanSquare), reproducibility);
  return {
    load,
    person,
    interaction,
    within,
    interactionChance,
    isPooled,
    repeatability: Math.sqrt(error.meanSquare),
    reproducibility,
    gauge,
    loads: Math.sqrt(ofLoad),
    shareOfWindow: window === undefined ? undefined : (6 * gauge) / window,
    shareOfSpread: gauge / Math.hypot(gauge, Math.sqrt(ofLoad)),
  };
}

/** Analysis of variance of one factor, as a check of the arithmetic and for runs of one person. */
export function oneWay(groups: readonly (readonly number[])[]): { between: Row; within: Row; ratio: number } {
  const all = groups.flat();
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const grand = mean(all);
  const means = groups.map((group) => mean(group));
  const row = (sumOfSquares: number, degreesOfFreedom: number): Row => ({
    sumOfSquares,
    degreesOfFreedom,
    meanSquare: sumOfSquares / degreesOfFreedom,
  });
  const between = row(
    groups.reduce((sum, group, k) => sum + group.length * (means[k]! - grand) ** 2, 0),
    groups.length - 1,
  );
  const within = row(
    groups.reduce((sum, group, k) => sum + group.reduce((own, value) => own + (value - means[k]!) ** 2, 0), 0),
    all.length - groups.length,
  );
  return { between, within, ratio: between.meanSquare / within.meanSquare };
}
