/** From the typed setup to what the core knows of the span; texts that cannot be read come out as faults by field. */

import { beltById, belts } from '../../../shared/belts.ts';
import type { KeptBelt } from '../../../shared/document/belt.ts';
import { beltKnowledge, ownBelt } from '../../core/belt/catalogue.ts';
import { forceOfTarget } from '../../core/machine/target.ts';
import type { Measured } from '../../core/math/measured.ts';
import { type ParsedQuantity, parseQuantity, type QuantityFault, type QuantityOptions } from '../../core/quantity.ts';
import {
  ASSUMED_UNCERTAINTY,
  type BeltKnowledge,
  type EndFixity,
  FIXITY_OF_END,
  type ForceRange,
  type SpanSetup,
} from '../../core/setup.ts';
import type { EnteredEnd, EnteredSetup, EnteredWeighing } from '../../ports.ts';
import { benchEnd, keptBeltById, knowledgeOf } from './own-belts.ts';

/** Stands for a belt of which the person tells the linear density; so does any id that neither the catalogue nor the kept belts know. */
export const OWN_BELT = 'own';
/** The catalogue begins with the commonest belt. */
export const DEFAULT_BELT_ID = belts[0]?.id ?? OWN_BELT;

/** Unit of a target that is told as a frequency. */
export const HERTZ = 'Hz';
/** Units that a target may be told in, the usual one first. */
export const TARGET_UNITS: readonly string[] = ['N', 'lbf', 'kgf', 'ozf', HERTZ];

/** A force is no frequency: where the unit changes between the two, what stood in the fields means nothing any more. */
export const withTargetUnit = ({ forceUnit }: EnteredSetup, chosen: string): Partial<EnteredSetup> =>
  (forceUnit === HERTZ) === (chosen === HERTZ) ? { forceUnit: chosen } : { forceUnit: chosen, targetFrom: '', targetTo: '' };

export const EMPTY_SETUP: EnteredSetup = {
  beltId: DEFAULT_BELT_ID,
  linearDensity: '',
  toothPitch: '',
  bendingStiffness: '',
  spanLength: '',
  spanKnownTo: '1',
  targetFrom: '',
  targetTo: '',
  forceUnit: 'N',
  tolerance: '',
  ends: ['unknown', 'unknown'],
};

export type SetupField = Exclude<keyof EnteredSetup, 'beltId' | 'forceUnit' | 'ends' | 'lie' | 'weighing' | 'on'>;
export type FieldFault = QuantityFault | { readonly ok: false; readonly why: 'same-as-other-end' };

/** What the texts say, in SI, and where they say nothing that can be read. Empty texts are no fault. */
export interface UnderstoodSetup {
  readonly setup: SpanSetup;
  readonly faults: Partial<Record<SetupField, FieldFault>>;
  /** Where the belt's values come from. */
  readonly beltFrom: 'catalogue' | 'kept' | 'typed';
  /** Name of a kept belt. */
  readonly keptName?: string | undefined;
  /** Whether ends can be told to be held as on this belt's bench. */
  readonly hasBenchEnds: boolean;
}

/** Every ± on the page is the half of a 95 % interval; the core reckons in standard uncertainties. */
const COVERAGE_FACTOR = 2;

const END_FIXITY: Record<Exclude<EnteredEnd, 'bench'>, EndFixity> = {
  unknown: FIXITY_OF_END.unknown,
  pulley: FIXITY_OF_END['toothed pulley'],
  idler: FIXITY_OF_END['smooth idler'],
  clip: FIXITY_OF_END.clamp,
};

/** @param ownBelts  belts that are kept, among which the one of the setup may be */
export function understood(entered: EnteredSetup, ownBelts: readonly KeptBelt[] = []): UnderstoodSetup {
  const kept = keptBeltById(ownBelts, entered.beltId);
  const faults: Partial<Record<SetupField, FieldFault>> = {};
  const read = (field: SetupField, options: QuantityOptions) => {
    const parsed = parseQuantity(entered[field], options);
    if (parsed.ok) return parsed;
    if (parsed.why !== 'empty') faults[field] = parsed;
    return undefined;
  };

  const stiffness = measured(read('bendingStiffness', { kind: 'stiffness', defaultUnit: 'N m²' }), {
    relative: ASSUMED_UNCERTAINTY.bendingStiffnessRelative,
  });
  const belt = kept ? withStiffness(knowledgeOf(kept), stiffness) : beltOf(entered, stiffness, read);
  const toothPitchM = belt?.toothPitchM;
  const knownTo = read('spanKnownTo', { kind: 'length', defaultUnit: 'mm', zeroAllowed: true, toothPitchM });
  const span = measured(read('spanLength', { kind: 'length', defaultUnit: 'mm', toothPitchM }), {
    absolute: knownTo ? knownTo.value / COVERAGE_FACTOR : ASSUMED_UNCERTAINTY.spanLengthM,
  });
  const kind = entered.forceUnit === HERTZ ? 'frequency' : 'force';
  const from = read('targetFrom', { kind, defaultUnit: entered.forceUnit, zeroAllowed: kind === 'force' });
  const to = read('targetTo', { kind, defaultUnit: entered.forceUnit });
  if (from && to && from.value === to.value) faults.targetTo = { ok: false, why: 'same-as-other-end' };
  const tolerance = read('tolerance', { kind: 'percent', defaultUnit: '%' });

  const told: SpanSetup = {
    spanLengthM: span,
    belt,
    ends: [endOf(entered.ends[0], kept), endOf(entered.ends[1], kept)],
    lie: entered.lie,
    toleranceRelative: tolerance?.value,
  };
  return {
    setup: kind === 'force' ? { ...told, targetForceN: targetOf(from, to) } : withFrequencyTarget(told, targetOf(from, to)),
    faults,
    beltFrom: kept ? 'kept' : beltById(entered.beltId) ? 'catalogue' : 'typed',
    keptName: kept?.name,
    hasBenchEnds: benchEnd(kept) !== undefined,
  };
}

/** Ends as on a bench that this belt never was on are ends of which nothing is known. */
const endOf = (end: EnteredEnd, kept: KeptBelt | undefined): EndFixity =>
  end === 'bench' ? (benchEnd(kept) ?? FIXITY_OF_END.unknown) : END_FIXITY[end];

type Readable = Extract<ParsedQuantity, { ok: true }>;

/** A typed ± goes before the assumed one. */
function measured(parsed: Readable | undefined, assumed: { absolute: number } | { relative: number }): Measured | undefined {
  if (!parsed) return undefined;
  const { value, standardUncertainty } = parsed;
  if (standardUncertainty !== undefined) return { value, standardUncertainty: standardUncertainty / COVERAGE_FACTOR };
  return { value, standardUncertainty: 'absolute' in assumed ? assumed.absolute : assumed.relative * value };
}

function beltOf(
  entered: EnteredSetup,
  stiffness: Measured | undefined,
  read: (field: SetupField, options: QuantityOptions) => Readable | undefined,
): BeltKnowledge | undefined {
  const entry = beltById(entered.beltId);
  if (entry) {
    const belt = { ...beltKnowledge(entry), ...weighed(entered) };
    return withStiffness(belt, stiffness);
  }
  const density = measured(read('linearDensity', DENSITY), { relative: ASSUMED_UNCERTAINTY.linearDensityRelative });
  const toothPitchM = read('toothPitch', { kind: 'length', defaultUnit: 'mm' })?.value;
  const densityFrom = weighed(entered) ? ('weighed' as const) : undefined;
  return density && ownBelt({ linearDensityKgPerM: density, densityFrom, bendingStiffnessNm2: stiffness, toothPitchM, catalogue: belts });
}

/** A typed stiffness goes before every other. */
const withStiffness = <Belt extends BeltKnowledge | undefined>(belt: Belt, stiffness: Measured | undefined): Belt =>
  belt && stiffness ? { ...belt, bendingStiffnessNm2: { kind: 'known', value: stiffness } } : belt;

const DENSITY: QuantityOptions = { kind: 'linear-density', defaultUnit: 'g/m' };

/** Weighing that holds for the belt as it stands in the fields: of another belt it says nothing, and a density typed later goes before it. */
export function weighingInUse({ beltId, linearDensity, weighing }: EnteredSetup): EnteredWeighing | undefined {
  if (weighing?.beltId !== beltId) return undefined;
  return beltById(beltId) || linearDensity === weighing.density ? weighing : undefined;
}

function weighed(entered: EnteredSetup): Pick<BeltKnowledge, 'linearDensityKgPerM' | 'densityFrom'> | undefined {
  const weighing = weighingInUse(entered);
  const parsed = weighing && parseQuantity(weighing.density, DENSITY);
  const density = parsed?.ok ? measured(parsed, { relative: ASSUMED_UNCERTAINTY.linearDensityRelative }) : undefined;
  return density && { linearDensityKgPerM: density, densityFrom: 'weighed' };
}

/** A frequency is one on the span in hand: its force follows, and the density cancels. */
function withFrequencyTarget(setup: SpanSetup, target: ForceRange | undefined): SpanSetup {
  if (target === undefined || setup.spanLengthM === undefined) return setup;
  const targetHz = { lowHz: target.lowN, highHz: target.highN, spanLengthM: setup.spanLengthM.value };
  const targetForceN = forceOfTarget(targetHz, setup);
  return targetForceN ? { ...setup, targetHz, targetForceN } : setup;
}

/** The two ends in whichever order they were typed; one end alone, or no width between them, is no target. */
function targetOf(from: Readable | undefined, to: Readable | undefined): ForceRange | undefined {
  if (!from || !to || from.value === to.value) return undefined;
  return { lowN: Math.min(from.value, to.value), highN: Math.max(from.value, to.value) };
}
