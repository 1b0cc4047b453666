/** What happened to a machine, a belt or a gauge besides the takes: notes, belt changes, adjustments. */

import { z } from 'zod';
import { idSchema, itemShape, noteSchema, whenSchema } from './common.ts';

export const keptEntrySchema = z.strictObject({
  ...itemShape,
  happened: whenSchema,
  kind: z.enum(['note', 'belt-changed', 'adjusted']),
  text: noteSchema,
  machineId: idSchema.optional(),
  machineBeltIds: z.array(idSchema),
});
export type KeptEntry = z.infer<typeof keptEntrySchema>;
