/** Plucks as the estimator would tell them, made by hand: for tests of what follows from them. */

import type { ListeningEvent } from '../../src/core/listening.ts';
import type { PlotSpectrum, PluckSound } from '../../src/core/outcome.ts';

export const FLAT_SPECTRUM: PlotSpectrum = {
  binWidthHz: 1,
  levelsDbfs: new Float32Array(3000).fill(-80),
  backgroundDbfs: new Float32Array(3000).fill(-90),
  steadyHz: [],
};

/** A clear pluck: three exact partials, long decay, quiet room. */
export function pluckSound(frequencyHz: number, change: Partial<PluckSound['evidence']> = {}): PluckSound {
  const partials = [1, 2, 3].map((number) => ({
    number,
    frequencyHz: { value: number * frequencyHz, standardUncertainty: 0.0005 * number * frequencyHz },
    levelDbfs: -20 - 6 * number,
    decayS: 0.3 / number,
  }));
  return {
    startS: 1,
    frequencyHz: { value: frequencyHz, standardUncertainty: 0.0005 * frequencyHz },
    partials,
    evidence: {
      cyclesToDecay: 0.3 * frequencyHz,
      levelOverBackgroundDb: 50,
      clippedShare: 0,
      glideRelative: 0.001,
      leadOverRival: 30,
      foreignHz: [],
      ownShare: 0.99,
      firstPartialHeard: true,
      bandwidthHz: 22_050,
      ...change,
    },
  };
}

/** What spoke for and against a span is left out: nothing of the page looks at it. */
export function pluckEvent(frequencyHz: number, change: Partial<PluckSound['evidence']> = {}): ListeningEvent {
  const event = { kind: 'pluck', sound: pluckSound(frequencyHz, change), spectrum: FLAT_SPECTRUM };
  return event as ListeningEvent;
}
