/** A machine by its belts: which belt runs where, which of its spans can be plucked, how tight it should be, and how it is tightened. */

import { z } from '../schema.ts';
import { idSchema, itemShape, nameSchema, noteSchema, positiveMeasuredSchema } from './common.ts';
import { keptTargetSchema } from './target.ts';

/** `bench`: as the ends were held when this belt was plucked under known weights. */
export const endSchema = z.enum(['unknown', 'pulley', 'idler', 'clip', 'bench']);

/** Layouts to start from, in trade terms. `own`: no plan view. */
export const layoutKindSchema = z.enum(['crossed-gantry', 'bed-slinger', 'bed-lift', 'single-loop', 'own']);
export type LayoutKind = z.infer<typeof layoutKindSchema>;

/** A free span that can be plucked. */
export const keptSpanSchema = z.strictObject({
  id: idSchema,
  name: nameSchema,
  /** Where it is in the layout: a belt of the layout, and the wheel that the span begins at. Missing: it is not in the drawing. */
  place: z.strictObject({ belt: z.string().max(80), from: z.int().nonnegative() }).optional(),
  /** Tangent point to tangent point. Missing: not measured yet. */
  lengthM: positiveMeasuredSchema.optional(),
  lengthFrom: z.enum(['measured', 'layout']),
  /** Where the carriage stands while that length holds, in the machine's own coordinates. */
  carriageM: z.strictObject({ x: z.number(), y: z.number() }).optional(),
  /** The same in words, where coordinates say nothing: 'at the far stop'. */
  carriageNote: noteSchema.optional(),
  ends: z.tuple([endSchema, endSchema]),
  lie: z.enum(['edge', 'flat']).optional(),
});
export type KeptSpan = z.infer<typeof keptSpanSchema>;

/**
 * How the belt is tightened. `pathPerTravel`: by how much the belt's path grows per travel of the adjuster: 2 where it pushes a pulley that the
 * belt turns round by half, 1 where it pulls one end. A spring sets the force itself.
 */
export const adjusterSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('screw'),
    leadM: z.number().positive(),
    pathPerTravel: z.number().positive(),
    clockwiseTightens: z.boolean(),
  }),
  z.strictObject({ kind: z.literal('slide'), pathPerTravel: z.number().positive() }),
  z.strictObject({ kind: z.literal('spring') }),
]);
export type Adjuster = z.infer<typeof adjusterSchema>;

const coordinate = z.number().nonnegative().max(20);
const placed = { xM: coordinate, yM: coordinate };

/** What a belt runs over or is held in, in plan; `src/core/machine/geometry.ts` says what each means. */
export const keptWheelSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('pulley'), teeth: z.int().min(6).max(400), ...placed }),
  z.strictObject({ kind: z.literal('idler'), diameterM: z.number().positive().max(1), touches: z.enum(['teeth', 'back']), ...placed }),
  z.strictObject({ kind: z.literal('clamp'), ...placed }),
]);
export type KeptWheel = z.infer<typeof keptWheelSchema>;

/** A belt in its place in the machine. */
export const machineBeltSchema = z.strictObject({
  id: idSchema,
  /** Short, such as 'A'. */
  name: nameSchema,
  /** Of the catalogue, or of a belt that its owner knows. */
  beltId: idSchema,
  /** Whole length of the belt, closed loop or from clip to clip. */
  lengthM: z.number().positive().optional(),
  spans: z.array(keptSpanSchema),
  /** In the order in which they were set; the last one counts. */
  targets: z.array(keptTargetSchema),
  adjuster: adjusterSchema.optional(),
  /** Of a machine without a ready layout: its wheels and clips in the order in which the belt meets them. */
  path: z.strictObject({ closed: z.boolean(), wheels: z.array(keptWheelSchema).max(40) }).optional(),
});
export type MachineBelt = z.infer<typeof machineBeltSchema>;

/** Belts that must match: two of a crossed gantry, three or four of a bed lift. */
export const beltGroupSchema = z.strictObject({
  id: idSchema,
  name: nameSchema,
  beltIds: z.array(idSchema).min(2),
  /** Largest difference of two forces of the group, relative, that still counts as matched. */
  toleranceRelative: z.number().positive().max(1),
  /** Whether the belts were cut from one roll, so that their density is the same though it may not be known. */
  sameRoll: z.boolean().optional(),
  /** Whether turning one belt changes the others. */
  crossed: z.boolean(),
});
export type BeltGroup = z.infer<typeof beltGroupSchema>;

/** Sizes that the layout's plan view is drawn from, by name, in metres or teeth as their name ends. */
const layoutSizesSchema = z.record(z.string().max(40), z.number());

export const machineSchema = z
  .strictObject({
    ...itemShape,
    name: nameSchema,
    note: noteSchema.optional(),
    /** Came with the program's own scenario. */
    demo: z.literal(true).optional(),
    layout: z.strictObject({ kind: layoutKindSchema, sizes: layoutSizesSchema }),
    belts: z.array(machineBeltSchema),
    groups: z.array(beltGroupSchema),
  })
  .refine(({ belts, groups }) => groups.every(({ beltIds }) => beltIds.every((id) => belts.some((belt) => belt.id === id))), {
    path: ['groups'],
    message: 'a group names a belt that the machine does not have',
  });
export type Machine = z.infer<typeof machineSchema>;
