/** Which measurement to add next: every one that is worth trying is reckoned through by the covariance that it would leave, and the best is named. */

import { type BenchData, type BenchTake, HIGHEST_PARTIAL } from './bench-data.ts';
import type { BenchFit } from './bench-fit.ts';
import { type BeltGuess, laterReadingsU95Relative, linearBench } from './bench-linear.ts';
import { FIXITY, LN_DENSITY, LN_STIFFNESS } from './bench-model.ts';

export type NextMeasurement =
  | {
      readonly kind: 'pluck';
      readonly spanLengthM: number;
      readonly isNewSpan: boolean;
      readonly forceN: number;
      readonly isNewForce: boolean;
    }
  /** Partials 2 and 3 of a take of which the first alone was told. */
  | { readonly kind: 'higher-partials'; readonly take: number }
  | { readonly kind: 'weigh' }
  /** With a rule that reads five times finer. */
  | { readonly kind: 'measure-span'; readonly span: number };

/** How well the belt would be known; relative standard uncertainties, of the fixity absolute. */
export interface BenchOutlook {
  readonly densityU: number;
  readonly stiffnessU: number;
  readonly fixityU: number;
  /** Half of the 95 % interval of a later reading, as far as the belt is to blame. */
  readonly laterU95: number;
}

export interface NextChoice extends BenchOutlook {
  readonly measurement: NextMeasurement;
}

/** Spans that fit on a bench and lie far enough apart to matter, m. */
const SPANS_M = [0.06, 0.08, 0.12, 0.18, 0.25, 0.4] as const;
/** Weights from a bag of screws to two full bottles, N. */
const FORCES_N = [3, 6, 12, 24] as const;
/** Of the rated force at most this much on the bench. */
const SHARE_OF_RATED = 0.95;
/** Lengths and forces within this share count as the same. */
const SAME_RELATIVE = 0.15;
const PARTIALS = 3;
/** A metre of belt on a scale that shows tenths of a gram. */
const WEIGHED_RELATIVE_U = 0.005;
const FINER_RULE = 5;
/** Where the bench has no example of its own. */
const USUAL = { frequency: 0.002, lengthM: 0.0005, force: 0.003 } as const;

/** How well the belt is known now, in the same terms. */
export function outlookNow(data: BenchData, fit: BenchFit): BenchOutlook | undefined {
  return outlookOf(settled(data, fit), beltOf(fit));
}

/** @param ratedForceN  of the belt; no heavier weight is proposed. @returns best first */
export function nextMeasurements(data: BenchData, fit: BenchFit, ratedForceN = Infinity): NextChoice[] {
  const belt = beltOf(fit);
  const now = settled(data, fit);
  return candidates(now, ratedForceN)
    .flatMap((measurement) => {
      const outlook = outlookOf(withMeasurement(now, measurement, belt), belt);
      return outlook ? [{ measurement, ...outlook }] : [];
    })
    .sort((a, b) => a.laterU95 - b.laterU95);
}

function candidates(data: BenchData, ratedForceN: number): NextMeasurement[] {
  const { spans, loads, takes } = data;
  const known = loads.flatMap(({ forceN }) => (forceN ? [forceN.value] : []));
  const same = (one: number, other: number): boolean => Math.abs(Math.log(one / other)) < SAME_RELATIVE;
  const newForces = FORCES_N.filter((force) => force <= SHARE_OF_RATED * ratedForceN && !known.some((one) => same(one, force)));
  const newSpans = SPANS_M.filter((span) => !spans.some(({ lengthM }) => same(lengthM.value, span)));
  const forces = [...known.map((forceN) => ({ forceN, isNewForce: false })), ...newForces.map((forceN) => ({ forceN, isNewForce: true }))];
  const lengths = [
    ...spans.map(({ lengthM }) => ({ spanLengthM: lengthM.value, isNewSpan: false })),
    ...newSpans.map((spanLengthM) => ({ spanLengthM, isNewSpan: true })),
  ];
  const isThere = (spanLengthM: number, forceN: number): boolean =>
    takes.some((take) => spans[take.span]!.lengthM.value === spanLengthM && loads[take.load]!.forceN?.value === forceN);
  return [
    ...lengths.flatMap((length) =>
      forces.flatMap((force) => (isThere(length.spanLengthM, force.forceN) ? [] : [{ kind: 'pluck' as const, ...length, ...force }])),
    ),
    ...takes.flatMap((take, index) => (isFirstAlone(take) ? [{ kind: 'higher-partials' as const, take: index }] : [])),
    ...(isWeighed(data) ? [] : [{ kind: 'weigh' as const }]),
    ...spans.map((_, span) => ({ kind: 'measure-span' as const, span })),
  ];
}

const isFirstAlone = ({ partials }: BenchTake): boolean => partials.length === 1 && partials[0]!.number === 1;
const isWeighed = ({ prior: { linearDensityKgPerM: density } }: BenchData): boolean =>
  density.standardUncertainty / density.value < 2 * WEIGHED_RELATIVE_U;

/** The bench with the measurement added; what it would read does not matter, only how well. */
function withMeasurement(data: BenchData, add: NextMeasurement, belt: BeltGuess): BenchData {
  const frequencyU = usual(
    data.takes.flatMap(({ partials }) => partials.map(({ frequencyHz: f }) => f.standardUncertainty / f.value)),
    USUAL.frequency,
  );
  const heard = (numbers: readonly number[]) =>
    numbers.map((number) => ({ number, frequencyHz: { value: number, standardUncertainty: number * frequencyU } }));
  const numbers = Array.from({ length: PARTIALS }, (_, k) => k + 1).filter((number) => number <= HIGHEST_PARTIAL);
  switch (add.kind) {
    case 'weigh': {
      const value = belt.linearDensityKgPerM;
      return { ...data, prior: { ...data.prior, linearDensityKgPerM: { value, standardUncertainty: value * WEIGHED_RELATIVE_U } } };
    }
    case 'measure-span':
      return {
        ...data,
        spans: data.spans.map(({ lengthM: { value, standardUncertainty: u } }, i) => ({
          lengthM: { value, standardUncertainty: i === add.span ? u / FINER_RULE : u },
        })),
      };
    case 'higher-partials':
      return {
        ...data,
        takes: data.takes.map((take, i) => (i === add.take ? { ...take, partials: [...take.partials, ...heard(numbers.slice(1))] } : take)),
      };
    case 'pluck': {
      const lengthU = usual(
        data.spans.map(({ lengthM }) => lengthM.standardUncertainty),
        USUAL.lengthM,
      );
      const forceU = usual(
        data.loads.flatMap(({ forceN }) => (forceN ? [forceN.standardUncertainty / forceN.value] : [])),
        USUAL.force,
      );
      const span = add.isNewSpan ? data.spans.length : data.spans.findIndex(({ lengthM }) => lengthM.value === add.spanLengthM);
      const load = add.isNewForce ? data.loads.length : data.loads.findIndex(({ forceN }) => forceN?.value === add.forceN);
      const shared = usual(
        data.takes.map(({ sharedRelativeU }) => sharedRelativeU),
        0,
      );
      return {
        ...data,
        spans: add.isNewSpan ? [...data.spans, { lengthM: { value: add.spanLengthM, standardUncertainty: lengthU } }] : data.spans,
        loads: add.isNewForce ? [...data.loads, { forceN: { value: add.forceN, standardUncertainty: add.forceN * forceU } }] : data.loads,
        takes: [...data.takes, { span, load, sharedRelativeU: shared, partials: heard(numbers) }],
      };
    }
  }
}

/** Middle of what there is. */
function usual(values: readonly number[], otherwise: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? otherwise;
}

function outlookOf(data: BenchData, belt: BeltGuess): BenchOutlook | undefined {
  const linear = linearBench(data, [Math.log(belt.linearDensityKgPerM), Math.log(belt.bendingStiffnessNm2), belt.fixity]);
  if (!linear) return undefined;
  const { covariance, model } = linear;
  const u = (place: number): number => Math.sqrt(covariance[place * model.size + place]!);
  return {
    densityU: u(LN_DENSITY),
    stiffnessU: u(LN_STIFFNESS),
    fixityU: u(FIXITY),
    laterU95: laterReadingsU95Relative(belt, covariance, model.size),
  };
}

/** Loads that nobody knows stand where the fit has put them. */
function settled(data: BenchData, { best, model }: BenchFit): BenchData {
  return {
    ...data,
    loads: data.loads.map((load, i) => (load.forceN ? load : { aboutN: model.forceN(i, best.parameters) })),
  };
}

/** Medians. A fit at a bound is taken a little inside it, where both stiffness and ends still move the partials. */
const beltOf = (fit: BenchFit): BeltGuess => ({
  linearDensityKgPerM: fit.linearDensityKgPerM.value,
  bendingStiffnessNm2: fit.bendingStiffnessNm2.value,
  fixity: Math.min(0.98, Math.max(0.02, fit.fixity.value)),
});
