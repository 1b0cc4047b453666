/** What a filter does to a sine, measured: a tone is sent through and heard by its amplitude once it has settled. */

import { toneAmplitude } from './heterodyne.ts';

export type Through = (sound: Float64Array) => Float64Array;

/** Of power ratios. */
export const db = (power: number): number => 10 * Math.log10(power);

/** Gain of a filter for one frequency, dB, from half a second on. */
export function gainDb(through: Through, at: { readonly frequencyHz: number; readonly sampleRateHz: number }): number {
  const { frequencyHz, sampleRateHz } = at;
  const sine = Float64Array.from({ length: sampleRateHz }, (_, index) => Math.sin((2 * Math.PI * frequencyHz * index) / sampleRateHz));
  return 2 * db(toneAmplitude(through(sine), { frequencyHz, startS: 0.5, lengthS: 0.5, sampleRateHz }));
}
