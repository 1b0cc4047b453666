/** The belt catalogue: read from `belts.json` and checked once, when it is imported. Each value carries where it comes from. */

import rows from './belts.json' with { type: 'json' };
import { z } from './schema.ts';

const positive = z.number().positive();

/**
 * How a value was got. `printed`: a document prints it for this kind of belt. `bracketed`: between limits that follow from printed
 * dimensions. `scaled`: from the printed value of another belt. `assumed`: our judgement.
 */
const provenance = { from: z.enum(['printed', 'bracketed', 'scaled', 'assumed']), source: z.string().min(20) };

export const catalogueBeltSchema = z
  .strictObject({
    /** Kebab-case, for the command line and for links; never changes once published. */
    id: z.string().regex(/^[a-z]+(?:-[a-z0-9.]+)+$/u),
    /** Pitch and width first, then what tells it apart. No brands. */
    label: z.string().min(1),
    toothForm: z.enum(['curvilinear', 'trapezoidal']),
    /** System letter of the curvilinear forms, as ISO 13050 names them. */
    system: z.enum(['G', 'H']).optional(),
    material: z.enum(['rubber, glass cord', 'polyurethane, steel cord']),
    toothPitchM: positive.max(0.02),
    widthM: positive.max(0.1),
    linearDensityKgPerM: z.strictObject({ value: positive.max(1), standardUncertainty: positive, ...provenance }),
    /** Allowable working force. */
    ratedForceN: z.strictObject({ value: positive, ...provenance }),
    /** Range that bending stiffness EI is taken to lie in. */
    bendingStiffnessNm2: z.strictObject({ low: positive, high: positive, ...provenance }),
  })
  .readonly();

export const catalogueSchema = z
  .array(catalogueBeltSchema)
  .min(1)
  .refine((belts) => new Set(belts.map(({ id }) => id)).size === belts.length, 'two belts share an id')
  .refine((belts) => new Set(belts.map(({ label }) => label)).size === belts.length, 'two belts share a label')
  .refine((belts) => belts.every(({ bendingStiffnessNm2: { low, high } }) => low < high), 'a stiffness range is upside down')
  .readonly();

/** In the order of the catalogue; the first is the commonest. */
export const belts = catalogueSchema.parse(rows);

export const beltById = (id: string): (typeof belts)[number] | undefined => belts.find((belt) => belt.id === id);
