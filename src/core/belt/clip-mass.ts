/** Linear density without cutting the belt: a small known mass clipped to mid-span lowers the first partial, and by how much tells the belt's own mass. */

import type { Measured } from '../math/measured.ts';
import { type Propagated, propagated } from '../math/propagation.ts';
import { forceFromPartial } from '../vibration/beam.ts';
import { clippedHz } from '../vibration/clipped-beam.ts';

export interface ClipMeasurement {
  /** First partial without and with the clip, the force the same. */
  readonly bareHz: Measured;
  readonly clippedHz: Measured;
  readonly clipMassKg: Measured;
  /** How much of the belt lies under the clip, m; 0 where it is as good as a point. */
  readonly clipWidthM: number;
  /** How far from the middle it may sit, one standard deviation, m. */
  readonly clipPlaceUM: number;
  readonly spanLengthM: Measured;
  /** EI; about two thirds of the weight between the two, log-normal. */
  readonly bendingStiffnessNm2: { readonly low: number; readonly high: number };
  /** Of both ends. */
  readonly fixity: Measured;
}

export type ClipInput =
  | 'frequency without the clip'
  | 'frequency with the clip'
  | 'clip mass'
  | 'clip width'
  | 'clip place'
  | 'span length'
  | 'bending stiffness'
  | 'end fixity';

export interface ClipDensity {
  readonly linearDensityKgPerM: Measured;
  readonly contributions: readonly { readonly input: ClipInput; readonly standardUncertainty: number }[];
  /** Clip over span: best between 0.2 and 0.4. */
  readonly massRatio: number;
}

/** Densities are looked for this factor about the string's answer. */
const SEARCH_FACTOR = 4;
const STEPS = 60;
/** A clip holds the belt under it between not at all and wholly: even between, so half of it with this spread. */
const HELD = { share: 0.5, u: 1 / Math.sqrt(12) } as const;

/**
 * @returns `undefined` where the clip lowers the frequency by nothing, or by more than any mass could
 * @throws RangeError where a quantity is out of its range
 */
export function clipDensity(measurement: ClipMeasurement): ClipDensity | undefined {
  const { bareHz, clippedHz: loadedHz, clipMassKg, clipWidthM, clipPlaceUM, spanLengthM, bendingStiffnessNm2, fixity } = measurement;
  if (!(loadedHz.value < bareHz.value)) return undefined;
  const { low, high } = bendingStiffnessNm2;
  const offMiddle = (Math.PI * clipPlaceUM) / spanLengthM.value;
  const inputs: { readonly name: ClipInput; readonly value: number; readonly standardUncertainty: number }[] = [
    { name: 'frequency without the clip', ...bareHz },
    { name: 'frequency with the clip', ...loadedHz },
    { name: 'clip mass', ...clipMassKg },
    { name: 'clip width', value: HELD.share, standardUncertainty: clipWidthM > 0 ? HELD.u : 0 },
    // Off the middle by x the clip moves less: cos²(π x/L) of its mass counts, in the mean 1 − (π u/L)², with √2 of that as its spread.
    { name: 'clip place', value: 1 - offMiddle ** 2, standardUncertainty: Math.SQRT2 * offMiddle ** 2 },
    { name: 'span length', ...spanLengthM },
    { name: 'bending stiffness', value: Math.log(low * high) / 2, standardUncertainty: Math.log(high / low) / 2 },
    { name: 'end fixity', ...fixity },
  ];
  const model = ([bare, loaded, mass, held, counts, length, lnStiffness, φ]: readonly number[]): number =>
    densityOf({
      bareHz: bare!,
      loadedHz: loaded!,
      clipMassKg: mass! * counts!,
      clipHalfWidthM: (held! * clipWidthM) / 2,
      spanLengthM: length!,
      bendingStiffnessNm2: Math.exp(lnStiffness!),
      fixity: Math.min(1, Math.max(0, φ!)),
    });
  const result: Propagated = propagated(inputs, model);
  if (!Number.isFinite(result.value) || !Number.isFinite(result.standardUncertainty)) return undefined;
  const { value, standardUncertainty, contributions } = result;
  return {
    linearDensityKgPerM: { value, standardUncertainty },
    contributions: inputs.map(({ name }, i) => ({ input: name, standardUncertainty: contributions[i]!.standardUncertainty })),
    massRatio: clipMassKg.value / (value * spanLengthM.value),
  };
}

interface Told {
  readonly bareHz: number;
  readonly loadedHz: number;
  readonly clipMassKg: number;
  readonly clipHalfWidthM: number;
  readonly spanLengthM: number;
  readonly bendingStiffnessNm2: number;
  readonly fixity: number;
}

/** The heavier the belt, the nearer the two frequencies: bisection in ln density, the force taken from the span without the clip. NaN where none fits. */
function densityOf({ bareHz, loadedHz, ...span }: Told): number {
  const { spanLengthM, bendingStiffnessNm2, fixity, clipMassKg } = span;
  const ratioAt = (linearDensityKgPerM: number): number | undefined => {
    const belt = { spanLengthM, bendingStiffnessNm2, linearDensityKgPerM };
    const forceN = forceFromPartial({ ...belt, fixity: [fixity, fixity], number: 1, partialHz: bareHz });
    return forceN === undefined ? undefined : clippedHz({ ...span, linearDensityKgPerM, forceN }) / bareHz;
  };
  // The string's law: θ tan θ = μ L/M with θ = (π/2) f/f₀ (Rayleigh, The Theory of Sound, § 136).
  const θ = (Math.PI / 2) * (loadedHz / bareHz);
  const guess = (clipMassKg * θ * Math.tan(θ)) / spanLengthM;
  let low = Math.log(guess / SEARCH_FACTOR);
  let high = Math.log(guess * SEARCH_FACTOR);
  const target = loadedHz / bareHz;
  for (let step = 0; step < STEPS; step++) {
    const middle = (low + high) / 2;
    const ratio = ratioAt(Math.exp(middle));
    // A belt so light that its stiffness alone rings higher than was heard leaves no force: look among the heavier ones.
    if (ratio === undefined || ratio < target) low = middle;
    else high = middle;
  }
  const found = Math.exp((low + high) / 2);
  const ratio = ratioAt(found);
  return ratio !== undefined && Math.abs(ratio / target - 1) < 1e-6 ? found : Number.NaN;
}
