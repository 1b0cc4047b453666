/** The proving ground: plucked belts of every kind of difficulty, and what is no belt, each take a function of the seed, its kind and its number. */

import type { Recording } from '../../../src/core/samples/recording.ts';
import type { SpanSetup } from '../../../src/core/setup.ts';
import { drawBelt, toldSetup } from './belt.ts';
import { happens, takeRandom } from './chance.ts';
import { KINDS, type KindGroup } from './kinds.ts';
import { NON_BELTS } from './non-belts.ts';
import { type CorpusTruth, makeTake } from './take.ts';

export interface CorpusTake {
  readonly id: string;
  readonly kind: string;
  readonly group: KindGroup;
  readonly recording: Recording;
  readonly truth: CorpusTruth;
  /** What the owner tells: span by ruler, density by scale, stiffness of every second belt, nothing of the ends. */
  readonly setup: SpanSetup;
}

export interface NonBelt {
  readonly id: string;
  readonly kind: string;
  readonly recording: Recording;
  /** Of some belt that was not plucked. */
  readonly setup: SpanSetup;
}

export interface CorpusOptions {
  readonly takesPerKind: number;
  /** Names of the kinds wanted; all where it is missing. */
  readonly kinds?: readonly string[] | undefined;
}

export function* corpus(seed: number, { takesPerKind, kinds }: CorpusOptions): Generator<CorpusTake> {
  for (const kind of KINDS) {
    if (kinds && !kinds.includes(kind.name)) continue;
    for (let index = 0; index < takesPerKind; index++) yield corpusTake(seed, kind.name, index);
  }
}

/** One take by its kind and number, as `corpus` yields it. */
export function corpusTake(seed: number, kindName: string, index: number): CorpusTake {
  const kind = KINDS.find(({ name }) => name === kindName);
  if (!kind) throw new RangeError(`corpusTake knows no kind ${kindName}`);
  const random = takeRandom(seed, kind.name, index);
  const plan = kind.draw(random);
  const setup = toldSetup(random, plan.belt);
  const { recording, truth } = makeTake(plan, random);
  const isAltered = plan.alterations.some((alteration) => alteration.kind === 'gain control' || alteration.kind === 'noise suppression');
  const tells = isAltered && happens(random, 0.5);
  return {
    id: `${kind.name}/${index}`,
    kind: kind.name,
    group: kind.group,
    recording: tells ? { ...recording, processing: 'altered' } : recording,
    truth,
    setup,
  };
}

export function* nonBelts(seed: number, { takesPerKind, kinds }: CorpusOptions): Generator<NonBelt> {
  for (const { name, make } of NON_BELTS) {
    if (kinds && !kinds.includes(name)) continue;
    for (let index = 0; index < takesPerKind; index++) {
      const random = takeRandom(seed, name, index);
      const setup = toldSetup(random, drawBelt(random));
      yield { id: `${name}/${index}`, kind: name, recording: make(random), setup };
    }
  }
}
