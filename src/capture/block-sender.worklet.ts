/** Runs on the audio thread: copies the microphone's samples to the ports that wait for them, and does nothing else there. */

import type { SoundBlock } from '../core/samples/block.ts';
import { BlockCutter } from './block-cutter.ts';

/** Sends each block to its own port, where the page watches over the microphone, and to the port that it was last handed. */
class BlockSender extends AudioWorkletProcessor {
  readonly #cutter = new BlockCutter();
  #receiver: MessagePort | undefined;

  constructor() {
    super();
    this.port.onmessage = ({ ports }) => {
      this.#receiver = ports[0];
    };
  }

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const quantum = inputs[0]?.[0]; // no channel: nothing is connected or nothing comes; the frames then jump
    if (quantum === undefined) return true;
    for (const block of this.#cutter.cut(quantum, currentFrame)) {
      if (this.#receiver !== undefined) send(this.#receiver, { samples: block.samples.slice(), firstFrame: block.firstFrame });
      send(this.port, block);
    }
    return true;
  }
}

const send = (port: MessagePort, block: SoundBlock): void => port.postMessage(block, [block.samples.buffer]);

registerProcessor('block-sender', BlockSender);
