/** Plays a clip through the loudspeaker, once. */

import type { ClipPlayer } from '../ports.ts';

/** @param open  makes the context, in which a person's gesture lets sound out */
export function createClipPlayer(open: () => AudioContext = () => new AudioContext()): ClipPlayer {
  return {
    async play({ samples, sampleRateHz }, signal) {
      if (signal.aborted || samples.length === 0) return;
      const context = open();
      const buffer = context.createBuffer(1, samples.length, sampleRateHz);
      buffer.copyToChannel(samples, 0);
      const source = context.createBufferSource();
      source.buffer = buffer;
      source.connect(context.destination);
      const over = new Promise<void>((resolve) => {
        source.onended = () => resolve();
        signal.addEventListener('abort', () => resolve(), { once: true });
      });
      source.start();
      await over;
      source.disconnect();
      await context.close();
    },
  };
}
