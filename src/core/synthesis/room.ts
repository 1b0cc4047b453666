/** A small room: a few early reflections, then a diffuse tail that dies exponentially. */

import { addAt, amplitudeOf } from './level.ts';
import type { Random } from './random.ts';

export interface Room {
  /** Level of the earliest reflection relative to the direct sound, −9 dB unless told; the closer the microphone, the lower. */
  readonly earlyDb?: number | undefined;
  /** Time in which the tail falls by 60 dB. */
  readonly reverberationS: number;
  /** Energy of the whole tail relative to the direct sound. */
  readonly tailDb: number;
}

const EARLY_COUNT = 5;
const USUAL_EARLY_DB = -9;
/** Sparse taps of either sign sound as dense noise does from about this many a second on. */
const TAPS_PER_S = 2000;
const EARLIEST_S = 0.002;
const FIRST_TAP_S = 0.015;

/** The sound in the room, direct sound first; as long as the sound given. */
export function inRoom(
  sound: Float64Array,
  { room, random, sampleRateHz }: { room: Room; random: Random; sampleRateHz: number },
): Float64Array {
  const out = sound.slice();
  for (let count = 0; count < EARLY_COUNT; count++) {
    const delayS = random.between(EARLIEST_S, FIRST_TAP_S);
    const gain = (random.uniform() < 0.5 ? -1 : 1) * amplitudeOf(room.earlyDb ?? USUAL_EARLY_DB) * Math.sqrt(EARLIEST_S / delayS);
    addAt(out, scaledBy(sound, gain), Math.round(delayS * sampleRateHz));
  }
  const taps = tailTaps(room, random);
  const norm = Math.sqrt(10 ** (room.tailDb / 10) / taps.reduce((sum, { gain }) => sum + gain * gain, 0));
  for (const { delayS, gain } of taps) {
    const from = Math.round(delayS * sampleRateHz);
    const factor = norm * gain;
    for (let index = from; index < out.length; index++) out[index]! += factor * sound[index - from]!;
  }
  return out;
}

function tailTaps(room: Room, random: Random): readonly { delayS: number; gain: number }[] {
  const taps = [];
  for (let slot = 0; slot < room.reverberationS * TAPS_PER_S; slot++) {
    const delayS = FIRST_TAP_S + (slot + random.uniform()) / TAPS_PER_S;
    taps.push({ delayS, gain: (random.uniform() < 0.5 ? -1 : 1) * 10 ** ((-3 * delayS) / room.reverberationS) });
  }
  return taps;
}

const scaledBy = (sound: Float64Array, factor: number): Float64Array => sound.map((value) => value * factor);
