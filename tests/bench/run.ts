/** One run over the corpus: results are made when a section first asks, and kept for the others. */

import { corpus, nonBelts } from '../support/corpus/corpus.ts';
import type { BenchArguments } from './arguments.ts';
import { type BeltResult, beltResult, type NonBeltResult, nonBeltResult } from './ours.ts';

export interface Run {
  readonly options: BenchArguments;
  belts(): readonly BeltResult[];
  nonBelts(): readonly NonBeltResult[];
}

export function createRun(options: BenchArguments): Run {
  let belts: readonly BeltResult[] | undefined;
  let others: readonly NonBeltResult[] | undefined;
  const { seed } = options;
  return {
    options,
    belts() {
      belts ??= Array.from(corpus(seed, options), (take) => beltResult(take));
      return belts;
    },
    nonBelts() {
      others ??= Array.from(nonBelts(seed, options), nonBeltResult);
      return others;
    },
  };
}
