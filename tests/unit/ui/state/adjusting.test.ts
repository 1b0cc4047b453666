import { describe, expect, it } from 'vitest';
import type { KeptDocument } from '../../../../shared/document.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';
import { adjustGroup, type ReadyGroup } from '../../../../src/ui/state/adjust-group.ts';
import { Adjusting } from '../../../../src/ui/state/adjusting.ts';
import type { Workbench } from '../../../../src/ui/state/context.ts';
import { Kept } from '../../../../src/ui/state/kept.ts';
import { initialState } from '../../../../src/ui/state/state.ts';
import { Store } from '../../../../src/ui/state/store.ts';
import { pluckEvent } from '../../../support/heard-plucks.ts';
import { exampleDocument } from '../../../support/kept-example.ts';
import { MemoryArchive } from '../../../support/memory-archive.ts';

const WORDS = { moved: () => 'moved', begun: () => 'begun' };
/** Without takes and entries: nothing has been plucked. */
const fresh: KeptDocument = { ...exampleDocument, takes: [], entries: [] };
const hzOf = (forceN: number): number =>
  partialHz({ spanLengthM: 0.18, linearDensityKgPerM: 0.0079, bendingStiffnessNm2: 1.2e-4, fixity: [0.25, 0.85], number: 1, forceN });

async function bench(document = fresh) {
  const archive = new MemoryArchive(document);
  const kept = new Kept({ archive });
  await kept.opened;
  const store = new Store(initialState());
  const acts: string[] = [];
  const effects = {
    listenFor: async (owner: string) => {
      store.dispatch({ kind: 'errand-began', owner, entered: store.state.entered });
      store.dispatch({ kind: 'listening-began', source: 'microphone', sampleRateHz: 48_000 });
      store.dispatch({ kind: 'heard', event: { kind: 'ready', atS: 0.5 } });
    },
    stop: async () => {
      acts.push('stop');
    },
    endErrand: async () => {
      acts.push('end errand');
    },
  };
  const workbench = { store, kept, effects } as unknown as Workbench;
  const group = adjustGroup(document, 'machine-1', 'pair') as ReadyGroup;
  const adjusting = new Adjusting({ workbench, words: WORDS, group });
  adjusting.connect();
  const pluck = (forceN: number) => store.dispatch({ kind: 'heard', event: pluckEvent(hzOf(forceN)) });
  const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
  return { archive, kept, store, workbench, group, adjusting, acts, pluck, settled };
}

const living = ({ takes }: KeptDocument) => takes.filter(({ deletedAt }) => deletedAt === undefined);

describe('a session in the page', () => {
  it('hears only what it listens for, and keeps a take for each reading and an entry for each move', async () => {
    const { adjusting, pluck, kept, settled } = await bench();
    pluck(4);
    expect(adjusting.steps).toEqual([]);
    adjusting.listen();
    expect(adjusting.isListening).toBe(true);
    for (const forceN of [4, 4, 4, 6, 6, 6]) pluck(forceN);
    expect(adjusting.session.ask).toMatchObject({ kind: 'move', advice: { belt: 0 } });
    pluck(5);
    await settled();
    expect(living(kept.document).map(({ on, sounds }) => [on?.machineBeltId, sounds.length])).toEqual([
      ['belt-a', 3],
      ['belt-b', 3],
      ['belt-a', 1],
    ]);
    expect(kept.document.entries.map(({ kind, adjusting: step }) => [kind, step?.kind])).toEqual([['adjusted', 'moved']]);
    // Each answer stands with the take that it was computed from.
    expect(living(kept.document)[0]!.now.answer.forceN!.value).toBeCloseTo(4, 0);
  });

  it('goes on where it stood after a reload', async () => {
    const before = await bench();
    before.adjusting.listen();
    for (const forceN of [4, 4, 4, 6, 6, 6, 5, 6.3]) before.pluck(forceN);
    await before.settled();
    const after = await bench(before.kept.document);
    expect(after.adjusting.session.ask).toEqual(before.adjusting.session.ask);
    expect(after.adjusting.session.path.map(({ move }) => move)).toEqual(before.adjusting.session.path.map(({ move }) => move));
    expect(after.adjusting.session.standing).toEqual(before.adjusting.session.standing);
  });

  it('takes a step back in the document too, and mends a mix-up', async () => {
    const { adjusting, pluck, kept, settled } = await bench();
    adjusting.listen();
    for (const forceN of [4, 4, 4, 6, 6, 6, 5]) pluck(forceN);
    adjusting.undo();
    await settled();
    expect(living(kept.document)).toHaveLength(2);
    expect(kept.document.entries.filter(({ deletedAt }) => deletedAt === undefined)).toEqual([]);
    expect(adjusting.session.ask.kind).toBe('move');
    adjusting.undo();
    adjusting.undo();
    adjusting.undo();
    pluck(4.1);
    adjusting.give(1);
    await settled();
    expect(living(kept.document).map(({ on }) => on?.machineBeltId)).toContain('belt-b');
  });

  it('starts anew for good', async () => {
    const first = await bench();
    first.adjusting.listen();
    for (const forceN of [4, 4, 4]) first.pluck(forceN);
    await first.settled();
    await new Promise((resolve) => setTimeout(resolve, 5)); // a later moment
    first.adjusting.startAnew();
    await first.settled();
    expect(first.adjusting.session.ask).toMatchObject({ kind: 'pluck', belt: 0, have: 0 });
    const after = await bench(first.kept.document);
    expect(after.adjusting.steps).toEqual([]);
    expect(living(first.kept.document)).toHaveLength(1); // what was read stays in the logbook
  });

  it('counts nothing that began while it spoke', async () => {
    const { adjusting, pluck, store } = await bench();
    adjusting.listen();
    adjusting.isSpeaking = true;
    store.dispatch({ kind: 'heard', event: { kind: 'onset', atS: 0.95 } });
    adjusting.isSpeaking = false;
    pluck(4); // its ring starts at 1 s
    expect(adjusting.steps).toEqual([]);
  });

  it('gives the microphone back when it is left', async () => {
    const { adjusting, acts, pluck } = await bench();
    adjusting.listen();
    adjusting.disconnect();
    expect(acts).toContain('end errand');
    pluck(4);
    expect(adjusting.steps).toEqual([]);
  });

  it('counts a corrected density at once', async () => {
    const { adjusting, pluck, kept } = await bench();
    adjusting.listen();
    for (const forceN of [4, 4, 4, 6, 6, 6]) pluck(forceN);
    const before = adjusting.session.standing!.belts[0]!.forceN.value;
    await kept.change((document) => ({
      ...document,
      belts: document.belts.map((belt) => ({
        ...belt,
        linearDensityKgPerM: [...belt.linearDensityKgPerM, { ...belt.linearDensityKgPerM[1]!, value: 0.0087 }],
      })),
    }));
    expect(adjusting.session.standing!.belts[0]!.forceN.value / before).toBeCloseTo(0.0087 / 0.0079, 2);
  });
});

describe('what a group needs', () => {
  const withMachine = (change: (machine: KeptDocument['machines'][number]) => KeptDocument['machines'][number]): KeptDocument => ({
    ...fresh,
    machines: fresh.machines.map(change),
  });

  it('names each thing that is missing', () => {
    const bare = withMachine((machine) => ({
      ...machine,
      belts: machine.belts.map((belt, i) => (i === 0 ? { ...belt, targets: [] } : { ...belt, spans: [] })),
    }));
    expect(adjustGroup(bare, 'machine-1', 'pair')).toMatchObject({
      kind: 'lacking',
      lacks: [
        { belt: 'A', what: 'target' },
        { belt: 'B', what: 'span' },
      ],
    });
    expect(adjustGroup(fresh, 'machine-1', 'none').kind).toBe('gone');
    expect(adjustGroup(fresh, 'nowhere', 'pair')).toEqual({ kind: 'gone' });
  });

  it('takes what all targets allow, or says that they allow nothing', () => {
    const targets = (ranges: readonly (readonly [number, number])[]) =>
      withMachine((machine) => ({
        ...machine,
        belts: machine.belts.map((belt, i) => ({
          ...belt,
          targets: [{ ...belt.targets[0]!, forceN: { lowN: ranges[i]![0], highN: ranges[i]![1] } }],
        })),
      }));
    const common = adjustGroup(
      targets([
        [6, 9],
        [7, 12],
      ]),
      'machine-1',
      'pair',
    ) as ReadyGroup;
    expect(common.plan.targetForceN).toEqual({ lowN: 7, highN: 9 });
    expect(
      adjustGroup(
        targets([
          [6, 7],
          [8, 9],
        ]),
        'machine-1',
        'pair',
      ).kind,
    ).toBe('targets-apart');
  });

  it('keeps a frequency a frequency: with a corrected density the force that is wanted moves along', () => {
    const source = { kind: 'frequency' as const, lowHz: 80, highHz: 95, spanLengthM: 0.18 };
    const hertz = withMachine((machine) => ({
      ...machine,
      belts: machine.belts.map((belt) => ({ ...belt, targets: [{ ...belt.targets[0]!, source }] })),
    }));
    const plan = (document: KeptDocument) => (adjustGroup(document, 'machine-1', 'pair') as ReadyGroup).plan;
    const heavier = {
      ...hertz,
      belts: hertz.belts.map((belt) => ({ ...belt, linearDensityKgPerM: [{ ...belt.linearDensityKgPerM[1]!, value: 2 * 0.0079 }] })),
    };
    expect(plan(hertz).targetHz).toEqual({ lowHz: 80, highHz: 95, spanLengthM: 0.18 });
    expect(plan(heavier).targetForceN.lowN / plan(hertz).targetForceN.lowN).toBeCloseTo(2, 1);
  });

  it('expects of a screw what stiffness and path say', () => {
    // EA 2.4 kN per mm of 2 mm pitch, 6 mm wide: 14.4 kN; 0.5 mm of lead, twice the path, 1.62 m: by hand 14400 · 0.001 / 1.62 = 8.889 N
    const { plan } = adjustGroup(fresh, 'machine-1', 'pair') as ReadyGroup;
    expect(plan.belts[0]!.adjuster).toEqual({ kind: 'screw', modelResponseN: expect.closeTo(8.889, 3) });
    expect([plan.likeness, plan.crossed, plan.matchRelative]).toEqual(['same-roll', true, 0.05]);
  });
});
