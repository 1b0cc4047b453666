/** A session of plucks under known weights: what was typed of the belt and of each take, what was heard, and what both come to. */

import { belts } from '../../../shared/belts.ts';
import type { TakeTruth } from '../../../shared/take-truth.ts';
import { answerOf } from '../../core/answer.ts';
import { localGravity } from '../../core/gauge/gravity.ts';
import type { Measured } from '../../core/math/measured.ts';
import type { PluckSound } from '../../core/outcome.ts';
import { type ParsedQuantity, parseQuantity, type QuantityFault } from '../../core/quantity.ts';
import type { Recording, SoundProcessing } from '../../core/samples/recording.ts';
import { writeWav } from '../../core/samples/wav.ts';
import { knownForceTake, setupOfTold } from '../../core/validation/told-take.ts';
import type { EnteredSetup, SessionTake, SessionTexts } from '../../ports.ts';
import { PROGRAM_VERSION } from '../../words/program.ts';
import { EMPTY_SETUP, OWN_BELT } from './span-setup.ts';

export const EMPTY_TEXTS: SessionTexts = {
  density: '',
  densityFrom: 'weighed',
  ends: ['unknown', 'unknown'],
  span: '',
  spanKnownTo: '1',
  weight: '',
};

export type SessionField = 'density' | 'span' | 'spanKnownTo' | 'weight';

export interface UnderstoodSession {
  readonly faults: Partial<Record<SessionField, QuantityFault>>;
  /** All that a take needs; missing while a field is empty or cannot be read. */
  readonly told?: ToldNumbers | undefined;
}

export interface ToldNumbers {
  readonly forceN: Measured;
  readonly spanLengthM: Measured;
  readonly linearDensityKgPerM: Measured;
}

/** Every ± on the page is the half of a 95 % interval. */
const COVERAGE_FACTOR = 2;
const DENSITY_RELATIVE_U = 0.02;
/** A scale's word that nobody checked, relative (our judgement). */
const SCALE_RELATIVE_U = 0.003;

type Readable = Extract<ParsedQuantity, { ok: true }>;
const half = ({ standardUncertainty }: Readable): number | undefined =>
  standardUncertainty === undefined ? undefined : standardUncertainty / COVERAGE_FACTOR;

export function understoodSession(texts: SessionTexts): UnderstoodSession {
  const faults: Partial<Record<SessionField, QuantityFault>> = {};
  const read = (field: SessionField, parsed: ParsedQuantity): Readable | undefined => {
    if (parsed.ok) return parsed;
    if (parsed.why !== 'empty') faults[field] = parsed;
    return undefined;
  };
  const density = read('density', parseQuantity(texts.density, { kind: 'linear-density', defaultUnit: 'g/m' }));
  const span = read('span', parseQuantity(texts.span, { kind: 'length', defaultUnit: 'mm' }));
  const knownTo = read('spanKnownTo', parseQuantity(texts.spanKnownTo, { kind: 'length', defaultUnit: 'mm', zeroAllowed: true }));
  const forceN = weightForce(texts.weight, (parsed) => read('weight', parsed));
  if (!density || !span || !knownTo || !forceN) return { faults };
  return {
    faults,
    told: {
      forceN,
      spanLengthM: { value: span.value, standardUncertainty: half(span) ?? knownTo.value / COVERAGE_FACTOR },
      linearDensityKgPerM: { value: density.value, standardUncertainty: half(density) ?? DENSITY_RELATIVE_U * density.value },
    },
  };
}

/** What hangs, as a mass, or the force itself where a unit of force is written. */
function weightForce(text: string, read: (parsed: ParsedQuantity) => Readable | undefined): Measured | undefined {
  const mass = parseQuantity(text, { kind: 'mass', defaultUnit: 'g' });
  if (!mass.ok && mass.why === 'unknown-unit') {
    const force = parseQuantity(text, { kind: 'force', defaultUnit: 'N' });
    if (force.ok) return { value: force.value, standardUncertainty: half(force) ?? SCALE_RELATIVE_U * force.value };
  }
  const parsed = read(mass);
  if (!parsed) return undefined;
  const gravity = localGravity(undefined);
  const massU = half(parsed) ?? SCALE_RELATIVE_U * parsed.value;
  return {
    value: parsed.value * gravity.value,
    standardUncertainty: Math.hypot(massU * gravity.value, parsed.value * gravity.standardUncertainty),
  };
}

/** What Listen's own chain is to search with; the force stays out of it. */
export const enteredForSession = (texts: SessionTexts): EnteredSetup => ({
  ...EMPTY_SETUP,
  beltId: OWN_BELT,
  linearDensity: texts.density,
  spanLength: texts.span,
  spanKnownTo: texts.spanKnownTo,
  ends: texts.ends,
});

/** A take as it goes into the comparison and into the folder; reckoned with exactly what the folder will tell. */
export function sessionTake(given: {
  readonly name: string;
  readonly texts: SessionTexts;
  readonly told: ToldNumbers;
  readonly sounds: readonly PluckSound[];
  readonly processing?: SoundProcessing | undefined;
  readonly recording: Recording;
  readonly description: string;
}): SessionTake {
  const { name, texts, told, sounds, processing, recording, description } = given;
  const truth: TakeTruth = {
    description,
    forceN: told.forceN.value,
    forceUN: told.forceN.standardUncertainty,
    spanLengthM: told.spanLengthM.value,
    spanLengthUM: told.spanLengthM.standardUncertainty,
    linearDensityKgPerM: told.linearDensityKgPerM.value,
    linearDensityUKgPerM: told.linearDensityKgPerM.standardUncertainty,
    densityFrom: texts.densityFrom,
    ends: [...texts.ends],
    sampleRateHz: recording.sampleRateHz,
    source: `a belt under a hanging weight, recorded with Spanwright ${PROGRAM_VERSION}`,
    licence: 'not told',
  };
  const setup = setupOfTold(truth, belts);
  const { reading } = answerOf({ sounds, setup, processing, sampleRateHz: recording.sampleRateHz });
  return { name, truth, recording, known: knownForceTake(name, truth, { outcome: reading ?? { kind: 'nothing', why: 'not-a-span' } }) };
}

/** Recordings with their truth beside them, as `fixtures/` and the command line have them. */
export function folderFiles(takes: readonly SessionTake[]): readonly { readonly name: string; readonly bytes: Uint8Array }[] {
  const encoder = new TextEncoder();
  return takes.flatMap(({ name, truth, recording }) => [
    { name: `${name}.wav`, bytes: writeWav({ recording, format: 'pcm24' }) },
    { name: `${name}.json`, bytes: encoder.encode(`${JSON.stringify(truth, undefined, 2)}\n`) },
  ]);
}

/** What the session still lacks to tell its causes apart. */
export type SessionStep = 'first' | 'more-here' | 'another-weight' | 'another-span' | 'enough';

const ALIKE = 0.15;
const FEWEST_TAKES = 6;

export function nextStep(takes: readonly SessionTake[]): SessionStep {
  if (takes.length === 0) return 'first';
  const varies = (values: readonly number[]) => Math.max(...values) / Math.min(...values) > 1 + ALIKE;
  if (!varies(takes.map(({ truth }) => truth.forceN))) return 'another-weight';
  if (!varies(takes.map(({ truth }) => truth.spanLengthM))) return takes.length < 3 ? 'another-weight' : 'another-span';
  return takes.length < FEWEST_TAKES ? 'more-here' : 'enough';
}
