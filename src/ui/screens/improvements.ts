/** What would make the reading surer, and by how much, in words: the best two. */

import type { Improvement } from '../../core/improvements.ts';
import type { ForceN } from '../../core/outcome.ts';
import { MEASURED_SPAN_M } from '../../core/remedies.ts';
import { en } from '../../words/en.ts';
import type { Figures } from '../format.ts';

export interface WordedImprovement {
  readonly what: string;
  /** '± 0.5 → ± 0.3 N'. */
  readonly becomes: string;
}

const COVERAGE_FACTOR = 2;
const TOLD = 2;

/** @param improvements  the most useful first */
export function mostUseful(improvements: readonly Improvement[], now: ForceN | undefined, figures: Figures): readonly WordedImprovement[] {
  if (!now) return [];
  const whats: Readonly<Record<Improvement['kind'], string>> = {
    weigh: en.help.weigh,
    'measure-span': en.help.measureSpan(figures.typed(COVERAGE_FACTOR * MEASURED_SPAN_M * 1000, 'mm')),
    'tell-ends': en.help.tellEnds,
  };
  return improvements
    .flatMap(({ kind, forceN }) => {
      const text = becomes(now, forceN, figures);
      return text === undefined ? [] : [{ what: whats[kind], becomes: text }];
    })
    .slice(0, TOLD);
}

/** Nothing where the printed doubt would be the same. */
function becomes(now: ForceN, then: ForceN, figures: Figures): string | undefined {
  const [before, after] = [figures.force(now), figures.force(then)];
  return before && after && before.doubt !== after.doubt
    ? en.help.becomes(`±\u00a0${before.doubt}`, `±\u00a0${after.doubt}\u00a0N`)
    : undefined;
}
