/** One live take inside the worker: blocks in, events and moments out, on one time line even where samples were lost. */

import type { Listening, ListeningEvent, ListeningOptions } from '../core/listening.ts';
import type { SoundBlock } from '../core/samples/block.ts';
import type { HeardEvent, LiveMoment, SoundClip } from '../ports.ts';
import { MomentMeter } from './moment-meter.ts';
import { SoundMemory } from './sound-memory.ts';

export interface TakeOptions extends ListeningOptions {
  readonly createListening: (options: ListeningOptions) => Listening;
  readonly tell: (event: HeardEvent | LiveMoment) => void;
  /** Whether the sound of each pluck, and of what was none, comes with it. */
  readonly keepsSound?: boolean | undefined;
}

export class Take {
  readonly #options: TakeOptions;
  readonly #meter: MomentMeter;
  #listening: Listening;
  /** Where the present stretch of unbroken sound began, from the start of the take. */
  #stretchStartS = 0;
  #stretchFrames = 0;
  /** Of the present stretch. */
  #memory: SoundMemory | undefined;
  #nextFrame: number | undefined;
  /** In the present stretch. */
  #hadOnset = false;
  /** In any stretch before it. */
  #hadOnsetBefore = false;

  constructor(options: TakeOptions) {
    this.#options = options;
    this.#meter = new MomentMeter(options.sampleRateHz);
    this.#listening = options.createListening(options);
    this.#memory = this.#newMemory();
  }

  #newMemory(): SoundMemory | undefined {
    return this.#options.keepsSound ? new SoundMemory(this.#options.sampleRateHz) : undefined;
  }

  hear({ samples, firstFrame }: SoundBlock): void {
    if (this.#nextFrame !== undefined && firstFrame !== this.#nextFrame) this.#bridge(firstFrame - this.#nextFrame);
    this.#nextFrame = firstFrame + samples.length;
    for (const moment of this.#meter.hear(samples)) this.#options.tell(moment);
    const sound = this.#fromFirstSound(samples);
    this.#stretchFrames += sound.length;
    this.#memory?.hear(sound);
    this.#tell(this.#listening.push(sound));
  }

  /** A microphone that opens gives digital silence first; the step from it to the room is no onset, so a stretch begins behind it. */
  #fromFirstSound(samples: Float32Array): Float32Array {
    if (this.#stretchFrames > 0) return samples;
    const first = samples.findIndex((sample) => sample !== 0);
    const silent = first < 0 ? samples.length : first;
    this.#stretchStartS += silent / this.#options.sampleRateHz;
    return samples.subarray(silent);
  }

  /** Gives what was still waiting. */
  finish(): void {
    this.#tell(this.#rest({ isLast: true }));
  }

  /**
   * Samples are missing. To sew the ends together would make a knock and a false phase, so what was sounding is judged by what was
   * heard of it, and listening begins anew with the room. A source that begins again (frames go back) carries on where the old one ended.
   */
  #bridge(lostFrames: number): void {
    this.#tell(this.#rest({ isLast: false }));
    this.#meter.forget();
    this.#listening = this.#options.createListening(this.#options);
    this.#memory = this.#newMemory();
    this.#stretchStartS += (this.#stretchFrames + Math.max(0, lostFrames)) / this.#options.sampleRateHz;
    this.#stretchFrames = 0;
    this.#hadOnsetBefore ||= this.#hadOnset;
    this.#hadOnset = false;
  }

  /** What ends with the stretch. That nothing began in it is news only where it is the whole take. */
  #rest({ isLast }: { readonly isLast: boolean }): readonly ListeningEvent[] {
    const events = this.#listening.finish();
    const isAboutSounds = this.#hadOnset || events.some(({ kind }) => kind === 'onset');
    if (isAboutSounds || (isLast && !this.#hadOnsetBefore)) return events;
    return events.filter(({ kind }) => kind !== 'no-pluck');
  }

  #tell(events: readonly ListeningEvent[]): void {
    for (const event of events) {
      if (event.kind === 'onset') this.#hadOnset = true;
      const memory = this.#memory;
      const heard = memory ? withClip(event, (atS) => memory.clipAt(atS)) : event;
      this.#options.tell(later(heard, this.#stretchStartS));
    }
  }
}

/** The same event on a clock that began earlier. */
function later(event: HeardEvent, byS: number): HeardEvent {
  if (byS === 0) return event;
  const clip = event.clip && { clip: { ...event.clip, startS: event.clip.startS + byS } };
  if (event.kind === 'pluck') return { ...event, ...clip, sound: { ...event.sound, startS: event.sound.startS + byS } };
  return { ...event, ...clip, atS: event.atS + byS };
}

/** The event with its own sound, where it has one. */
export function withClip(event: ListeningEvent, clipAt: (atS: number) => SoundClip): HeardEvent {
  if (event.kind === 'pluck') return { ...event, clip: clipAt(event.sound.startS) };
  const isOfOneSound = event.kind === 'no-pluck' && (event.why === 'not-a-span' || event.why === 'too-quiet');
  return isOfOneSound ? { ...event, clip: clipAt(event.atS) } : event;
}
