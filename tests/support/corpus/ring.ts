/**
 * The motion of a plucked span in time: each mode turns exactly through each sample, and between samples the tension that amplitude adds
 * (and a touch on the frame) kicks all of them together. Kirchhoff-Carrier: T(t) = T + EA/(2L) ∫ w'² dx.
 */

import type { NormalModes } from './normal-modes.ts';

export interface Ringing {
  readonly modes: NormalModes;
  /** Float64Array [modeCount], 1/s: amplitude falls as exp(−s t). */
  readonly dampingPerS: Float64Array;
  /** Float64Array [modeCount]: displacement of each coordinate at release; at rest then. */
  readonly released: Float64Array;
  /** EA of the belt times this span's share of the loop; 0 for no glide. */
  readonly axialStiffnessN: number;
  readonly contact?: Contact | undefined;
  readonly sampleRateHz: number;
  readonly sampleCount: number;
}

/** A part of the frame that the belt touches while it swings wide. */
export interface Contact {
  /** Float64Array [modeCount]: displacement there for a coordinate of 1. */
  readonly shape: Float64Array;
  /** Clearance, m, towards positive displacement. */
  readonly gapM: number;
  readonly stiffnessNPerM: number;
}

/** What is heard of the motion: pressure = Σ ofAcceleration q̈ + ofJerk q⃛, and the forces that shake the frame. */
export interface Pickup {
  readonly ofAcceleration: Float64Array;
  readonly ofJerk: Float64Array;
}

export interface Rung {
  /** Float64Array [sampleCount]. */
  readonly pressure: Float64Array;
  /** Transverse force on the first end. */
  readonly endForceN: Float64Array;
  /** Force of the contact; empty where there is none. */
  readonly contactForceN: Float64Array;
}

/** Below this the added tension changes no frequency by anything that could be measured. */
const LEAST_ADDED_TENSION = 2e-7;
/** A mode 120 dB below the start's loudest is left out from then on. */
const FAINTEST = 1e-6;
const CHECK_EVERY = 256;
/** Kicks a period of the highest mode. */
const KICKS_A_PERIOD = 5;

export function rung(ringing: Ringing, pickup: Pickup): Rung {
  const { modes, dampingPerS, axialStiffnessN, contact, sampleRateHz, sampleCount } = ringing;
  const count = modes.angularRadPerS.length;
  const turn = turns(ringing);
  const displacement = Float64Array.from(ringing.released);
  const speed = new Float64Array(count);
  const pressure = new Float64Array(sampleCount);
  const endForceN = new Float64Array(sampleCount);
  const contactForceN = new Float64Array(contact ? sampleCount : 0);
  const toTension = axialStiffnessN / (2 * modes.spanLengthM);
  const highestHz = modes.angularRadPerS[count - 1]! / (2 * Math.PI);
  const every = contact ? 1 : Math.max(1, Math.min(12, Math.floor(sampleRateHz / (KICKS_A_PERIOD * highestHz))));
  const intervalS = every / sampleRateHz;
  const stretched = new Float64Array(count);
  const ofDisplacement = modes.angularRadPerS.map((ω, mode) => -pickup.ofAcceleration[mode]! * ω * ω);
  const ofSpeed = modes.angularRadPerS.map(
    (ω, mode) => -pickup.ofJerk[mode]! * ω * ω - 2 * dampingPerS[mode]! * pickup.ofAcceleration[mode]!,
  );
  const loudness = (mode: number) =>
    modes.angularRadPerS[mode]! ** 2 * Math.hypot(displacement[mode]!, speed[mode]! / modes.angularRadPerS[mode]!);
  const loudest = Math.max(...Array.from(modes.angularRadPerS, (_, mode) => loudness(mode)));
  let active = count;
  let stiffening = axialStiffnessN > 0;

  const kick = (lengthS: number, sample: number) => {
    if (stiffening) {
      let strain = 0;
      for (let row = 0; row < active; row++) {
        const entries = modes.stretch[row]!;
        let sum = 0;
        for (let column = 0; column < active; column++) sum += entries[column]! * displacement[column]!;
        stretched[row] = sum;
        strain += sum * displacement[row]!;
      }
      const added = toTension * strain * lengthS;
      for (let row = 0; row < active; row++) speed[row]! -= added * stretched[row]!;
    }
    if (contact) {
      let here = 0;
      for (let mode = 0; mode < active; mode++) here += contact.shape[mode]! * displacement[mode]!;
      const force = Math.max(0, here - contact.gapM) * contact.stiffnessNPerM;
      if (sample < sampleCount) contactForceN[sample] = force;
      for (let mode = 0; force > 0 && mode < active; mode++) speed[mode]! -= force * contact.shape[mode]! * lengthS;
    }
  };

  kick(intervalS / 2, 0);
  let strongest = 0;
  for (let sample = 0; sample < sampleCount; sample++) {
    let [heard, force, potential] = [0, 0, 0];
    for (let mode = 0; mode < active; mode++) {
      const [q, v] = [displacement[mode]!, speed[mode]!];
      heard += ofDisplacement[mode]! * q + ofSpeed[mode]! * v;
      force += modes.endForce[mode]! * q;
      displacement[mode] = turn.qq[mode]! * q + turn.qv[mode]! * v;
      speed[mode] = turn.vq[mode]! * q + turn.vv[mode]! * v;
      potential += modes.stretch[mode]![mode]! * q * q;
    }
    pressure[sample] = heard;
    endForceN[sample] = force;
    strongest = Math.max(strongest, potential);
    if ((stiffening || contact) && (sample + 1) % every === 0) kick(intervalS, sample + 1);
    if ((sample + 1) % CHECK_EVERY === 0) {
      while (active > 1 && loudness(active - 1) < FAINTEST * loudest) active--;
      if (sample > 0.05 * sampleRateHz && toTension * strongest < LEAST_ADDED_TENSION * modes.forceN) stiffening = false;
      if ((sample + 1) % (16 * CHECK_EVERY) === 0) strongest = 0;
    }
  }
  return { pressure, endForceN, contactForceN };
}

/** The exact motion of a damped oscillator through one sample as a matrix on (displacement, speed). */
function turns({ modes, dampingPerS, sampleRateHz }: Ringing) {
  const count = modes.angularRadPerS.length;
  const [qq, qv, vq, vv] = [new Float64Array(count), new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let mode = 0; mode < count; mode++) {
    const [ω, s] = [modes.angularRadPerS[mode]!, dampingPerS[mode]!];
    if (!(s < ω)) throw new RangeError(`rung needs modes that swing, got a damping of ${s} 1/s at ${ω} rad/s`);
    const ringing = Math.sqrt(ω * ω - s * s);
    const [sin, cos, fade] = [Math.sin(ringing / sampleRateHz), Math.cos(ringing / sampleRateHz), Math.exp(-s / sampleRateHz)];
    qq[mode] = fade * (cos + (s / ringing) * sin);
    qv[mode] = (fade * sin) / ringing;
    vq[mode] = (-fade * ω * ω * sin) / ringing;
    vv[mode] = fade * (cos - (s / ringing) * sin);
  }
  return { qq, qv, vq, vv };
}
