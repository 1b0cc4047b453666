/**
 * The plucked belts among the fixtures: one difficulty each. All are of one kind of belt, 2 mm pitch and 6 mm wide, on 150 mm unless
 * the name says otherwise.
 */

import { writeWav } from '../../src/core/samples/wav.ts';
import { spanPartialHz } from '../../src/core/synthesis/span.ts';
import { synthesiseTake, type TakeDescription } from '../../src/core/synthesis/take.ts';
import { type Fixture, SOURCE } from './fixture-truth.ts';
import { formatContent, int16Data, int24Data, wavBytes } from './wav-bytes.ts';

type TakeChanges = Omit<Partial<TakeDescription>, 'span'> & { readonly span?: Partial<TakeDescription['span']> };

interface BeltFixture {
  readonly name: string;
  readonly description: string;
  readonly take: TakeChanges;
  /** 16-bit samples, one channel, unless told otherwise. */
  readonly bytes?: (samples: Float32Array, sampleRateHz: number) => Uint8Array;
}

/** A lightly plucked belt in a quiet room before a good microphone. */
const QUIET: TakeDescription = {
  sampleRateHz: 48_000,
  durationS: 1.5,
  span: {
    forceN: 11.4,
    spanLengthM: 0.15,
    linearDensityKgPerM: 0.00782,
    bendingStiffnessNm2: 1.2e-4,
    fixity: [0.4, 0.55],
    axialStiffnessN: 6000,
    decayS: 0.19,
    dampingGrowth: 0.05,
  },
  plucks: [{ startS: 0.55, placeShare: 0.36, heightM: 0.0003, fingerWidthM: 0.01 }],
  listener: { placeShare: 0.31, distanceM: 0.02 },
  peakDbfs: -8,
  scrapeDb: -16,
  background: { pinkDbfs: -58, whiteDbfs: -66 },
};

const threePlucks = (startsS: readonly [number, number, number]): TakeDescription['plucks'] => [
  { startS: startsS[0], placeShare: 0.35, heightM: 0.0003, fingerWidthM: 0.01 },
  { startS: startsS[1], placeShare: 0.39, heightM: 0.00024, fingerWidthM: 0.012 },
  { startS: startsS[2], placeShare: 0.33, heightM: 0.00033, fingerWidthM: 0.009 },
];

const HARMONICS_DB = [-4, -2, -10, -7, -16, -12];

const FIXTURES: readonly BeltFixture[] = [
  {
    name: 'plain-150mm',
    description: 'Three light plucks on 150 mm in a quiet room, 0.8 s apart.',
    take: { durationS: 3.4, plucks: threePlucks([0.9, 1.7, 2.5]) },
  },
  {
    name: 'single-pluck-180mm',
    description: 'One light pluck on 180 mm in a quiet room.',
    take: { span: { spanLengthM: 0.18, forceN: 8.2, linearDensityKgPerM: 0.00775, fixity: [0.3, 0.3] } },
  },
  {
    name: 'long-300mm',
    description: 'Two plucks on 300 mm, where the ends matter little.',
    take: {
      durationS: 2.2,
      span: { spanLengthM: 0.3, forceN: 13, linearDensityKgPerM: 0.0079, decayS: 0.26 },
      plucks: threePlucks([0.5, 1.35, 9]).slice(0, 2),
    },
  },
  {
    name: 'short-stiff-60mm',
    description: 'One pluck on 60 mm: the stiffness raises the first partial by a fifth, and it dies soon.',
    take: {
      span: { spanLengthM: 0.06, forceN: 9, bendingStiffnessNm2: 2.2e-4, fixity: [0.5, 0.7], decayS: 0.075 },
      plucks: [{ startS: 0.55, placeShare: 0.4, heightM: 0.00012, fingerWidthM: 0.006 }],
      listener: { placeShare: 0.35, distanceM: 0.012 },
    },
  },
  {
    name: 'weak-first-partial',
    description: 'A small microphone with a second-order corner at 480 Hz leaves the first partial far below the others.',
    take: {
      span: { forceN: 8.5, linearDensityKgPerM: 0.00775 },
      plucks: [{ startS: 0.55, placeShare: 0.2, heightM: 0.0003, fingerWidthM: 0.006 }],
      listener: { placeShare: 0.25, distanceM: 0.008 },
      corner: { cornerHz: 480, order: 2 },
    },
  },
  {
    name: 'missing-first-partial',
    description: 'A wind filter at 430 Hz, fourth order, buries the first partial in the noise.',
    take: {
      span: { forceN: 9.5, decayS: 0.22, dampingGrowth: 0.02 },
      plucks: [{ startS: 0.55, placeShare: 0.21, heightM: 0.0003, fingerWidthM: 0.004 }],
      listener: { placeShare: 0.27, distanceM: 0.008 },
      corner: { cornerHz: 430, order: 4 },
      background: { pinkDbfs: -50, whiteDbfs: -52 },
    },
  },
  {
    name: 'hum-50',
    description: 'Mains hum of 49.98 Hz with harmonics, as loud as the belt.',
    take: { background: { pinkDbfs: -56, hum: { mainsHz: 49.98, levelDbfs: -18, harmonicsDb: HARMONICS_DB } } },
  },
  {
    name: 'hum-60',
    description: 'Mains hum of 60.02 Hz whose second harmonic lies 3 Hz from the first partial.',
    take: { span: { forceN: 9.6 }, background: { pinkDbfs: -56, hum: { mainsHz: 60.02, levelDbfs: -20, harmonicsDb: HARMONICS_DB } } },
  },
  {
    name: 'fan-and-stepper',
    description: 'A fan whose speed wanders and the steady tones of a motor that holds still.',
    take: {
      plucks: [{ startS: 0.7, placeShare: 0.36, heightM: 0.0003, fingerWidthM: 0.01 }],
      durationS: 1.7,
      background: {
        pinkDbfs: -54,
        fan: { bladePassHz: 198, toneDbfs: -26, airDbfs: -38, wander: 0.002 },
        tones: [
          { frequencyHz: 164.4, levelDbfs: -30 },
          { frequencyHz: 493.2, levelDbfs: -34 },
          { frequencyHz: 1315.2, levelDbfs: -32 },
        ],
      },
    },
  },
  {
    name: 'noise-10db',
    description: 'Pink and white noise with a tenth of the power that the first tenth of a second of the ring has.',
    take: { background: { pinkDbfs: -24.9, whiteDbfs: -24.9 } },
  },
  {
    name: 'hard-pluck-glide',
    description: 'Plucked so hard that the frequency starts some 4 % high and falls as the belt dies away.',
    take: {
      span: { forceN: 10.2, axialStiffnessN: 9000 },
      plucks: [{ startS: 0.55, placeShare: 0.4, heightM: 0.00125, fingerWidthM: 0.012 }],
    },
  },
  {
    name: 'room',
    description: 'A hard small room and a microphone half a metre away: early reflections, and a tail of half a second.',
    take: { durationS: 1.8, room: { earlyDb: -9, reverberationS: 0.5, tailDb: -8 } },
  },
  { name: 'rate-8k', description: 'The plain belt at 8 kHz.', take: { sampleRateHz: 8_000, span: { forceN: 10.9 } } },
  { name: 'rate-16k', description: 'The plain belt at 16 kHz.', take: { sampleRateHz: 16_000, span: { forceN: 12.3 } } },
  { name: 'rate-44k1', description: 'The plain belt at 44.1 kHz.', take: { sampleRateHz: 44_100, span: { forceN: 9.9 } } },
  {
    name: 'rate-96k',
    description: 'The plain belt at 96 kHz as 32-bit floats.',
    take: { sampleRateHz: 96_000, durationS: 1.2, span: { forceN: 13.4 }, plucks: [{ ...QUIET.plucks[0]!, startS: 0.4 }] },
    bytes: (samples, sampleRateHz) => writeWav({ recording: { samples, sampleRateHz }, format: 'float32' }),
  },
  {
    name: 'stereo-24-bit',
    description: 'Two channels of 24 bits in an extensible format; the belt is on the second, the first has it 20 dB weaker.',
    take: { durationS: 1.3, span: { forceN: 10.6 } },
    bytes: (samples, sampleRateHz) =>
      wavBytes({
        format: formatContent({ channelCount: 2, sampleRateHz, bits: 24, subTag: 1 }),
        data: int24Data([samples.map((value) => 0.1 * value), samples]),
      }),
  },
  {
    name: 'streaming-size-0',
    description: 'A recorder that streamed and never went back: the data size in the header is 0.',
    take: { durationS: 1.3, span: { forceN: 11.9 } },
    bytes: (samples, sampleRateHz) =>
      wavBytes({ riffSize: 0, format: formatContent({ sampleRateHz }), data: int16Data(samples), dataSize: 0 }),
  },
  {
    name: 'clipped',
    description: 'So loud that the first tenth of a second is cut off at the rails.',
    take: { span: { forceN: 12.6 }, peakDbfs: 8 },
  },
  {
    name: 'slack',
    description: 'A slack belt on 150 mm: some eight swings, and the stiffness has a share in the frequency.',
    take: {
      durationS: 1.4,
      span: { forceN: 1.7, bendingStiffnessNm2: 1e-4, decayS: 0.16, dampingGrowth: 0.1 },
      plucks: [{ startS: 0.55, placeShare: 0.36, heightM: 0.0001, fingerWidthM: 0.008 }],
    },
  },
];

const seedOf = (index: number): number => 1001 + index;

/** All of them, made anew. Figures that were computed are given to nine digits. */
export const beltFixtures = (): readonly Fixture[] =>
  FIXTURES.map(({ name, description, take, bytes }, index) => {
    const full = { ...QUIET, ...take, span: { ...QUIET.span, ...take.span } };
    const recording = synthesiseTake(full, seedOf(index));
    const { forceN, spanLengthM, linearDensityKgPerM, bendingStiffnessNm2, fixity } = full.span;
    return {
      name,
      bytes: bytes ? bytes(recording.samples, recording.sampleRateHz) : writeWav({ recording, format: 'pcm16' }),
      truth: {
        description,
        frequencyHz: Number(spanPartialHz(full.span, 1).toPrecision(9)),
        forceN,
        spanLengthM,
        linearDensityKgPerM,
        bendingStiffnessNm2,
        fixity,
        pluckStartsS: full.plucks.map(({ startS }) => startS),
        sampleRateHz: full.sampleRateHz,
        seed: seedOf(index),
        ...SOURCE,
      },
    };
  });
