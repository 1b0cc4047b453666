/** One plucked string as a recording: a quiet room first, then the pluck. Samples of sound fonts begin at the attack, recordings do not. */

export const LEAD_IN_S = 0.3;
const LONGEST_S = 1.6;
/** The font's samples stand at full scale, where a recording would count as clipped. */
export const GAIN = 0.5;
/** Standard deviation of the room's noise over full scale: -78 dB. */
export const NOISE = 2 ** -13;

/** Normal random numbers from a 32-bit counter that is hashed, by the Box-Muller method. */
function gaussianNoise(seed) {
  let counter = seed;
  const uniform = () => {
    counter = (counter + 0x9e3779b9) | 0;
    let hash = Math.imul(counter ^ (counter >>> 16), 0x21f0aaad);
    hash = Math.imul(hash ^ (hash >>> 15), 0x735a2d97);
    return (((hash ^ (hash >>> 15)) >>> 0) + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/**
 * Noise throughout, the string from `LEAD_IN_S` on, 1.6 s in all or up to the end of a shorter sample.
 *
 * @param string sampleRateHz, and samples, an Int16Array
 * @returns Int16Array
 */
export function stringClip({ samples, sampleRateHz }, seed) {
  const noise = gaussianNoise(seed);
  const leadIn = Math.round(LEAD_IN_S * sampleRateHz);
  const length = Math.min(leadIn + samples.length, Math.round(LONGEST_S * sampleRateHz));
  return Int16Array.from({ length }, (_, index) => {
    const value = GAIN * (samples[index - leadIn] ?? 0) + 2 ** 15 * NOISE * noise();
    return Math.max(-(2 ** 15), Math.min(2 ** 15 - 1, Math.round(value)));
  });
}

/** As the bytes of a WAV file: one channel, 16 bits. */
export function wavBytes(samples, sampleRateHz) {
  const bytes = Buffer.alloc(44 + 2 * samples.length);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20); // plain integers
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(sampleRateHz, 24);
  bytes.writeUInt32LE(2 * sampleRateHz, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(2 * samples.length, 40);
  samples.forEach((value, index) => {
    bytes.writeInt16LE(value, 44 + 2 * index);
  });
  return bytes;
}
