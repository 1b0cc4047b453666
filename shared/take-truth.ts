/**
 * What stands in the JSON file beside a recording of a plucked belt whose force was known: as in `fixtures/`, where computers made the sound, and
 * in folders of takes under hanging weights. Further fields may stand there.
 */
import { z } from './schema.ts';

const positive = z.number().positive();
const doubt = z.number().nonnegative();

export const takeTruthSchema = z.looseObject({
  description: z.string().max(500),
  /** Static force by the weights, or that the sound was made with. */
  forceN: positive.max(10_000),
  /** Standard uncertainty. */
  forceUN: doubt.optional(),
  /** Tangent point to tangent point. */
  spanLengthM: positive.max(10),
  spanLengthUM: doubt.optional(),
  linearDensityKgPerM: positive.max(10),
  linearDensityUKgPerM: doubt.optional(),
  /** Where the density comes from; computed sounds have no need to tell. */
  densityFrom: z.enum(['catalogue', 'stated', 'weighed']).optional(),
  /** How each end was held. */
  ends: z.tuple([z.enum(['unknown', 'pulley', 'idler', 'clip']), z.enum(['unknown', 'pulley', 'idler', 'clip'])]).optional(),
  toothPitchM: positive.max(0.1).optional(),
  /** Where the take comes from: 'synthesised by …', or who plucked what. */
  source: z.string().max(500),
  licence: z.string().max(200),
});
export type TakeTruth = z.infer<typeof takeTruthSchema>;

/** A truth without a force: of a string, of a sound that is no belt, of a file that cannot be read. Nothing to compare, and no fault. */
export const isWithoutForce = (truth: unknown): boolean => typeof truth === 'object' && truth !== null && !('forceN' in truth);
