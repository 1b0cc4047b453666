/** A group as a person has described it, before anything was heard: what a session of adjusting goes by. */

import type { ForceRange, FrequencyTarget, SpanSetup } from '../../setup.ts';
import type { SoundSource } from '../../verdict/reasons.ts';
import type { Likeness } from '../alike-belts.ts';
import type { Adjuster } from './adjusters.ts';

export interface AdjustPlan {
  readonly belts: readonly PlannedBelt[];
  readonly targetForceN: ForceRange;
  /** Where the target was told as a frequency: the force follows from it by the same density as every reading, which cancels. */
  readonly targetHz?: FrequencyTarget | undefined;
  readonly matchRelative?: number | undefined;
  /** Whether the belts pull at each other through a gantry. */
  readonly crossed: boolean;
  readonly likeness: Likeness;
  /** How the sound came in. */
  readonly source: SoundSource;
}

export interface PlannedBelt {
  /** The span that is plucked. */
  readonly setup: SpanSetup;
  readonly limitN?: number | undefined;
  readonly adjuster: Adjuster;
}
