/**
 * A take that was kept: the sounds of its plucks and the inputs that its answer was computed from, so that it can be computed again when an
 * input is corrected. What was answered before stays with it.
 */

import { z } from '../schema.ts';
import {
  forceRangeSchema,
  idSchema,
  itemShape,
  measuredSchema,
  nameSchema,
  noteSchema,
  positiveMeasuredSchema,
  timeSchema,
  whenSchema,
} from './common.ts';
import { endSchema } from './machine.ts';

const grade = z.enum(['trusted', 'doubtful', 'unusable']);
const text = z.string().max(120);

const endFixitySchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('unknown') }),
  z.strictObject({ kind: z.literal('between'), low: z.number(), high: z.number() }),
  z.strictObject({ kind: z.literal('known'), value: measuredSchema }),
]);

/** What was known of the span, in SI; `src/core/setup.ts` says what each means. */
export const keptSetupSchema = z.strictObject({
  spanLengthM: positiveMeasuredSchema.optional(),
  belt: z
    .strictObject({
      linearDensityKgPerM: positiveMeasuredSchema,
      densityFrom: z.enum(['catalogue', 'stated', 'weighed']),
      bendingStiffnessNm2: z.discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('range'), low: z.number().positive(), high: z.number().positive() }),
        z.strictObject({ kind: z.literal('known'), value: measuredSchema }),
      ]),
      ratedForceN: z.number().positive().optional(),
      toothPitchM: z.number().positive().optional(),
      axialStiffnessN: measuredSchema.optional(),
      provedOnWeights: z.boolean().optional(),
    })
    .optional(),
  ends: z.tuple([endFixitySchema, endFixitySchema]),
  lie: z.enum(['edge', 'flat']).optional(),
  toleranceRelative: z.number().positive().optional(),
  targetForceN: forceRangeSchema.optional(),
  targetHz: z.strictObject({ lowHz: z.number().positive(), highHz: z.number().positive(), spanLengthM: z.number().positive() }).optional(),
  expectedForceN: forceRangeSchema.optional(),
});

/** What one pluck says by its sound alone; `src/core/outcome.ts` says what each means. Figures that later versions add stay with it. */
export const keptSoundSchema = z.looseObject({
  startS: z.number(),
  frequencyHz: positiveMeasuredSchema,
  partials: z.array(
    z.looseObject({
      number: z.int().positive(),
      frequencyHz: positiveMeasuredSchema,
      levelDbfs: z.number(),
      decayS: z.number().positive(),
    }),
  ),
  inharmonicity: measuredSchema.optional(),
  evidence: z.looseObject({
    cyclesToDecay: z.number(),
    levelOverBackgroundDb: z.number(),
    clippedShare: z.number(),
    glideRelative: z.number(),
    rivalHz: z.number().optional(),
    leadOverRival: z.number(),
    humOn: z.strictObject({ partialNumber: z.int().positive(), humHz: z.number() }).optional(),
    toneOn: z.strictObject({ partialNumber: z.int().positive(), toneHz: z.number() }).optional(),
    foreignHz: z.array(z.number()),
    ownShare: z.number(),
    firstPartialHeard: z.boolean(),
    touchMissed: z.boolean().optional(),
    bandwidthHz: z.number(),
  }),
});

/** The setup as it was typed, units and all, so that the fields can be filled again. */
export const keptEnteredSchema = z.strictObject({
  beltId: text,
  linearDensity: text,
  toothPitch: text,
  bendingStiffness: text,
  spanLength: text,
  spanKnownTo: text,
  targetFrom: text,
  targetTo: text,
  forceUnit: text,
  tolerance: text,
  ends: z.tuple([endSchema, endSchema]),
  lie: z.enum(['edge', 'flat']).optional(),
  weighing: z
    .strictObject({ beltId: text, kind: z.enum(['piece', 'loop']), length: text, mass: text, scaleStep: text, density: text })
    .optional(),
});

/** An answer in short: what was told at the time. Bounds that the sound could not give are missing. */
export const keptAnswerSchema = z.strictObject({
  frequencyHz: z.strictObject({
    value: z.number().positive(),
    standardUncertainty: z.number().nonnegative(),
    u95: z.number().nonnegative(),
  }),
  forceN: z
    .strictObject({ value: z.number(), low: z.number().optional(), high: z.number().optional(), u95: z.number().optional() })
    .optional(),
  grade,
  soundGrade: grade,
  reasonIds: z.array(text),
  pluckCount: z.int().nonnegative(),
});
export type KeptAnswer = z.infer<typeof keptAnswerSchema>;

/** An answer with all that it was computed from, but the sounds. */
const computedSchema = z.strictObject({ setup: keptSetupSchema, answer: keptAnswerSchema, program: text, computedAt: timeSchema });

export const keptTakeSchema = z.strictObject({
  ...itemShape,
  /** When the plucks were heard. */
  heard: whenSchema,
  /** What it was taken on, where no machine tells. */
  name: nameSchema.optional(),
  /** The machine, its belt and the span; ids of things that may be gone by now. */
  on: z.strictObject({ machineId: idSchema, machineBeltId: idSchema, spanId: idSchema.optional() }).optional(),
  source: z.enum(['microphone', 'recording', 'demo']),
  fileName: z.string().max(300).optional(),
  processing: z.enum(['untouched', 'altered', 'unknown']).optional(),
  sampleRateHz: z.number().positive(),
  sounds: z.array(keptSoundSchema).min(1),
  entered: keptEnteredSchema,
  now: computedSchema,
  /** What was answered before an input was corrected, oldest first. */
  answeredBefore: z.array(computedSchema),
  temperatureK: z.number().positive().optional(),
  note: noteSchema.optional(),
});
export type KeptTake = z.infer<typeof keptTakeSchema>;
