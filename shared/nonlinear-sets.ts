/** Data with certified parameters for nonlinear least squares, eleven digits each, read from `nonlinear-sets.json` and checked once. */

import sets from './nonlinear-sets.json' with { type: 'json' };
import { z } from './schema.ts';

export const nonlinearSetsSchema = z
  .array(
    z.strictObject({
      name: z.string(),
      source: z.string().min(20),
      model: z.string(),
      /** From the first start the way is longer. */
      starts: z.tuple([z.array(z.number()).readonly(), z.array(z.number()).readonly()]),
      certified: z.array(z.strictObject({ value: z.number(), standardDeviation: z.number().positive() })).readonly(),
      residualSumOfSquares: z.number().positive(),
      degreesOfFreedom: z.number().int().positive(),
      data: z.array(z.strictObject({ x: z.number(), y: z.number() })).readonly(),
    }),
  )
  .readonly();

export const nonlinearSets = nonlinearSetsSchema.parse(sets);
