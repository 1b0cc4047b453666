/** Keeps the last setup in the browser's local storage. What comes back is checked first: it may be older, damaged, or someone else's. */

import { z } from '../../shared/schema.ts';
import type { EnteredSetup, SetupMemory } from '../ports.ts';

const KEY = 'spanwright.last-setup';
/** No field holds more; longer texts are damage. */
const LONGEST_TEXT = 120;

const text = z.string().max(LONGEST_TEXT);
const end = z.enum(['unknown', 'pulley', 'idler', 'clip', 'bench']);

const documentSchema = z.object({
  version: z.literal(1),
  setup: z.object({
    beltId: text,
    linearDensity: text,
    toothPitch: text,
    bendingStiffness: text,
    spanLength: text,
    spanKnownTo: text,
    targetFrom: text,
    targetTo: text,
    forceUnit: text,
    tolerance: text,
    ends: z.tuple([end, end]),
    lie: z.enum(['edge', 'flat']).optional(),
    weighing: z
      .object({ beltId: text, kind: z.enum(['piece', 'loop']), length: text, mass: text, scaleStep: text, density: text })
      .optional(),
    on: z.object({ machineId: text, machineBeltId: text, spanId: text.optional() }).optional(),
  }),
});

/**
 * @param storageOf  gives the storage; called each time, since a browser that forbids it throws already when it is named
 */
export function createSetupMemory(storageOf: () => Storage): SetupMemory {
  return {
    last() {
      const kept = attempt(() => JSON.parse(storageOf().getItem(KEY) ?? 'null') as unknown);
      const checked = documentSchema.safeParse(kept);
      return checked.success ? checked.data.setup : undefined;
    },
    keep(entered: EnteredSetup) {
      const document: z.input<typeof documentSchema> = { version: 1, setup: { ...entered, ends: [...entered.ends] } };
      attempt(() => storageOf().setItem(KEY, JSON.stringify(document)));
    },
    forget() {
      attempt(() => storageOf().removeItem(KEY));
    },
  };
}

/** Storage may be full, forbidden or filled with something else; a page that cannot remember still measures. */
function attempt<T>(act: () => T): T | undefined {
  try {
    return act();
  } catch {
    return undefined;
  }
}
