/** Gauge against sound on the same belt: do they agree within their doubts, and if not, what is large enough to part them. */

import type { Measured } from '../math/measured.ts';

/** A force with the ends of its 95 % interval, which need not lie alike. */
export interface Interval {
  readonly valueN: number;
  readonly lowN: number;
  readonly highN: number;
}

export interface CrossCheck {
  readonly differenceN: number;
  /** Half the 95 % interval of the difference: of each the half that faces the other, less what both share. */
  readonly differenceU95N: number;
  /** |E_n| <= 1 agrees (ISO 13528 and ISO/IEC 17043 use the number so, from memory). */
  readonly en: number;
  readonly agrees: boolean;
}

/**
 * E_n = (gauge − sound)/U(difference).
 *
 * @param sharedU95N  expanded uncertainty that both carry alike, such as weights that proved gauge and belt: it cancels in the difference
 */
export function crossCheck(gauge: Interval, sound: Interval, sharedU95N = 0): CrossCheck {
  const differenceN = gauge.valueN - sound.valueN;
  const halves =
    differenceN >= 0 ? [gauge.valueN - gauge.lowN, sound.highN - sound.valueN] : [gauge.highN - gauge.valueN, sound.valueN - sound.lowN];
  const least = Math.min(halves[0]!, halves[1]!);
  const shared = Math.min(Math.max(sharedU95N, 0), least); // neither can share more than it has
  const differenceU95N = Math.sqrt(Math.max(0, halves[0]! ** 2 + halves[1]! ** 2 - 2 * shared ** 2));
  const en = differenceU95N > 0 ? differenceN / differenceU95N : differenceN === 0 ? 0 : Math.sign(differenceN) * Infinity;
  return { differenceN, differenceU95N, en, agrees: Math.abs(en) <= 1 };
}

/** What can part gauge and sound. */
export type PartingCause = 'insertion-rise' | 'density' | 'span' | 'ends' | 'wrong-chart' | 'slip';

export interface PartingSetup {
  /** Force by the sound, gauge off. */
  readonly forceN: number;
  /** Rise by inserting the gauge, where it was not taken off the gauge's force. */
  readonly rise?: Measured | undefined;
  readonly riseCorrected: boolean;
  /** Relative standard uncertainty of the linear density. */
  readonly densityRelativeU: number;
  readonly spanLengthM: Measured;
  readonly bendingStiffnessNm2: number;
  /** Standard uncertainty of the mean fixity of the two ends. */
  readonly fixityU: number;
  /** Force of the chart that came with the gauge less the proved one at this reading, where such a chart is used. */
  readonly chartOffN?: number | undefined;
  /** Standard deviation of the gauge's repeats, N. */
  readonly repeatN: number;
}

export interface RankedCause {
  readonly cause: PartingCause;
  /** What it can do to the difference gauge − sound: its usual size (two standard uncertainties), with the sign where it has one. */
  readonly sizeN: number;
  readonly hasSign: boolean;
  /** Whether it is large enough to explain the difference alone, and has its sign. */
  readonly explains: boolean;
}

/** Causes by size for this setup, largest first. */
export function rankedCauses(setup: PartingSetup, differenceN: number): readonly RankedCause[] {
  const { forceN, rise, riseCorrected, densityRelativeU, spanLengthM, bendingStiffnessNm2, fixityU, chartOffN, repeatN } = setup;
  const causes: { cause: PartingCause; sizeN: number; hasSign: boolean }[] = [
    // Corrected, only the doubt of the rise is left; not corrected, all of it.
    ...(rise
      ? [{ cause: 'insertion-rise' as const, sizeN: riseCorrected ? 2 * rise.standardUncertainty : rise.value, hasSign: !riseCorrected }]
      : []),
    { cause: 'density', sizeN: 2 * densityRelativeU * forceN, hasSign: false },
    { cause: 'span', sizeN: (4 * spanLengthM.standardUncertainty * forceN) / spanLengthM.value, hasSign: false },
    // Each end shortens the string by φ √(EI/T), which the force feels twice.
    { cause: 'ends', sizeN: (8 * fixityU * Math.sqrt(bendingStiffnessNm2 / forceN) * forceN) / spanLengthM.value, hasSign: false },
    ...(chartOffN === undefined ? [] : [{ cause: 'wrong-chart' as const, sizeN: chartOffN, hasSign: true }]),
    { cause: 'slip', sizeN: -3 * repeatN, hasSign: true },
  ];
  return causes
    .map((one) => ({
      ...one,
      explains: Math.abs(one.sizeN) >= Math.abs(differenceN) && (!one.hasSign || Math.sign(one.sizeN) === Math.sign(differenceN)),
    }))
    .sort((a, b) => Number(b.explains) - Number(a.explains) || Math.abs(b.sizeN) - Math.abs(a.sizeN));
}
