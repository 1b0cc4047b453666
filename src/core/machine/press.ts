/** Without sound: a known weight on the middle of the span, and a ruler. What a stiff belt gives way by, and what pressing adds to the force. */

import { AIR_LOAD_RELATIVE_U, centralSpan, type KnownSpan } from '../force/known-span.ts';
import { relativeUncertainty } from '../math/measured.ts';
import { type Propagated, propagated } from '../math/propagation.ts';
import { risingRoot } from '../math/root.ts';

const STANDARD_GRAVITY = 9.80665;
/** Axial stiffness for the linear density, N per kg/m, and its relative doubt: rubber on glass cord, assumed as for the sag of a span. */
const AXIAL_STIFFNESS_PER_DENSITY = 2.8e6;
const AXIAL_RELATIVE_U = 0.4;

/** EA as it was measured; else as belts of this density are taken to have it. */
export function axialStiffness(span: KnownSpan): { readonly valueN: number; readonly relativeU: number } {
  const { axialStiffnessN: measured, linearDensityKgPerM, linearDensityRelativeU } = span;
  if (measured) return { valueN: measured.value, relativeU: relativeUncertainty(measured) };
  const relativeU = Math.hypot(AXIAL_RELATIVE_U, AIR_LOAD_RELATIVE_U, linearDensityRelativeU);
  return { valueN: AXIAL_STIFFNESS_PER_DENSITY * linearDensityKgPerM, relativeU };
}

export interface StiffSpan {
  readonly spanLengthM: number;
  /** EI. */
  readonly bendingStiffnessNm2: number;
  /** Mean of both ends, 0 hinged to 1 clamped. */
  readonly fixity: number;
}

/**
 * How far the middle of a span gives way under a load on it: d = (F/2T)(L/2 − δ g), δ = sqrt(EI/T), h = L/2δ, e = exp(−h),
 * g = (2φ(1 − e)² + (1 − φ)(1 − e²))/((1 − φ)(1 + e²) + φ(1 − e²)).
 *
 * Derived from EI w'''' = T w'' on both halves, ends that resist turning with φ/(1 − φ) sqrt(EI T) per radian. Hinged: L/2 − δ tanh h;
 * clamped: L/2 − 2δ tanh(h/2); without stiffness the string's F L/4T.
 *
 * @param loadN  small enough that the slopes stay small
 */
export function pressedDeflectionM(span: StiffSpan, forceN: number, loadN: number): number {
  const { spanLengthM: L, bendingStiffnessNm2: EI, fixity: φ } = span;
  const δ = Math.sqrt(EI / forceN);
  const e = δ === 0 ? 0 : Math.exp(-L / (2 * δ));
  const g = (2 * φ * (1 - e) ** 2 + (1 - φ) * (1 - e * e)) / ((1 - φ) * (1 + e * e) + φ * (1 - e * e));
  return (loadN / (2 * forceN)) * (L / 2 - δ * g);
}

/** What pressing the middle down by d adds to the force: EA · 2 d²/(L · L_give), where L_give is the length of belt that stretches. */
export const insertionRiseN = (at: { axialStiffnessN: number; deflectionM: number; spanLengthM: number; givingLengthM: number }): number =>
  (at.axialStiffnessN * 2 * at.deflectionM ** 2) / (at.spanLengthM * at.givingLengthM);

export interface Press {
  readonly massKg: number;
  readonly massUKg: number;
  /** Of the middle, from the unloaded belt. */
  readonly deflectionM: number;
  readonly deflectionUM: number;
  /** How much belt can stretch: the span alone where both its ends are held, the loop where the motors are free; even in between. */
  readonly givingLengthM: { readonly low: number; readonly high: number };
}

export interface PressedForce {
  /** Without what the pressing added, with its budget: N. */
  readonly force: Propagated;
  /** What the pressing added, N. */
  readonly riseN: number;
}

/** A kitchen scale's weight, and a ruler read twice, before and under the load (our judgement). */
export const PRESS_DOUBT = { massRelative: 0.005, rulerM: 0.0003 } as const;

/** A deflection of fewer standard uncertainties than this is not to be told from none. */
const FEWEST_SD = 2;

/** @returns `undefined` where no force fits (the belt's stiffness alone would give way less), or the deflection is lost in the ruler's doubt */
export function pressedForce(press: Press, span: KnownSpan): PressedForce | undefined {
  if (!(press.deflectionM > FEWEST_SD * press.deflectionUM)) return undefined;
  const model = ([massKg, deflectionM, lnStiffness, fixity, lengthM, lnAxial, givingM]: readonly number[]): number =>
    forceUnder({
      span: { spanLengthM: lengthM!, bendingStiffnessNm2: Math.exp(lnStiffness!), fixity: Math.min(1, Math.max(0, fixity!)) },
      loadN: massKg! * STANDARD_GRAVITY,
      deflectionM: deflectionM!,
    }) - insertionRiseN({ axialStiffnessN: Math.exp(lnAxial!), deflectionM: deflectionM!, spanLengthM: lengthM!, givingLengthM: givingM! });
  const central = centralSpan(span);
  const axial = axialStiffness(span);
  const { low, high } = press.givingLengthM;
  const inputs = [
    { name: 'mass', value: press.massKg, standardUncertainty: press.massUKg },
    { name: 'deflection', value: press.deflectionM, standardUncertainty: press.deflectionUM },
    {
      name: 'bending stiffness',
      value: Math.log(Math.max(central.bendingStiffnessNm2, Number.MIN_VALUE)),
      standardUncertainty: central.lnStiffnessU,
    },
    { name: 'end fixity', value: (central.fixity[0] + central.fixity[1]) / 2, standardUncertainty: meanFixityU(central) },
    { name: 'span length', value: span.spanLengthM, standardUncertainty: span.spanLengthM * span.spanLengthRelativeU },
    { name: 'axial stiffness', value: Math.log(axial.valueN), standardUncertainty: axial.relativeU },
    { name: 'belt that gives', value: (low + high) / 2, standardUncertainty: (high - low) / Math.sqrt(12) },
  ];
  const force = propagated(inputs, model);
  if (!(force.value > 0)) return undefined;
  const [, deflectionM, , , spanLengthM, lnAxial, givingLengthM] = inputs.map(({ value }) => value) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return { force, riseN: insertionRiseN({ axialStiffnessN: Math.exp(lnAxial), deflectionM, spanLengthM, givingLengthM }) };
}

function meanFixityU({ fixityU: [one, other], fixityCovariance }: ReturnType<typeof centralSpan>): number {
  return Math.sqrt(Math.max(0, one ** 2 + other ** 2 + 2 * fixityCovariance)) / 2;
}

/** The force under which the load gives this deflection; 0 where the stiffness alone would give less. */
function forceUnder(at: { span: StiffSpan; loadN: number; deflectionM: number }): number {
  const { span, loadN, deflectionM } = at;
  const string = (loadN * span.spanLengthM) / (4 * deflectionM); // stiffness leaves no room for more
  const lowest = string * 1e-6;
  const value = (lnForce: number): number => deflectionM - pressedDeflectionM(span, Math.exp(lnForce), loadN);
  if (value(Math.log(lowest)) > 0) return 0;
  return Math.exp(risingRoot({ value, low: Math.log(lowest), high: Math.log(string) + 1e-9, tolerance: 1e-10 }));
}

/**
 * The reading to expect of a press on a span under a known force: the rise included, as the belt will show it.
 *
 * @param given.massKg  what lies or hangs on the middle
 */
export function expectedPress(
  given: { readonly span: KnownSpan; readonly forceN: number; readonly massKg: number; readonly givingLengthM: Press['givingLengthM'] },
  ruler: { readonly rulerM: number; readonly massRelative: number } = PRESS_DOUBT,
): Press {
  const { span, forceN, massKg, givingLengthM } = given;
  const central = centralSpan(span);
  const stiff: StiffSpan = {
    spanLengthM: span.spanLengthM,
    bendingStiffnessNm2: central.bendingStiffnessNm2,
    fixity: (central.fixity[0] + central.fixity[1]) / 2,
  };
  const axialStiffnessN = axialStiffness(span).valueN;
  const middle = (givingLengthM.low + givingLengthM.high) / 2;
  const loadN = massKg * STANDARD_GRAVITY;
  const loose = pressedDeflectionM(stiff, forceN, loadN);
  // The deeper, the tighter: where both meet, what is assumed is what follows.
  const value = (deflectionM: number): number => {
    const rise = insertionRiseN({ axialStiffnessN, deflectionM, spanLengthM: span.spanLengthM, givingLengthM: middle });
    return deflectionM - pressedDeflectionM(stiff, forceN + rise, loadN);
  };
  const deflectionM = risingRoot({ value, low: loose * 1e-3, high: loose, tolerance: 1e-9 });
  return { massKg, massUKg: ruler.massRelative * massKg, deflectionM, deflectionUM: ruler.rulerM, givingLengthM };
}
