/** What a microphone hears from, by the noise of the room in it: rooms are louder the lower one listens, so that a fall is the microphone's own. */

import type { PlotSpectrum } from '../outcome.ts';

export interface MicrophoneLimit {
  /** Partials below are not to be counted on, Hz. */
  readonly lowestHz: number;
  /** `none`: no fall was found down to the lowest band. `fall`: the room's noise falls off below. */
  readonly by: 'none' | 'fall';
}

/** Where every microphone hears, and no belt's hum of the mains decides the median. */
const REFERENCE_HZ = { low: 180, high: 500 } as const;
/** Bands of a third of an octave, from the reference down to here. */
const LOWEST_BAND_HZ = 20;
const BAND_RATIO = 2 ** (1 / 3);
/** So much below the reference a band counts as lost: rooms grow louder downwards by 3 dB an octave and more, so the microphone has lost more than that. */
const LOST_DB = 6;
/** A digital gap or a gate is no noise to go by. */
const QUIETEST_DBFS = -130;
const FEWEST_BINS = 3;

/** @returns `undefined` where there is no noise to go by: a silent input, or one that gates the room away */
export function microphoneLimit({
  binWidthHz,
  backgroundDbfs,
}: Pick<PlotSpectrum, 'binWidthHz' | 'backgroundDbfs'>): MicrophoneLimit | undefined {
  const level = (lowHz: number, highHz: number): number | undefined => {
    const bins = backgroundDbfs.subarray(Math.max(1, Math.floor(lowHz / binWidthHz)), Math.ceil(highHz / binWidthHz) + 1);
    if (bins.length < FEWEST_BINS) return undefined;
    return bins.toSorted()[bins.length >> 1]; // steady tones stand above the median
  };
  const reference = level(REFERENCE_HZ.low, REFERENCE_HZ.high);
  if (reference === undefined || !(reference > QUIETEST_DBFS)) return undefined;
  let lowestHz: number = REFERENCE_HZ.low;
  while (lowestHz / BAND_RATIO >= LOWEST_BAND_HZ) {
    const band = level(lowestHz / BAND_RATIO, lowestHz);
    if (band === undefined) break;
    if (band < reference - LOST_DB) return { lowestHz, by: 'fall' };
    lowestHz /= BAND_RATIO;
  }
  return { lowestHz: LOWEST_BAND_HZ, by: 'none' };
}
