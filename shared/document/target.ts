/** The force that a belt should have, with where that comes from. A target told as a frequency stays one: its force is derived anew for each span. */

import { z } from '../schema.ts';
import { forceRangeSchema, noteSchema, whenSchema } from './common.ts';

const texts = z.string().max(120);

/** `entered`: as typed, with its unit. `frequency`: Hz at a span of that length. `computed`: from masses and accelerations. */
export const targetSourceSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('entered'), from: texts, to: texts, unit: texts }),
  z.strictObject({
    kind: z.literal('frequency'),
    lowHz: z.number().positive(),
    highHz: z.number().positive(),
    spanLengthM: z.number().positive(),
  }),
  /** `typed`: what it was computed from, by the name of the field, as typed. */
  z.strictObject({ kind: z.literal('computed'), note: noteSchema, typed: z.record(z.string().max(40), texts).optional() }),
]);

export const keptTargetSchema = z.strictObject({ forceN: forceRangeSchema, source: targetSourceSchema, set: whenSchema });
export type KeptTarget = z.infer<typeof keptTargetSchema>;
