/** What a gauge does to a belt in a machine, from what is kept of both. */

import { currentOf } from '../../../shared/document/common.ts';
import type { KeptGauge } from '../../../shared/document/gauge.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { insertionRiseN } from '../../core/gauge/insertion-rise.ts';
import type { Measured } from '../../core/math/measured.ts';
import { gaugesEn } from '../../words/gauges-en.ts';

const words = gaugesEn.chart.rise;

/**
 * EA of a belt of 2 mm pitch and 6 mm width that nobody stretched: 10 to 19 kN lie between an open acceptance test and a handbook's decoded
 * constant, so that much stays open.
 */
const UNKNOWN_STIFFNESS_N = 14_000;
const UNKNOWN_RELATIVE_U = 0.2;
const LENGTH_RELATIVE_U = 0.02;

export function usualStiffnessN({ beltId }: KeptGauge, { belts }: KeptDocument): number {
  const own = belts.find(({ id }) => id === beltId);
  return (own && currentOf(own.axialStiffnessN)?.value) ?? UNKNOWN_STIFFNESS_N;
}

/** @returns undefined where the gauge's contacts or its deflection are not told */
export function riseIn(
  { baseM, deflectionM }: KeptGauge,
  { axialStiffnessN, givingLengthM }: { readonly axialStiffnessN: number; readonly givingLengthM: number },
): Measured | undefined {
  if (baseM === undefined || !deflectionM) return undefined;
  return insertionRiseN({
    deflectionM,
    baseM,
    axialStiffnessN: { value: axialStiffnessN, standardUncertainty: UNKNOWN_RELATIVE_U * axialStiffnessN },
    givingLengthM: { value: givingLengthM, standardUncertainty: LENGTH_RELATIVE_U * givingLengthM },
  });
}

/** A length of a machine's belt that can give: a span between held pulleys, or the whole belt with motors free. */
export interface GivingLength {
  readonly key: string;
  readonly text: string;
  readonly lengthM: number;
}

export const machineSpans = ({ machines }: KeptDocument): readonly GivingLength[] =>
  machines.flatMap((machine) =>
    machine.belts.flatMap((belt) => [
      ...belt.spans.flatMap(({ id, name, lengthM }) =>
        lengthM ? [{ key: `${belt.id} ${id}`, text: words.heldSpan(machine.name, belt.name, name), lengthM: lengthM.value }] : [],
      ),
      ...(belt.lengthM ? [{ key: belt.id, text: words.wholeBelt(machine.name, belt.name), lengthM: belt.lengthM }] : []),
    ]),
  );
