/** Plays a recording into the analysis at its own speed, as a microphone would: the demo take and an opened file look like listening. */

import type { SoundBlock } from '../core/samples/block.ts';
import type { Replay } from '../ports.ts';
import { BLOCK_FRAMES } from './block-cutter.ts';

/** About a block; what is due is reckoned from the clock, so a browser that calls less often only makes it catch up. */
const TICK_MS = 20;

export function createReplay(): Replay {
  return {
    start({ recording: { samples, sampleRateHz }, port, onEnd }) {
      const startedMs = performance.now();
      let sent = 0;
      const tick = () => {
        const due = Math.min(samples.length, Math.floor(((performance.now() - startedMs) / 1000) * sampleRateHz));
        while (sent + BLOCK_FRAMES <= due || (sent < due && due === samples.length)) {
          const block: SoundBlock = { samples: new Float32Array(samples.subarray(sent, sent + BLOCK_FRAMES)), firstFrame: sent };
          sent += block.samples.length;
          port.postMessage(block, [block.samples.buffer]);
        }
        if (sent < samples.length) return;
        clearInterval(ticking);
        onEnd();
      };
      const ticking = setInterval(tick, TICK_MS);
      return { stop: () => clearInterval(ticking) };
    },
  };
}
