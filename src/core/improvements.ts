/** What better knowledge of the inputs would make of the reading: the same plucks, each input changed by itself and the force reckoned anew. */

import { readingOf, type Take } from './answer.ts';
import type { ForceN, Reading } from './outcome.ts';
import { measuredSpan, weighedBelt } from './remedies.ts';
import { FIXITY_OF_END, type SpanSetup } from './setup.ts';

export interface Improvement {
  readonly kind: 'weigh' | 'measure-span' | 'tell-ends';
  /** What the reading would be then; it has both bounds. */
  readonly forceN: ForceN;
}

/** What helps less than this is not worth the work. */
const WORTH_RELATIVE = 0.05;

/** The most useful first; none where there is no interval. */
export function improvementsOf(take: Take, now: Reading): readonly Improvement[] {
  const u95 = now.forceN?.u95;
  if (u95 === undefined) return [];
  return changes(take.setup)
    .flatMap(({ kind, setup }): Improvement[] => {
      const forceN = readingOf({ ...take, setup })?.forceN;
      return forceN?.u95 !== undefined && forceN.u95 <= (1 - WORTH_RELATIVE) * u95 ? [{ kind, forceN }] : [];
    })
    .sort((a, b) => a.forceN.u95! - b.forceN.u95!);
}

/** What a person could do about the inputs, each by itself. */
function changes(setup: SpanSetup): readonly { readonly kind: Improvement['kind']; readonly setup: SpanSetup }[] {
  const weighed = weighedBelt(setup.belt);
  const measured = measuredSpan(setup.spanLengthM);
  const wrapped = FIXITY_OF_END['toothed pulley'];
  const isOpen = setup.ends.some(({ kind }) => kind === 'unknown');
  return [
    ...(weighed ? [{ kind: 'weigh' as const, setup: { ...setup, belt: weighed } }] : []),
    ...(measured ? [{ kind: 'measure-span' as const, setup: { ...setup, spanLengthM: measured } }] : []),
    ...(isOpen ? [{ kind: 'tell-ends' as const, setup: { ...setup, ends: [wrapped, wrapped] as const } }] : []),
  ];
}
