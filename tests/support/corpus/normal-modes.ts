/**
 * The modes in which a span of the corpus rings: the plain beam's own, or those of a beam with something on it that the estimator's model
 * does not know (uneven mass, a pulley that rocks, a belt that twists). Everything after this works on normal coordinates of unit mass.
 */

import { type BeamBelt, type ModeShape, modeShape, type SpanGrid, spanGrid } from './mode-shapes.ts';
import { coupledModes, zeros } from './symmetric.ts';

export interface NormalModes {
  readonly spanLengthM: number;
  readonly forceN: number;
  /** Index of the mode that is the belt's first partial. */
  readonly first: number;
  /** Float64Array [modeCount], undamped, ascending. */
  readonly angularRadPerS: Float64Array;
  readonly grid: SpanGrid;
  /** [modeCount] of Float64Array [pointCount]: displacement for a coordinate of 1. */
  readonly shapes: readonly Float64Array[];
  /** The same of the twist of the belt's edge, where it twists. */
  readonly twists?: readonly Float64Array[] | undefined;
  /** [modeCount][modeCount]: integral of slope times slope, by which displacement lengthens the belt. */
  readonly stretch: readonly Float64Array[];
  /** Float64Array [modeCount]: transverse force on the first end for a coordinate of 1. */
  readonly endForce: Float64Array;
}

/** What makes a span differ from the plain beam. Several may be present at once. */
export interface Oddity {
  /** Mass and stiffness that rise and fall along the belt: with each tooth, and slowly. */
  readonly ripple?:
    | {
        readonly toothPitchM: number;
        readonly massShare: number;
        readonly stiffnessShare: number;
        readonly slowShares: readonly number[];
        readonly phase: number;
      }
    | undefined;
  /** The far end sits on a mass and a spring of its own: mass relative to the span's, resonance relative to the first partial. */
  readonly rocking?: { readonly massRatio: number; readonly resonanceRatio: number } | undefined;
  /** Twisting modes at ratio × first partial and its multiples, coupled by the mass centre's offset relative to the radius of gyration. */
  readonly twist?: { readonly ratio: number; readonly offset: number } | undefined;
}

const TWIST_COUNT = 5;

export function normalModes(belt: BeamBelt, modeCount: number, oddity: Oddity = {}): NormalModes {
  const grid = spanGrid(belt.spanLengthM);
  const beam = Array.from({ length: modeCount }, (_, index) => modeShape(belt, index + 1, grid));
  const common = { spanLengthM: belt.spanLengthM, forceN: belt.forceN, grid };
  if (!oddity.ripple && !oddity.rocking && !oddity.twist) {
    return {
      ...common,
      first: 0,
      angularRadPerS: Float64Array.from(beam, ({ angularRadPerS }) => angularRadPerS),
      shapes: beam.map(({ shape }) => shape),
      stretch: pairs(
        beam.map(({ slope }) => slope),
        grid,
      ),
      endForce: Float64Array.from(beam, ({ endForce }) => endForce),
    };
  }
  return { ...common, ...coupled(belt, beam, grid, oddity) };
}

/** All integrals of one times the other over the span, times a density if there is one. */
function pairs(rows: readonly Float64Array[], { weightM }: SpanGrid, density?: Float64Array): Float64Array[] {
  const out = zeros(rows.length);
  const weighted = new Float64Array(weightM.length);
  for (let one = 0; one < rows.length; one++) {
    for (let point = 0; point < weighted.length; point++) weighted[point] = rows[one]![point]! * weightM[point]! * (density?.[point] ?? 1);
    for (let other = one; other < rows.length; other++) {
      let sum = 0;
      for (let point = 0; point < weighted.length; point++) sum += weighted[point]! * rows[other]![point]!;
      out[one]![other] = sum;
      out[other]![one] = sum;
    }
  }
  return out;
}

interface Basis extends Pick<ModeShape, 'shape' | 'slope' | 'bend' | 'endSlopes' | 'endForce'> {
  readonly twist: Float64Array;
}

/** Galerkin: the beam's modes, a ramp for the rocking end and sines for the twist as trial functions; energies are integrals of them. */
function coupled(belt: BeamBelt, beam: readonly ModeShape[], grid: SpanGrid, { ripple, rocking, twist }: Oddity) {
  const { spanLengthM: L, linearDensityKgPerM: μ, bendingStiffnessNm2: EI, forceN: T, fixity } = belt;
  const none = new Float64Array(grid.placeM.length);
  const basis: Basis[] = beam.map((mode) => ({ ...mode, twist: none }));
  const ramp: Basis = {
    shape: grid.placeM.map((x) => x / L),
    slope: none.map(() => 1 / L),
    bend: none,
    endSlopes: [1 / L, 1 / L],
    endForce: T / L,
    twist: none,
  };
  if (rocking) basis.push(ramp);
  const twistFrom = basis.length;
  for (let number = 1; twist && number <= TWIST_COUNT; number++) {
    const sine = grid.placeM.map((x) => Math.sin((number * Math.PI * x) / L) * Math.sqrt(2 / (μ * L)));
    basis.push({ shape: none, slope: none, bend: none, endSlopes: [0, 0], endForce: 0, twist: sine });
  }
  const massAt = grid.placeM.map((x) => μ * unevenness(x / L, L, ripple, ripple?.massShare ?? 0));
  const stiffnessAt = grid.placeM.map(
    (x) => EI * unevenness(x / L, L, ripple && { ...ripple, slowShares: [] }, ripple?.stiffnessShare ?? 0),
  );
  const rotation = fixity.map((φ) => (φ / (1 - Math.min(φ, 0.98))) * Math.sqrt(EI * T));
  const centre = basis.map(({ shape, twist: turn }) => shape.map((value, point) => value + (twist?.offset ?? 0) * turn[point]!));
  const mass = pairs(centre, grid, massAt);
  const spin = pairs(
    basis.map(({ twist: turn }) => turn),
    grid,
    massAt,
  );
  const stretch = pairs(
    basis.map(({ slope }) => slope),
    grid,
  );
  const bending = pairs(
    basis.map(({ bend }) => bend),
    grid,
    stiffnessAt,
  );
  const stiffness = zeros(basis.length);
  basis.forEach((one, row) => {
    basis.forEach((other, column) => {
      mass[row]![column]! += spin[row]![column]!;
      const ends = rotation.reduce((sum, k, end) => sum + k * one.endSlopes[end as 0 | 1] * other.endSlopes[end as 0 | 1], 0);
      stiffness[row]![column] = T * stretch[row]![column]! + bending[row]![column]! + ends;
    });
  });
  const firstRad = beam[0]!.angularRadPerS;
  if (rocking) {
    const massKg = rocking.massRatio * μ * L;
    mass[beam.length]![beam.length]! += massKg;
    stiffness[beam.length]![beam.length]! += massKg * (rocking.resonanceRatio * firstRad) ** 2;
  }
  for (let number = 1; twist && number <= TWIST_COUNT; number++) {
    const at = twistFrom + number - 1;
    stiffness[at]![at] = (number * twist.ratio * firstRad) ** 2;
  }
  const { values, vectors } = coupledModes(stiffness, mass);
  const mix = (rows: readonly Float64Array[]) =>
    vectors.map((vector) => none.map((_, point) => vector.reduce((sum, share, index) => sum + share * rows[index]![point]!, 0)));
  const shapes = mix(basis.map(({ shape }) => shape));
  const closeness = shapes.map((shape) =>
    Math.abs(shape.reduce((sum, value, point) => sum + μ * value * beam[0]!.shape[point]! * grid.weightM[point]!, 0)),
  );
  return {
    first: closeness.indexOf(Math.max(...closeness)),
    angularRadPerS: values.map(Math.sqrt),
    shapes,
    twists: twist ? mix(basis.map(({ twist: turn }) => turn)) : undefined,
    stretch: pairs(mix(basis.map(({ slope }) => slope)), grid),
    endForce: Float64Array.from(vectors, (vector) => vector.reduce((sum, share, index) => sum + share * basis[index]!.endForce, 0)),
  };
}

function unevenness(share: number, spanLengthM: number, ripple: Oddity['ripple'], depth: number): number {
  if (!ripple) return 1;
  const teeth = Math.sin((2 * Math.PI * share * spanLengthM) / ripple.toothPitchM + ripple.phase);
  const slow = ripple.slowShares.reduce(
    (sum, part, index) => sum + part * Math.sin(2 * Math.PI * (index + 1) * share + 2 * ripple.phase),
    0,
  );
  return 1 + depth * teeth + slow;
}
