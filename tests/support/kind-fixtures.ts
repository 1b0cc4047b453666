/**
 * One recording of each difficulty of the corpus that the other fixtures lack, and of each sound that is no belt: cut short, 16 bit.
 * The numbers are those of takes in which the difficulty is there and can be overcome; the benchmark tells how often it is.
 */

import type { Recording } from '../../src/core/samples/recording.ts';
import { writeWav } from '../../src/core/samples/wav.ts';
import type { SpanSetup } from '../../src/core/setup.ts';
import { corpusTake, nonBelts } from './corpus/corpus.ts';

const SEED = 7;
/** Kept before the first pluck and after the last. */
const LEAD_S = 0.45;
const TAIL_S = 0.75;
/** Kept of a sound that is no belt. */
const NO_BELT_S = 1.6;

export interface KindTruth {
  readonly kind: string;
  readonly seed: number;
  readonly index: number;
  /** Of a belt: first partial at small amplitude, undamped; null where no belt was plucked. */
  readonly frequencyHz: number | null;
  readonly forceN?: number | undefined;
  readonly pluckStartsS?: readonly number[] | undefined;
  readonly sampleRateHz: number;
  /** What the owner tells. */
  readonly setup: SpanSetup;
  readonly source: 'simulated by tests/support/corpus';
  readonly licence: 'MIT';
}

export interface KindFixture {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly truth: KindTruth;
}

export const KIND_SOURCE = { source: 'simulated by tests/support/corpus', licence: 'MIT' } as const;

const BELT_KINDS: Readonly<Record<string, number>> = {
  'white noise 5 dB': 0,
  'pink noise 5 dB': 0,
  stepper: 0,
  'gliding stepper': 0,
  'first partial weak': 0,
  'first partial faint': 0,
  'strongly damped': 1,
  'neighbour span': 0,
  torsion: 0,
  'finger noise': 0,
  'touches the frame': 0,
  'gain control': 0,
  'noise suppression': 0,
  'double pluck': 0,
  '8 bit': 0,
  'narrow line': 0,
  'short lead': 0,
  'three difficulties': 0,
  'coupled torsion': 0,
  'uneven belt': 0,
  'rocking pulley': 0,
  'frame rings': 0,
  'inside the ring': 0,
};

const NO_BELT_KINDS = [
  'stepper alone',
  'glass',
  'door',
  'handling noise',
  'motor starting',
  'melody',
  'claps',
  'dropped screw',
  'breath',
] as const;

const part = ({ samples, sampleRateHz }: Recording, fromS: number, toS: number): Recording => ({
  samples: samples.slice(Math.max(0, Math.round(fromS * sampleRateHz)), Math.round(toS * sampleRateHz)),
  sampleRateHz,
});

const nameOf = (kind: string): string => `kind-${kind.toLowerCase().replaceAll(' ', '-')}`;

const bytesOf = (recording: Recording): Uint8Array => writeWav({ recording, format: 'pcm16' });

export function beltKindFixture(kind: string, index: number): KindFixture {
  const { recording, truth, setup } = corpusTake(SEED, kind, index);
  const starts = truth.pluckStartsS;
  const fromS = Math.max(0, starts[0]! - LEAD_S);
  return {
    name: nameOf(kind),
    bytes: bytesOf(part(recording, fromS, starts.at(-1)! + TAIL_S)),
    truth: {
      kind,
      seed: SEED,
      index,
      frequencyHz: truth.frequencyHz,
      forceN: truth.forceN,
      pluckStartsS: starts.map((startS) => startS - fromS),
      sampleRateHz: recording.sampleRateHz,
      setup,
      ...KIND_SOURCE,
    },
  };
}

function noBeltKindFixture(kind: string): KindFixture {
  const [made] = nonBelts(SEED, { takesPerKind: 1, kinds: [kind] });
  const { recording, setup } = made!;
  return {
    name: nameOf(kind),
    bytes: bytesOf(part(recording, 0, NO_BELT_S)),
    truth: { kind, seed: SEED, index: 0, frequencyHz: null, sampleRateHz: recording.sampleRateHz, setup, ...KIND_SOURCE },
  };
}

export const kindFixtures = (): readonly KindFixture[] => [
  ...Object.entries(BELT_KINDS).map(([kind, index]) => beltKindFixture(kind, index)),
  ...NO_BELT_KINDS.map(noBeltKindFixture),
];
