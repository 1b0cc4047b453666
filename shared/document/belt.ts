/** A belt that its owner knows more of than the catalogue does: a roll, or the piece that sits in a machine. */

import { z } from 'zod';
import { idSchema, itemShape, knownValuesSchema, nameSchema, noteSchema } from './common.ts';

export const keptBeltSchema = z.strictObject({
  ...itemShape,
  name: nameSchema,
  note: noteSchema.optional(),
  /** Belt of the catalogue that it is one of; none: a belt that the catalogue does not have. */
  catalogueId: idSchema.optional(),
  toothPitchM: z.number().positive().max(0.02).optional(),
  widthM: z.number().positive().max(0.1).optional(),
  /** Each in the order in which they were got; the last one counts. */
  linearDensityKgPerM: knownValuesSchema,
  bendingStiffnessNm2: knownValuesSchema,
  /** EA: force per relative stretch, N. */
  axialStiffnessN: knownValuesSchema,
  ratedForceN: knownValuesSchema,
});
export type KeptBelt = z.infer<typeof keptBeltSchema>;
