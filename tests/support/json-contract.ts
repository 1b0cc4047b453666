/** What the command line promises to scripts, as strict schemas: no name more, none less. Written from the contract, not from the code. */
import { z } from 'zod';

const grade = z.enum(['trusted', 'doubtful', 'unusable']);
const reasons = z.array(z.strictObject({ id: z.string().min(1), text: z.string().min(1), remedy: z.string().min(1) }));

const answer = {
  frequencyHz: z.number().positive(),
  frequencyU95Hz: z.number().nonnegative(),
  forceN: z.number().positive().nullable(),
  forceU95N: z.number().nonnegative().nullable(),
  forceLowN: z.number().nonnegative().nullable(),
  forceHighN: z.number().positive().nullable(),
  grade,
  soundGrade: grade,
  reasons,
};

const pluck = z.strictObject({
  startS: z.number().nonnegative(),
  ...answer,
  partials: z.array(
    z.strictObject({
      number: z.int().positive(),
      frequencyHz: z.number().positive(),
      levelDb: z.number(),
      decayS: z.number().positive(),
    }),
  ),
});

const reading = z.strictObject({
  ...answer,
  budget: z
    .array(z.strictObject({ input: z.string().min(1), share: z.number().min(0).max(1), forceUN: z.number().nonnegative() }))
    .refine((lines) => lines.length === 0 || Math.abs(lines.reduce((sum, { share }) => sum + share, 0) - 1) < 1e-4, 'shares sum to 1'),
});

/** One line of --json for a file that was read. */
export const takeSchema = z
  .strictObject({
    file: z.string(),
    sampleRateHz: z.number().positive(),
    durationS: z.number().nonnegative(),
    plucks: z.array(pluck),
    reading: reading.nullable(),
    nothing: z.strictObject({ id: z.string().min(1), text: z.string().min(1) }).optional(),
    notes: z.array(z.string().min(1)).min(1).optional(),
  })
  .refine((take) => (take.reading === null) === (take.nothing !== undefined), 'nothing stands where there is no reading');

/** One line of --json for a file that could not be read. */
export const faultSchema = z.strictObject({ file: z.string(), error: z.string().min(1) });

export type JsonTakeRead = z.infer<typeof takeSchema>;

/** The answer of plan --json. */
export const planSchema = z.strictObject({
  shortestTrustedSpanM: z.number().positive().nullable(),
  spans: z
    .array(
      z.strictObject({
        spanM: z.number().positive(),
        frequencyHz: z.tuple([z.number().positive(), z.number().positive()]),
        forceU95Relative: z.number().positive().nullable(),
        grade,
        reasons,
      }),
    )
    .min(1),
});
