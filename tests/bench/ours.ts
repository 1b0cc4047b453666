/** What this estimator says of every take of the corpus; made once and read by all sections. */

import { createListening, type ListeningEvent } from '../../src/core/listening.ts';
import { measure } from '../../src/core/measure.ts';
import type { Grade, Measurement, NothingWhy } from '../../src/core/outcome.ts';
import { durationS, type Recording } from '../../src/core/samples/recording.ts';
import type { SpanSetup } from '../../src/core/setup.ts';
import type { CorpusTake, NonBelt } from '../support/corpus/corpus.ts';
import type { CorpusTruth } from '../support/corpus/take.ts';
import type { Answered } from './judge.ts';

export interface BeltResult extends Answered {
  readonly id: string;
  readonly kind: string;
  readonly group: CorpusTake['group'];
  readonly truth: CorpusTruth;
  readonly stiffnessTold: boolean;
  readonly grade: Grade | undefined;
  readonly soundGrade: Grade | undefined;
  readonly why: NothingWhy | undefined;
  readonly reasons: readonly string[];
  /** 95 % half-width of the frequency, Hz. */
  readonly u95: number | undefined;
  readonly force: { readonly value: number; readonly low: number; readonly high: number } | undefined;
  readonly pluckCount: number;
  readonly ms: number;
  readonly durationS: number;
  readonly sampleRateHz: number;
}

export function beltResult(take: CorpusTake, setup: SpanSetup = take.setup): BeltResult {
  const { measurement, ms } = timed(take.recording, setup);
  const { outcome, plucks } = measurement;
  const reading = outcome.kind === 'reading' ? outcome : undefined;
  const stiffness = take.setup.belt?.bendingStiffnessNm2;
  return {
    id: take.id,
    kind: take.kind,
    group: take.group,
    truth: take.truth,
    truthHz: take.truth.frequencyHz,
    partialsHz: take.truth.beamPartialsHz,
    stiffnessTold: stiffness?.kind === 'known',
    hertz: reading?.frequencyHz.value,
    u95: reading?.frequencyHz.u95,
    force: reading?.forceN && {
      value: reading.forceN.value,
      low: reading.forceN.low ?? 0,
      high: reading.forceN.high ?? Number.POSITIVE_INFINITY,
    },
    grade: reading?.grade,
    soundGrade: reading?.soundGrade,
    why: outcome.kind === 'nothing' ? outcome.why : undefined,
    reasons: reading?.reasons.map(({ id }) => id) ?? [],
    pluckCount: plucks.length,
    ms,
    durationS: durationS(take.recording),
    sampleRateHz: take.recording.sampleRateHz,
  };
}

export interface NonBeltResult {
  readonly id: string;
  readonly kind: string;
  readonly hertz: number | undefined;
  readonly grade: Grade | undefined;
}

export function nonBeltResult({ id, kind, recording, setup }: NonBelt): NonBeltResult {
  const { outcome } = timed(recording, setup).measurement;
  if (outcome.kind === 'nothing') return { id, kind, hertz: undefined, grade: undefined };
  return { id, kind, hertz: outcome.frequencyHz.value, grade: outcome.grade };
}

/** Everything that was heard, refused sounds too. */
export function eventsOf({ recording, setup }: Pick<CorpusTake, 'recording' | 'setup'>): readonly ListeningEvent[] {
  const listening = createListening({ sampleRateHz: recording.sampleRateHz, setup });
  return [...listening.push(recording.samples), ...listening.finish()];
}

function timed(recording: Recording, setup: SpanSetup): { measurement: Measurement; ms: number } {
  const from = performance.now();
  const measurement = measure(recording, setup);
  return { measurement, ms: performance.now() - from };
}
