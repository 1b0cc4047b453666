/** Sentences on recordings that are opened in the page and decoded by the browser; WAV files have their own. */

import { assertNever } from '../core/outcome.ts';

/** What the browser cannot decode, by the name that a person may know. */
export type KnownFormat = 'ALAC' | 'AIFF' | 'CAF' | 'WMA' | 'Speex';

export type FileProblem =
  | { readonly why: 'empty' }
  | { readonly why: 'unreadable' }
  | { readonly why: 'too-large'; readonly bytes: number; readonly limitBytes: number }
  | { readonly why: 'too-long'; readonly durationS: number; readonly limitS: number }
  | { readonly why: 'rate-out-of-range'; readonly sampleRateHz: number }
  | { readonly why: 'not-sound' }
  | { readonly why: 'no-samples' }
  | { readonly why: 'cannot-decode'; readonly format?: KnownFormat | undefined };

const WORKS = 'WAV, FLAC, MP3 and a phone’s voice memo in AAC work.';
const CUT = 'Cut out the plucks and open that.';

const inMegabytes = (bytes: number): string => `${Math.ceil(bytes / 1e6)} MB`;
const inMinutes = (seconds: number): string => `${Math.ceil(seconds / 60)} minutes`;

/** What is wrong with the file and what to do. */
export function fileProblemText(problem: FileProblem): string {
  switch (problem.why) {
    case 'empty':
      return 'It is empty: not a single byte is in it. Record it anew.';
    case 'unreadable':
      return 'The browser could not read it from its place. It may have been moved or changed; choose it once more.';
    case 'too-large':
      return `It has ${inMegabytes(problem.bytes)}; up to ${inMegabytes(problem.limitBytes)} are read here. ${CUT}`;
    case 'too-long':
      return `It is ${inMinutes(problem.durationS)} long; up to ${inMinutes(problem.limitS)} are read here. ${CUT}`;
    case 'rate-out-of-range':
      return `Its sample rate is ${problem.sampleRateHz} Hz. From 8 to 192 kHz is read. Record it at 44.1 or 48 kHz.`;
    case 'not-sound':
      return `It does not look like a sound file. ${WORKS}`;
    case 'no-samples':
      return 'The sound in it is 0 s long. Record it anew.';
    case 'cannot-decode':
      return problem.format === undefined
        ? `The browser cannot decode it: it is damaged, or in a coding that the browser does not know. ${WORKS}`
        : `It is ${problem.format} sound, which this browser cannot decode. ALAC, AIFF, CAF and WMA do not work. ${WORKS} Save it as one of these.`;
    default:
      return assertNever(problem);
  }
}

export type FileNote =
  | { readonly id: 'channel-used'; readonly channelUsed: number; readonly channelCount: number }
  | { readonly id: 'rate-not-told'; readonly usedHz: number };

/** In lower case and without a full stop, as it stands in a list of notes. */
export function fileNoteText(note: FileNote): string {
  switch (note.id) {
    case 'channel-used':
      return `channel ${note.channelUsed} of ${note.channelCount} used`;
    case 'rate-not-told':
      return `the file does not tell its own sample rate; read at ${note.usedHz / 1000} kHz`;
    default:
      return assertNever(note);
  }
}
