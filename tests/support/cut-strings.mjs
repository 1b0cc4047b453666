/**
 * `node tests/support/cut-strings.mjs FONT.sf2 [FOLDER]`: cuts the plucked strings of `fixtures/` out of the General MIDI sound font of
 * Debian's package fluid-soundfont-gm 3.1, the same bytes each time. Their licence stands in `fixtures/strings-licence.txt`.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { soundFontSamples } from './sound-font.mjs';
import { GAIN, LEAD_IN_S, NOISE, stringClip, wavBytes } from './string-clip.mjs';

/** General MIDI counts its programs from 1, the file from 0. */
const PROGRAMS = [
  { program: 24, material: 'nylon' },
  { program: 25, material: 'steel' },
];
/** Above it lies one sample that both guitars share, at 1054 Hz: higher than any belt of ours rings. */
const HIGHEST_HZ = 700;
const FIRST_SEED = 7001;

function truthOf({ name, rootKey, tuningCents, frequencyHz, sampleRateHz }, material, seed) {
  return {
    description: `A plucked guitar string of ${material}. The sample begins at its attack; ${LEAD_IN_S} s of synthetic noise stand before it, and go on beneath it.`,
    frequencyHz: Number(frequencyHz.toFixed(4)),
    frequencyFrom: 'tuning of the sample in the font: 440 Hz * 2^((rootKey - 69) / 12 - tuningCents / 1200)',
    rootKey,
    tuningCents,
    startS: LEAD_IN_S,
    gain: GAIN,
    noiseRms: NOISE,
    sampleRateHz,
    seed,
    source: `Debian package fluid-soundfont-gm 3.1, sample '${name}'`,
    licence: 'MIT, see strings-licence.txt',
  };
}

function cutStrings(fontPath, folder) {
  const font = readFileSync(fontPath);
  const strings = PROGRAMS.flatMap(({ program, material }) =>
    soundFontSamples(font, { bank: 0, program }).map((sample) => ({ sample, material })),
  ).filter(({ sample }) => sample.frequencyHz < HIGHEST_HZ);
  strings.forEach(({ sample, material }, index) => {
    const number = String(index + 1).padStart(2, '0');
    const path = join(folder, `string-${number}-${material}-${Math.round(sample.frequencyHz)}-hz`);
    const seed = FIRST_SEED + index;
    writeFileSync(`${path}.wav`, wavBytes(stringClip(sample, seed), sample.sampleRateHz));
    writeFileSync(`${path}.json`, `${JSON.stringify(truthOf(sample, material, seed), undefined, 2)}\n`);
  });
  process.stdout.write(`${strings.length} strings in ${folder}\n`);
}

const [fontPath, folder = 'fixtures'] = process.argv.slice(2);
if (fontPath === undefined) {
  process.stderr.write('Usage: node tests/support/cut-strings.mjs FONT.sf2 [FOLDER]\n');
  process.exit(2);
}
cutStrings(fontPath, folder);
