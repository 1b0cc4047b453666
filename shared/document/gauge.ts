/** A mechanical gauge and what is known of it: its build, the rig it was proved on, each reading, and what was done with it since. */

import { z } from '../schema.ts';
import { forceRangeSchema, idSchema, itemShape, nameSchema, noteSchema, positiveMeasuredSchema, whenSchema } from './common.ts';

const MOST = 2000;
const positive = z.number().positive();
const reading = z.number();

export const gaugeRigSchema = z.strictObject({
  kind: z.enum(['straight', 'roller', 'mid-span']),
  /** Smallest step of the scale that the weights were weighed on. */
  scaleStepKg: positive,
  /** Standard uncertainty of the scale's slope, relative. */
  scaleRelativeU: z.number().nonnegative(),
  latitudeDeg: z.number().min(-90).max(90).optional(),
  heightM: z.number().optional(),
  /** Vessel, hook, string that hang besides each weight. */
  hangerKg: z.number().nonnegative().optional(),
  /** Belt that hangs along below the gauge. */
  beltBelowM: z.number().nonnegative().optional(),
  /** Half the distance of the ends of a belt with the weight at its middle. */
  halfDistanceM: positive.optional(),
});
export type KeptRig = z.infer<typeof gaugeRigSchema>;

export const gaugeWeightSchema = z.strictObject({
  id: idSchema,
  name: nameSchema,
  /** As the scale showed it; 0: nothing hangs. */
  massKg: z.number().nonnegative(),
  /** On a mid-span rig: how far the middle hangs under it. */
  sagM: positive.optional(),
  /** A force that nothing has to hang for, such as a wire's; its mass is then 0. */
  knownN: positiveMeasuredSchema.optional(),
});
export type KeptWeight = z.infer<typeof gaugeWeightSchema>;

/** `inserted`: put on anew for this reading. `left-on`: the gauge stayed while the load went up or down. `eased`: one load, eased on from a side. */
export const gaugeReadingSchema = z.strictObject({
  id: idSchema,
  weightId: idSchema,
  how: z.enum(['inserted', 'left-on', 'eased']),
  series: z.string().max(40),
  direction: z.enum(['up', 'down']).optional(),
  reading,
  at: whenSchema,
  /** Its owner left it out; it stays in the record. */
  dropped: z.literal(true).optional(),
});
export type KeptGaugeReading = z.infer<typeof gaugeReadingSchema>;

export const keptGaugeSchema = z.strictObject({
  ...itemShape,
  name: nameSchema,
  note: noteSchema.optional(),
  demo: z.literal(true).optional(),
  /** What the scale counts in. */
  unit: z.string().max(40).optional(),
  /** Belt kind that it was proved on, of the catalogue or a kept one. */
  beltId: idSchema.optional(),
  targetForceN: forceRangeSchema.optional(),
  toleranceRelative: positive.max(1).optional(),
  /** Free belt that it needs between pulleys. */
  needsSpanM: positive.optional(),
  price: z.number().nonnegative().optional(),
  /** Between the outer contacts, and how far the middle one presses a belt of usual force aside. */
  baseM: positive.optional(),
  deflectionM: positiveMeasuredSchema.optional(),
  /** Reading from which on its own build lets it go no further, where its owner knows it. */
  ceilingReading: reading.optional(),
  /** Of three contacts and a spring: how far the middle one stands out, its travel to the stop, the spring, and how it shows the travel. */
  build: z
    .strictObject({
      reachM: positive.optional(),
      travelM: positive.optional(),
      springNPerM: positive.optional(),
      restReading: reading.optional(),
      readingPerM: reading.optional(),
    })
    .optional(),
  /** The chart that it came with. */
  makerChart: z
    .array(z.strictObject({ reading, forceN: z.number().nonnegative() }))
    .max(MOST)
    .optional(),
  rig: gaugeRigSchema.optional(),
  weights: z.array(gaugeWeightSchema).max(60).optional(),
  readings: z.array(gaugeReadingSchema).max(MOST).optional(),
  fit: z.enum(['auto', 'line', 'quadratic', 'saturating', 'spline']).optional(),
  /** A strip or wire that is kept with it. */
  checkPiece: z
    .strictObject({
      name: nameSchema,
      atCalibration: z.array(reading).max(60),
      later: z.array(z.strictObject({ at: whenSchema, reading })).max(MOST),
    })
    .optional(),
  /** Gauge against sound on one belt in one state. */
  crossChecks: z
    .array(
      z.strictObject({
        id: idSchema,
        at: whenSchema,
        reading,
        takeId: idSchema,
        /** Rise by inserting the gauge that was taken off. */
        riseN: z.strictObject({ value: z.number(), standardUncertainty: z.number().nonnegative() }).optional(),
        belt: z.string().max(120).optional(),
      }),
    )
    .max(MOST)
    .optional(),
  /** Several people read the same loads. */
  study: z
    .array(z.strictObject({ person: nameSchema, weightId: idSchema, reading }))
    .max(MOST)
    .optional(),
});
export type KeptGauge = z.infer<typeof keptGaugeSchema>;
