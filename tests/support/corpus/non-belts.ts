/** What is no plucked span and must give no reading: what a workshop, a person and a musician put before a microphone. */

import type { Recording } from '../../../src/core/samples/recording.ts';
import { filtered, firstOrderHighPass, firstOrderLowPass, resonator } from '../../../src/core/synthesis/filter.ts';
import { amplitudeOf, peak } from '../../../src/core/synthesis/level.ts';
import { whiteNoise } from '../../../src/core/synthesis/noise.ts';
import { speechLike } from '../../../src/core/synthesis/non-belts.ts';
import { createRandom, type Random } from '../../../src/core/synthesis/random.ts';
import { inRoom } from '../../../src/core/synthesis/room.ts';
import { drawnSeed, happens, logBetween, oneOf } from './chance.ts';
import { addWithPower, hiss, motor, railed, rumble } from './surroundings.ts';

export interface NonBeltKind {
  readonly name: string;
  make(random: Random): Recording;
}

interface Scene {
  readonly random: Random;
  readonly sampleRateHz: number;
  readonly sampleCount: number;
  readonly seed: number;
}

type Event = (scene: Scene) => Float64Array;

const DURATION_S = 2.2;

/** An event in a room with some noise. */
function kind(name: string, event: Event, options: { readonly quiet?: boolean; readonly dry?: boolean } = {}): NonBeltKind {
  return {
    name,
    make: (random) => {
      const sampleRateHz = oneOf(random, [44_100, 48_000, 48_000]);
      const scene = { random, sampleRateHz, sampleCount: Math.round(DURATION_S * sampleRateHz), seed: drawnSeed(random) };
      let sound = event(scene);
      if (!options.dry && happens(random, 0.5)) {
        const room = { reverberationS: random.between(0.2, 0.5), tailDb: random.between(-18, -6) };
        sound = inRoom(sound, { room, random: createRandom(scene.seed, 8), sampleRateHz });
      }
      const factor = amplitudeOf(random.between(-24, -3)) / (peak(sound) || 1);
      const out = sound.map((value) => value * factor);
      if (!options.quiet) {
        const loudest = peak(out);
        addWithPower(out, hiss(scene), loudest * amplitudeOf(random.between(-60, -36)));
        addWithPower(out, rumble(scene), loudest * amplitudeOf(random.between(-56, -34)));
      }
      return { samples: railed(out), sampleRateHz };
    },
  };
}

const blank = ({ sampleCount }: Scene) => new Float64Array(sampleCount);

interface Note {
  readonly frequencyHz: number;
  readonly startS: number;
  readonly endS: number;
  readonly attackS: number;
  readonly releaseS: number;
  readonly gain: number;
  /** Gain of harmonic n is 1/n to this power. */
  readonly fall: number;
  readonly tremolo: number;
  readonly vibrato: number;
}

/** A blown or bowed note: rises within its attack, holds, and falls. */
function addNote(into: Float64Array, note: Note, { random, sampleRateHz }: Scene): void {
  const phases = Array.from({ length: 10 }, () => 2 * Math.PI * random.uniform());
  const rate = random.between(4.5, 6.5);
  let turned = 0;
  const until = Math.min(into.length, Math.round((note.endS + note.releaseS) * sampleRateHz));
  for (let index = Math.round(note.startS * sampleRateHz); index < until; index++) {
    const timeS = index / sampleRateHz;
    const rise = Math.min(1, (timeS - note.startS) / note.attackS);
    const fade = timeS < note.endS ? 1 : Math.max(0, 1 - (timeS - note.endS) / note.releaseS);
    const sway = Math.sin(2 * Math.PI * rate * timeS);
    const envelope = note.gain * Math.sin((Math.PI / 2) * rise) ** 2 * fade * (1 + note.tremolo * sway);
    turned += (2 * Math.PI * note.frequencyHz * (1 + note.vibrato * sway)) / sampleRateHz;
    for (let number = 1; number <= 10; number++) {
      if (number * note.frequencyHz > 0.42 * sampleRateHz) break;
      into[index]! += (envelope * Math.sin(number * turned + phases[number - 1]!)) / number ** note.fall;
    }
  }
}

const drawNote = (random: Random, note: Partial<Note>): Note => ({
  frequencyHz: logBetween(random, 80, 700),
  startS: random.between(0.2, 0.7),
  endS: random.between(1.4, 2.2),
  attackS: random.between(0.03, 0.15),
  releaseS: random.between(0.05, 0.3),
  gain: 1,
  fall: random.between(0.8, 2),
  tremolo: random.between(0, 0.15),
  vibrato: random.between(0, 0.004),
  ...note,
});

interface Struck {
  readonly frequencyHz: number;
  readonly decayS: number;
  readonly gain: number;
}

/** Modes that start together and die each in its own time. */
function strike(into: Float64Array, modes: readonly Struck[], startS: number, { random, sampleRateHz }: Scene): void {
  const from = Math.round(startS * sampleRateHz);
  for (const { frequencyHz, decayS, gain } of modes) {
    if (frequencyHz > 0.42 * sampleRateHz) continue;
    const phase = 2 * Math.PI * random.uniform();
    const until = Math.min(into.length, from + Math.round(10 * decayS * sampleRateHz));
    for (let index = from; index < until; index++) {
      const timeS = (index - from) / sampleRateHz;
      into[index]! += gain * Math.exp(-timeS / decayS) * Math.sin(2 * Math.PI * frequencyHz * timeS + phase);
    }
  }
}

/** A burst of noise between two corners that rises and dies. */
function burst(
  into: Float64Array,
  scene: Scene,
  at: { startS: number; riseS: number; decayS: number; lowHz: number; highHz: number; gain: number },
): void {
  const { random, sampleRateHz } = scene;
  const from = Math.round(at.startS * sampleRateHz);
  const count = Math.min(into.length - from, Math.round((at.riseS + 9 * at.decayS) * sampleRateHz));
  if (count <= 0) return;
  const noise = filtered(
    filtered(whiteNoise(createRandom(drawnSeed(random)), count), firstOrderHighPass(at.lowHz, sampleRateHz)),
    firstOrderLowPass(Math.min(at.highHz, 0.45 * sampleRateHz), sampleRateHz),
  );
  for (let index = 0; index < count; index++) {
    const timeS = index / sampleRateHz;
    const envelope = timeS < at.riseS ? timeS / at.riseS : Math.exp(-(timeS - at.riseS) / at.decayS);
    into[from + index]! += at.gain * envelope * noise[index]!;
  }
}

const several = (random: Random, from: number, to: number): number => from + Math.floor((to - from + 1) * random.uniform());

const heldTone: Event = (scene) => {
  const sound = blank(scene);
  addNote(sound, drawNote(scene.random, { vibrato: happens(scene.random, 0.5) ? 0 : scene.random.between(0, 0.004) }), scene);
  return sound;
};

const CHORDS = [
  [0, 4, 7],
  [0, 3, 7],
  [0, 5, 9],
  [0, 4, 7, 10],
  [0, 7, 12],
] as const;

const chord: Event = (scene) => {
  const { random } = scene;
  const sound = blank(scene);
  const lowest = logBetween(random, 90, 330);
  const common = drawNote(random, {});
  for (const steps of oneOf(random, CHORDS)) {
    addNote(
      sound,
      { ...common, frequencyHz: lowest * 2 ** (steps / 12), gain: random.between(0.5, 1), startS: common.startS + random.between(0, 0.03) },
      scene,
    );
  }
  return sound;
};

const SCALE = [0, 2, 4, 5, 7, 9, 11, 12];

const melody: Event = (scene) => {
  const { random } = scene;
  const sound = blank(scene);
  const lowest = logBetween(random, 120, 500);
  let startS = random.between(0.15, 0.5);
  while (startS < 1.9) {
    const lengthS = random.between(0.15, 0.45);
    addNote(
      sound,
      drawNote(random, {
        frequencyHz: lowest * 2 ** (oneOf(random, SCALE) / 12),
        startS,
        endS: startS + lengthS,
        attackS: random.between(0.02, 0.06),
        releaseS: 0.05,
      }),
      scene,
    );
    startS += lengthS;
  }
  return sound;
};

const bell: Event = (scene) => {
  const { random } = scene;
  const sound = blank(scene);
  const lowest = logBetween(random, 260, 2200);
  const ratios = [1, random.between(1.9, 2.5), random.between(2.7, 3.4), random.between(4, 4.8), random.between(5.3, 6.4)];
  const modes = ratios.map((ratio, index) => ({
    frequencyHz: ratio * lowest,
    decayS: (random.between(0.3, 1) * 0.9) / (index + 1) ** 0.7,
    gain: random.between(0.3, 1),
  }));
  strike(sound, modes, random.between(0.3, 0.8), scene);
  return sound;
};

/** Thin round walls ring in pairs a little apart, at about the squares of the number of waves round the rim. */
const glass: Event = (scene) => {
  const { random } = scene;
  const sound = blank(scene);
  const lowest = logBetween(random, 450, 1500);
  const modes = [1, 2.3, 4.2, 6.6].flatMap((ratio, index) => {
    const pair = lowest * ratio * random.between(0.97, 1.03);
    const decayS = random.between(0.08, 0.5) / (index + 1);
    return [
      { frequencyHz: pair, decayS, gain: random.between(0.2, 1) / (index + 1) },
      { frequencyHz: pair * (1 + random.between(0.001, 0.008)), decayS, gain: random.between(0.05, 0.5) / (index + 1) },
    ];
  });
  strike(sound, modes, random.between(0.3, 0.8), scene);
  return sound;
};

const taps: Event = (scene) => {
  const { random } = scene;
  const sound = blank(scene);
  const frame = Array.from({ length: 7 }, () => ({ frequencyHz: logBetween(random, 110, 2600), decayS: logBetween(random, 0.003, 0.025) }));
  let startS = random.between(0.3, 0.6);
  for (let left = several(random, 1, 4); left > 0; left--) {
    strike(
      sound,
      frame.map((mode) => ({ ...mode, gain: random.between(0.1, 1) })),
      startS,
      scene,
    );
    burst(sound, scene, { startS, riseS: 0.0005, decayS: 0.003, lowHz: 300, highHz: 6000, gain: 0.3 });
    startS += random.between(0.25, 0.6);
  }
  return sound;
};

const door: Event = (scene) => {
  const { random } = scene;
  const sound = blank(scene);
  const startS = random.between(0.3, 0.9);
  burst(sound, scene, { startS, riseS: 0.004, decayS: random.between(0.03, 0.12), lowHz: 30, highHz: random.between(150, 500), gain: 3 });
  const panel = Array.from({ length: 6 }, () => ({
    frequencyHz: logBetween(random, 45, 420),
    decayS: logBetween(random, 0.015, 0.07),
    gain: random.between(0.2, 1),
  }));
  strike(sound, panel, startS, scene);
  const latch = Array.from({ length: 4 }, () => ({
    frequencyHz: logBetween(random, 900, 5000),
    decayS: logBetween(random, 0.002, 0.012),
    gain: random.between(0.1, 0.5),
  }));
  strike(sound, latch, startS + random.between(-0.08, 0.08), scene);
  return sound;
};

const handling: Event = (scene) => {
  const { random } = scene;
  const sound = blank(scene);
  for (let left = several(random, 3, 9); left > 0; left--) {
    const startS = random.between(0.1, 2);
    const low = logBetween(random, 20, 200);
    burst(sound, scene, {
      startS,
      riseS: random.between(0.005, 0.08),
      decayS: random.between(0.02, 0.15),
      lowHz: low,
      highHz: low * random.between(3, 20),
      gain: random.between(0.3, 1),
    });
  }
  return sound;
};

/** A motor that runs up to its speed: tones that rise together, then hold. */
const motorStart: Event = (scene) => {
  const { random, sampleRateHz } = scene;
  const sound = blank(scene);
  const finalHz = logBetween(random, 70, 500);
  const startS = random.between(0.3, 0.8);
  const runUpS = logBetween(random, 0.08, 0.8);
  const gains = Array.from({ length: 6 }, (_, index) => random.between(0.2, 1) / (index + 1));
  let turned = 0;
  for (let index = Math.round(startS * sampleRateHz); index < sound.length; index++) {
    const since = index / sampleRateHz - startS;
    const hertz = finalHz * -Math.expm1(-since / runUpS);
    turned += (2 * Math.PI * hertz) / sampleRateHz;
    const loud = Math.min(1, since / 0.03) * (0.4 + 0.6 * (hertz / finalHz));
    gains.forEach((gain, harmonic) => {
      sound[index]! += loud * gain * Math.sin((harmonic + 1) * turned);
    });
  }
  burst(sound, scene, { startS, riseS: 0.001, decayS: 0.01, lowHz: 400, highHz: 5000, gain: random.between(0, 1) });
  return sound;
};

const clap: Event = (scene) => {
  const { random } = scene;
  const sound = blank(scene);
  let startS = random.between(0.3, 0.7);
  for (let left = several(random, 1, 4); left > 0; left--) {
    burst(sound, scene, { startS, riseS: 0.0008, decayS: random.between(0.004, 0.015), lowHz: 500, highHz: 4000, gain: 1 });
    startS += random.between(0.25, 0.5);
  }
  return sound;
};

/** A screw or a key that falls on the bench and bounces. */
const drop: Event = (scene) => {
  const { random } = scene;
  const sound = blank(scene);
  const modes = Array.from({ length: 6 }, () => ({ frequencyHz: logBetween(random, 600, 9000), decayS: logBetween(random, 0.005, 0.12) }));
  let startS = random.between(0.3, 0.7);
  let gapS = random.between(0.15, 0.35);
  for (let gain = 1; gapS > 0.012 && startS < 2; gain *= 0.6) {
    strike(
      sound,
      modes.map((mode) => ({ ...mode, gain: gain * random.between(0.2, 1) })),
      startS,
      scene,
    );
    startS += gapS;
    gapS *= random.between(0.5, 0.7);
  }
  return sound;
};

const breath: Event = (scene) => {
  const { random, sampleRateHz } = scene;
  const sound = blank(scene);
  burst(sound, scene, {
    startS: random.between(0.2, 0.6),
    riseS: random.between(0.05, 0.3),
    decayS: random.between(0.1, 0.3),
    lowHz: 60,
    highHz: random.between(600, 2500),
    gain: 1,
  });
  const mouth = filtered(sound, resonator(random.between(400, 1400), random.between(100, 400), sampleRateHz));
  return sound.map((value, index) => value + mouth[index]!);
};

const mainsHum: Event = (scene) => {
  const { random } = scene;
  const harmonicsDb = Array.from({ length: 12 }, (_, index) => -1.2 * index - random.between(0, 8));
  return motor({ frequencyHz: oneOf(random, [50, 60]) + random.between(-0.05, 0.05), harmonicsDb, wander: 0, glidePerS: 0 }, scene);
};

const fan: Event = (scene) => {
  const { random } = scene;
  const tone = motor(
    { frequencyHz: logBetween(random, 60, 420), harmonicsDb: [0, -5, -9, -14], wander: logBetween(random, 0.0005, 0.01), glidePerS: 0 },
    scene,
  );
  addWithPower(tone, rumble(scene), amplitudeOf(random.between(-15, 3)));
  return tone;
};

const steppers: Event = (scene) => {
  const { random } = scene;
  const frequencyHz = logBetween(random, 80, 900);
  const glidePerS = oneOf(random, [0, 1, -1]) * random.between(0.02, 0.6);
  return motor({ frequencyHz, harmonicsDb: [0, -3, -6, -9, -12, -15], wander: 0, glidePerS }, scene);
};

const noise: Event = (scene) => (happens(scene.random, 0.5) ? hiss(scene) : rumble(scene));

const speech: Event = ({ random, seed, sampleRateHz, sampleCount }) =>
  speechLike({ seed, sampleRateHz, sampleCount }, { startS: random.between(0.15, 0.6) });

/** Nothing, or nothing but the microphone's own noise. */
const silence: Event = (scene) => (happens(scene.random, 0.3) ? blank(scene) : hiss(scene).map((value) => 1e-4 * value));

export const NON_BELTS: readonly NonBeltKind[] = [
  kind('silence', silence, { quiet: true, dry: true }),
  kind('noise', noise, { quiet: true, dry: true }),
  kind('hum', mainsHum, { dry: true }),
  kind('fan alone', fan, { dry: true }),
  kind('stepper alone', steppers, { dry: true }),
  kind('held tone', heldTone),
  kind('chord', chord),
  kind('speech', speech),
  kind('bell', bell),
  kind('glass', glass),
  kind('taps on the frame', taps),
  kind('door', door),
  kind('handling noise', handling),
  kind('motor starting', motorStart),
  kind('melody', melody),
  kind('claps', clap),
  kind('dropped screw', drop),
  kind('breath', breath),
];
