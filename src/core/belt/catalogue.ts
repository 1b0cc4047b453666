/** What is known of a belt before anybody measured it: from its row in the catalogue, or from its owner and the catalogue's company. */

import type { Measured } from '../math/measured.ts';
import type { BeltKnowledge, BendingStiffness } from '../setup.ts';

/** How a value was got, and the document or judgement behind it. */
interface Provenance {
  readonly from: 'printed' | 'bracketed' | 'scaled' | 'assumed';
  readonly source: string;
}

/** One row of the catalogue. A type test keeps it equal to the schema that reads the catalogue. */
export interface CatalogueBelt {
  readonly id: string;
  readonly label: string;
  readonly toothForm: 'curvilinear' | 'trapezoidal';
  /** System letter of the curvilinear forms, as ISO 13050 names them. */
  readonly system?: 'G' | 'H' | undefined;
  readonly material: 'rubber, glass cord' | 'polyurethane, steel cord';
  readonly toothPitchM: number;
  readonly widthM: number;
  readonly linearDensityKgPerM: Measured & Provenance;
  /** Allowable working force. */
  readonly ratedForceN: { readonly value: number } & Provenance;
  /** Range that bending stiffness EI is taken to lie in. */
  readonly bendingStiffnessNm2: { readonly low: number; readonly high: number } & Provenance;
}

/** A belt of this kind that nobody has weighed. */
export function beltKnowledge(belt: CatalogueBelt): BeltKnowledge {
  const { value, standardUncertainty } = belt.linearDensityKgPerM;
  const { low, high } = belt.bendingStiffnessNm2;
  return {
    linearDensityKgPerM: { value, standardUncertainty },
    densityFrom: 'catalogue',
    bendingStiffnessNm2: { kind: 'range', low, high },
    ratedForceN: belt.ratedForceN.value,
    toothPitchM: belt.toothPitchM,
  };
}

export interface OwnBelt {
  /** Value > 0. */
  readonly linearDensityKgPerM: Measured;
  readonly densityFrom?: 'stated' | 'weighed' | undefined;
  readonly bendingStiffnessNm2?: Measured | undefined;
  readonly ratedForceN?: number | undefined;
  readonly toothPitchM?: number | undefined;
  readonly provedOnWeights?: boolean | undefined;
  /** Where the stiffness is not told, it follows from these; at least one. */
  readonly catalogue: readonly CatalogueBelt[];
}

/** A belt whose owner tells its linear density; what is not told of its stiffness follows from the catalogue's belts of like density. */
export function ownBelt(belt: OwnBelt): BeltKnowledge {
  const { linearDensityKgPerM, densityFrom = 'stated', bendingStiffnessNm2, ratedForceN, toothPitchM, provedOnWeights, catalogue } = belt;
  return {
    linearDensityKgPerM,
    densityFrom,
    bendingStiffnessNm2: bendingStiffnessNm2
      ? { kind: 'known', value: bendingStiffnessNm2 }
      : stiffnessLike({ linearDensityKgPerM: linearDensityKgPerM.value, toothPitchM, catalogue }),
    ratedForceN,
    toothPitchM,
    provedOnWeights,
  };
}

/** Belts count as of one pitch within this share: 2 and 2.032 mm pulleys and belts are taken for each other. */
const SAME_PITCH_RELATIVE = 0.02;

/**
 * Stiffness range of a belt of this density. Straight lines in ln EI over ln density between the catalogue's belts, of the same
 * tooth pitch where it is told; outside them in proportion to density, as width would have it. Low ends are lowered and high ends
 * raised until both rise with density, so that the range holds that of every catalogue belt at its own density.
 */
export function stiffnessLike(belt: {
  linearDensityKgPerM: number;
  toothPitchM?: number | undefined;
  catalogue: readonly CatalogueBelt[];
}): Extract<BendingStiffness, { kind: 'range' }> {
  const { linearDensityKgPerM, toothPitchM, catalogue } = belt;
  const samePitch = catalogue.filter(
    (other) => toothPitchM !== undefined && Math.abs(other.toothPitchM / toothPitchM - 1) <= SAME_PITCH_RELATIVE,
  );
  const company = (samePitch.length > 0 ? samePitch : [...catalogue]).sort(
    (a, b) => a.linearDensityKgPerM.value - b.linearDensityKgPerM.value,
  );
  if (company.length === 0) throw new RangeError('stiffnessLike needs at least one belt in the catalogue');
  const points = company.map((other) => ({
    density: other.linearDensityKgPerM.value,
    low: Math.min(...heavierOrEqual(company, other).map((heavy) => heavy.bendingStiffnessNm2.low)),
    high: Math.max(...lighterOrEqual(company, other).map((light) => light.bendingStiffnessNm2.high)),
  }));
  return { kind: 'range', low: between(points, 'low', linearDensityKgPerM), high: between(points, 'high', linearDensityKgPerM) };
}

const heavierOrEqual = (company: readonly CatalogueBelt[], { linearDensityKgPerM: { value } }: CatalogueBelt) =>
  company.filter((belt) => belt.linearDensityKgPerM.value >= value);
const lighterOrEqual = (company: readonly CatalogueBelt[], { linearDensityKgPerM: { value } }: CatalogueBelt) =>
  company.filter((belt) => belt.linearDensityKgPerM.value <= value);

type Point = { readonly density: number; readonly low: number; readonly high: number };

function between(points: readonly Point[], end: 'low' | 'high', density: number): number {
  const first = points[0]!;
  const last = points[points.length - 1]!;
  if (density <= first.density) return (first[end] * density) / first.density;
  if (density >= last.density) return (last[end] * density) / last.density;
  const above = points.findIndex((point) => point.density >= density);
  const [a, b] = [points[above - 1]!, points[above]!];
  const share = Math.log(density / a.density) / Math.log(b.density / a.density);
  return a[end] * (b[end] / a[end]) ** share;
}
