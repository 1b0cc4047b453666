/** Keeps the sound of one take as it passes to the analysis, for who wants the recording itself. */

import type { Recording } from '../../core/samples/recording.ts';
import type { SoundBlock } from '../../ports.ts';

/** A take of plucks under one weight is over long before; what comes later is not kept. */
const LONGEST_S = 120;

export class SoundTap {
  #sampleRateHz = 0;
  #blocks: SoundBlock[] = [];
  #whole: Recording | undefined;

  /** @returns a port that passes on what comes in, and keeps a copy */
  begin(sampleRateHz: number, onward: MessagePort): MessagePort {
    this.#sampleRateHz = sampleRateHz;
    this.#blocks = [];
    this.#whole = undefined;
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<SoundBlock>) => {
      if (data.firstFrame < LONGEST_S * sampleRateHz) this.#blocks.push({ samples: data.samples.slice(), firstFrame: data.firstFrame });
      onward.postMessage(data, [data.samples.buffer]);
    };
    return port2;
  }

  /** The sound came as a whole. */
  hear(recording: Recording): void {
    this.#whole = recording;
  }

  /** What was heard; where the source left a gap there is silence. Undefined before anything came. */
  get recording(): Recording | undefined {
    if (this.#whole) return this.#whole;
    const first = this.#blocks[0]?.firstFrame ?? 0;
    const length = this.#blocks.reduce((end, { samples, firstFrame }) => Math.max(end, firstFrame - first + samples.length), 0);
    if (length === 0) return undefined;
    const samples = new Float32Array(length);
    for (const block of this.#blocks) samples.set(block.samples, block.firstFrame - first);
    return { samples, sampleRateHz: this.#sampleRateHz };
  }
}
