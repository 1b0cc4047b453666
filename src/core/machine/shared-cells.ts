/** Stiffness and ends as several alike belts leave them together: what all of them heard, said of one belt. */

import { type ForceNode, forceNodes } from '../force/force.ts';
import type { PartialEvidence } from '../force/heard-partials.ts';
import type { KnownSpan, WeighedCell } from '../force/known-span.ts';
import { judgedNodes } from '../force/partial-nodes.ts';

/** What was heard of one belt on its own span. */
export interface HeardBelt {
  readonly span: KnownSpan;
  /** First partial at small amplitude, undamped, > 0. */
  readonly frequencyHz: number;
  /** None: nothing is learned of stiffness and ends from it. */
  readonly partials: readonly PartialEvidence[];
  /** Relative standard uncertainty that moves all partials alike. */
  readonly sharedRelativeU: number;
}

/** Weights below this share of the heaviest decide nothing. */
const PRUNE_BELOW = 1e-6;

/**
 * Bayes' rule over the cells for all belts at once. Where the belts together rule out what each allows, the prior stands.
 *
 * @param belts  at least one; stiffness and ends are the first one's
 * @returns cells whose weights sum to 1
 */
export function sharedCells(belts: readonly HeardBelt[]): readonly WeighedCell[] {
  const prior = forceNodes(belts[0]!.span);
  const lnWeights = new Map<ForceNode, number>(prior.map((node) => [node, Math.log(node.weight)]));
  for (const { span, partials, sharedRelativeU } of belts) {
    if (partials.length === 0) continue;
    const heard = new Map(judgedNodes({ partials, sharedRelativeU }, span, prior).nodes.map(({ node, weight }) => [node, weight]));
    for (const node of prior) {
      const weight = heard.get(node) ?? 0;
      lnWeights.set(node, lnWeights.get(node)! + Math.log(weight) - Math.log(node.weight));
    }
  }
  const heaviest = Math.max(...lnWeights.values());
  if (!(heaviest > -Infinity)) return prior;
  const kept = prior.flatMap((node) => {
    const weight = Math.exp(lnWeights.get(node)! - heaviest);
    return weight > PRUNE_BELOW ? [{ ...node, weight }] : [];
  });
  const total = kept.reduce((sum, { weight }) => sum + weight, 0);
  return kept.map((cell) => ({ ...cell, weight: cell.weight / total }));
}
