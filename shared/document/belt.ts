/** A belt that its owner knows more of than the catalogue does: a roll, or the piece that sits in a machine. */

import { z } from '../schema.ts';
import { idSchema, itemShape, knownSharesSchema, knownValuesSchema, measuredSchema, nameSchema, noteSchema, whenSchema } from './common.ts';
import { endSchema } from './machine.ts';

/** As typed, units and all. */
const text = z.string().max(120);
const MOST_ROWS = 60;

/** Plucks of one span under one load: partials as typed, or as they were heard. */
const benchTakeSchema = z.strictObject({
  spanId: idSchema,
  loadId: idSchema,
  typed: text.optional(),
  heard: z
    .strictObject({
      partials: z.array(z.strictObject({ number: z.int().positive(), frequencyHz: measuredSchema })).max(8),
      sharedRelativeU: z.number().nonnegative(),
      pluckCount: z.int().positive(),
      got: whenSchema,
    })
    .optional(),
});

/** A bench of known weights as it stands: what was typed and heard, so that it can be gone on with. */
const keptBenchSchema = z.strictObject({
  /** `hang`: the weight hangs from the belt itself. `roller`: over a roller, approached from both sides. */
  rig: z.enum(['hang', 'roller']),
  /** What hangs besides each weight, belt between span and weight, and where: degrees and height above the sea. */
  hanger: text.optional(),
  beltBelow: text.optional(),
  latitude: text.optional(),
  height: text.optional(),
  spans: z.array(z.strictObject({ id: idSchema, length: text, knownTo: text })).max(MOST_ROWS),
  /** A mass or a force; empty: nobody knows it, but it was the same for every span. */
  loads: z.array(z.strictObject({ id: idSchema, weight: text, knownTo: text })).max(MOST_ROWS),
  takes: z.array(benchTakeSchema).max(MOST_ROWS * MOST_ROWS),
  /** Half of the 95 % interval of typed partials, percent. */
  frequencyKnownTo: text,
});
export type KeptBench = z.infer<typeof keptBenchSchema>;

const keptWeighingSchema = z.strictObject({ kind: z.enum(['piece', 'loop']), length: text, mass: text, scaleStep: text });

const keptClipSchema = z.strictObject({
  spanLength: text,
  spanKnownTo: text,
  clipMass: text,
  clipMassKnownTo: text,
  clipWidth: text,
  bare: text,
  clipped: text,
  frequencyKnownTo: text,
  /** How both ends are held. */
  ends: endSchema,
});

const keptStretchSchema = z.strictObject({
  gaugeLength: text,
  readingKnownTo: text,
  readings: z.array(z.strictObject({ weight: text, reading: text })).max(MOST_ROWS),
});

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
  /** Mean of the two ends on the bench: holds for ends built like those. */
  endFixity: knownSharesSchema.optional(),
  weighings: z.array(keptWeighingSchema).max(MOST_ROWS).optional(),
  bench: keptBenchSchema.optional(),
  /** Two positions of a carriage under one force that nobody knows. */
  positions: keptBenchSchema.optional(),
  clip: keptClipSchema.optional(),
  stretch: keptStretchSchema.optional(),
});
export type KeptBelt = z.infer<typeof keptBeltSchema>;
