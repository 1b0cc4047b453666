/** Part of section `beam`: the program's solver against finite elements and Ritz's method, which know energies only, over the whole range of use. */

import { partialHz } from '../../src/core/vibration/beam.ts';
import { finiteElementPartialsHz } from '../support/finite-element-beam.ts';
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

const ELEMENTS = 80;

export function solverTable(): string {
  const found = SLACKNESS.map((slackness) => {
    const spans = ENDS.map((fixity) => ({
      forceN: 10,
      spanLengthM: 0.15,
      linearDensityKgPerM: 0.0078,
      bendingStiffnessNm2: 10 * (slackness * 0.15) ** 2,
      fixity,
    }));
    const differences = (partialsHz: (span: (typeof spans)[number]) => readonly number[]): number[] =>
      spans.flatMap((span) => partialsHz(span).map((hz, index) => Math.abs(partialHz({ ...span, number: index + 1 }) / hz - 1)));
    return {
      slackness,
      elements: differences((span) => finiteElementPartialsHz(span, PARTIALS, ELEMENTS)),
      ritz: differences((span) => ritzPartialsHz(span, PARTIALS, termsFor(slackness))),
    };
  });
  const largest = (values: readonly number[]): string => Math.max(...values).toExponential(1);
  const median = (values: readonly number[]): string => quantile(values, 0.5)!.toExponential(1);
  const rows = found.map(({ slackness, elements, ritz }) => [
    slackness,
    elements.length,
    median(elements),
    largest(elements),
    median(ritz),
    largest(ritz),
  ]);
  return [
    `### Solver against other methods (partials 1 to ${PARTIALS}, six pairs of ends, relative difference)`,
    `Largest difference from finite elements, sqrt(EI/(T L²)) from ${SLACKNESS[0]} to ${SLACKNESS.at(-1)}: ${largest(found.flatMap(({ elements }) => elements))}`,
    table(['sqrt(EI/(T L²))', 'n', `${ELEMENTS} finite elements, median`, 'largest', 'Ritz, median', 'largest'], rows),
  ].join('\n\n');
}
