/** Sentences on WAV files: why one gave no sound, and what was noticed on one that did. Page and command line say the same. */

import { assertNever } from '../core/outcome.ts';
import type { WavFault, WavNote } from '../core/samples/wav-answer.ts';

/** Names of the codings that recorders put into WAV files instead of plain samples; registered numbers. */
const COMPRESSIONS: Readonly<Record<number, string>> = {
  2: 'adaptive differential coding',
  6: 'A-law telephone coding',
  7: 'mu-law telephone coding',
  17: 'adaptive differential coding',
  49: 'mobile telephone coding',
  80: 'MPEG audio',
  85: 'MPEG layer 3',
  255: 'AAC',
};

const SAVE_AGAIN = 'Save it again as WAV and try once more.';
const SAVE_PLAIN = 'Save it as WAV with 16, 24 or 32 bits and try once more.';

const inKilohertz = (rateHz: number): string =>
  rateHz < 1000
    ? `${rateHz} Hz`
    : rateHz < 1e6
      ? `${Number((rateHz / 1000).toPrecision(4))} kHz`
      : `${Number((rateHz / 1e6).toPrecision(3))} MHz`;

/** Two digits after the point below ten seconds, one above. */
const inSeconds = (seconds: number): string => `${seconds.toFixed(seconds < 10 ? 2 : 1)} s`;

/** What is wrong with the file, where it shows, and what to do. */
export function wavFaultText(fault: WavFault): string {
  switch (fault.why) {
    case 'empty-file':
      return 'It is empty: not a single byte is in it. Record it anew.';
    case 'not-wav':
      return 'It does not start as a WAV file does. Save it as WAV and try once more.';
    case 'header-ends':
      return `It says it is a WAV but ends inside its header, at byte ${fault.atByte}. ${SAVE_AGAIN}`;
    case 'no-format':
      return `It says it is a WAV but not how its sound is written (byte ${fault.atByte}). ${SAVE_AGAIN}`;
    case 'format-too-short':
      return `Its format at byte ${fault.atByte} has ${fault.formatBytes} bytes where ${fault.neededBytes} are needed. ${SAVE_AGAIN}`;
    case 'compressed': {
      const name = COMPRESSIONS[fault.formatTag];
      return `It holds compressed sound (format ${fault.formatTag}${name === undefined ? '' : `, ${name}`}), which is not read here. ${SAVE_PLAIN}`;
    }
    case 'channel-count':
      return `It says that it has ${fault.channelCount} channels (byte ${fault.atByte}), which cannot be. ${SAVE_AGAIN}`;
    case 'rate-out-of-range':
      return `It says ${inKilohertz(fault.sampleRateHz)} as its sample rate (byte ${fault.atByte}). From 8 to 192 kHz is read. ${SAVE_AGAIN}`;
    case 'sample-size':
      return `Its samples have ${fault.bits} bits${fault.coding === 'float' ? ' as floats' : ''}, which is not read here. ${SAVE_PLAIN}`;
    case 'frame-size':
      return `Its header contradicts itself: ${fault.frameBytes} bytes for each frame where ${fault.neededBytes} follow from the rest (byte ${fault.atByte}). ${SAVE_AGAIN}`;
    case 'no-data':
      return `It has a header but no sound; the file ends at byte ${fault.atByte}. Record it anew.`;
    case 'no-samples':
      return 'It has a header, and the sound in it is 0 s long. Record it anew.';
    case 'not-numbers':
      return `${Math.max(1, Math.round(100 * fault.share))} % of its samples are no numbers, so the rest cannot be trusted. ${SAVE_AGAIN}`;
    default:
      return assertNever(fault);
  }
}

/** In lower case and without a full stop, as it stands in a list of notes. */
export function wavNoteText(note: WavNote): string {
  switch (note.id) {
    case 'channel-used':
      return `channel ${note.channelUsed} of ${note.channelCount} used`;
    case 'length-not-told':
      return `the file does not say how long it is; all ${inSeconds(note.foundS)} to its end were read`;
    case 'ends-early':
      return `the file ends early: ${inSeconds(note.foundS)} of ${inSeconds(note.promisedS)} are there`;
    case 'not-numbers':
      return note.count === 1
        ? '1 sample is no number and was read as silence'
        : `${note.count} samples are no numbers and were read as silence`;
    case 'scaled-down':
      return `the sound goes to ${Number(note.peak.toPrecision(3))} times full scale and was brought down to it`;
    default:
      return assertNever(note);
  }
}
