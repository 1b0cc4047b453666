/** The kept sounds of a take as one recording, each pluck where it was, with silence between them, so that it can be listened to anew. */

import type { Recording } from '../../core/samples/recording.ts';
import type { SoundClip } from '../../ports.ts';

/** Nobody waits longer between two plucks; a longer gap is cut, since it holds nothing. */
const LONGEST_GAP_S = 3;

/** Undefined where there is no clip, or they are of different rates. */
export function joinedClips(clips: readonly SoundClip[]): Recording | undefined {
  const inOrder = clips.toSorted((a, b) => a.startS - b.startS);
  const sampleRateHz = inOrder[0]?.sampleRateHz;
  if (sampleRateHz === undefined || inOrder.some((clip) => clip.sampleRateHz !== sampleRateHz)) return undefined;
  let at = 0;
  let heardUntilS = inOrder[0]!.startS;
  const placed = inOrder.map(({ samples, startS }) => {
    const gapS = startS - heardUntilS;
    // Two clips may overlap: the room before a pluck is the end of the one before it.
    const start = Math.max(0, at + Math.round(Math.min(gapS, LONGEST_GAP_S) * sampleRateHz));
    at = Math.max(at, start + samples.length);
    heardUntilS = Math.max(heardUntilS, startS + samples.length / sampleRateHz);
    return { samples, start };
  });
  const whole = new Float32Array(at);
  for (const { samples, start } of placed) whole.set(samples, start);
  return { samples: whole, sampleRateHz };
}
