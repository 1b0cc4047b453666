/** Which channel of a decoded file is listened to: mixing could cancel a pluck, so one is chosen. */

/** Index of the channel with most energy about its mean, so that an offset does not pass for sound; the first of equals. */
export function strongestChannel(channels: readonly Float32Array[]): number {
  const energies = channels.map(energyAboutMean);
  return energies.reduce((strongest, energy, index) => (energy > energies[strongest]! ? index : strongest), 0);
}

function energyAboutMean(samples: Float32Array): number {
  let sum = 0;
  let sumOfSquares = 0;
  for (const sample of samples) {
    sum += sample;
    sumOfSquares += sample * sample;
  }
  return samples.length === 0 ? 0 : sumOfSquares - (sum * sum) / samples.length;
}
