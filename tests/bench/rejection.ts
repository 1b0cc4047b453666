/** Section `rejection`: what the threshold on the evidence for a span trades, belts kept against other sounds let through. */

import type { ListeningEvent } from '../../src/core/listening.ts';
import { corpus, nonBelts } from '../support/corpus/corpus.ts';
import { eventsOf } from './ours.ts';
import type { Run } from './run.ts';
import { share } from './statistics.ts';
import { percent, table } from './table.ts';

const THRESHOLDS = [0, 1, 2, 3, 4, 5, 6, 8, 10, 12];

/** The most evidence in a take: of sounds that passed every veto, and of any sound. */
interface Evidence {
  readonly passed: number;
  readonly any: number;
  readonly vetoes: readonly string[];
}

function evidenceOf(events: readonly ListeningEvent[]): Evidence {
  let [passed, any] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const vetoes: string[] = [];
  for (const event of events) {
    if (event.kind === 'pluck') passed = Math.max(passed, event.likeness.evidence);
    if (event.kind === 'pluck' || event.kind === 'no-pluck') any = Math.max(any, event.likeness?.evidence ?? Number.NEGATIVE_INFINITY);
    if (event.kind === 'no-pluck') vetoes.push(event.unlike ?? event.why);
  }
  return { passed, any, vetoes };
}

export function rejectionSection({ options }: Run): string {
  const belts = Array.from(corpus(options.seed, options), (take) => evidenceOf(eventsOf(take)));
  const others = Array.from(nonBelts(options.seed, options), (take) => evidenceOf(eventsOf(take)));
  const over = (of: readonly Evidence[], which: 'passed' | 'any', threshold: number) =>
    share(of.filter((evidence) => evidence[which] >= threshold).length, of.length);
  const curve = THRESHOLDS.map((threshold) => [
    threshold,
    percent(over(belts, 'passed', threshold)),
    over(others, 'passed', threshold).count,
    percent(over(belts, 'any', threshold)),
    over(others, 'any', threshold).count,
  ]);
  const vetoCount = (of: readonly Evidence[], veto: string) =>
    of.filter(({ passed, vetoes }) => passed === Number.NEGATIVE_INFINITY && vetoes.includes(veto)).length;
  const vetoes = [...new Set([...belts, ...others].flatMap((evidence) => evidence.vetoes))];
  return [
    `### What the threshold on evidence trades (${belts.length} takes of belts, ${others.length} of other sounds)`,
    table(
      ['evidence at least', 'belts kept, %', 'others let through', 'belts kept by evidence alone, %', 'others by evidence alone'],
      curve,
    ),
    '### Takes without a pluck, by what spoke against one',
    table(
      ['against', 'belts', 'other sounds'],
      vetoes.map((veto) => [veto, vetoCount(belts, veto), vetoCount(others, veto)]),
    ),
  ].join('\n\n');
}
