/** The finger and the microphone as the modes of a span feel them. */

import type { NormalModes } from './normal-modes.ts';

export interface CorpusPluck {
  /** From one end, 0 to 1. */
  readonly placeShare: number;
  /** Deflection under the finger at release, m. */
  readonly heightM: number;
  readonly fingerWidthM: number;
  /** Time in which the finger lets go: what swings faster is hardly set in motion. */
  readonly letGoS: number;
}

export interface CorpusMicrophone {
  readonly placeShare: number;
  readonly distanceM: number;
  /** Pressure of the belt's edge turning by the displacement that the same mode has. */
  readonly twistShare: number;
}

const SPEED_OF_SOUND_M_PER_S = 343;

/** Integral of a load times each shape: Float64Array [modeCount]. */
function projected(modes: Pick<NormalModes, 'grid'>, shapes: readonly Float64Array[], load: (placeM: number) => number): Float64Array {
  const { placeM, weightM } = modes.grid;
  const weights = placeM.map((place, point) => load(place) * weightM[point]!);
  return Float64Array.from(shapes, (shape) => {
    let sum = 0;
    for (let point = 0; point < weights.length; point++) sum += weights[point]! * shape[point]!;
    return sum;
  });
}

/** Displacement of each mode at one place: a mean over a tenth of a millimetre would be a point of the grid, so the nearest two are joined. */
export function shapeAt(modes: NormalModes, placeShare: number): Float64Array {
  const { placeM } = modes.grid;
  const place = placeShare * modes.spanLengthM;
  let after = placeM.findIndex((x) => x >= place);
  if (after < 1) after = after < 0 ? placeM.length - 1 : 1;
  const part = (place - placeM[after - 1]!) / (placeM[after]! - placeM[after - 1]!);
  return Float64Array.from(modes.shapes, (shape) => shape[after - 1]! + part * (shape[after]! - shape[after - 1]!));
}

/**
 * The span held out by a finger whose load is a raised cosine, as static deflection q_n = F_n/ω_n², let go within a raised cosine in
 * time: a mode that turns through angle θ = ω t meanwhile keeps cos(θ/2)/(1 − (θ/π)²) of it.
 */
export function releasedSpan(modes: NormalModes, pluck: CorpusPluck): Float64Array {
  const centre = pluck.placeShare * modes.spanLengthM;
  const load = (place: number) => {
    const off = Math.abs(place - centre) / pluck.fingerWidthM;
    return off < 1 ? 1 + Math.cos(Math.PI * off) : 0;
  };
  const held = projected(modes, modes.shapes, load).map((force, mode) => force / modes.angularRadPerS[mode]! ** 2);
  const under = shapeAt(modes, pluck.placeShare).reduce((sum, shape, mode) => sum + shape * held[mode]!, 0);
  return held.map((value, mode) => {
    const turned = modes.angularRadPerS[mode]! * pluck.letGoS;
    const rest = 1 - (turned / Math.PI) ** 2;
    const kept = Math.abs(rest) < 1e-6 ? Math.PI / 4 : Math.cos(turned / 2) / rest;
    return (value * kept * pluck.heightM) / under;
  });
}

/**
 * Pressure over a vibrating strip that is narrow to the sound: each piece a dipole, falling as d/r³ near by and as d/(c r²) of the rate of
 * change farther off.
 */
export function pickupOf(modes: NormalModes, microphone: CorpusMicrophone) {
  const { distanceM: d, placeShare, twistShare } = microphone;
  const centre = placeShare * modes.spanLengthM;
  const near = (place: number) => d / Math.hypot(place - centre, d) ** 3;
  const far = (place: number) => d / (SPEED_OF_SOUND_M_PER_S * Math.hypot(place - centre, d) ** 2);
  const add = (load: (place: number) => number) => {
    const ofShapes = projected(modes, modes.shapes, load);
    if (!modes.twists) return ofShapes;
    const ofTwists = projected(modes, modes.twists, load);
    return ofShapes.map((value, mode) => value + twistShare * ofTwists[mode]!);
  };
  return { ofAcceleration: add(near), ofJerk: add(far) };
}
