import { describe, expect, it } from 'vitest';
import { enteredForSpan } from '../../../../src/ui/state/span-of-machine.ts';
import { EMPTY_SETUP, understood, withTargetUnit } from '../../../../src/ui/state/span-setup.ts';
import { exampleDocument } from '../../../support/kept-example.ts';

const told = { ...EMPTY_SETUP, spanLength: '180', targetFrom: '95', targetTo: '80', forceUnit: 'Hz' };

describe('a target told in hertz', () => {
  it('is one on the span in hand, with the force that follows', () => {
    const { setup, faults } = understood(told);
    expect(faults).toEqual({});
    expect(setup.targetHz).toEqual({ lowHz: 80, highHz: 95, spanLengthM: 0.18 });
    // 4 μ L² f² of the string, by hand: 4 · 0.0078 · 0.18² · 80² = 6.47 N; stiffness and ends take off a little
    expect(setup.targetForceN!.lowN).toBeGreaterThan(5.9);
    expect(setup.targetForceN!.lowN).toBeLessThan(6.47);
  });

  it('says nothing without a length, and refuses newtons', () => {
    expect(understood({ ...told, spanLength: '' }).setup.targetForceN).toBeUndefined();
    expect(understood({ ...told, targetFrom: '6 N' }).faults.targetFrom).toMatchObject({ why: 'unknown-unit' });
  });

  it('empties the fields where the unit changes between force and frequency', () => {
    expect(withTargetUnit(told, 'N')).toEqual({ forceUnit: 'N', targetFrom: '', targetTo: '' });
    expect(withTargetUnit({ ...told, forceUnit: 'N' }, 'lbf')).toEqual({ forceUnit: 'lbf' });
  });

  it('of a machine is carried to the span that is listened to', () => {
    const [machine] = exampleDocument.machines;
    const source = { kind: 'frequency' as const, lowHz: 80, highHz: 95, spanLengthM: 0.36 };
    const belt = { ...machine!.belts[0]!, targets: [{ ...machine!.belts[0]!.targets[0]!, source }] };
    const entered = enteredForSpan({ machine: machine!, belt, span: belt.spans[0] });
    expect(entered.forceUnit).toBe('Hz');
    // Of a kept belt only the length is known here: 80 · 360/180 = 160 Hz, 95 · 2 = 190 Hz
    expect([Number(entered.targetFrom), Number(entered.targetTo)]).toEqual([160, 190]);
    const catalogue = enteredForSpan({ machine: machine!, belt: { ...belt, beltId: 'curvilinear-2mm-6mm' }, span: belt.spans[0] });
    // Half the span rings more than twice as high, as stiffness and ends raise it more.
    expect(Number(catalogue.targetFrom)).toBeGreaterThan(161);
  });
});
