/** What happened to a machine, a belt or a gauge besides the takes: notes, belt changes, adjustments, readings of a gauge, the temperature. */

import { z } from 'zod';
import { idSchema, itemShape, noteSchema, whenSchema } from './common.ts';

export const keptEntrySchema = z.strictObject({
  ...itemShape,
  happened: whenSchema,
  kind: z.enum(['note', 'belt-changed', 'adjusted', 'gauge-reading', 'temperature']),
  text: noteSchema,
  machineId: idSchema.optional(),
  /** Belts that it is about; none: the whole machine. */
  machineBeltIds: z.array(idSchema),
  /** Of a gauge reading: the force that it stands for, with half of its 95 % interval. */
  forceN: z.strictObject({ value: z.number(), u95: z.number().nonnegative().optional() }).optional(),
  gaugeId: idSchema.optional(),
  temperatureK: z.number().positive().optional(),
});
export type KeptEntry = z.infer<typeof keptEntrySchema>;
