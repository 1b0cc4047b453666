/** A take as it is kept: its sounds, the setup as typed and as understood, and what was answered. */

import type { KeptTake } from '../../../shared/document/take.ts';
import type { PluckSound, Reading } from '../../core/outcome.ts';
import type { SoundProcessing } from '../../core/samples/recording.ts';
import type { SpanSetup } from '../../core/setup.ts';
import type { EnteredSetup } from '../../ports.ts';
import { newItem, nowAt, nowWhen } from './new-item.ts';
import { PROGRAM_VERSION } from './program-version.ts';

export interface HeardTake {
  readonly sounds: readonly PluckSound[];
  readonly entered: EnteredSetup;
  readonly setup: SpanSetup;
  readonly reading: Reading;
  readonly sampleRateHz: number;
  readonly processing?: SoundProcessing | undefined;
  readonly source: KeptTake['source'];
}

export function newTake(heard: HeardTake): KeptTake {
  return { ...newItem(), heard: nowWhen(), answeredBefore: [], ...partsOf(heard) };
}

/** The same take with more plucks, or fewer. */
export const changedTake = (take: KeptTake, heard: HeardTake): KeptTake => ({ ...take, ...partsOf(heard) });

function partsOf({ sounds, entered, setup, reading, sampleRateHz, processing, source }: HeardTake) {
  const { on, ...typed } = entered;
  const { frequencyHz, forceN, grade, soundGrade, reasons, pluckCount } = reading;
  // Told as it stands in the document: without what only the moment knows.
  return structuredClone({
    ...(on ? { on } : {}),
    source,
    ...(processing ? { processing } : {}),
    sampleRateHz,
    sounds,
    entered: typed,
    now: {
      setup,
      answer: { frequencyHz, ...(forceN ? { forceN } : {}), grade, soundGrade, reasonIds: reasons.map(({ id }) => id), pluckCount },
      program: PROGRAM_VERSION,
      computedAt: nowAt(),
    },
  }) as unknown as Pick<KeptTake, 'on' | 'source' | 'processing' | 'sampleRateHz' | 'sounds' | 'entered' | 'now'>;
}
