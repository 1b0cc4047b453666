/** Doubts about several plucks together: what most of them share, which were left out, and whether they agree. */

import type { CombinedPlucks } from '../frequency/combine.ts';
import type { Reason } from '../outcome.ts';
import { gradeOfReasons, isWorse } from './grade.ts';

/** Plucks that differ by more than this in frequency (four times as much as plucks usually scatter) are worth a word, beyond the second nothing holds. */
const DIFFERENCE = { doubtful: 0.02, unusable: 0.1 } as const;
/** With so many plucks left that agree, one that was left out takes nothing away. */
const ENOUGH_THAT_AGREE = 3;

/**
 * Reasons of the plucks that were used, each in the worst of the forms it has. Where at least half of the plucks are below trusted, whatever
 * holds them there counts; else their fellows make up for it. What only explains counts where at least half have it.
 */
export function sharedReasons(byPluck: readonly (readonly Reason[])[]): Reason[] {
  const forms = new Map<string, Reason[]>();
  for (const reason of byPluck.flat()) forms.set(reason.id, [...(forms.get(reason.id) ?? []), reason]);
  const atLeastHalf = (count: number): boolean => 2 * count >= byPluck.length;
  const holds = atLeastHalf(byPluck.filter((reasons) => gradeOfReasons(reasons) !== 'trusted').length);
  return [...forms.values()].flatMap((of) => {
    const worst = of.reduce((a, b) => (isWorse(b.holdsAt, a.holdsAt) ? b : a));
    if (holds && worst.holdsAt !== 'trusted') return [worst];
    const explaining = of.find(({ holdsAt }) => holdsAt === 'trusted');
    return explaining && atLeastHalf(of.length) ? [explaining] : [];
  });
}

/**
 * Plucks left out of the mean for lying apart, and plucks that differ though none could be left out.
 *
 * @param numbers  of each combined pluck, its number in the take, counted from 1
 */
export function agreementReasons(combined: CombinedPlucks, numbers: readonly number[]): Reason[] {
  const { used, differenceRelative } = combined;
  const agreeing = used.filter(Boolean).length;
  const leftOut = numbers.flatMap((pluckNumber, i): Reason[] =>
    used[i]
      ? []
      : [
          {
            about: 'sound',
            holdsAt: agreeing >= ENOUGH_THAT_AGREE ? 'trusted' : 'doubtful',
            id: 'plucks-disagree',
            pluckNumber,
            differenceRelative: differenceRelative[i]!,
            leftOut: true,
          },
        ],
  );
  const far = (i: number): number => (used[i] ? Math.abs(differenceRelative[i]!) : 0);
  const farthest = numbers.reduce((best, _, i) => (far(i) > far(best) ? i : best), 0);
  if (!combined.differ || far(farthest) < DIFFERENCE.doubtful) return leftOut;
  return [
    ...leftOut,
    {
      about: 'sound',
      holdsAt: far(farthest) < DIFFERENCE.unusable ? 'doubtful' : 'unusable',
      id: 'plucks-disagree',
      pluckNumber: numbers[farthest]!,
      differenceRelative: (differenceRelative[farthest]! * agreeing) / (agreeing - 1), // from the others, which the mean is not free of
      leftOut: false,
    },
  ];
}
