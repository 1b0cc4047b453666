/** The whole chain, from a recording to a graded answer. Whoever reads this has seen the program. */

import { answerOf, isMostlyOtherSounds } from './answer.ts';
import { createListening } from './listening.ts';
import type { Measurement, NothingWhy, PluckSound } from './outcome.ts';
import { durationS, type Recording } from './samples/recording.ts';
import type { SpanSetup } from './setup.ts';

/**
 * Sound → samples → spectrum → partials → frequency (`createListening`, pluck by pluck) → force → verdict (`answerOf`).
 *
 * @param recording  one channel; its samples are not modified
 * @param setup      what is known of the span; bounds the search, never pulls the answer
 * @returns every pluck heard, and the reading of those that agree; or why there is none
 */
export function measure(recording: Recording, setup: SpanSetup): Measurement {
  const { sampleRateHz } = recording;
  const listening = createListening({ sampleRateHz, setup });
  const events = [...listening.push(recording.samples), ...listening.finish()];
  const sounds: PluckSound[] = [];
  const whyNot: NothingWhy[] = [];
  const othersDbfs: number[] = [];
  for (const event of events) {
    if (event.kind === 'pluck') sounds.push(event.sound);
    if (event.kind !== 'no-pluck') continue;
    whyNot.push(event.why);
    if (event.why === 'not-a-span') othersDbfs.push(event.levelDbfs ?? 0);
  }
  if (isMostlyOtherSounds({ sounds, othersDbfs })) sounds.length = 0;
  const { plucks, reading } = answerOf({ sounds, setup, processing: recording.processing, sampleRateHz });
  const outcome = reading ?? { kind: 'nothing', why: mostTelling(whyNot) };
  return { sampleRateHz, durationS: durationS(recording), plucks, outcome };
}

/** Where several sounds were no plucks, the reason that says most about what was there. */
function mostTelling(whys: readonly NothingWhy[]): NothingWhy {
  const order: readonly NothingWhy[] = ['not-a-span', 'too-quiet', 'no-onset', 'silence', 'too-short'];
  return order.find((why) => whys.includes(why)) ?? 'too-short';
}
