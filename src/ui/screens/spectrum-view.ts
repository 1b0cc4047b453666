/** What the spectrum shows of the last pluck: where its partials should lie, where they were found, and what was left out. */

import { expectedPartialsHz } from '../../core/force/expected.ts';
import type { ForceRange, SpanSetup } from '../../core/setup.ts';
import { en } from '../../words/en.ts';
import type { Figures } from '../format.ts';
import type { ExpectedPlace, FoundPeak, LeftOut } from '../parts/spectrum-plot.ts';
import type { AppState } from '../state/state.ts';
import type { HeardPluck } from '../state/take.ts';

const words = en.spectrum;
/** Mains hum and what rectifiers make of it. */
const MAINS_HZ = [50, 60];
const MAINS_TOLERANCE_HZ = 0.6;
const MAINS_HARMONICS = 10;

/** Blue places: from the target where there is one, else from what the reading says. */
export function expectedPlaces({ understood, answer }: AppState): readonly ExpectedPlace[] {
  const { setup } = understood;
  const range = setup.targetForceN ?? rangeOf(answer.reading?.forceN);
  return range ? placesIn(setup, range) : [];
}

const rangeOf = (force: { low?: number | undefined; high?: number | undefined } | undefined): ForceRange | undefined =>
  force?.low !== undefined && force.high !== undefined ? { lowN: force.low, highN: force.high } : undefined;

const placesIn = (setup: SpanSetup, range: ForceRange): readonly ExpectedPlace[] =>
  (expectedPartialsHz(setup, range) ?? []).map((place) => ({ ...place, label: words.partial(place.number) }));

export function foundPeaks({ sound }: HeardPluck, figures: Figures): readonly FoundPeak[] {
  return sound.partials.map(({ frequencyHz, levelDbfs }, index) => {
    const text = figures.typed(frequencyHz.value);
    return { frequencyHz: frequencyHz.value, levelDbfs, label: index === 0 ? `${text}\u00a0Hz` : text, main: index === 0 };
  });
}

export const leftOutTones = ({ spectrum }: HeardPluck): readonly LeftOut[] =>
  spectrum.steadyHz.map((frequencyHz) => ({ frequencyHz, label: isMains(frequencyHz) ? words.hum : words.steady }));

function isMains(frequencyHz: number): boolean {
  return MAINS_HZ.some((mainsHz) => {
    const harmonic = Math.round(frequencyHz / mainsHz);
    return harmonic >= 1 && harmonic <= MAINS_HARMONICS && Math.abs(frequencyHz - harmonic * mainsHz) <= MAINS_TOLERANCE_HZ * harmonic;
  });
}

/** The same as a table, for screen readers. */
export function partialsTable(pluck: HeardPluck, expected: readonly ExpectedPlace[], figures: Figures) {
  return {
    caption: words.caption,
    columns: words.columns,
    rows: pluck.sound.partials.map(({ number, frequencyHz, levelDbfs, decayS }) => {
      const place = expected.find((one) => one.number === number);
      return [
        String(number),
        figures.typed(frequencyHz.value, 'Hz'),
        figures.whole(levelDbfs, 'dB'),
        figures.rough(decayS, 's'),
        place ? en.range(figures.whole(place.lowHz), figures.whole(place.highHz, 'Hz')) : words.notExpected,
      ];
    }),
  };
}
