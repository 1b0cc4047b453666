import { describe, expect, it } from 'vitest';
import { keptTakeSchema } from '../../../../shared/document/take.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import { createListening } from '../../../../src/core/listening.ts';
import { demoTake } from '../../../../src/core/synthesis/demo.ts';
import {
  answerOfKept,
  isKeptAsItIs,
  keepable,
  keptAgain,
  keptMark,
  recomputed,
  takeToKeep,
  withTakesRecomputed,
} from '../../../../src/ui/state/keep-take.ts';
import { newItem } from '../../../../src/ui/state/new-item.ts';
import { type AppState, initialState, reduce } from '../../../../src/ui/state/state.ts';
import { exampleDocument } from '../../../support/kept-example.ts';

const { recording, setup } = demoTake();
const listening = createListening({ sampleRateHz: recording.sampleRateHz, setup });
const events = [...listening.push(recording.samples), ...listening.finish()];

const on = { machineId: 'machine-1', machineBeltId: 'belt-a', spanId: 'span-a' };
const described = reduce(reduce(initialState(), { kind: 'own-belts-known', belts: exampleDocument.belts }), {
  kind: 'setup-entered',
  change: { beltId: 'roll-1', spanLength: '180', on },
});
const heard: AppState = reduce(described, {
  kind: 'recording-heard',
  fileName: 'bench.wav',
  events,
  notes: [],
  sampleRateHz: recording.sampleRateHz,
  processing: 'untouched',
});

const item = newItem();
const kept = takeToKeep(heard, item, item.made, {})!;

describe('a take that is kept', () => {
  it('fits the document, with its sounds, its inputs, its place and its version', () => {
    expect(keptTakeSchema.parse(kept)).toEqual(kept);
    expect(kept).toMatchObject({ id: item.id, on, source: 'recording', fileName: 'bench.wav', answeredBefore: [] });
    expect(kept.sounds).toHaveLength(3);
    expect(kept.now.program).toMatch(/^\d+\.\d+\.\d+$/u);
    expect(kept.now.setup.belt?.densityFrom).toBe('weighed');
  });

  it('gives the same answer when it is computed again', () => {
    const { reading } = heard.answer;
    expect(answerOfKept(kept)?.forceN?.value).toBeCloseTo(reading!.forceN!.value, 9);
    expect(kept.now.answer.forceN?.value).toBe(reading!.forceN!.value);
    expect(recomputed(kept, exampleDocument.belts, item.changedAt)).toBe(kept);
  });

  it('is none where nothing was heard, or the demo', () => {
    expect(keepable(described)).toBe(false);
    expect(keepable({ ...heard, take: { ...heard.take!, source: 'demo' } })).toBe(false);
    expect(keepable(heard)).toBe(true);
  });

  it('is kept as it is until a pluck or an input changes', () => {
    const marked = reduce(heard, { kind: 'take-kept', as: { id: item.id, mark: keptMark(heard) } });
    expect(isKeptAsItIs(marked)).toBe(true);
    expect(isKeptAsItIs(reduce(marked, { kind: 'own-belts-known', belts: [...exampleDocument.belts] }))).toBe(true);
    const undone = reduce(marked, { kind: 'pluck-undone' });
    expect([isKeptAsItIs(undone), undone.keptAs?.id]).toEqual([false, item.id]);
    const longer = reduce(marked, { kind: 'setup-entered', change: { spanLength: '181' } });
    expect([isKeptAsItIs(longer), longer.keptAs?.id]).toEqual([false, item.id]);
    expect(reduce(marked, { kind: 'started-over' }).keptAs).toBeUndefined();
  });
});

describe('a take that is kept once more', () => {
  const noted = { ...kept, name: 'left belt', note: 'by the door', temperatureK: 294.15 };
  const longer = reduce(heard, { kind: 'setup-entered', change: { spanLength: '181' } });

  it('keeps what was told of it, and what it said with the span as it was typed first', () => {
    const again = keptAgain(longer, noted, '2026-06-01T00:00:00.000Z')!;
    expect(again).toMatchObject({
      id: kept.id,
      made: kept.made,
      heard: kept.heard,
      name: 'left belt',
      note: 'by the door',
      temperatureK: 294.15,
    });
    expect(again.answeredBefore).toEqual([kept.now]);
    // T goes with the square of the span where stiffness is hardly felt
    expect(again.now.answer.forceN!.value / kept.now.answer.forceN!.value).toBeCloseTo((181 / 180) ** 2, 2);
    expect(keptTakeSchema.parse(again)).toEqual(again);
  });

  it('says nothing twice where only a pluck was taken away', () => {
    const again = keptAgain(reduce(heard, { kind: 'pluck-undone' }), noted, '2026-06-01T00:00:00.000Z')!;
    expect(again.answeredBefore).toEqual([]);
    expect(again.sounds).toHaveLength(2);
    expect(again.temperatureK).toBe(294.15);
  });
});

describe('a density that is corrected', () => {
  const [roll] = exampleDocument.belts;
  const weighed = { value: 0.0084, standardUncertainty: 0.00004, from: 'weighed' as const, got: item.made };
  const before: KeptDocument = { ...exampleDocument, takes: [kept, ...exampleDocument.takes] };
  const corrected = { ...before, belts: [{ ...roll!, linearDensityKgPerM: [...roll!.linearDensityKgPerM, weighed] }] };
  const after = withTakesRecomputed(before, corrected, '2026-06-01T00:00:00.000Z');

  it('gives the takes on that belt their force anew, and keeps what was answered before', () => {
    const [take, other] = after.takes;
    // T = 4 μ L² f²: the force of a span that hardly feels its stiffness goes with the density.
    expect(take!.now.answer.forceN!.value / kept.now.answer.forceN!.value).toBeCloseTo(0.0084 / 0.0079, 2);
    expect(take!.answeredBefore).toEqual([kept.now]);
    expect(take!.now.computedAt).toBe('2026-06-01T00:00:00.000Z');
    expect(keptTakeSchema.parse(take)).toEqual(take);
    expect(other).toBe(exampleDocument.takes[0]);
  });

  it('leaves everything alone where no belt changed', () => {
    expect(withTakesRecomputed(before, { ...before, gauges: [] }, item.changedAt).takes).toBe(before.takes);
  });
});

describe('the machine’s span in the setup', () => {
  it('stays the belt’s when the length is typed over, and goes with another belt', () => {
    const longer = reduce(described, { kind: 'setup-entered', change: { spanLength: '200' } });
    expect(longer.entered.on).toEqual({ machineId: 'machine-1', machineBeltId: 'belt-a' });
    const tighter = reduce(described, { kind: 'setup-entered', change: { targetFrom: '7' } });
    expect(tighter.entered.on).toEqual(on);
    const elsewhere = reduce(heard, { kind: 'setup-entered', change: { on: { ...on, spanId: 'span-b' } } });
    expect([elsewhere.take?.plucks.length ?? 0, elsewhere.answer.reading]).toEqual([0, undefined]);
    const other = reduce(described, { kind: 'setup-entered', change: { beltId: 'own' } });
    expect(other.entered.on).toBeUndefined();
  });
});
