/** A kept belt inside a link: its id, its name, and the value that counts of each quantity, in all their digits. */

import { idSchema, nameSchema, timeSchema } from './document/common.ts';
import { z } from './schema.ts';

const from = z.enum(['told', 'weighed', 'bench', 'clip', 'positions', 'stretch']);
/** Value, standard uncertainty, how it was got, when. */
const above0 = z.tuple([z.number().positive(), z.number().nonnegative(), from, timeSchema]);
const share = z.tuple([z.number().min(0).max(1), z.number().nonnegative(), from, timeSchema]);

export const linkedBeltSchema = z.strictObject({
  id: idSchema,
  name: nameSchema,
  row: idSchema.optional(),
  pitch: z.number().positive().max(0.02).optional(),
  width: z.number().positive().max(0.1).optional(),
  density: above0.optional(),
  stiffness: above0.optional(),
  stretch: above0.optional(),
  rated: above0.optional(),
  ends: share.optional(),
});
export type LinkedBelt = z.infer<typeof linkedBeltSchema>;
