/** A kept belt on its way between two devices, with its id, so that it is the same belt on both. */

import type { KeptBelt } from '../../../shared/document/belt.ts';
import { currentOf, type KnownValue } from '../../../shared/document/common.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import type { LinkedBelt } from '../../../shared/link-belt.ts';
import { nowWhen } from './new-item.ts';

type LinkedValue = NonNullable<LinkedBelt['density']>;

const linked = (values: readonly KnownValue[] | undefined): LinkedValue | undefined => {
  const value = values && currentOf(values);
  return value && [value.value, value.standardUncertainty, value.from, value.got.at];
};

export function linkedBelt(belt: KeptBelt): LinkedBelt {
  const { id, name, catalogueId, toothPitchM, widthM } = belt;
  const whole: LinkedBelt = {
    id,
    name,
    row: catalogueId,
    pitch: toothPitchM,
    width: widthM,
    density: linked(belt.linearDensityKgPerM),
    stiffness: linked(belt.bendingStiffnessNm2),
    stretch: linked(belt.axialStiffnessN),
    rated: linked(belt.ratedForceN),
    ends: linked(belt.endFixity),
  };
  return Object.fromEntries(Object.entries(whole).filter(([, value]) => value !== undefined)) as LinkedBelt;
}

const known = (value: LinkedValue | undefined): KnownValue[] =>
  value ? [{ value: value[0], standardUncertainty: value[1], from: value[2], got: { at: value[3], zone: 'UTC' } }] : [];

/** The belt as this device would keep it. */
export function keptBeltOf(belt: LinkedBelt): KeptBelt {
  const made = nowWhen();
  return {
    id: belt.id,
    made,
    changedAt: made.at,
    name: belt.name,
    catalogueId: belt.row,
    toothPitchM: belt.pitch,
    widthM: belt.width,
    linearDensityKgPerM: known(belt.density),
    bendingStiffnessNm2: known(belt.stiffness),
    axialStiffnessN: known(belt.stretch),
    ratedForceN: known(belt.rated),
    ...(belt.ends ? { endFixity: known(belt.ends) } : {}),
  };
}

/** A belt that is new is added; of one that is known, a value that differs is added to those that were there, and counts from now on. */
export function withLinkedBelt(document: KeptDocument, brought: KeptBelt): KeptDocument {
  const mine = document.belts.find(({ id }) => id === brought.id);
  if (!mine) return { ...document, belts: [...document.belts, brought] };
  const joined: KeptBelt = {
    ...mine,
    linearDensityKgPerM: withNewest(mine.linearDensityKgPerM, brought.linearDensityKgPerM),
    bendingStiffnessNm2: withNewest(mine.bendingStiffnessNm2, brought.bendingStiffnessNm2),
    axialStiffnessN: withNewest(mine.axialStiffnessN, brought.axialStiffnessN),
    ratedForceN: withNewest(mine.ratedForceN, brought.ratedForceN),
    ...(brought.endFixity ? { endFixity: withNewest(mine.endFixity ?? [], brought.endFixity) } : {}),
  };
  return { ...document, belts: document.belts.map((belt) => (belt === mine ? joined : belt)) };
}

function withNewest(mine: KnownValue[], brought: KnownValue[]): KnownValue[] {
  const [value] = brought;
  const now = currentOf(mine);
  const isSame =
    now && value && now.value === value.value && now.standardUncertainty === value.standardUncertainty && now.from === value.from;
  return value && !isSame ? [...mine, value] : mine;
}
