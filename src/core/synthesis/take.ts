/** A whole take: the room, one span plucked once or several times, the microphone. The same description and seed give the same samples. */

import type { Recording } from '../samples/recording.ts';
import { type Background, backgroundSound } from './background.ts';
import { addAt, amplitudeOf, peak } from './level.ts';
import { atRails, type MicrophoneCorner, throughCorner } from './microphone.ts';
import { scrape } from './noise.ts';
import { type Listener, type Pluck, pluckSound } from './pluck.ts';
import { createRandom } from './random.ts';
import { inRoom, type Room } from './room.ts';
import type { SimulatedSpan } from './span.ts';

export interface TakeDescription {
  readonly sampleRateHz: number;
  readonly durationS: number;
  readonly span: SimulatedSpan;
  readonly plucks: readonly PluckInTake[];
  readonly listener: Listener;
  /** Peak of the plucked sound behind room and microphone; above 0 it is cut off. */
  readonly peakDbfs: number;
  /** Peak of the finger's scrape relative to that of the ring, dB. */
  readonly scrapeDb: number;
  readonly room?: Room | undefined;
  readonly corner?: MicrophoneCorner | undefined;
  readonly background: Background;
}

export interface PluckInTake extends Pluck {
  /** Moment of release. */
  readonly startS: number;
}

/** The finger lies on the belt this long before it lets go, and stills what rang. */
const TOUCH_S = 0.05;
const STILLING_S = 0.012;
/** The finger scrapes from shortly before the release on. */
const SCRAPE_LEAD_S = 0.002;
const SCRAPE_DECAY_S = 0.0025;

/** @param seed any integer */
export function synthesiseTake(description: TakeDescription, seed: number): Recording {
  const { sampleRateHz, durationS, room, corner } = description;
  const sampleCount = Math.round(durationS * sampleRateHz);
  let sound = pluckedSound(description, { seed, sampleCount });
  if (room) sound = inRoom(sound, { room, random: createRandom(seed, 2), sampleRateHz });
  let around = backgroundSound(description.background, { seed, sampleRateHz, sampleCount });
  if (corner) {
    sound = throughCorner(sound, corner, sampleRateHz);
    around = throughCorner(around, corner, sampleRateHz);
  }
  const factor = amplitudeOf(description.peakDbfs) / (peak(sound) || 1);
  addAt(
    around,
    sound.map((value) => value * factor),
  );
  return { samples: atRails(around), sampleRateHz };
}

/** All plucks with the scrape of the finger, in the unit of `pluckSound`. */
function pluckedSound(description: TakeDescription, { seed, sampleCount }: { seed: number; sampleCount: number }): Float64Array {
  const { sampleRateHz, span, listener, plucks, scrapeDb } = description;
  const sound = new Float64Array(sampleCount);
  plucks.forEach((pluck, index) => {
    const from = Math.round(pluck.startS * sampleRateHz);
    const next = plucks[index + 1];
    const untilS = next ? next.startS + 10 * STILLING_S : description.durationS;
    const ring = pluckSound({ span, pluck, listener, sampleRateHz, sampleCount: Math.round((untilS - pluck.startS) * sampleRateHz) });
    const noise = scrape(createRandom(seed, 100 + index), { decayS: SCRAPE_DECAY_S, sampleRateHz });
    const noiseFactor = peak(ring) * amplitudeOf(scrapeDb);
    if (next) still(ring, { from: Math.round((next.startS - pluck.startS - TOUCH_S) * sampleRateHz), sampleRateHz });
    addAt(sound, ring, from);
    addAt(
      sound,
      noise.map((value) => value * noiseFactor),
      from - Math.round(SCRAPE_LEAD_S * sampleRateHz),
    );
  });
  return sound;
}

/** Lets a ring die quickly from a sample on, as under a finger. */
function still(ring: Float64Array, { from, sampleRateHz }: { from: number; sampleRateHz: number }): void {
  for (let index = Math.max(0, from); index < ring.length; index++) ring[index]! *= Math.exp(-(index - from) / (STILLING_S * sampleRateHz));
}
