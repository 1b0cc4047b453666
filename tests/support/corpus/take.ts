/** From the plan of a take to its samples and its truth. */

import type { Recording } from '../../../src/core/samples/recording.ts';
import { type Coefficients, filtered, firstOrderHighPass, resonator, secondOrderHighPass } from '../../../src/core/synthesis/filter.ts';
import { addAt, amplitudeOf, peak } from '../../../src/core/synthesis/level.ts';
import { scrape } from '../../../src/core/synthesis/noise.ts';
import { createRandom, type Random } from '../../../src/core/synthesis/random.ts';
import { inRoom } from '../../../src/core/synthesis/room.ts';
import { partialHz } from '../../../src/core/vibration/beam.ts';
import { altered, type Sound } from './alter.ts';
import { drawnSeed } from './chance.ts';
import { type NormalModes, normalModes } from './normal-modes.ts';
import type { Corner, TakePlan } from './plan.ts';
import { pickupOf, releasedSpan, shapeAt } from './pluck-shape.ts';
import { type Contact, type Pickup, rung } from './ring.ts';
import { addWithPower, densityAt, hiss, motor, railed, rootMeanSquare, rumble } from './surroundings.ts';

export interface CorpusTruth {
  /** Of the span as simulated, small amplitude, undamped. */
  readonly frequencyHz: number;
  /** Partials 1 to 8 of the plain beam. */
  readonly beamPartialsHz: readonly number[];
  readonly forceN: number;
  readonly spanLengthM: number;
  readonly linearDensityKgPerM: number;
  readonly bendingStiffnessNm2: number;
  readonly fixity: readonly [number, number];
  readonly decayS: number;
  /** Moments of release; negative where the recording begins inside the ring. */
  readonly pluckStartsS: readonly number[];
  readonly glideRelative: number;
  /** First partial against the strongest one as both start at the microphone, dB, 0 at most. */
  readonly firstPartialDb: number;
  /** Of the first partial as it starts, before anything is altered; a sine of amplitude 1 is 0. */
  readonly firstPartialDbfs: number;
  /** Cramer-Rao bound of the first partial alone as a damped tone in this noise. */
  readonly boundHz: number;
}

export interface MadeTake {
  readonly recording: Recording;
  readonly truth: CorpusTruth;
}

const MOST_MODES = 26;
const MOST_MODES_WHERE_ODD = 16;
const HIGHEST_HZ = 9000;
/** The ring's power is that of its first tenth of a second. */
const POWER_OVER_S = 0.1;
const STILLING_S = 0.012;

export function makeTake(plan: TakePlan, random: Random): MadeTake {
  const { sampleRateHz } = plan;
  const seed = drawnSeed(random);
  const modes = normalModes(plan.belt, modeCount(plan), plan.oddity);
  const releases = releasesS(plan);
  const sampleCount = Math.round((releases.at(-1)! + plan.tailS) * sampleRateHz);
  const extent = { seed, sampleRateHz, sampleCount };
  const ring = ringing(plan, modes, releases, random);

  let sound: Float64Array = ring.sound;
  if (plan.room) sound = inRoom(sound, { room: plan.room, random: createRandom(seed, 9), sampleRateHz });
  for (const stage of ring.corner) sound = filtered(sound, stage);
  const factor = amplitudeOf(plan.peakDbfs) / peak(sound);
  for (let index = 0; index < sampleCount; index++) sound[index]! *= factor;

  const first = Math.round(releases[0]! * sampleRateHz);
  const power = rootMeanSquare(sound, first, first + Math.round(POWER_OVER_S * sampleRateHz));
  const noise = new Float64Array(sampleCount);
  addWithPower(noise, hiss(extent), power * amplitudeOf(plan.whiteDb));
  addWithPower(noise, rumble(extent), power * amplitudeOf(plan.pinkDb));
  const density = densityAt(noise, { frequencyHz: ring.frequencyHz, sampleRateHz });
  addAt(sound, noise);
  addMotors(sound, plan, { ...extent, power });

  const firstAmplitude = factor * ring.firstAmplitude;
  let made: Sound = { samples: sound, sampleRateHz };
  for (const alteration of plan.alterations) made = altered(made, alteration);
  const cutS = Math.max(0, releases[0]! - plan.leadS);
  const from = Math.round(cutS * made.sampleRateHz);
  return {
    recording: {
      samples: railed(made.samples.subarray(from)),
      sampleRateHz: made.sampleRateHz,
    },
    truth: {
      frequencyHz: ring.frequencyHz,
      beamPartialsHz: Array.from({ length: 8 }, (_, index) => partialHz({ ...plan.belt, number: index + 1 })),
      forceN: plan.belt.forceN,
      spanLengthM: plan.belt.spanLengthM,
      linearDensityKgPerM: plan.belt.linearDensityKgPerM,
      bendingStiffnessNm2: plan.belt.bendingStiffnessNm2,
      fixity: [plan.belt.fixity[0], plan.belt.fixity[1]],
      decayS: plan.damping.decayS,
      pluckStartsS: releases.map((releaseS) => releaseS - from / made.sampleRateHz),
      glideRelative: plan.glideRelative,
      firstPartialDb: ring.firstPartialDb,
      firstPartialDbfs: 20 * Math.log10(Math.max(1e-9, firstAmplitude)),
      boundHz: dampedToneBoundHz({ densityPerHz: density, amplitude: firstAmplitude, decayS: plan.damping.decayS }),
    },
  };
}

/**
 * Least standard deviation of the frequency of A exp(−t/τ) cos(2π f t + p) in noise: (1/π) sqrt(2/(η fs τ³)) with η = A²/(2 σ²), where
 * the one-sided density of the noise is 2 σ²/fs.
 */
export const dampedToneBoundHz = (at: { densityPerHz: number; amplitude: number; decayS: number }): number =>
  Math.sqrt((2 * at.densityPerHz) / (at.amplitude ** 2 * at.decayS ** 3)) / Math.PI;

/** A recording that begins inside the ring is made with a lead and cut. */
function releasesS(plan: TakePlan): readonly number[] {
  let atS = Math.max(0.1, plan.leadS);
  return plan.plucks.map(({ afterS }, index) => {
    if (index > 0) atS += afterS;
    return atS;
  });
}

function modeCount({ belt, oddity, sampleRateHz }: TakePlan): number {
  const highest = Math.min(HIGHEST_HZ, 0.42 * sampleRateHz);
  let count = 1;
  const most = oddity ? MOST_MODES_WHERE_ODD : MOST_MODES;
  while (count < most && partialHz({ ...belt, number: count + 1 }) < highest) count++;
  return count;
}

/** All that rings by the plucks, before room and microphone, with the first partial's own figures. */
function ringing(plan: TakePlan, modes: NormalModes, releases: readonly number[], random: Random) {
  const { sampleRateHz, microphone } = plan;
  const sampleCount = Math.round((releases.at(-1)! + plan.tailS) * sampleRateHz);
  const seed = drawnSeed(random);
  const frequencyHz = modes.angularRadPerS[modes.first]! / (2 * Math.PI);
  const dampingPerS = dampings(plan, modes, createRandom(seed, 4));
  const pickup = pickupOf(modes, microphone);
  if (plan.corner.kind === 'first partial absent') silence(pickup, modes.first);
  const amplitudes = heardAmplitudes(modes, releasedSpan(modes, plan.plucks[0]!), pickup);
  const corner = cornerStages(plan.corner, { modes, amplitudes, sampleRateHz });
  const through = amplitudes.map((amplitude, mode) => amplitude * gainOf(corner, modes.angularRadPerS[mode]!, sampleRateHz));
  const axialStiffnessN = stiffnessForGlide(plan, modes);

  const sound = new Float64Array(sampleCount);
  plan.plucks.forEach((pluck, index) => {
    const from = Math.round(releases[index]! * sampleRateHz);
    const next = plan.plucks[index + 1];
    const untilS = next ? releases[index + 1]! + 6 * STILLING_S : sampleCount / sampleRateHz;
    const count = Math.min(sampleCount - from, Math.round((untilS - releases[index]!) * sampleRateHz));
    const released = releasedSpan(modes, pluck);
    const contact = plan.contact && touch(plan, modes, released);
    const one = rung({ modes, dampingPerS, released, axialStiffnessN, contact, sampleRateHz, sampleCount: count }, pickup);
    const heard = one.pressure;
    const power = rootMeanSquare(heard, 0, Math.round(POWER_OVER_S * sampleRateHz));
    const companions = createRandom(seed, 20);
    if (plan.neighbour) addWithPowerAt(heard, neighbourSound(plan, count), power * amplitudeOf(plan.neighbour.levelDb), sampleRateHz);
    if (plan.torsion)
      addWithPowerAt(heard, torsionSound(plan, frequencyHz, count, companions), power * amplitudeOf(plan.torsion.levelDb), sampleRateHz);
    if (plan.frame) {
      const shaken = plan.frame.modes.reduce((sum, mode) => {
        addAt(sum, filtered(one.endForceN, resonator(mode.ratio * frequencyHz, 1 / (Math.PI * mode.decayS), sampleRateHz)));
        return sum;
      }, new Float64Array(count));
      addWithPowerAt(heard, shaken, power * amplitudeOf(plan.frame.levelDb), sampleRateHz);
    }
    if (plan.contact) {
      const knock = filtered(filtered(one.contactForceN, firstOrderHighPass(200, sampleRateHz)), resonator(1100, 1500, sampleRateHz));
      addWithPowerAt(heard, knock, power * amplitudeOf(plan.contact.knockDb), sampleRateHz);
    }
    if (next) still(heard, Math.round((releases[index + 1]! - releases[index]! - next.touchS) * sampleRateHz), sampleRateHz);
    const loudest = peak(heard.subarray(0, Math.round(POWER_OVER_S * sampleRateHz)));
    addAt(sound, heard, from);
    const { peakDb, decayS, leadS } = plan.scrape;
    const noise = scrape(createRandom(seed, 30 + index), { decayS, sampleRateHz });
    const noiseFactor = (loudest * amplitudeOf(peakDb)) / (peak(noise) || 1);
    addAt(
      sound,
      noise.map((value) => value * noiseFactor),
      from - Math.round(leadS * sampleRateHz),
    );
  });
  return {
    sound,
    corner,
    frequencyHz,
    firstAmplitude: through[modes.first]!,
    firstPartialDb: 20 * Math.log10(Math.max(1e-6, through[modes.first]! / Math.max(...through))),
  };
}

function addWithPowerAt(into: Float64Array, sound: Float64Array, power: number, sampleRateHz: number): void {
  const own = rootMeanSquare(sound, 0, Math.round(POWER_OVER_S * sampleRateHz));
  if (own === 0) return;
  for (let index = 0; index < into.length; index++) into[index]! += (power / own) * sound[index]!;
}

function silence(pickup: Pickup, mode: number): void {
  pickup.ofAcceleration[mode] = 0;
  pickup.ofJerk[mode] = 0;
}

/** Amplitude of pressure of each mode as it starts. */
const heardAmplitudes = (modes: NormalModes, released: Float64Array, pickup: Pickup): Float64Array =>
  modes.angularRadPerS.map(
    (ω, mode) => ω * ω * Math.abs(released[mode]!) * Math.hypot(pickup.ofAcceleration[mode]!, ω * pickup.ofJerk[mode]!),
  );

function dampings({ damping }: TakePlan, modes: NormalModes, random: Random): Float64Array {
  const { decayS, linear, square, scatter } = damping;
  return modes.angularRadPerS.map((ω, mode) => {
    const ratio = ω / modes.angularRadPerS[modes.first]!;
    const scattered = Math.exp(scatter * random.gaussian());
    const relative = Math.max(0.3, 1 - linear - square + linear * ratio + square * ratio * ratio);
    return mode === modes.first ? 1 / decayS : Math.min((relative * scattered) / decayS, 0.35 * ω);
  });
}

/**
 * EA for which the first partial of the first pluck starts so much higher. Its own swing raises it by (3/8) c S a², the others' by
 * (1/4) c S_m a_m² each, c = EA S/(2 L ω²), S the stretch of a mode.
 */
function stiffnessForGlide(plan: TakePlan, modes: NormalModes): number {
  const ω = modes.angularRadPerS[modes.first]!;
  const released = releasedSpan(modes, plan.plucks[0]!);
  const strain = released.reduce(
    (sum, value, mode) => sum + (mode === modes.first ? 3 / 8 : 1 / 4) * modes.stretch[mode]![mode]! * value * value,
    0,
  );
  return (plan.glideRelative * 2 * modes.spanLengthM * ω * ω) / (modes.stretch[modes.first]![modes.first]! * strain);
}

function touch(plan: TakePlan, modes: NormalModes, released: Float64Array): Contact {
  const { placeShare, gapShare, hardness } = plan.contact!;
  const shape = shapeAt(modes, placeShare).map((value) => -value); // the frame lies on the side to which the belt swings first
  const swing = Math.abs(shape.reduce((sum, value, mode) => sum + value * released[mode]!, 0));
  const response = shape.reduce((sum, value) => sum + value * value, 0);
  const stiffest = (0.3 * plan.sampleRateHz ** 2) / response;
  return { shape, gapM: gapShare * swing, stiffnessNPerM: Math.min(stiffest, (hardness * modes.forceN) / modes.spanLengthM) };
}

/** The span beside it: the same belt under the same force over another length, struck through the pulley. */
function neighbourSound(plan: TakePlan, sampleCount: number): Float64Array {
  const { ratio, decayRatio, buildUpS } = plan.neighbour!;
  const { sampleRateHz } = plan;
  const spanLengthM = plan.belt.spanLengthM / ratio;
  const belt = { ...plan.belt, spanLengthM };
  const modes = normalModes(belt, Math.min(10, modeCount({ ...plan, belt: { ...plan.belt, ...belt } })));
  const released = releasedSpan(modes, { ...plan.plucks[0]!, placeShare: 0.14, fingerWidthM: 0.1 * spanLengthM });
  const dampingPerS = dampings({ ...plan, damping: { ...plan.damping, decayS: plan.damping.decayS * decayRatio } }, modes, createRandom(1));
  const pickup = pickupOf(modes, plan.microphone);
  const { pressure } = rung({ modes, dampingPerS, released, axialStiffnessN: 0, sampleRateHz, sampleCount }, pickup);
  if (buildUpS > 0) for (let index = 0; index < sampleCount; index++) pressure[index]! *= -Math.expm1(-index / (buildUpS * sampleRateHz));
  return pressure;
}

/** A wide belt that twists: a series of its own, nearly harmonic, which starts with the pluck. */
function torsionSound(plan: TakePlan, frequencyHz: number, sampleCount: number, random: Random): Float64Array {
  const { ratio, decayRatio } = plan.torsion!;
  const { sampleRateHz } = plan;
  const sound = new Float64Array(sampleCount);
  for (let number = 1; number <= 6; number++) {
    const hertz = number * ratio * frequencyHz * (1 + 0.002 * (number * number - 1));
    if (hertz > 0.4 * sampleRateHz) break;
    const decayS = (plan.damping.decayS * decayRatio) / number ** 0.6;
    const gain = random.between(0.4, 1) / number;
    const phase = 2 * Math.PI * random.uniform();
    for (let index = 0; index < sampleCount; index++) {
      const timeS = index / sampleRateHz;
      sound[index]! += gain * Math.exp(-timeS / decayS) * Math.sin(2 * Math.PI * hertz * timeS + phase);
    }
  }
  return sound;
}

function still(sound: Float64Array, from: number, sampleRateHz: number): void {
  for (let index = Math.max(0, from); index < sound.length; index++)
    sound[index]! *= Math.exp(-(index - Math.max(0, from)) / (STILLING_S * sampleRateHz));
}

function addMotors(
  sound: Float64Array,
  plan: TakePlan,
  at: { seed: number; sampleRateHz: number; sampleCount: number; power: number },
): void {
  const add = (made: Float64Array) => {
    for (let index = 0; index < sound.length; index++) sound[index]! += Math.SQRT2 * at.power * made[index]!;
  };
  if (plan.hum) add(motor({ frequencyHz: plan.hum.mainsHz, harmonicsDb: plan.hum.harmonicsDb, wander: 0, glidePerS: 0 }, at));
  plan.motors?.forEach((tone, index) => {
    add(motor(tone, { ...at, seed: at.seed + 1 + index }));
  });
}

/** The high-pass of a plan as stages of filters. */
function cornerStages(corner: Corner, at: { modes: NormalModes; amplitudes: Float64Array; sampleRateHz: number }): readonly Coefficients[] {
  const { sampleRateHz, modes, amplitudes } = at;
  const stages = (cornerHz: number, order: 1 | 2 | 4) => {
    if (order === 1) return [firstOrderHighPass(cornerHz, sampleRateHz)];
    const second = secondOrderHighPass(cornerHz, sampleRateHz);
    return order === 2 ? [second] : [second, second];
  };
  if (corner.kind === 'at') return stages(corner.cornerHz, corner.order);
  if (corner.kind === 'first partial absent') return stages(30, 1);
  const downDb = (cornerHz: number) => {
    const made = stages(cornerHz, corner.order);
    const through = amplitudes.map((amplitude, mode) => amplitude * gainOf(made, modes.angularRadPerS[mode]!, sampleRateHz));
    return 20 * Math.log10(Math.max(...through) / through[modes.first]!);
  };
  const firstHz = modes.angularRadPerS[modes.first]! / (2 * Math.PI);
  let [low, high] = [0.05 * firstHz, Math.min(12 * firstHz, 0.3 * sampleRateHz)];
  for (let step = 0; step < 40; step++) {
    const middle = Math.sqrt(low * high);
    if (downDb(middle) < corner.downDb) low = middle;
    else high = middle;
  }
  return stages(low, corner.order);
}

function gainOf(stages: readonly Coefficients[], angularRadPerS: number, sampleRateHz: number): number {
  const [c1, s1] = [Math.cos(angularRadPerS / sampleRateHz), Math.sin(angularRadPerS / sampleRateHz)];
  const [c2, s2] = [c1 * c1 - s1 * s1, 2 * s1 * c1];
  return stages.reduce((gain, { b0, b1, b2, a1, a2 }) => {
    const above = Math.hypot(b0 + b1 * c1 + b2 * c2, b1 * s1 + b2 * s2);
    return (gain * above) / Math.hypot(1 + a1 * c1 + a2 * c2, a1 * s1 + a2 * s2);
  }, 1);
}
