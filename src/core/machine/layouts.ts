/** Layouts to start from, in trade terms: where wheels, clips and carriage stand in plan, how the belts run, and which spans of theirs can be plucked. */

import type { BeltSection, Wheel } from './geometry.ts';

/** A length that grows with the machine, or a number of teeth. */
export interface LayoutSize {
  readonly name: SizeName;
  readonly unit: 'm' | 'teeth';
  /** To start from, until the machine is measured. */
  readonly usual: number;
}

export type SizeName =
  | 'widthM'
  | 'depthM'
  | 'heightM'
  | 'apartM'
  | 'pulleyTeeth'
  | 'idlerDiameterM'
  | 'carriageWidthM'
  | 'carriageXM'
  | 'carriageYM';
export type LayoutSizes = Readonly<Record<string, number>>;

/** One belt in plan. Wheels in the order in which it meets them, teeth inside, against the clock. */
export interface LaidBelt {
  readonly name: string;
  readonly wheels: readonly Wheel[];
  readonly closed: boolean;
  /** The wheels stand in the order in which the belt runs round with the clock. */
  readonly clockwise?: boolean | undefined;
  /** Spans between a wheel and the next, by the index of the first, that a finger reaches; the best one first. */
  readonly plucked: readonly { readonly from: number; readonly name: SpanName }[];
}

export type SpanName = 'gantry' | 'side' | 'back' | 'before carriage' | 'behind carriage' | 'return' | 'above bed' | 'below bed';

/** What moves, and what everything hangs on, as rectangles in plan. */
export interface LaidPart {
  readonly kind: 'frame' | 'gantry' | 'carriage' | 'bed';
  readonly xM: number;
  readonly yM: number;
  readonly widthM: number;
  readonly depthM: number;
}

export interface LaidLayout {
  readonly belts: readonly LaidBelt[];
  readonly parts: readonly LaidPart[];
}

export interface Layout {
  readonly kind: 'crossed-gantry' | 'bed-slinger' | 'bed-lift' | 'single-loop';
  readonly sizes: readonly LayoutSize[];
  /** Names of the belts that must match, and whether turning one changes the other. */
  readonly group?: { readonly belts: readonly string[]; readonly crossed: boolean } | undefined;
  readonly lay: (sizes: LayoutSizes) => LaidLayout;
}

const metres = (name: SizeName, usual: number): LayoutSize => ({ name, unit: 'm', usual });
const WHEELS: readonly LayoutSize[] = [{ name: 'pulleyTeeth', unit: 'teeth', usual: 20 }, metres('idlerDiameterM', 0.012)];
const CARRIAGE_X: readonly LayoutSize[] = [metres('carriageWidthM', 0.05), metres('carriageXM', 0.12)];
/** A pulley of so many teeth is about this wide across its pitch circle, for drawing and for placing the wheels beside it; 2 mm pitch. */
const radiusOfTeeth = (teeth: number): number => (teeth * 0.002) / (2 * Math.PI);

const size = (sizes: LayoutSizes, { name, usual }: LayoutSize): number => sizes[name] ?? usual;
const reader =
  (known: readonly LayoutSize[]) =>
  (sizes: LayoutSizes, name: SizeName): number => {
    const found = known.find((one) => one.name === name);
    if (!found) throw new RangeError(`this layout has no ${name}`);
    return size(sizes, found);
  };

const teethIdler = (xM: number, yM: number, diameterM: number): Wheel => ({ kind: 'idler', diameterM, touches: 'teeth', xM, yM });
const clamp = (xM: number, yM: number): Wheel => ({ kind: 'clamp', xM, yM });

/** A belt from one side of a carriage round two wheels back to its other side, along x or along y. */
function clampedRun(options: {
  readonly name: string;
  readonly along: 'x' | 'y';
  readonly startM: number;
  readonly endM: number;
  readonly acrossM: number;
  readonly carriageM: number;
  readonly carriageWidthM: number;
  readonly teeth: number;
  readonly idlerDiameterM: number;
  readonly spans: readonly [SpanName, SpanName];
}): LaidBelt {
  const { name, along, startM, endM, acrossM, carriageM, carriageWidthM, teeth, idlerDiameterM, spans } = options;
  const at = (alongM: number, sideM: number) => (along === 'x' ? { xM: alongM, yM: acrossM + sideM } : { xM: acrossM - sideM, yM: alongM });
  const held = -radiusOfTeeth(teeth); // the clips stand in line with the belt that comes from the pulley
  const [near, far] = [carriageM - carriageWidthM / 2, carriageM + carriageWidthM / 2];
  return {
    name,
    closed: false,
    wheels: [
      { kind: 'clamp', ...at(far, held) },
      { kind: 'idler', diameterM: idlerDiameterM, touches: 'teeth', ...at(endM, 0) },
      { kind: 'pulley', teeth, ...at(startM, 0) },
      { kind: 'clamp', ...at(near, held) },
    ],
    plucked: [
      { from: 2, name: spans[0] },
      { from: 0, name: spans[1] },
      { from: 1, name: 'return' },
    ],
  };
}

const CROSSED: readonly LayoutSize[] = [
  metres('widthM', 0.36),
  metres('depthM', 0.32),
  ...WHEELS,
  ...CARRIAGE_X,
  metres('carriageYM', 0.186),
];

/** Two motors at the back, both belts held at the carriage: each turns it the other way, so that they share every move. */
const crossedGantry: Layout = {
  kind: 'crossed-gantry',
  sizes: CROSSED,
  group: { belts: ['A', 'B'], crossed: true },
  lay(sizes) {
    const get = reader(CROSSED);
    const [width, depth] = [get(sizes, 'widthM'), get(sizes, 'depthM')];
    const [x, y, across] = [get(sizes, 'carriageXM'), get(sizes, 'carriageYM'), get(sizes, 'carriageWidthM')];
    const [teeth, diameter] = [get(sizes, 'pulleyTeeth'), get(sizes, 'idlerDiameterM')];
    const r = diameter / 2;
    const backIdler: Wheel = { kind: 'idler', diameterM: diameter, touches: 'back', xM: 2 * r, yM: y - r };
    const wheels: readonly Wheel[] = [
      clamp(x + across / 2, y),
      teethIdler(width, y + r, diameter),
      teethIdler(width, depth, diameter),
      { kind: 'pulley', teeth, xM: 0, yM: depth },
      teethIdler(0, 0, diameter),
      backIdler,
      clamp(x - across / 2, y),
    ];
    const plucked = [
      { from: 4, name: 'side' },
      { from: 5, name: 'gantry' },
      { from: 2, name: 'back' },
    ] as const;
    // Belt B is the same seen in a mirror, and runs the other way round.
    const mirrored = wheels.map((wheel) => ({ ...wheel, xM: wheel.kind === 'clamp' ? 2 * x - wheel.xM : width - wheel.xM })).toReversed();
    const last = wheels.length - 2;
    return {
      belts: [
        { name: 'A', wheels, closed: false, plucked },
        { name: 'B', wheels: mirrored, closed: false, plucked: plucked.map((span) => ({ ...span, from: last - span.from })) },
      ],
      parts: [
        { kind: 'frame', xM: -2 * r, yM: -2 * r, widthM: width + 4 * r, depthM: depth + 4 * r },
        { kind: 'gantry', xM: 0, yM: y - 2 * r, widthM: width, depthM: 4 * r },
        { kind: 'carriage', xM: x - across / 2, yM: y - 3 * r, widthM: across, depthM: 6 * r },
      ],
    };
  },
};

const SLINGER: readonly LayoutSize[] = [
  metres('widthM', 0.34),
  metres('depthM', 0.32),
  ...WHEELS,
  ...CARRIAGE_X,
  metres('carriageYM', 0.14),
];

/** The carriage moves along a beam, the bed moves under it: two belts that have nothing to do with each other. */
const bedSlinger: Layout = {
  kind: 'bed-slinger',
  sizes: SLINGER,
  lay(sizes) {
    const get = reader(SLINGER);
    const [width, depth] = [get(sizes, 'widthM'), get(sizes, 'depthM')];
    const [x, y, across] = [get(sizes, 'carriageXM'), get(sizes, 'carriageYM'), get(sizes, 'carriageWidthM')];
    const shared = { teeth: get(sizes, 'pulleyTeeth'), idlerDiameterM: get(sizes, 'idlerDiameterM'), startM: 0 };
    const beam = { along: 'x', endM: width, acrossM: depth * 0.62, carriageM: x, carriageWidthM: across } as const;
    const bed = { along: 'y', endM: depth, acrossM: width / 2, carriageM: y, carriageWidthM: across } as const;
    return {
      belts: [
        clampedRun({ name: 'X', ...shared, ...beam, spans: ['before carriage', 'behind carriage'] }),
        clampedRun({ name: 'Y', ...shared, ...bed, spans: ['before carriage', 'behind carriage'] }),
      ],
      parts: [
        { kind: 'bed', xM: width * 0.22, yM: y - depth * 0.28, widthM: width * 0.56, depthM: depth * 0.56 },
        { kind: 'gantry', xM: 0, yM: depth * 0.62 - 0.018, widthM: width, depthM: 0.036 },
        { kind: 'carriage', xM: x - across / 2, yM: depth * 0.62 - 0.026, widthM: across, depthM: 0.052 },
      ],
    };
  },
};

const LIFT: readonly LayoutSize[] = [
  metres('heightM', 0.36),
  metres('apartM', 0.3),
  ...WHEELS,
  metres('carriageWidthM', 0.03),
  metres('carriageYM', 0.2),
];

/** Two motors lift the bed at its two sides; seen from the front. */
const bedLift: Layout = {
  kind: 'bed-lift',
  sizes: LIFT,
  group: { belts: ['L', 'R'], crossed: false },
  lay(sizes) {
    const get = reader(LIFT);
    const [height, apart, bedAt, across] = [
      get(sizes, 'heightM'),
      get(sizes, 'apartM'),
      get(sizes, 'carriageYM'),
      get(sizes, 'carriageWidthM'),
    ];
    const teeth = get(sizes, 'pulleyTeeth');
    const shared = {
      along: 'y',
      startM: 0,
      endM: height,
      carriageM: bedAt,
      carriageWidthM: across,
      teeth,
      idlerDiameterM: get(sizes, 'idlerDiameterM'),
      spans: ['below bed', 'above bed'],
    } as const;
    const half = across / 2;
    return {
      belts: [clampedRun({ name: 'L', acrossM: 0, ...shared }), clampedRun({ name: 'R', acrossM: apart, ...shared })],
      parts: [{ kind: 'bed', xM: 0, yM: bedAt - half, widthM: apart + 2 * radiusOfTeeth(teeth), depthM: across }],
    };
  },
};

const SINGLE: readonly LayoutSize[] = [metres('widthM', 0.36), ...WHEELS, ...CARRIAGE_X];

/** One carriage on one belt between a motor and an idler. */
const singleLoop: Layout = {
  kind: 'single-loop',
  sizes: SINGLE,
  lay(sizes) {
    const get = reader(SINGLE);
    const [width, x, across] = [get(sizes, 'widthM'), get(sizes, 'carriageXM'), get(sizes, 'carriageWidthM')];
    const shared = { teeth: get(sizes, 'pulleyTeeth'), idlerDiameterM: get(sizes, 'idlerDiameterM'), startM: 0, endM: width, acrossM: 0 };
    return {
      belts: [
        clampedRun({
          name: 'X',
          along: 'x',
          ...shared,
          carriageM: x,
          carriageWidthM: across,
          spans: ['before carriage', 'behind carriage'],
        }),
      ],
      parts: [{ kind: 'carriage', xM: x - across / 2, yM: -0.018, widthM: across, depthM: 0.024 }],
    };
  },
};

export const LAYOUTS: readonly Layout[] = [crossedGantry, bedSlinger, bedLift, singleLoop];

export const layoutOf = (kind: string): Layout | undefined => LAYOUTS.find((layout) => layout.kind === kind);

/**
 * What a belt of this tooth pitch measures in section. Taken in proportion to the pitch from a 2 mm belt that is 1.52 mm thick with teeth of
 * 0.76 mm and its cord 0.254 mm above their roots; it moves a span by less than a millimetre, and only where the belt runs over a smooth idler.
 */
export const usualSection = (toothPitchM: number): BeltSection => ({
  toothPitchM,
  cordOverTipsM: (0.001014 / 0.002) * toothPitchM,
  backOverCordM: (0.000506 / 0.002) * toothPitchM,
});
