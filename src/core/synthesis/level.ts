/** Levels and sums of sample arrays; everywhere in the synthesis full scale is 1 and sounds are Float64Array until the take is done. */

/** Amplitude of a level in dB relative to full scale. */
export const amplitudeOf = (levelDbfs: number): number => 10 ** (levelDbfs / 20);

export const rms = (samples: Float64Array): number => Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);

export const peak = (samples: Float64Array): number => samples.reduce((largest, value) => Math.max(largest, Math.abs(value)), 0);

/** The same sound with the power of a sine of that level: a sine of amplitude 1 is 0 dBFS. Silence stays silence. */
export function atLevel(samples: Float64Array, levelDbfs: number): Float64Array {
  const power = rms(samples);
  if (power === 0) return samples;
  const factor = amplitudeOf(levelDbfs) / (Math.SQRT2 * power);
  return samples.map((value) => value * factor);
}

/** Adds a sound to another from a sample on, as far as there is room. */
export function addAt(into: Float64Array, sound: Float64Array, from = 0): void {
  const end = Math.min(into.length, from + sound.length);
  for (let index = Math.max(0, from); index < end; index++) into[index]! += sound[index - from]!;
}
