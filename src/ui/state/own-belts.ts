/** Belts that a person keeps, as the reckoning takes them: the last value of each quantity counts, the catalogue fills what nobody measured. */

import { beltById, belts } from '../../../shared/belts.ts';
import type { KeptBelt } from '../../../shared/document/belt.ts';
import { currentOf, type KnownValue } from '../../../shared/document/common.ts';
import { beltKnowledge, ownBelt } from '../../core/belt/catalogue.ts';
import type { Measured } from '../../core/math/measured.ts';
import type { BeltKnowledge, EndFixity } from '../../core/setup.ts';

export const keptBeltById = (kept: readonly KeptBelt[], id: string): KeptBelt | undefined => kept.find((belt) => belt.id === id);

const measured = ({ value, standardUncertainty }: KnownValue): Measured => ({ value, standardUncertainty });
/** Ways to a value that had plucks under known forces in them. */
const isProof = ({ from }: KnownValue): boolean => from === 'bench';

/** Undefined where neither its owner nor the catalogue tells a density. */
export function knowledgeOf(belt: KeptBelt): BeltKnowledge | undefined {
  const row = belt.catalogueId === undefined ? undefined : beltById(belt.catalogueId);
  const density = currentOf(belt.linearDensityKgPerM);
  const stiffness = currentOf(belt.bendingStiffnessNm2);
  const rated = currentOf(belt.ratedForceN)?.value ?? row?.ratedForceN.value;
  const toothPitchM = belt.toothPitchM ?? row?.toothPitchM;
  const bendingStiffness = stiffness && ({ kind: 'known', value: measured(stiffness) } as const);
  const axial = currentOf(belt.axialStiffnessN);
  const stretch = axial ? { axialStiffnessN: measured(axial) } : {};
  if (!density) return row && { ...beltKnowledge(row), ...stretch, ...(bendingStiffness ? { bendingStiffnessNm2: bendingStiffness } : {}) };
  const known = ownBelt({
    linearDensityKgPerM: measured(density),
    densityFrom: density.from === 'told' ? 'stated' : 'weighed',
    bendingStiffnessNm2: stiffness && measured(stiffness),
    ratedForceN: rated,
    toothPitchM,
    provedOnWeights: stiffness !== undefined && isProof(stiffness) ? true : undefined,
    catalogue: belts,
  });
  // A row's own range says more than what belts of like density have.
  return { ...known, ...stretch, ...(row && !stiffness ? { bendingStiffnessNm2: beltKnowledge(row).bendingStiffnessNm2 } : {}) };
}

/** How an end built like the bench's holds; undefined where the belt was on none. */
export function benchEnd(belt: KeptBelt | undefined): EndFixity | undefined {
  const fixity = belt?.endFixity && currentOf(belt.endFixity);
  return fixity && { kind: 'known', value: measured(fixity) };
}

/** '2 mm pitch, 6 mm wide' of the catalogue, under its own name. */
export const catalogueLabel = (belt: KeptBelt): string | undefined =>
  belt.catalogueId === undefined ? undefined : beltById(belt.catalogueId)?.label;
