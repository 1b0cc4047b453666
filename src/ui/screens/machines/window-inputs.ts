/** From the fields of the force window, as typed, to what it is computed from; which of them cannot be read. */

import type { LayoutKind } from '../../../../shared/document/machine.ts';
import { type Drive, type ForceWindow, forceWindow, SLACK_MARGIN } from '../../../core/machine/force-window.ts';
import { type ParsedQuantity, parseQuantity, type QuantityKind } from '../../../core/quantity.ts';
import { targetsEn } from '../../../words/targets-en.ts';

export type DriveKind = Drive['kind'];
export type FieldName = keyof typeof targetsEn.fields;
export type TypedFields = Readonly<Partial<Record<FieldName | 'drive', string>>>;

export interface WindowField {
  readonly name: FieldName;
  readonly kind: QuantityKind;
  /** Of a number that stands alone; plain numbers carry their unit beside the field only. */
  readonly unit: string;
  readonly shownUnit: string;
  readonly needed?: boolean | undefined;
}

const field = (name: FieldName, kind: QuantityKind, unit: string, options: { shownUnit?: string; needed?: boolean } = {}): WindowField => ({
  name,
  kind,
  unit,
  shownUnit: options.shownUnit ?? unit,
  needed: options.needed,
});

const needed = { needed: true } as const;
const { units } = targetsEn;
const acceleration = (name: FieldName): WindowField => field(name, 'number', '', { shownUnit: units.acceleration, ...needed });

const DRIVE_FIELDS: Readonly<Record<DriveKind, readonly WindowField[]>> = {
  carriage: [field('mass', 'mass', 'g', needed), acceleration('acceleration'), field('friction', 'force', 'N')],
  'crossed-gantry': [
    field('massX', 'mass', 'g', needed),
    acceleration('accelerationX'),
    field('frictionX', 'force', 'N'),
    field('massY', 'mass', 'g', needed),
    acceleration('accelerationY'),
    field('frictionY', 'force', 'N'),
  ],
  torque: [field('torque', 'number', '', { shownUnit: units.torque, ...needed }), field('diameter', 'length', 'mm', needed)],
};

const LOOP_FIELDS: readonly WindowField[] = [
  field('loop', 'length', 'mm', needed),
  field('shortest', 'length', 'mm', needed),
  field('speed', 'number', '', { shownUnit: units.speed }),
  field('margin', 'percent', '%'),
];

const RATING_FIELDS: readonly WindowField[] = [
  field('shaftLoad', 'force', 'N'),
  field('shaftWrap', 'number', '', { shownUnit: units.wrap }),
  field('bearingLoad', 'force', 'N'),
  field('bearingWrap', 'number', '', { shownUnit: units.wrap }),
  field('least', 'force', 'N'),
];

export const fieldsFor = (drive: DriveKind): readonly WindowField[] => [...DRIVE_FIELDS[drive], ...LOOP_FIELDS, ...RATING_FIELDS];

export const driveOf = (kind: LayoutKind): DriveKind =>
  kind === 'crossed-gantry' ? 'crossed-gantry' : kind === 'bed-lift' ? 'torque' : 'carriage';

export const parsedField = ({ kind, unit }: WindowField, text: string): ParsedQuantity =>
  parseQuantity(text, { kind, defaultUnit: unit, zeroAllowed: true });

const HALF_TURN_DEGREES = 180;

/** Undefined while something that is needed is missing or cannot be read. */
export function windowFrom(given: {
  readonly drive: DriveKind;
  readonly typed: TypedFields;
  readonly linearDensityKgPerM?: number | undefined;
  readonly beltForceN?: number | undefined;
}): ForceWindow | undefined {
  const { drive, typed, linearDensityKgPerM, beltForceN } = given;
  const values = new Map<FieldName, number>();
  for (const one of fieldsFor(drive)) {
    const parsed = parsedField(one, typed[one.name] ?? '');
    if (parsed.ok) values.set(one.name, parsed.value);
    else if (parsed.why !== 'empty' || one.needed) return undefined;
  }
  const value = (name: FieldName): number => values.get(name) ?? 0;
  const axis = (mass: FieldName, a: FieldName, friction: FieldName) => ({
    movingMassKg: value(mass),
    accelerationMPerS2: value(a),
    frictionN: value(friction),
  });
  const wrapRad = (name: FieldName): number => ((values.get(name) || HALF_TURN_DEGREES) * Math.PI) / HALF_TURN_DEGREES;
  if (!(value('loop') > 0) || value('shortest') > value('loop') || (drive === 'torque' && !(value('diameter') > 0))) return undefined;
  return forceWindow({
    drive:
      drive === 'carriage'
        ? { kind: drive, ...axis('mass', 'acceleration', 'friction') }
        : drive === 'torque'
          ? { kind: drive, torqueNm: value('torque'), pitchDiameterM: value('diameter') }
          : { kind: drive, x: axis('massX', 'accelerationX', 'frictionX'), y: axis('massY', 'accelerationY', 'frictionY') },
    loop: { loopLengthM: value('loop'), shortestSideM: value('shortest'), linearDensityKgPerM, beltSpeedMPerS: values.get('speed') },
    ratings: {
      beltForceN,
      shaftLoadN: values.get('shaftLoad'),
      shaftWrapRad: wrapRad('shaftWrap'),
      bearingLoadN: values.get('bearingLoad'),
      bearingWrapRad: wrapRad('bearingWrap'),
      leastForceN: values.get('least'),
    },
    slackMargin: values.get('margin') ?? SLACK_MARGIN,
  });
}
