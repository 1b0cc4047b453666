/** Several partials of several plucks, as one set: what the stiffness and the ends can be told by, each with its own doubt. */

import type { PluckSound } from '../outcome.ts';

/** One partial of the span as the used plucks tell it together. */
export interface PartialEvidence {
  /** Counted from 1. */
  readonly number: number;
  readonly frequencyHz: number;
  /** Its own relative standard uncertainty: what it shares with no other partial. */
  readonly relativeU: number;
}

/** Higher ones say little more of the stiffness, and the beam is the less to be believed the higher they are. */
const HIGHEST_NUMBER = 4;
/** Doubt about one heard partial beside what its fit tells: strangers near by, a room's own echo. Our judgement. */
const ALWAYS_RELATIVE_U = 0.0005;
/** A partial that is less sure than this tells nothing of a span. */
const VAGUE_RELATIVE_U = 0.2;
/**
 * The first partial is taken to small amplitude, the others are as heard, higher by the glide of the stretch that they were fitted in. A glide beyond this was
 * taken out of the sound before anything was fitted.
 */
const GLIDE_AT_MOST = 0.01;

/**
 * Mean of each partial's ratio to the first over the plucks, put on the fundamental that the plucks have together.
 *
 * @param sounds        plucks of the reading, at least one
 * @param fundamentalHz their combined first partial at small amplitude
 * @param relativeU     its relative standard uncertainty within the plucks
 * @returns partials 1 to 4 that were heard clearly, ascending; partial 1 is missing where no pluck held it. Where none of them was heard, the
 *   fundamental that follows from the higher ones
 */
export function heardPartials(sounds: readonly PluckSound[], fundamentalHz: number, relativeU: number): PartialEvidence[] {
  const found: PartialEvidence[] = [];
  for (let number = 1; number <= HIGHEST_NUMBER; number++) {
    const ratios = sounds.flatMap((sound) => {
      const partial = sound.partials.find((one) => one.number === number);
      if (partial === undefined) return [];
      const { value, standardUncertainty } = partial.frequencyHz;
      const glide = number === 1 ? 0 : Math.min(Math.abs(sound.evidence.glideRelative), GLIDE_AT_MOST);
      const own = number === 1 ? firstAloneRelativeU(sound) : standardUncertainty / value;
      if (!(own < VAGUE_RELATIVE_U)) return [];
      return [{ ln: Math.log(value / sound.frequencyHz.value), variance: own ** 2 + glide ** 2 + ALWAYS_RELATIVE_U ** 2 }];
    });
    if (ratios.length === 0) continue;
    const weight = ratios.reduce((sum, { variance }) => sum + 1 / variance, 0);
    const ln = ratios.reduce((sum, one) => sum + one.ln / one.variance, 0) / weight;
    const scatter = ratios.reduce((sum, one) => sum + (one.ln - ln) ** 2 / one.variance, 0) / Math.max(1, ratios.length - 1);
    found.push({
      number,
      frequencyHz: fundamentalHz * Math.exp(ln),
      relativeU: Math.max(number === 1 ? relativeU : 0, Math.sqrt(Math.max(1, scatter) / weight)),
    });
  }
  return found.length > 0 ? found : [{ number: 1, frequencyHz: fundamentalHz, relativeU }];
}

/**
 * Of the first partial by itself. What the sound tells of the fundamental rests on all partials; a first partial that is much fainter than
 * another is less sure than that: in even noise in proportion to amplitude × decay time^1.5.
 */
function firstAloneRelativeU(sound: PluckSound): number {
  const first = sound.partials.find(({ number }) => number === 1)!;
  const told = first.frequencyHz.standardUncertainty / first.frequencyHz.value;
  const strength = (one: { levelDbfs: number; decayS: number }): number => 10 ** (one.levelDbfs / 20) * one.decayS ** 1.5;
  const best = sound.partials.reduce((a, b) => (strength(b) > strength(a) ? b : a));
  const fromBest = (best.frequencyHz.standardUncertainty * strength(best)) / strength(first) / first.frequencyHz.value;
  return best.number === 1 ? told : Math.max(told, fromBest);
}
