/** A calibration as the JSON object that scripts read: names and order are a contract. */

import type { Calibration } from '../core/gauge/calibration.ts';
import { chartRows } from '../core/gauge/chart.ts';
import { convert } from '../core/gauge/convert.ts';
import type { ConvertedForce } from '../core/gauge/prediction.ts';
import { chosenByText, modelText, refusalText, verifiedText } from '../words/gauge-en.ts';

/** Far below any uncertainty. Coefficients and scatter are printed in full, for whoever goes on computing with them. */
const SIGNIFICANT_DIGITS = 6;

const rounded = (value: number | undefined): number | null =>
  value === undefined || !Number.isFinite(value) ? null : Number(value.toPrecision(SIGNIFICANT_DIGITS));

const forceFields = ({ forceN, u95N, lowN, highN }: ConvertedForce) => ({
  forceN: rounded(forceN),
  forceU95N: rounded(u95N),
  forceLowN: rounded(lowN),
  forceHighN: rounded(highN),
});

/** @param asked  readings to turn into forces */
export function gaugeJson(calibration: Calibration, asked: readonly number[], outliers: readonly Named[], notes: readonly string[]) {
  const { fit, choice, verified, figures, toleranceRelative } = calibration;
  const { curve, inverse, residualStandardDeviation, degreesOfFreedom } = fit;
  const p = curve.parameters.length;
  const hasScatter = Number.isFinite(residualStandardDeviation);
  return {
    fit: {
      kind: curve.kind,
      model: modelText(curve),
      coefficients: curve.parameters.map((value, j) => ({
        name: curve.names[j]!,
        value,
        standardError: hasScatter ? residualStandardDeviation * Math.sqrt(inverse[j * p + j]!) : null,
      })),
      residualStandardDeviation: hasScatter ? residualStandardDeviation : null,
      degreesOfFreedom,
      chosenBy: chosenByText(choice),
    },
    outliers,
    verified: {
      ...(verified.kind === 'verified'
        ? {
            readingLow: rounded(verified.readingLow),
            readingHigh: rounded(verified.readingHigh),
            forceLowN: rounded(verified.forceLowN),
            forceHighN: rounded(verified.forceHighN),
          }
        : { readingLow: null, readingHigh: null, forceLowN: null, forceHighN: null }),
      text: verifiedText(verified, toleranceRelative),
    },
    figures: {
      repeatabilityRelative: rounded(figures.repeatabilityRelative),
      reproducibilityRelative: rounded(figures.reproducibilityRelative),
      reversibilityRelative: rounded(figures.reversibilityRelative),
      interpolationErrorRelative: rounded(figures.interpolationErrorRelative),
      zeroReading: rounded(figures.zeroReading),
      lowestForceN: rounded(figures.lowestForceN),
    },
    table: chartRows(calibration).map(({ reading, force }) => ({ reading, ...forceFields(force) })),
    converted: asked.map((reading) => {
      const found = convert(calibration, reading);
      return found.kind === 'converted'
        ? { reading, ...forceFields(found.force) }
        : { reading, forceN: null, reason: refusalText(found.why, calibration) };
    }),
    ...(notes.length > 0 ? { notes } : {}),
  };
}

export interface Named {
  readonly row: number;
  readonly text: string;
}
