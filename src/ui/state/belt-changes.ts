/** Changes of kept belts, as pure functions of the document: values are added, never replaced. */

import { beltById } from '../../../shared/belts.ts';
import type { KeptBelt } from '../../../shared/document/belt.ts';
import type { KnownValue, When } from '../../../shared/document/common.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import type { Measured } from '../../core/math/measured.ts';
import type { NewItem } from './new-item.ts';

/** A belt like one of the catalogue, or like none. */
export function newBelt(
  item: NewItem,
  { name, catalogueId }: { readonly name: string; readonly catalogueId?: string | undefined },
): KeptBelt {
  const row = catalogueId === undefined ? undefined : beltById(catalogueId);
  return {
    ...item,
    name,
    catalogueId: row?.id,
    toothPitchM: row?.toothPitchM,
    widthM: row?.widthM,
    linearDensityKgPerM: [],
    bendingStiffnessNm2: [],
    axialStiffnessN: [],
    ratedForceN: [],
  };
}

export const withNewBelt = (document: KeptDocument, belt: KeptBelt): KeptDocument => ({ ...document, belts: [...document.belts, belt] });

export const withBelt = (document: KeptDocument, id: string, change: (belt: KeptBelt) => KeptBelt): KeptDocument => ({
  ...document,
  belts: document.belts.map((belt) => (belt.id === id ? change(belt) : belt)),
});

export const withoutBelt = (document: KeptDocument, id: string): KeptDocument => ({
  ...document,
  belts: document.belts.filter((belt) => belt.id !== id),
});

export type ValueName = 'linearDensityKgPerM' | 'bendingStiffnessNm2' | 'endFixity' | 'axialStiffnessN' | 'ratedForceN';

export interface FoundValues {
  readonly from: KnownValue['from'];
  readonly note?: string | undefined;
  readonly values: Partial<Record<ValueName, Measured>>;
}

/** The belt with what was found as its values from now on; the earlier ones stay behind them. */
export function withFound(belt: KeptBelt, { from, note, values }: FoundValues, got: When): KeptBelt {
  const added = Object.entries(values).map(([name, { value, standardUncertainty }]) => {
    const known: KnownValue = { value, standardUncertainty, from, got, note };
    return [name, [...(belt[name as ValueName] ?? []), known]];
  });
  return { ...belt, ...Object.fromEntries(added) };
}

/** Without the value that counts: the one before it counts again. */
export const withoutLast = (belt: KeptBelt, name: ValueName): KeptBelt => ({ ...belt, [name]: (belt[name] ?? []).slice(0, -1) });
