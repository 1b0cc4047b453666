/** What the items of the document are made of: ids, times, measured values, and where a value comes from. */

import { z } from '../schema.ts';

/** No name or note is longer; longer texts are damage. */
const LONGEST_NAME = 120;
const LONGEST_NOTE = 4000;

/** Made once, never changed, never used again. */
export const idSchema = z
  .string()
  .regex(/^[0-9a-z]+(?:[-.][0-9a-z]+)*$/u, 'an id has small letters, digits and hyphens')
  .max(80);
export const nameSchema = z.string().trim().min(1).max(LONGEST_NAME);
export const noteSchema = z.string().max(LONGEST_NOTE);

/** A moment in UTC, such as `2026-11-24T09:30:00.000Z`. */
export const timeSchema = z.iso.datetime();

/** A moment, and the clock that hung on the wall: an IANA zone such as `Europe/Paris`. */
export const whenSchema = z.strictObject({ at: timeSchema, zone: z.string().min(1).max(60) });
export type When = z.infer<typeof whenSchema>;

/**
 * What every item has. `changedAt`: when it was last changed. `earlier`: names of the versions that this one was made from, so that a merge
 * can tell a newer version from a rival one; written by the store, whoever changed the item.
 */
export const itemShape = {
  id: idSchema,
  made: whenSchema,
  changedAt: timeSchema,
  earlier: z.array(z.string().max(80)).max(64).optional(),
  /** Of a take or an entry that was deleted: it stays, so that a merge with an older file does not bring it back, and so that it can be undone. */
  deletedAt: timeSchema.optional(),
};

/** Whether an item is still in use; one that was deleted stays as a mark. */
export const isAlive = ({ deletedAt }: { readonly deletedAt?: string | undefined }): boolean => deletedAt === undefined;

const finite = z.number();
const positive = z.number().positive();

/** In the unit that its name ends with. */
export const measuredSchema = z.strictObject({ value: finite, standardUncertainty: z.number().nonnegative() });
export const positiveMeasuredSchema = z.strictObject({ value: positive, standardUncertainty: z.number().nonnegative() });

/**
 * One value of a quantity with where it comes from. Values are added, never replaced: the last one counts, the others say what earlier
 * answers rested on. `told`: from a data sheet or by its owner. `bench`: from plucks under known weights. `clip`: from a clip's mass at mid-span.
 * `positions`: from two positions in the machine under one unknown force. `stretch`: from stretch under weights.
 */
export const knownValueSchema = z.strictObject({
  ...positiveMeasuredSchema.shape,
  from: z.enum(['told', 'weighed', 'bench', 'clip', 'positions', 'stretch']),
  got: whenSchema,
  /** How it was got, in words: what lay on the scale, which sheet. */
  note: noteSchema.optional(),
});
export type KnownValue = z.infer<typeof knownValueSchema>;
export const knownValuesSchema = z.array(knownValueSchema);
/** The same of a quantity that may be 0, such as the fixity of a hinged end. */
export const knownSharesSchema = z.array(knownValueSchema.extend({ value: z.number().min(0).max(1) }));

/** The value that counts. */
export const currentOf = <T>(values: readonly T[]): T | undefined => values.at(-1);

export const forceRangeSchema = z
  .strictObject({ lowN: z.number().nonnegative(), highN: positive })
  .refine(({ lowN, highN }) => lowN < highN, 'the low force lies below the high one');
