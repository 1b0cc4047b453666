/** What is odd about a row, in words; undefined where nothing is. */

import { slipGuess } from '../../../core/gauge/slip-guess.ts';
import { slipText } from '../../../words/gauge-en.ts';
import type { GaugeProof } from '../../state/gauge-proof.ts';

export function oddRow({ calibration }: GaugeProof, row: number): string | undefined {
  if (calibration.kind === 'no-calibration') return undefined;
  const { slips, step, direction, components } = calibration;
  const slip = slips.find((one) => one.row === row);
  if (!slip) return undefined;
  const { reading, expected } = slip;
  const guess = slipGuess({ reading, expected, step, direction, deviation: Math.sqrt(components.scatter.variance) });
  return slipText({ reading, expected, step, guess });
}
