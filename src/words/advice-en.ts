/** One short piece of advice on the next pluck, with what it would have given. */

import type { AdviceKind } from '../core/advice.ts';
import type { Grade } from '../core/outcome.ts';

const DO: Readonly<Record<AdviceKind, string>> = {
  softer: 'Next time pluck half as far',
  'nearer-middle': 'Next time pluck nearer the middle',
  closer: 'Bring the microphone to half the distance',
  'damp-neighbour': 'Lay a finger on the span beside it',
  'wait-for-quiet': 'Wait until the fan is still, or switch off what hums',
  'longer-silence': 'Let each pluck ring out, with a quiet second before the next',
};

export const adviceEn = {
  /** `now` and `then`: '± 0.8' and '± 0.5 N'. */
  narrower: (kind: AdviceKind, now: string, then: string) => `${DO[kind]}: ${now} → ${then}.`,
  better: (kind: AdviceKind, grade: Grade) => `${DO[kind]}: that would make it ${grade}.`,
} as const;
