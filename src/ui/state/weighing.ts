/** From a weighing as it was typed to a density; what cannot be read comes out as a fault by field, and what looks odd as the range that was expected. */

import { beltById, belts } from '../../../shared/belts.ts';
import { lengthOfTeeth, type Weighing, weighedDensity } from '../../core/belt/density.ts';
import { unexpectedDensity } from '../../core/belt/weighings.ts';
import type { Measured } from '../../core/math/measured.ts';
import { measuredTexts, type ParsedQuantity, parseQuantity, type QuantityFault } from '../../core/quantity.ts';
import type { EnteredSetup, EnteredWeighing } from '../../ports.ts';

export type WeighingTexts = Omit<EnteredWeighing, 'beltId' | 'density'>;
export type WeighingField = Exclude<keyof WeighingTexts, 'kind'>;
export type WeighingFault = QuantityFault | { readonly ok: false; readonly why: 'not-whole-teeth' };

/** A scale's step is never guessed: a kitchen scale's is ten times a letter scale's. */
export const EMPTY_WEIGHING: WeighingTexts = { kind: 'piece', length: '', mass: '', scaleStep: '' };

/** What lay on the scale as it was read. */
export interface ReadWeighing {
  readonly faults: Partial<Record<WeighingField, WeighingFault>>;
  /** Fields that are still empty. */
  readonly missing: readonly WeighingField[];
  /** Missing where a field is or cannot be read. */
  readonly weighing?: Weighing | undefined;
}

export interface UnderstoodWeighing extends ReadWeighing {
  readonly linearDensityKgPerM?: Measured | undefined;
  /** Where the result lies outside it: what the catalogue lets one expect, kg/m. */
  readonly expected?: { readonly low: number; readonly high: number } | undefined;
}

/** A ruler along a straight piece: ± 1 mm at 95 % (our judgement). The cuts are added where the density is reckoned. */
const RULER_U_M = 0.0005;
const COVERAGE_FACTOR = 2;
const FIELDS: readonly WeighingField[] = ['length', 'mass', 'scaleStep'];

type Readable = Extract<ParsedQuantity, { ok: true }>;

/** @param toothPitchM  of the belt that is weighed, where it is known */
export function readWeighing(texts: WeighingTexts, toothPitchM: number | undefined): ReadWeighing {
  const faults: Partial<Record<WeighingField, WeighingFault>> = {};
  const read = (field: WeighingField, parsed: ParsedQuantity): Readable | undefined => {
    if (parsed.ok) return parsed;
    if (parsed.why !== 'empty') faults[field] = parsed;
    return undefined;
  };
  const lengthUnit = texts.kind === 'loop' ? 'teeth' : 'mm';
  const length = read('length', parseQuantity(texts.length, { kind: 'length', defaultUnit: lengthUnit, toothPitchM }));
  const mass = read('mass', parseQuantity(texts.mass, { kind: 'mass', defaultUnit: 'g' }));
  const step = read('scaleStep', parseQuantity(texts.scaleStep, { kind: 'mass', defaultUnit: 'g' }));
  const lengthM = length && lengthOf(length, toothPitchM);
  if (length && !lengthM) faults.length = { ok: false, why: 'not-whole-teeth' };
  const missing = FIELDS.filter((field) => texts[field].trim() === '');
  if (!lengthM || !mass || !step) return { faults, missing };
  return { faults, missing, weighing: { kind: texts.kind, lengthM, massKg: mass.value, scaleStepKg: step.value } };
}

/** @param about  belt that is weighed, and its tooth pitch where that is known */
export function understoodWeighing(
  texts: WeighingTexts,
  about: { readonly beltId: string; readonly toothPitchM?: number | undefined },
): UnderstoodWeighing {
  const { toothPitchM } = about;
  const read = readWeighing(texts, toothPitchM);
  if (!read.weighing) return read;
  const { linearDensityKgPerM } = weighedDensity(read.weighing);
  const expected = unexpectedDensity(linearDensityKgPerM, { row: beltById(about.beltId), toothPitchM, catalogue: belts });
  return { ...read, linearDensityKgPerM, expected };
}

/** Undefined for teeth that are no whole number. */
function lengthOf({ value, unit, standardUncertainty }: Readable, toothPitchM: number | undefined): Measured | undefined {
  if (standardUncertainty !== undefined) return { value, standardUncertainty: standardUncertainty / COVERAGE_FACTOR };
  if (unit !== 'teeth' || toothPitchM === undefined) return { value, standardUncertainty: RULER_U_M };
  const teeth = Math.round(value / toothPitchM);
  return teeth > 0 && Math.abs(value / toothPitchM - teeth) < 1e-6 ? lengthOfTeeth(teeth, toothPitchM) : undefined;
}

/** What the setup becomes once a weighing is used. The own belt's density is shown in its field too. */
export function withWeighing({ beltId }: EnteredSetup, texts: WeighingTexts, density: Measured): Partial<EnteredSetup> {
  const shown = measuredTexts({ value: density.value * 1000, u95: COVERAGE_FACTOR * density.standardUncertainty * 1000 });
  const text = `${shown.value} g/m ± ${shown.u95} g/m`;
  return { weighing: { beltId, ...texts, density: text }, ...(beltById(beltId) ? {} : { linearDensity: text }) };
}
