/** The partials as they were told, played back as numbers: each a damped sinusoid that glides with the others. */

import type { PluckSound } from '../outcome.ts';

export interface Ringing {
  readonly number: number;
  readonly decayS: number;
  /** Angle of the ring at a time after the touch, rad. */
  angleAt(seconds: number): number;
}

/**
 * Partials ring below their undamped frequency, and above it by the glide, which dies with the square of the amplitude:
 * f(t) = f_d (1 + g exp(−2t/τ)) with τ of the first partial heard.
 */
export function ringingPartials(sound: PluckSound): readonly Ringing[] {
  const glide = sound.evidence.glideRelative;
  const glidesS = (sound.partials[0]?.decayS ?? 1) / 2;
  const heldBackS = (seconds: number): number => glide * glidesS * (1 - Math.exp(-seconds / glidesS));
  return sound.partials.map(({ number, frequencyHz, decayS }) => {
    const dampedRad = Math.sqrt(Math.max(0, (2 * Math.PI * frequencyHz.value) ** 2 - 1 / decayS ** 2));
    return { number, decayS, angleAt: (seconds) => dampedRad * (seconds + heldBackS(seconds)) };
  });
}
