/** Published values that the tests meet, read from `reference-values.json` and checked once. Each group says where it comes from. */

import values from './reference-values.json' with { type: 'json' };
import { z } from './schema.ts';

const positive = z.number().positive();
/** `printed`: as the source prints it. `computed`: by the method that `source` names. `from memory`: widely printed, no copy at hand. */
const origin = { source: z.string().min(20), from: z.enum(['printed', 'computed', 'from memory', 'common practice']) };

export const referenceValuesSchema = z
  .strictObject({
    /** Two-sided coverage factors t_p(ν), two decimals printed. */
    studentT: z.strictObject({
      ...origin,
      coverage: z.array(positive.max(1)).readonly(),
      rows: z.array(z.strictObject({ degreesOfFreedom: positive, factors: z.array(positive).readonly() })).readonly(),
    }),
    /** Worked examples of the string's law; `halfLastDigit` is half of the last printed digit of what is asked for. */
    strings: z
      .array(
        z.strictObject({
          ...origin,
          asked: z.enum(['wave speed', 'force']),
          linearDensityKgPerM: positive,
          forceN: positive,
          waveSpeedMPerS: positive,
          halfLastDigit: positive,
        }),
      )
      .readonly(),
    /** A drive handbook's law for the free span of a belt in its own units: T = 4 M W S² f² 10⁻⁹. */
    handbookSpan: z.strictObject({
      ...origin,
      rows: z
        .array(
          z.strictObject({ gramsPerMetrePerMm: positive, widthMm: positive, spanMm: positive, frequencyHz: positive, forceN: positive }),
        )
        .readonly(),
    }),
    /** f_n / f_string,1 of the clamped beam for n = 1, 2, 3; slackness sqrt(EI/(T L²)). */
    clampedBeam: z.strictObject({
      ...origin,
      rows: z.array(z.strictObject({ slackness: positive, ratios: z.tuple([positive, positive, positive]) })).readonly(),
    }),
    /** b of the first roots of the clamped beam without force: cos b cosh b = 1. */
    beamWithoutForce: z.strictObject({ ...origin, clampedRoots: z.tuple([positive, positive, positive]) }),
    /** The same ratios for ends of other fixities. */
    heldBeam: z.strictObject({
      ...origin,
      rows: z
        .array(
          z.strictObject({
            slackness: positive,
            fixity: z.tuple([z.number().min(0).max(1), z.number().min(0).max(1)]),
            ratios: z.tuple([positive, positive, positive]),
          }),
        )
        .readonly(),
    }),
    /** Deviation of partial n of a steel wire from n times the first, cents: coefficient n² d²/(f² l⁴), d and l in cm, f in Hz. */
    stiffWire: z.strictObject({ ...origin, coefficient: positive, youngOverDensityM2PerS2: positive, relativeTolerance: positive }),
    /** Belts of one kind on one span: forces and the frequencies near which they lie. */
    usualSpan: z.strictObject({
      ...origin,
      belt: z.string(),
      spanLengthM: positive,
      rows: z.array(z.strictObject({ forceN: positive, aboutHz: positive })).readonly(),
    }),
    /** 2.5, 50 and 97.5 % points of the force from the first partial alone; absent where the source has none to enough digits. */
    forceIntervals: z.strictObject({
      ...origin,
      rows: z
        .array(
          z.strictObject({
            frequencyHz: positive,
            spanLengthM: positive,
            spanLengthUM: z.number().min(0),
            lowN: positive,
            medianN: positive,
            highN: positive,
          }),
        )
        .readonly(),
    }),
  })
  .readonly();

export const referenceValues = referenceValuesSchema.parse(values);
