import { describe, expect, it } from 'vitest';
import { beltPath } from '../../../../src/core/machine/belt-path.ts';
import { carriageFor } from '../../../../src/core/machine/carriage.ts';
import { LAYOUTS, layoutOf, usualSection } from '../../../../src/core/machine/layouts.ts';

const section = usualSection(0.002);

describe('carriageFor', () => {
  it.each(LAYOUTS.map(({ kind }) => [kind]))('finds a place for a length between what the span can be: %s', (kind) => {
    const layout = layoutOf(kind)!;
    const laid = layout.lay({});
    const belt = laid.belts[0]!;
    const from = belt.plucked[0]!.from;
    const path = beltPath(belt, section);
    if (path.kind !== 'path') throw new Error('overlap');
    const nowM = path.spans.find((span) => span.from === from)!.lengthM;
    const wantedM = 0.8 * nowM;
    const found = carriageFor(layout, {}, { belt: belt.name, from, lengthM: wantedM, section });
    if (found === undefined) {
      // A belt that no carriage divides: a plain loop between two pulleys.
      expect(layout.sizes.filter(({ name }) => name === 'carriageXM' || name === 'carriageYM').length).toBeLessThan(2);
      return;
    }
    const moved = beltPath(layout.lay(found.sizes).belts[0]!, section);
    if (moved.kind !== 'path') throw new Error('overlap');
    expect(moved.spans.find((span) => span.from === from)!.lengthM).toBeCloseTo(wantedM, 4);
  });

  it('has no place for a length that the machine cannot make, nor for a belt that it does not have', () => {
    const layout = layoutOf('crossed-gantry')!;
    expect(carriageFor(layout, {}, { belt: 'A', from: 0, lengthM: 5, section })).toBeUndefined();
    expect(carriageFor(layout, {}, { belt: 'Z', from: 0, lengthM: 0.1, section })).toBeUndefined();
  });
});
