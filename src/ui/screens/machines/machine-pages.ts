/** The pages of a machine besides itself, as its sheet offers them; the best next step first. */

import type { Machine } from '../../../../shared/document/machine.ts';

export interface MachinePage {
  readonly href: string;
  readonly text: string;
}

export function machinePages(_machine: Machine): readonly MachinePage[] {
  return [];
}
