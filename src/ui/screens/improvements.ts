/** What would make the reading surer, and by how much: each change of the inputs is tried on the same sounds, and the best two are told. */

import { answerOf } from '../../core/answer.ts';
import type { ForceN } from '../../core/outcome.ts';
import { MEASURED_SPAN_M, measuredSpan, weighedBelt } from '../../core/remedies.ts';
import type { SpanSetup } from '../../core/setup.ts';
import { en } from '../../words/en.ts';
import type { Figures } from '../format.ts';
import type { Take } from '../state/take.ts';

export interface Improvement {
  readonly what: string;
  /** '± 0.5 → ± 0.3 N'. */
  readonly becomes: string;
}

const COVERAGE_FACTOR = 2;
const WRAPPED = { kind: 'between', low: 0, high: 0.5 } as const;
/** What helps less than this is not worth the work. */
const WORTH_RELATIVE = 0.05;
const TOLD = 2;

interface Change {
  readonly what: string;
  readonly setup: SpanSetup;
}

export function mostUseful(take: Take, setup: SpanSetup, figures: Figures): readonly Improvement[] {
  const now = forceOf(take, setup);
  if (now?.u95 === undefined) return [];
  const { u95 } = now;
  return changes(setup, figures)
    .flatMap(({ what, setup: changed }) => {
      const after = forceOf(take, changed);
      if (after?.u95 === undefined || after.u95 > (1 - WORTH_RELATIVE) * u95) return [];
      const text = becomes(now, after, figures);
      return text === undefined ? [] : [{ what, u95: after.u95, becomes: text }];
    })
    .sort((a, b) => a.u95 - b.u95)
    .slice(0, TOLD);
}

function forceOf({ plucks, processing, sampleRateHz }: Take, setup: SpanSetup): ForceN | undefined {
  return answerOf({ sounds: plucks.map(({ sound }) => sound), setup, processing, sampleRateHz }).reading?.forceN;
}

/** Nothing where the printed doubt would be the same. */
function becomes(now: ForceN, then: ForceN, figures: Figures): string | undefined {
  const [before, after] = [figures.force(now), figures.force(then)];
  return before && after && before.doubt !== after.doubt
    ? en.help.becomes(`±\u00a0${before.doubt}`, `±\u00a0${after.doubt}\u00a0N`)
    : undefined;
}

/** What a person could do about the inputs, each by itself. */
function changes(setup: SpanSetup, figures: Figures): readonly Change[] {
  const weighed = weighedBelt(setup.belt);
  const measured = measuredSpan(setup.spanLengthM);
  const all: Change[] = [];
  if (weighed) all.push({ what: en.help.weigh, setup: { ...setup, belt: weighed } });
  if (measured) {
    const what = en.help.measureSpan(figures.typed(COVERAGE_FACTOR * MEASURED_SPAN_M * 1000, 'mm'));
    all.push({ what, setup: { ...setup, spanLengthM: measured } });
  }
  if (setup.ends.some(({ kind }) => kind === 'unknown'))
    all.push({ what: en.help.tellEnds, setup: { ...setup, ends: [WRAPPED, WRAPPED] } });
  return all;
}
