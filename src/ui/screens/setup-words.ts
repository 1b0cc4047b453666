/** The setup in words: what a text was read as, why it could not be read, and the whole setup in one line. */

import { beltById } from '../../../shared/belts.ts';
import { expectedFrequencyHz } from '../../core/force/expected.ts';
import { relativeUncertainty } from '../../core/math/measured.ts';
import { formatPercent, parseQuantity } from '../../core/quantity.ts';
import type { EnteredSetup } from '../../ports.ts';
import { en } from '../../words/en.ts';
import { type Figures, together } from '../format.ts';
import type { FieldFault, SetupField, UnderstoodSetup } from '../state/span-setup.ts';

const words = en.setup;
/** Every ± on the page is the half of a 95 % interval. */
const COVERAGE_FACTOR = 2;

export const beltName = ({ beltId }: EnteredSetup, { keptName }: UnderstoodSetup): string =>
  keptName ?? beltById(beltId)?.label ?? words.ownBelt;

export function faultText(fault: FieldFault | undefined): string {
  if (!fault || fault.why === 'empty') return '';
  return fault.why === 'unknown-unit' ? words.faults['unknown-unit'](fault.unit ?? '') : words.faults[fault.why];
}

/** '150 mm', or that it is missing. */
export function spanText({ setup }: UnderstoodSetup, figures: Figures): string {
  return setup.spanLengthM ? figures.typed(setup.spanLengthM.value * 1000, 'mm') : words.foldedSpanMissing;
}

/** '150 mm ± 1 mm'. */
export function measuredSpanText(understood: UnderstoodSetup, figures: Figures): string {
  const text = spanText(understood, figures);
  const span = understood.setup.spanLengthM;
  return span ? `${text} ±\u00a0${figures.typed(COVERAGE_FACTOR * span.standardUncertainty * 1000, 'mm')}` : text;
}

/** '7.8 g/m ± 10 %, catalogue', or '7.74 g/m ± 0.06 g/m, weighed'. */
export function beltDensity(understood: UnderstoodSetup, figures: Figures): string {
  if (understood.setup.belt?.densityFrom !== 'weighed') return catalogueDensity(understood, figures);
  return words.densityWeighed(densityText(understood, figures));
}

function catalogueDensity({ setup }: UnderstoodSetup, figures: Figures): string {
  const density = setup.belt?.linearDensityKgPerM;
  if (!density) return '';
  const doubt = formatPercent(COVERAGE_FACTOR * relativeUncertainty(density), { format: figures.format });
  return words.densityCatalogue(figures.typed(density.value * 1000, 'g/m'), doubt);
}

/** The same where somebody told or weighed it: '8.40 g/m ± 0.04 g/m'. */
export function densityText(understood: UnderstoodSetup, figures: Figures): string {
  const { belt } = understood.setup;
  if (!belt || belt.densityFrom === 'catalogue') return catalogueDensity(understood, figures);
  const { value, standardUncertainty } = belt.linearDensityKgPerM;
  return together(figures.measured(value * 1000, COVERAGE_FACTOR * standardUncertainty * 1000), 'g/m');
}

/** '112 to 139 Hz': what the target sounds like on this span; empty where there is none. */
export function expectedText({ setup }: UnderstoodSetup, figures: Figures): string {
  const expected = setup.targetForceN && expectedFrequencyHz(setup, setup.targetForceN);
  return expected ? en.range(figures.whole(expected.lowHz), figures.whole(expected.highHz, 'Hz')) : '';
}

/** What a length was read as, where it was not typed in plain millimetres. */
export function lengthReadAs(entered: EnteredSetup, understood: UnderstoodSetup, figures: Figures): string {
  const plain = /^[\d\s.,]*(mm)?$/u.test(entered.spanLength.trim());
  return plain || !understood.setup.spanLengthM ? '' : words.understood(spanText(understood, figures));
}

/** What the target was read as, where it was not typed in plain newtons. */
export function targetReadAs(entered: EnteredSetup, { setup }: UnderstoodSetup, figures: Figures): string {
  const plain = entered.forceUnit === 'N' && /^[\d\s.,N]*$/u.test(`${entered.targetFrom}${entered.targetTo}`);
  return plain || !setup.targetForceN ? '' : words.understood(figures.forceRange(setup.targetForceN));
}

/** Half a target decides nothing; the person may only not have typed the other half yet. */
export function halfTarget(entered: EnteredSetup): boolean {
  return (entered.targetFrom.trim() === '') !== (entered.targetTo.trim() === '');
}

/** Tooth pitch of the belt in the fields, m, also while its density is not told yet. */
export function toothPitchOf({ toothPitch }: EnteredSetup, { setup }: UnderstoodSetup): number | undefined {
  if (setup.belt) return setup.belt.toothPitchM;
  const parsed = parseQuantity(toothPitch, { kind: 'length', defaultUnit: 'mm' });
  return parsed.ok ? parsed.value : undefined;
}

/** First fault of these fields, in words. */
export function firstFault({ faults }: UnderstoodSetup, fields: readonly SetupField[]): string {
  return fields.map((field) => faultText(faults[field])).find((text) => text !== '') ?? '';
}
