/** From a span of a machine to the fields of Listen, as a person would have typed them, and back to its names. */

import { beltById } from '../../../shared/belts.ts';
import { currentOf, type KnownValue } from '../../../shared/document/common.ts';
import type { KeptSpan, Machine, MachineBelt } from '../../../shared/document/machine.ts';
import type { KeptTarget } from '../../../shared/document/target.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { formatNumber, measuredTexts } from '../../core/quantity.ts';
import type { EnteredPlace, EnteredSetup } from '../../ports.ts';
import { DEFAULT_BELT_ID, EMPTY_SETUP, OWN_BELT } from './span-setup.ts';

const COVERAGE_FACTOR = 2;
const TYPED_DIGITS = 5;

export interface PlaceOnMachine {
  readonly machine: Machine;
  readonly belt: MachineBelt;
  readonly span?: KeptSpan | undefined;
}

/** What the ids name; undefined where machine or belt is gone. */
export function placeOn({ machines }: KeptDocument, on: EnteredPlace | undefined): PlaceOnMachine | undefined {
  const machine = on && machines.find(({ id }) => id === on.machineId);
  const belt = machine?.belts.find(({ id }) => id === on?.machineBeltId);
  return machine && belt && { machine, belt, span: belt.spans.find(({ id }) => id === on?.spanId) };
}

/** All fields as the machine has them; whatever it does not tell is as on an empty page. */
export function enteredForSpan(document: KeptDocument, { machine, belt, span }: PlaceOnMachine): EnteredSetup {
  const target = currentOf(belt.targets);
  return {
    ...EMPTY_SETUP,
    ...beltEntered(document, belt.beltId),
    ...(span?.lengthM
      ? { spanLength: millimetres(span.lengthM.value), spanKnownTo: millimetres(COVERAGE_FACTOR * span.lengthM.standardUncertainty) }
      : {}),
    ...(target ? targetEntered(target) : {}),
    ends: span?.ends ?? EMPTY_SETUP.ends,
    lie: span?.lie,
    on: { machineId: machine.id, machineBeltId: belt.id, spanId: span?.id },
  };
}

const typed = (value: number): string => formatNumber(value, { atMostDigits: TYPED_DIGITS });
const millimetres = (valueM: number): string => typed(valueM * 1000);

/** A target stays in the unit that it was told in. */
function targetEntered({ forceN, source }: KeptTarget): Partial<EnteredSetup> {
  if (source.kind === 'entered') return { targetFrom: source.from, targetTo: source.to, forceUnit: source.unit };
  return { targetFrom: typed(forceN.lowN), targetTo: typed(forceN.highN), forceUnit: 'N' };
}

/** A belt of the catalogue, or one that its owner knows more of. */
export function beltEntered({ belts }: KeptDocument, beltId: string): Partial<EnteredSetup> {
  if (beltById(beltId)) return { beltId };
  const own = belts.find(({ id }) => id === beltId);
  if (!own) return { beltId: DEFAULT_BELT_ID };
  const density = currentOf(own.linearDensityKgPerM);
  const stiffness = currentOf(own.bendingStiffnessNm2);
  const catalogueId = own.catalogueId !== undefined && beltById(own.catalogueId) ? own.catalogueId : undefined;
  const text = density && densityText(density);
  const id = catalogueId ?? OWN_BELT;
  const measured = density && density.from !== 'told';
  return {
    beltId: catalogueId !== undefined && density && !measured ? OWN_BELT : id,
    linearDensity: text ?? '',
    toothPitch: own.toothPitchM === undefined ? catalogueTooth(catalogueId) : millimetres(own.toothPitchM),
    bendingStiffness: stiffness ? withDoubt(stiffness) : '',
    ...(text !== undefined && measured
      ? { weighing: { beltId: id, kind: 'piece', length: '', mass: '', scaleStep: '', density: text } }
      : {}),
  };
}

const catalogueTooth = (id: string | undefined): string => {
  const pitch = id === undefined ? undefined : beltById(id)?.toothPitchM;
  return pitch === undefined ? '' : millimetres(pitch);
};

function densityText({ value, standardUncertainty }: KnownValue): string {
  const texts = measuredTexts({ value: value * 1000, u95: COVERAGE_FACTOR * standardUncertainty * 1000 });
  return `${texts.value} g/m ± ${texts.u95} g/m`;
}

const withDoubt = ({ value, standardUncertainty }: KnownValue): string => `${value} ± ${COVERAGE_FACTOR * standardUncertainty}`;
