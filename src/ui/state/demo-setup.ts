/** The demo's setup as a person would have typed it, so that the fields show what the demo rests on. */

import type { Measured } from '../../core/math/measured.ts';
import { formatNumber, measuredTexts } from '../../core/quantity.ts';
import type { SpanSetup } from '../../core/setup.ts';
import type { EnteredSetup } from '../../ports.ts';
import { EMPTY_SETUP, OWN_BELT } from './span-setup.ts';

const COVERAGE_FACTOR = 2;
const TYPED_DIGITS = 4;

/** The demo's belt was weighed, which is what the own belt's field is for. */
export function demoEntered({ spanLengthM, belt, targetForceN }: SpanSetup): EnteredSetup {
  return {
    ...EMPTY_SETUP,
    beltId: OWN_BELT,
    linearDensity: belt ? gramsPerMetre(belt.linearDensityKgPerM) : '',
    toothPitch: belt?.toothPitchM ? typed(belt.toothPitchM * 1000) : '',
    spanLength: spanLengthM ? typed(spanLengthM.value * 1000) : '',
    spanKnownTo: spanLengthM ? typed(COVERAGE_FACTOR * spanLengthM.standardUncertainty * 1000) : '',
    targetFrom: targetForceN ? typed(targetForceN.lowN) : '',
    targetTo: targetForceN ? typed(targetForceN.highN) : '',
  };
}

const typed = (value: number): string => formatNumber(value, { atMostDigits: TYPED_DIGITS });

function gramsPerMetre({ value, standardUncertainty }: Measured): string {
  const texts = measuredTexts({ value: value * 1000, u95: COVERAGE_FACTOR * standardUncertainty * 1000 });
  return `${texts.value} ± ${texts.u95}`;
}
