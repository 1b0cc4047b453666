/** The belt's bench from its texts to what the fit takes; what cannot be read comes out as a fault by its field. */

import { beltById, belts } from '../../../shared/belts.ts';
import type { KeptBelt, KeptBench } from '../../../shared/document/belt.ts';
import type { BenchData, BenchLoad, BenchPartial, BenchPrior } from '../../core/belt/bench-data.ts';
import { stiffnessLike } from '../../core/belt/catalogue.ts';
import { type BenchHang, forceScaleRelativeU, hungForceN } from '../../core/belt/hung-load.ts';
import type { Measured } from '../../core/math/measured.ts';
import { type ParsedQuantity, parseQuantity, type QuantityFault } from '../../core/quantity.ts';
import { understoodRig } from './bench-rig.ts';

/** `weights`: known forces. `positions`: one force that nobody knows, the same at each. */
export type BenchKind = 'weights' | 'positions';
export type KeptTake = KeptBench['takes'][number];

export interface UnderstoodBench {
  /** By id of the span or load and name of the field, such as `ID length`; of a take by both ids; of the rig by the field alone. */
  readonly faults: Readonly<Record<string, QuantityFault>>;
  /** Takes that can be reckoned with, and the spans and loads that they need; missing where there is none. */
  readonly data?: BenchData | undefined;
  /** For each take of the data which span and load it stands for. */
  readonly places: readonly { readonly spanId: string; readonly loadId: string }[];
  /** Force of each load that can be read, N. */
  readonly forceN: Readonly<Record<string, number>>;
}

/** Half of a 95 % interval on the page is two standard uncertainties in the core. */
const COVERAGE_FACTOR = 2;
/** Where no ± is told: a ruler's millimetre, a kitchen scale's half percent, a plain frequency meter's. */
const ASSUMED = { lengthM: 0.0005, massRelative: 0.0025, frequencyRelative: 0.002 } as const;
/** Two plucks at two positions of a machine have one force within this, relative standard uncertainty (our judgement). */
const SAME_FORCE_RELATIVE_U = 0.01;

export const EMPTY_BENCH: Readonly<Record<BenchKind, (ids: () => string) => KeptBench>> = {
  weights: (id) => ({
    rig: 'hang',
    spans: [emptySpan(id()), emptySpan(id())],
    loads: [emptyLoad(id()), emptyLoad(id()), emptyLoad(id()), emptyLoad(id())],
    takes: [],
    frequencyKnownTo: '0.4',
  }),
  positions: (id) => ({
    rig: 'hang',
    spans: [emptySpan(id()), emptySpan(id())],
    loads: [emptyLoad(id())],
    takes: [],
    frequencyKnownTo: '0.4',
  }),
};
export const emptySpan = (id: string): KeptBench['spans'][number] => ({ id, length: '', knownTo: '1' });
export const emptyLoad = (id: string): KeptBench['loads'][number] => ({ id, weight: '', knownTo: '0.5' });

export const takeAt = (bench: KeptBench, spanId: string, loadId: string): KeptTake | undefined =>
  bench.takes.find((take) => take.spanId === spanId && take.loadId === loadId);

/** The bench with another take in one place; an empty one goes. */
export function withTakeAt(bench: KeptBench, take: KeptTake): KeptBench {
  const others = bench.takes.filter((one) => one.spanId !== take.spanId || one.loadId !== take.loadId);
  const isEmpty = take.heard === undefined && (take.typed ?? '').trim() === '';
  return { ...bench, takes: isEmpty ? others : [...others, take] };
}

export function understoodBench(bench: KeptBench, belt: KeptBelt, kind: BenchKind): UnderstoodBench {
  const faults: Record<string, QuantityFault> = {};
  const read = (key: string, parsed: ParsedQuantity) => {
    if (parsed.ok) return parsed;
    if (parsed.why !== 'empty') faults[key] = parsed;
    return undefined;
  };
  const toothPitchM = belt.toothPitchM;
  const spans = bench.spans.flatMap(({ id, length, knownTo }) => {
    const told = read(`${id} length`, parseQuantity(length, { kind: 'length', defaultUnit: 'mm', toothPitchM }));
    const within = read(`${id} knownTo`, parseQuantity(knownTo, { kind: 'length', defaultUnit: 'mm', toothPitchM }));
    if (!told) return [];
    return [{ id, lengthM: measured(told, within ? within.value / COVERAGE_FACTOR : ASSUMED.lengthM) }];
  });
  const prior = priorOf(belt);
  const { hang, faults: rigFaults } = understoodRig(bench, toothPitchM, prior.linearDensityKgPerM.value);
  Object.assign(faults, rigFaults);
  const loads = bench.loads.flatMap(({ id, weight, knownTo }): { id: string; load: BenchLoad }[] => {
    if (kind === 'positions') return [{ id, load: {} }];
    const within = read(`${id} knownTo`, parseQuantity(knownTo, { kind: 'percent', defaultUnit: '%' }));
    const relativeU = within ? within.value / COVERAGE_FACTOR : ASSUMED.massRelative;
    const load = readLoad(weight, relativeU, hang);
    if ('ok' in load) {
      if (load.why !== 'empty') faults[`${id} weight`] = load;
      return [];
    }
    return [{ id, load: { forceN: load } }];
  });
  const frequencyU = read('frequencyKnownTo', parseQuantity(bench.frequencyKnownTo, { kind: 'percent', defaultUnit: '%' }));
  const typedRelativeU = frequencyU ? frequencyU.value / COVERAGE_FACTOR : ASSUMED.frequencyRelative;
  const found = bench.takes.flatMap((take) => {
    const [span, load] = [spans.findIndex(({ id }) => id === take.spanId), loads.findIndex(({ id }) => id === take.loadId)];
    const partials = take.heard?.partials ?? readPartials(take.typed ?? '', typedRelativeU);
    if ('ok' in partials) {
      if (partials.why !== 'empty') faults[`${take.spanId} ${take.loadId}`] = partials;
      return [];
    }
    if (span < 0 || load < 0 || partials.length === 0) return [];
    const shared = take.heard?.sharedRelativeU ?? 0;
    const sharedRelativeU = kind === 'positions' ? Math.hypot(shared, SAME_FORCE_RELATIVE_U / 2) : shared;
    return [{ place: { spanId: take.spanId, loadId: take.loadId }, take: { span, load, partials, sharedRelativeU } }];
  });
  const forceN = Object.fromEntries(loads.flatMap(({ id, load }) => (load.forceN ? [[id, load.forceN.value]] : [])));
  if (found.length === 0) return { faults, places: [], forceN };
  const data: BenchData = {
    spans: spans.map(({ lengthM }) => ({ lengthM })),
    loads: loads.map(({ load }) => load),
    takes: found.map(({ take }) => take),
    forceScaleRelativeU: forceScaleRelativeU(hang.place),
    prior,
  };
  return { faults, data, places: found.map(({ place }) => place), forceN };
}

type Readable = Extract<ParsedQuantity, { ok: true }>;

/** A typed ± goes before the field beside it. */
const measured = ({ value, standardUncertainty }: Readable, assumedU: number): Measured => ({
  value,
  standardUncertainty: standardUncertainty === undefined ? assumedU : standardUncertainty / COVERAGE_FACTOR,
});

/** A mass, which hangs; or a force with its unit, which pulls as it is. */
function readLoad(text: string, relativeU: number, hang: BenchHang): Measured | QuantityFault {
  const mass = parseQuantity(text, { kind: 'mass', defaultUnit: 'g' });
  if (mass.ok) return hungForceN(measured(mass, mass.value * relativeU), hang);
  if (mass.why !== 'unknown-unit') return mass;
  const force = parseQuantity(text, { kind: 'force', defaultUnit: 'N' });
  return force.ok ? measured(force, force.value * relativeU) : mass;
}

/** A partial that was not heard. */
const NOT_HEARD = /^[-–−]$/u;

/** '82.1 165 249': partials in their order, a dash for one that was not heard. */
export function readPartials(text: string, relativeU: number): readonly BenchPartial[] | QuantityFault {
  const words = text
    .replace(/\s*Hz\b/giu, ' ')
    .split(/[\s;]+|,\s+/u)
    .filter((word) => word !== '');
  if (words.length === 0) return { ok: false, why: 'empty' };
  const partials: BenchPartial[] = [];
  for (const [index, word] of words.entries()) {
    if (NOT_HEARD.test(word)) continue;
    const parsed = parseQuantity(word, { kind: 'frequency', defaultUnit: 'Hz' });
    if (!parsed.ok) return parsed;
    partials.push({ number: index + 1, frequencyHz: { value: parsed.value, standardUncertainty: parsed.value * relativeU } });
  }
  return partials;
}

/** Where neither the catalogue nor its owner tells a density: belts of small machines, a factor 2 either way. */
const ANY_BELT: Measured = { value: 0.012, standardUncertainty: 0.006 };

/** What is known without the bench: its own earlier answers would count the same plucks twice. */
export function priorOf(belt: KeptBelt): BenchPrior {
  const row = belt.catalogueId === undefined ? undefined : beltById(belt.catalogueId);
  const told = belt.linearDensityKgPerM.findLast(({ from }) => from !== 'bench' && from !== 'positions');
  const { value, standardUncertainty } = told ?? row?.linearDensityKgPerM ?? ANY_BELT;
  const toothPitchM = belt.toothPitchM;
  const range = row?.bendingStiffnessNm2 ?? stiffnessLike({ linearDensityKgPerM: value, toothPitchM, catalogue: belts });
  return { linearDensityKgPerM: { value, standardUncertainty }, bendingStiffnessNm2: { low: range.low, high: range.high } };
}
