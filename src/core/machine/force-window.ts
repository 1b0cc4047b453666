/** How tight a belt must be and may be, from what it has to move and from what belt, shaft and bearing can carry. */

/**
 * What pulls at the belt while the machine runs. `carriage`: a mass that the belt's two ends are clamped to. `crossed-gantry`: each of the two belts
 * carries half of what both directions need together; `y` moves the whole gantry, carriage included. `torque`: a pulley that is turned.
 */
export type Drive =
  | ({ readonly kind: 'carriage' } & AxisLoad)
  | { readonly kind: 'crossed-gantry'; readonly x: AxisLoad; readonly y: AxisLoad }
  | { readonly kind: 'torque'; readonly torqueNm: number; readonly pitchDiameterM: number };

export interface AxisLoad {
  readonly movingMassKg: number;
  readonly accelerationMPerS2: number;
  readonly frictionN: number;
}

/** How the loop runs. */
export interface Loop {
  /** Whole length of belt that can give, > 0. */
  readonly loopLengthM: number;
  /** Shortest free belt that is ever the slack side: between the driven pulley and the carriage standing nearest to it. */
  readonly shortestSideM: number;
  /** Moving mass per metre and speed of the belt; the part of the force that turning round the pulleys takes up. */
  readonly linearDensityKgPerM?: number | undefined;
  readonly beltSpeedMPerS?: number | undefined;
}

/** What may not be passed; whatever is not told bounds nothing. */
export interface Ratings {
  /** Allowable working force of the belt. */
  readonly beltForceN?: number | undefined;
  /** Radial load of the driven shaft at its pulley, and by how much the belt is wrapped round that, radians. */
  readonly shaftLoadN?: number | undefined;
  readonly shaftWrapRad?: number | undefined;
  /** Of the most heavily loaded idler's bearing. */
  readonly bearingLoadN?: number | undefined;
  readonly bearingWrapRad?: number | undefined;
  /** Least force that the belt's maker asks for, so that the teeth seat. */
  readonly leastForceN?: number | undefined;
}

export type BoundName = 'slack-side' | 'teeth' | 'belt' | 'shaft' | 'bearing';

export interface Bound {
  readonly name: BoundName;
  readonly forceN: number;
}

export interface ForceWindow {
  /** Tangential force at its largest, N. */
  readonly driveForceN: number;
  /** Share of it that the slack side loses where the carriage stands worst. */
  readonly tightShare: number;
  /** At least one; the largest counts. */
  readonly lower: readonly [Bound, ...Bound[]];
  /** The smallest counts. */
  readonly upper: readonly Bound[];
  readonly outcome:
    | { readonly kind: 'window'; readonly lowN: number; readonly highN?: number | undefined }
    /** `driveShare`: share of the present drive force up to which there would be a window; 0: at no drive force. */
    | { readonly kind: 'none'; readonly needed: Bound; readonly allowed: Bound; readonly driveShare: number };
}

/**
 * What is to be left on the slack side, over the tangential force: timing belts run best with 10 to 30 % of it.
 *
 * @see Machine Design, Tension in timing-belt drives (2001)
 */
export const SLACK_MARGIN = 0.2;

/**
 * @param given.slackMargin  force left on the slack side over the tangential force, >= 0
 * @throws RangeError where a size is out of its range
 */
export function forceWindow(given: {
  readonly drive: Drive;
  readonly loop: Loop;
  readonly ratings: Ratings;
  readonly slackMargin?: number | undefined;
}): ForceWindow {
  const { drive, loop, ratings, slackMargin = SLACK_MARGIN } = given;
  const { loopLengthM: L, shortestSideM } = loop;
  if (!(L > 0 && shortestSideM >= 0 && shortestSideM <= L)) {
    throw new RangeError(`forceWindow needs 0 <= shortestSideM <= loopLengthM, got ${shortestSideM} and ${L}`);
  }
  const driveForceN = driveForce(drive);
  const tightShare = (L - shortestSideM) / L;
  const turning = (loop.linearDensityKgPerM ?? 0) * (loop.beltSpeedMPerS ?? 0) ** 2;
  const at = (forceN: number) => bounds({ forceN, tightShare, turning, slackMargin, ratings });
  const { lower, upper } = at(driveForceN);
  const needed = lower.reduce((a, b) => (b.forceN > a.forceN ? b : a));
  const allowed = upper.reduce<Bound | undefined>((a, b) => (a && a.forceN <= b.forceN ? a : b), undefined);
  const common = { driveForceN, tightShare, lower, upper };
  if (allowed === undefined || allowed.forceN > needed.forceN) {
    return { ...common, outcome: { kind: 'window', lowN: needed.forceN, highN: allowed?.forceN } };
  }
  return { ...common, outcome: { kind: 'none', needed, allowed, driveShare: shareWithWindow(driveForceN, at) } };
}

/**
 * Largest tangential force on the belt. Crossed: pulling the gantry through dx and dy moves each belt by (dx ± dy)/2 of both ends, so that by virtual work each carries
 * (Fx ± Fy)/2; the worst direction adds them.
 */
export function driveForce(drive: Drive): number {
  const axis = ({ movingMassKg: m, accelerationMPerS2: a, frictionN }: AxisLoad): number => m * a + frictionN;
  switch (drive.kind) {
    case 'carriage':
      return axis(drive);
    case 'crossed-gantry':
      return (axis(drive.x) + axis(drive.y)) / 2;
    case 'torque':
      return (2 * drive.torqueNm) / drive.pitchDiameterM;
  }
}

interface At {
  /** Tangential force. */
  readonly forceN: number;
  readonly tightShare: number;
  /** What the belt's own turning takes up, N. */
  readonly turning: number;
  readonly slackMargin: number;
  readonly ratings: Ratings;
}

/**
 * With both ends fixed the loop keeps its length: what the tight side stretches the slack side gives back, so that of the tangential force F the slack side loses the
 * tight side's share of the loop and the tight side gains the slack side's (Gates Mectrol, Timing Belt Theory, on linear positioning drives). As near to the driven pulley
 * the two change places with the way it pulls, both are taken at their worst.
 */
function bounds({ forceN: F, tightShare, turning, slackMargin, ratings }: At): { lower: [Bound, ...Bound[]]; upper: Bound[] } {
  const { beltForceN, shaftLoadN, bearingLoadN, leastForceN } = ratings;
  const halfTurn = Math.PI;
  const lower: [Bound, ...Bound[]] = [{ name: 'slack-side', forceN: F * (tightShare + slackMargin) + turning }];
  if (leastForceN !== undefined) lower.push({ name: 'teeth', forceN: leastForceN });
  const upper: Bound[] = [];
  const gain = F * tightShare;
  if (beltForceN !== undefined) upper.push({ name: 'belt', forceN: beltForceN - gain });
  if (shaftLoadN !== undefined) {
    upper.push({ name: 'shaft', forceN: pretensionUnderShaftLoad(shaftLoadN, F, ratings.shaftWrapRad ?? halfTurn) - gain });
  }
  if (bearingLoadN !== undefined) {
    // Both sides of an idler pull alike, at most as the tight side does.
    upper.push({ name: 'bearing', forceN: bearingLoadN / (2 * Math.sin((ratings.bearingWrapRad ?? halfTurn) / 2)) - gain });
  }
  return { lower, upper };
}

/** Load on a shaft whose belt pulls with two forces that stand at the wrap angle: R² = T1² + T2² − 2 T1 T2 cos θ. */
export const shaftLoadN = ({ tightN: T1, slackN: T2, wrapRad: θ }: { tightN: number; slackN: number; wrapRad: number }): number =>
  Math.sqrt((T1 - T2) ** 2 + 2 * T1 * T2 * (1 - Math.cos(θ)));

/** Largest tight side under a shaft's load: the relation above with T2 = T1 − F, solved for T1. −Infinity where the drive force alone passes it. */
function pretensionUnderShaftLoad(R: number, F: number, θ: number): number {
  if (R < F) return -Infinity;
  const product = (R * R - F * F) / (2 * (1 - Math.cos(θ)));
  return (F + Math.sqrt(F * F + 4 * product)) / 2;
}

/** Share of the drive force up to which the lower bounds stay below the upper ones; they close in steadily as it grows. */
function shareWithWindow(driveForceN: number, at: (forceN: number) => ReturnType<typeof bounds>): number {
  const isOpen = (share: number): boolean => {
    const { lower, upper } = at(share * driveForceN);
    return Math.max(...lower.map(({ forceN }) => forceN)) < Math.min(...upper.map(({ forceN }) => forceN));
  };
  if (!isOpen(0)) return 0;
  let [open, closed] = [0, 1];
  for (let step = 0; step < 40; step++) {
    const middle = (open + closed) / 2;
    if (isOpen(middle)) open = middle;
    else closed = middle;
  }
  return open;
}
