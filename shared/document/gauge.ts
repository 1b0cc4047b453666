/** A mechanical gauge and what is known of it. */

import { z } from 'zod';
import { itemShape, nameSchema, noteSchema } from './common.ts';

export const keptGaugeSchema = z.strictObject({
  ...itemShape,
  name: nameSchema,
  note: noteSchema.optional(),
  /** Free belt that it needs between pulleys. */
  needsSpanM: z.number().positive().optional(),
});
export type KeptGauge = z.infer<typeof keptGaugeSchema>;
