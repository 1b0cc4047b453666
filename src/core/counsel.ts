/** All that is reckoned beside a reading to help who made it: the next pluck, better inputs, other spans. Takes some tenths of a second. */

import { type Advice, adviceOn } from './advice.ts';
import { readingOf, type Take } from './answer.ts';
import { type Improvement, improvementsOf } from './improvements.ts';
import { type Remedy, remediesOf } from './remedies.ts';

/** Plain data, so that it can cross from a worker. */
export interface Counsel {
  readonly advice?: Advice | undefined;
  /** Best first. */
  readonly improvements: readonly Improvement[];
  readonly remedies: readonly Remedy[];
}

export const NO_COUNSEL: Counsel = { improvements: [], remedies: [] };

export function counselOf(take: Take): Counsel {
  const reading = readingOf(take);
  if (!reading) return NO_COUNSEL;
  return {
    advice: adviceOn(take, reading),
    improvements: improvementsOf(take, reading),
    remedies: reading.grade === 'trusted' ? [] : remediesOf(take, reading),
  };
}
