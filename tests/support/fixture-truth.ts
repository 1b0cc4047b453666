/** What stands in the truth file beside each recording in `fixtures/`. */

interface AnyTruth {
  readonly description: string;
  readonly source: 'synthesised by core/synthesis';
  readonly licence: 'MIT';
}

/** A plucked belt: everything that its sound was made with. */
export interface BeltTruth extends AnyTruth {
  /** First partial at small amplitude, undamped. */
  readonly frequencyHz: number;
  readonly forceN: number;
  readonly spanLengthM: number;
  readonly linearDensityKgPerM: number;
  readonly bendingStiffnessNm2: number;
  readonly fixity: readonly [number, number];
  readonly pluckStartsS: readonly number[];
  readonly sampleRateHz: number;
  readonly seed: number;
}

/** A sound that is no plucked belt and must give no reading. */
export interface NoBeltTruth extends AnyTruth {
  readonly reading: null;
  readonly sampleRateHz: number;
  readonly seed: number;
}

/** A file that cannot be read, with the reader's word for why. */
export interface BrokenTruth extends AnyTruth {
  readonly fault: string;
}

export type FixtureTruth = BeltTruth | NoBeltTruth | BrokenTruth;

export interface Fixture {
  /** File name without its ending. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly truth: FixtureTruth;
}

export const SOURCE = { source: 'synthesised by core/synthesis', licence: 'MIT' } as const;

/** As it is written: readable, and ending in a line feed. */
export const truthText = (truth: object): string => `${JSON.stringify(truth, undefined, 2)}\n`;
