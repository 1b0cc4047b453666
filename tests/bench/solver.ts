/** Part of section `beam`: the program's solver against Ritz's method, which knows energies only, over the whole range of use. */

import { partialHz } from '../../src/core/vibration/beam.ts';
import { ritzPartialsHz } from '../support/ritz-beam.ts';
import { quantile } from './statistics.ts';
import { table } from './table.ts';

/** sqrt(EI/(T L²)): from a long tight span to one that its stiffness holds alone. */
const SLACKNESS = [0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1];
const ENDS: readonly (readonly [number, number])[] = [
  [0, 0],
  [0, 1],
  [1, 1],
  [0.5, 0.5],
  [0.3, 0.9],
  [0.05, 0.6],
];
const PARTIALS = 4;
/** Polynomials: the tighter the span, the thinner the layer at its ends that they must follow. */
const termsFor = (slackness: number): number => Math.round(Math.min(150, 40 + 0.3 / slackness));

export function solverTable(): string {
  const rows = SLACKNESS.map((slackness) => {
    const differences = ENDS.flatMap((fixity) => {
      const span = {
        forceN: 10,
        spanLengthM: 0.15,
        linearDensityKgPerM: 0.0078,
        bendingStiffnessNm2: 10 * (slackness * 0.15) ** 2,
        fixity,
      };
      const ritz = ritzPartialsHz(span, PARTIALS, termsFor(slackness));
      return ritz.map((hz, index) => Math.abs(partialHz({ ...span, number: index + 1 }) / hz - 1));
    });
    return [slackness, differences.length, quantile(differences, 0.5)!.toExponential(1), Math.max(...differences).toExponential(1)];
  });
  return [
    `### Solver against Ritz's method (partials 1 to ${PARTIALS}, six pairs of ends, relative difference)`,
    table(['sqrt(EI/(T L²))', 'n', 'median', 'largest'], rows),
  ].join('\n\n');
}
