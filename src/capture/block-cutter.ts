/** Cuts the audio thread's small quanta into blocks worth a message; the only thing that happens there besides sending. */

import type { SoundBlock } from '../core/samples/block.ts';

/** 23 ms at 44.1 kHz: short enough for the eye, long enough that messages cost nothing. */
export const BLOCK_FRAMES = 1024;

export class BlockCutter {
  #samples = new Float32Array(BLOCK_FRAMES);
  #filled = 0;
  #firstFrame = 0;

  /**
   * Takes one quantum and gives the blocks that it completed, usually none.
   *
   * Samples in a block always follow one another: before a jump in the frames what there was is given as a shorter block.
   *
   * @param quantum     Float32Array of any length; copied
   * @param firstFrame  index of its first sample
   */
  cut(quantum: Float32Array, firstFrame: number): readonly SoundBlock[] {
    const blocks: SoundBlock[] = [];
    if (this.#filled > 0 && firstFrame !== this.#firstFrame + this.#filled) blocks.push(this.#give());
    let taken = 0;
    while (taken < quantum.length) {
      if (this.#filled === 0) this.#firstFrame = firstFrame + taken;
      const part = quantum.subarray(taken, taken + BLOCK_FRAMES - this.#filled);
      this.#samples.set(part, this.#filled);
      this.#filled += part.length;
      taken += part.length;
      if (this.#filled === BLOCK_FRAMES) blocks.push(this.#give());
    }
    return blocks;
  }

  #give(): SoundBlock {
    const block = { samples: this.#samples.slice(0, this.#filled), firstFrame: this.#firstFrame };
    this.#filled = 0;
    return block;
  }
}
