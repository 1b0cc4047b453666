import { describe, expect, it } from 'vitest';
import type { Machine, MachineBelt } from '../../../../shared/document/machine.ts';
import { machineSchema } from '../../../../shared/document/machine.ts';
import { demoMachines, LAYOUT_KINDS, newMachine, relaid, spanAfterWheel } from '../../../../src/ui/state/machine-new.ts';
import { machinesEn } from '../../../../src/words/machines-en.ts';

const { spanNames } = machinesEn;
const made = (kind: Machine['layout']['kind']) => newMachine(kind, { name: 'One', spanNames });

describe('a new machine', () => {
  it.each(LAYOUT_KINDS)('fits the document, with spans where it has a drawing: %s', (kind) => {
    const machine = made(kind);
    expect(machineSchema.parse(machine)).toEqual(machine);
    expect(machine.belts.every(({ spans }) => spans.length > 0)).toBe(kind !== 'own');
  });

  it('has a drawing whose spans follow its sizes, but for those that were measured', () => {
    const machine = made('single-loop');
    const [belt] = machine.belts;
    const [first, ...others] = belt!.spans;
    const measured = { ...first!, lengthM: { value: 0.1, standardUncertainty: 0.0005 }, lengthFrom: 'measured' as const };
    const before: Machine = { ...machine, belts: [{ ...belt!, spans: [measured, ...others] }] };
    const after = relaid(before, { ...machine.layout.sizes, widthM: 0.46 }).belts[0]!.spans;
    expect(after[0]).toEqual(measured);
    // 100 mm wider: so much longer are the span behind the carriage and the return run.
    for (const [index, span] of others.entries()) expect(after[index + 1]!.lengthM!.value - span.lengthM!.value).toBeCloseTo(0.1, 6);
  });

  it('of the demo is invented, marked as such, and held between 6 and 9 N on 180 mm', () => {
    const [plotter] = demoMachines({ ...machinesEn.demo, spanNames });
    expect(plotter).toMatchObject({ demo: true, belts: [{ name: 'A' }, { name: 'B' }] });
    for (const { spans, targets, lengthM } of plotter!.belts) {
      expect(spans[0]!.lengthM!.value).toBe(0.18);
      expect(targets[0]!.forceN).toEqual({ lowN: 6, highN: 9 });
      expect(lengthM).toBeGreaterThan(1);
    }
  });
});

describe('a machine of one’s own wheels', () => {
  const pulley = (xM: number, yM: number) => ({ kind: 'pulley' as const, teeth: 20, xM, yM });
  const belt: MachineBelt = { ...made('own').belts[0]!, path: { closed: true, wheels: [pulley(0.05, 0.05), pulley(0.25, 0.05)] } };
  const machine: Machine = { ...made('own'), belts: [belt] };

  it('has spans from wheel to wheel: between equal pulleys as long as their axes are apart', () => {
    const span = spanAfterWheel(machine, belt, 0, 'from 1 to 2');
    expect(span).toMatchObject({ lengthM: { value: 0.2 }, lengthFrom: 'layout', ends: ['pulley', 'pulley'], place: { from: 0 } });
    expect(machineSchema.safeParse({ ...machine, belts: [{ ...belt, spans: [span] }] }).success).toBe(true);
  });

  it('has spans that follow their wheels', () => {
    const spans = [spanAfterWheel(machine, belt, 0, 'out'), spanAfterWheel(machine, belt, 1, 'back')];
    const moved = { ...belt, spans, path: { closed: true, wheels: [pulley(0.05, 0.05), pulley(0.05, 0.35)] } };
    expect(relaid({ ...machine, belts: [moved] }).belts[0]!.spans.map(({ lengthM }) => lengthM!.value)).toEqual([0.3, 0.3]);
  });
});
