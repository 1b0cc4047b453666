/** Sounds that are no plucked belt, and files that are no sound. */

import { writeWav } from '../../src/core/samples/wav.ts';
import { type Background, backgroundSound } from '../../src/core/synthesis/background.ts';
import { addAt, amplitudeOf } from '../../src/core/synthesis/level.ts';
import { atRails } from '../../src/core/synthesis/microphone.ts';
import { bell, heldNotes, type SoundExtent, speechLike, taps } from '../../src/core/synthesis/non-belts.ts';
import { type Fixture, SOURCE } from './fixture-truth.ts';
import { ascii, formatContent, wavBytes } from './wav-bytes.ts';

interface NoBelt {
  readonly name: string;
  readonly description: string;
  readonly background: Background;
  readonly sound?: (extent: SoundExtent) => Float64Array;
  readonly durationS?: number;
}

const SAMPLE_RATE_HZ = 32_000;
const DURATION_S = 2;
const PEAK_DBFS = -10;
const QUIET: Background = { pinkDbfs: -58, whiteDbfs: -66 };

const NO_BELTS: readonly NoBelt[] = [
  { name: 'silence', description: 'A microphone that gives nothing but zeros.', background: {}, durationS: 1.5 },
  { name: 'white-noise', description: 'White noise.', background: { whiteDbfs: -26 } },
  { name: 'pink-noise', description: 'Pink noise.', background: { pinkDbfs: -26 } },
  {
    name: 'hum',
    description: 'Mains hum of 50.01 Hz with many harmonics.',
    background: { ...QUIET, hum: { mainsHz: 50.01, levelDbfs: -20, harmonicsDb: [-3, -2, -8, -5, -12, -9, -15] } },
  },
  {
    name: 'fan',
    description: 'A fan whose speed wanders, and its air.',
    background: { whiteDbfs: -66, fan: { bladePassHz: 187, toneDbfs: -22, airDbfs: -30, wander: 0.003 } },
  },
  {
    name: 'held-tone',
    description: 'One note with six harmonics that swells up and is held.',
    background: QUIET,
    sound: (extent) => heldNotes(extent, { notesHz: [131], startS: 0.5, attackS: 0.08, endS: 1.9 }),
  },
  {
    name: 'chord',
    description: 'Three notes that swell up together and are held.',
    background: QUIET,
    sound: (extent) => heldNotes(extent, { notesHz: [110, 138.6, 164.8], startS: 0.5, attackS: 0.1, endS: 1.9 }),
  },
  {
    name: 'speech-like',
    description: 'Syllables without meaning: a voice whose pitch and formants move, with hiss between.',
    background: QUIET,
    sound: (extent) => speechLike(extent, { startS: 0.5 }),
  },
  {
    name: 'taps',
    description: 'Four knocks on a frame, each dead within 15 ms.',
    background: QUIET,
    sound: (extent) => taps(extent, { startsS: [0.5, 0.85, 1.2, 1.6] }),
  },
  {
    name: 'bell',
    description: 'A small bell, struck twice; its partials belong to no span.',
    background: QUIET,
    sound: (extent) => bell(extent, { lowestHz: 1180, startsS: [0.5, 1.3] }),
  },
];

const seedOf = (index: number): number => 2001 + index;

export const noBeltFixtures = (): readonly Fixture[] =>
  NO_BELTS.map(({ name, description, background, sound, durationS = DURATION_S }, index) => {
    const extent = { seed: seedOf(index), sampleRateHz: SAMPLE_RATE_HZ, sampleCount: durationS * SAMPLE_RATE_HZ };
    const all = backgroundSound(background, extent);
    if (sound) {
      addAt(
        all,
        sound(extent).map((value) => value * amplitudeOf(PEAK_DBFS)),
      );
    }
    return {
      name,
      bytes: writeWav({ recording: { samples: atRails(all), sampleRateHz: SAMPLE_RATE_HZ }, format: 'pcm16' }),
      truth: { description, reading: null, sampleRateHz: SAMPLE_RATE_HZ, seed: extent.seed, ...SOURCE },
    };
  });

/** Bytes of no meaning, the same each time. */
const filler = (byteCount: number): Uint8Array => Uint8Array.from({ length: byteCount }, (_, index) => (index * 73 + 41) % 251);

export const brokenFixtures = (): readonly Fixture[] => [
  {
    name: 'broken-header',
    bytes: wavBytes({ format: formatContent({}), data: filler(64) }).slice(0, 31),
    truth: { description: 'Ends inside its header.', fault: 'header-ends', ...SOURCE },
  },
  {
    name: 'broken-not-wav',
    bytes: ascii('This is a line of text under the name of a recording.\n'),
    truth: { description: 'A line of text under the name of a recording.', fault: 'not-wav', ...SOURCE },
  },
  {
    name: 'broken-compressed',
    bytes: wavBytes({ format: formatContent({ tag: 85, bits: 0, frameBytes: 1 }), data: filler(834) }),
    truth: { description: 'Says that it holds compressed sound of format 85.', fault: 'compressed', ...SOURCE },
  },
];
