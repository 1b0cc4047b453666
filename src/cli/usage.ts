/** A command that was not understood: faults by value, so that all of them can be told at once. */

import type { UsageFault } from '../words/cli-en.ts';

export interface Usage {
  readonly kind: 'usage';
  /** At least one. */
  readonly faults: readonly UsageFault[];
}

export const usage = (...faults: readonly UsageFault[]): Usage => ({ kind: 'usage', faults });
