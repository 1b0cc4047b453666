/** A file that a person opens, to a recording at the file's own rate: WAV by our own reader, the rest by the browser's decoder. */

import { durationS, type Recording } from '../core/samples/recording.ts';
import { readWav } from '../core/samples/wav.ts';
import type { DecodedFile, FileDecoder, FileFailure } from '../ports.ts';
import { type FileNote, type FileProblem, fileNoteText, fileProblemText, type KnownFormat } from '../words/file-en.ts';
import { wavFaultText, wavNoteText } from '../words/wav-en.ts';
import { type SoundHeader, soundHeader } from './header/sound-header.ts';
import { strongestChannel } from './strongest-channel.ts';

/** A take lasts seconds; beyond these a page on a phone would run out of memory, and nobody would wait for it. */
const MAX_FILE_BYTES = 200e6;
const MAX_DURATION_S = 600;

const LOWEST_RATE_HZ = 8000;
const HIGHEST_RATE_HZ = 192_000;

/** Where a file does not tell: what is compressed is mostly made at this rate or below it. */
const FALLBACK_RATE_HZ = 48_000;

/** What a decoder gives, as an `AudioBuffer` has it. */
export type DecodedSound = Pick<AudioBuffer, 'numberOfChannels' | 'sampleRate' | 'getChannelData'>;

/** @param decode  decodes at a rate; rejects where it cannot */
export function createFileDecoder(
  decode: (bytes: ArrayBuffer, sampleRateHz: number) => Promise<DecodedSound> = decodeInBrowser,
): FileDecoder {
  return {
    async decode(file) {
      if (file.size === 0) return failure({ why: 'empty' });
      if (file.size > MAX_FILE_BYTES) return failure({ why: 'too-large', bytes: file.size, limitBytes: MAX_FILE_BYTES });
      let bytes: Uint8Array<ArrayBuffer>;
      try {
        bytes = new Uint8Array(await file.arrayBuffer());
      } catch {
        return failure({ why: 'unreadable' });
      }
      const header = soundHeader(bytes);
      if (header.container !== 'wav') return decoded(bytes, header, isNamedAsSound(file));
      const wav = readWav(bytes);
      if (wav.kind === 'wav') return within({ recording: wav.recording, notes: wav.notes.map(wavNoteText) });
      const answer = wav.why === 'compressed' ? await decoded(bytes, header, true) : undefined;
      return answer?.kind === 'decoded-file' ? answer : { kind: 'file-failure', why: whyOf(wav.why), text: wavFaultText(wav) };
    },
  };

  async function decoded(bytes: Uint8Array<ArrayBuffer>, header: SoundHeader, isSound: boolean): Promise<DecodedFile | FileFailure> {
    const { sampleRateHz, durationS: toldS } = header;
    if (sampleRateHz !== undefined && !isReadable(sampleRateHz)) return failure({ why: 'rate-out-of-range', sampleRateHz });
    if (toldS !== undefined && toldS > MAX_DURATION_S) return failure({ why: 'too-long', durationS: toldS, limitS: MAX_DURATION_S });
    let sound: DecodedSound;
    try {
      sound = await decode(bytes.buffer, sampleRateHz ?? FALLBACK_RATE_HZ);
    } catch {
      if (header.container === 'unknown' && !isSound) return failure({ why: 'not-sound' });
      return failure({ why: 'cannot-decode', format: knownFormat(header) });
    }
    const channels = Array.from({ length: sound.numberOfChannels }, (_, index) => sound.getChannelData(index));
    const used = strongestChannel(channels);
    const notes: FileNote[] = [];
    if (channels.length > 1) notes.push({ id: 'channel-used', channelUsed: used + 1, channelCount: channels.length });
    if (sampleRateHz === undefined) notes.push({ id: 'rate-not-told', usedHz: sound.sampleRate });
    const samples = channels[used] ?? new Float32Array(0);
    return within({ recording: { samples, sampleRateHz: sound.sampleRate }, notes: notes.map(fileNoteText) });
  }
}

function within({ recording, notes }: { readonly recording: Recording; readonly notes: readonly string[] }): DecodedFile | FileFailure {
  if (recording.samples.length === 0) return failure({ why: 'no-samples' });
  const lengthS = durationS(recording);
  if (lengthS > MAX_DURATION_S) return failure({ why: 'too-long', durationS: lengthS, limitS: MAX_DURATION_S });
  return { kind: 'decoded-file', recording, notes };
}

const isReadable = (rateHz: number): boolean => rateHz >= LOWEST_RATE_HZ && rateHz <= HIGHEST_RATE_HZ;

const isNamedAsSound = ({ type }: File): boolean => /^(audio|video)\//.test(type);

function knownFormat({ container, codec }: SoundHeader): KnownFormat | undefined {
  if (codec === 'alac') return 'ALAC';
  if (codec === 'Speex') return 'Speex';
  if (container === 'aiff') return 'AIFF';
  if (container === 'caf') return 'CAF';
  return container === 'asf' ? 'WMA' : undefined;
}

const WHY: Readonly<Record<FileProblem['why'], FileFailure['why']>> = {
  empty: 'empty',
  unreadable: 'damaged',
  'too-large': 'too-long',
  'too-long': 'too-long',
  'rate-out-of-range': 'rate-out-of-range',
  'not-sound': 'not-sound',
  'no-samples': 'empty',
  'cannot-decode': 'cannot-decode',
};

const failure = (problem: FileProblem): FileFailure => ({
  kind: 'file-failure',
  why: WHY[problem.why],
  text: fileProblemText(problem),
});

/** What a fault of a WAV file is called among the failures of files. */
function whyOf(fault: string): FileFailure['why'] {
  switch (fault) {
    case 'empty-file':
    case 'no-data':
    case 'no-samples':
      return 'empty';
    case 'compressed':
    case 'sample-size':
      return 'cannot-decode';
    case 'rate-out-of-range':
      return 'rate-out-of-range';
    default:
      return 'damaged';
  }
}

/** The context's rate is the rate of the answer: at the file's own nothing is resampled. */
const decodeInBrowser = (bytes: ArrayBuffer, sampleRateHz: number): Promise<AudioBuffer> =>
  new OfflineAudioContext({ numberOfChannels: 1, length: 1, sampleRate: sampleRateHz }).decodeAudioData(bytes);
