/** Two numberings that both fit a sound: what force each would mean, and how likely each is. */

import { heardSounds, readingOf, type Take } from './answer.ts';
import { searchBounds } from './frequency/search-bounds.ts';
import { readAsRival } from './frequency/touched-middle.ts';
import type { ForceN, FrequencyHz, Reading } from './outcome.ts';

export interface OctaveDoubt {
  /** The numbering that the reading goes by, and its rival. The two probabilities sum to 1. */
  readonly own: Numbering;
  readonly rival: Numbering;
}

export interface Numbering {
  readonly frequencyHz: FrequencyHz;
  /** Missing where span or density was not told, or no force makes this span sound so. */
  readonly forceN?: ForceN | undefined;
  /** 0 to 1, other numberings left out of account. */
  readonly probability: number;
}

/**
 * Undefined where the numbering is not in doubt, and where the rival shares no partial with what was heard.
 *
 * @param reading  of the take
 */
export function octaveDoubt(take: Take, reading: Reading): OctaveDoubt | undefined {
  const open = reading.reasons.some(({ id, holdsAt }) => id === 'octave-not-certain' && holdsAt !== 'trusted');
  if (!open) return undefined;
  const bounds = searchBounds(take.setup);
  const both = heardSounds(take).flatMap((sound) => {
    const rival = readAsRival(sound, bounds);
    return rival ? [{ sound, rival }] : [];
  });
  const other = readingOf({ ...take, sounds: both.map(({ rival }) => rival), touched: undefined });
  if (!other) return undefined;
  // What misleads one pluck misleads its fellows: the least sure of them speaks for all.
  const lead = Math.min(...both.map(({ sound }) => sound.evidence.leadOverRival));
  const probability = 1 / (1 + Math.exp(-lead));
  return {
    own: { frequencyHz: reading.frequencyHz, forceN: reading.forceN, probability },
    rival: { frequencyHz: other.frequencyHz, forceN: other.forceN, probability: 1 - probability },
  };
}
