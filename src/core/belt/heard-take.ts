/** The plucks of one span under one load, as the bench takes them: partials together, each with its own doubt, and what moves them all alike. */

import { heardPartials } from '../force/heard-partials.ts';
import { combinedPlucks } from '../frequency/combine.ts';
import type { PluckSound } from '../outcome.ts';
import { type BenchPartial, HIGHEST_PARTIAL } from './bench-data.ts';

export interface HeardTake {
  readonly partials: readonly BenchPartial[];
  /** Relative: how the plucks repeat, and what is left of their glide. */
  readonly sharedRelativeU: number;
  readonly pluckCount: number;
}

/** How much of the glide may be left after the frequency was taken to small amplitude, standard uncertainty (our judgement). */
const GLIDE_LEFT = 0.1;

/** @returns `undefined` where no pluck was heard */
export function heardTake(sounds: readonly PluckSound[]): HeardTake | undefined {
  if (sounds.length === 0) return undefined;
  const combined = combinedPlucks(sounds.map(({ frequencyHz }) => frequencyHz));
  const used = sounds.filter((_, i) => combined.used[i]);
  const partials = heardPartials(used, combined.frequencyHz.value, combined.withinRelative)
    .filter(({ number }) => number <= HIGHEST_PARTIAL)
    .map(({ number, frequencyHz, relativeU }) => ({
      number,
      frequencyHz: { value: frequencyHz, standardUncertainty: relativeU * frequencyHz },
    }));
  const glide = used.reduce((sum, { evidence }) => sum + Math.abs(evidence.glideRelative), 0) / used.length;
  return { partials, sharedRelativeU: Math.hypot(combined.repeatabilityRelative, GLIDE_LEFT * glide), pluckCount: used.length };
}
