/** What happened to a machine, a belt or a gauge besides the takes: notes, belt changes, adjustments, readings of a gauge, the temperature. */

import { z } from '../schema.ts';
import { idSchema, itemShape, noteSchema, whenSchema } from './common.ts';

/** A step of adjusting a group of belts, so that it can be gone on with. `amount`: turns of a screw or millimetres of a slide, > 0 tightens; of a spring only the way. */
const adjustingSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('begun'), groupId: idSchema }),
  z.strictObject({ kind: z.literal('moved'), groupId: idSchema, machineBeltId: idSchema, by: z.enum(['turn', 'way']), amount: z.number() }),
]);

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
  adjusting: adjustingSchema.optional(),
});
export type KeptEntry = z.infer<typeof keptEntrySchema>;
