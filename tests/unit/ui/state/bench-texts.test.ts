import { describe, expect, it } from 'vitest';
import type { KeptBelt, KeptBench } from '../../../../shared/document/belt.ts';
import { newBelt, withFound, withoutLast } from '../../../../src/ui/state/belt-changes.ts';
import { EMPTY_BENCH, priorOf, readPartials, understoodBench, withTakeAt } from '../../../../src/ui/state/bench-texts.ts';

const got = { at: '2026-03-02T08:15:00.000Z', zone: 'Europe/Lisbon' };
const belt: KeptBelt = newBelt({ id: 'roll', made: got, changedAt: got.at }, { name: 'Roll', catalogueId: 'curvilinear-2mm-6mm' });
const bench: KeptBench = {
  rig: 'hang',
  spans: [
    { id: 's1', length: '60 ± 0.4', knownTo: '1' },
    { id: 's2', length: '240', knownTo: '1' },
  ],
  loads: [
    { id: 'l1', weight: '306', knownTo: '0.5' },
    { id: 'l2', weight: '12 N', knownTo: '0.6' },
  ],
  takes: [{ spanId: 's1', loadId: 'l1', typed: '180 380 612' }],
  frequencyKnownTo: '0.4',
};

describe('understoodBench', () => {
  it('reads spans, masses and forces with what they are known to', () => {
    const { data, faults, forceN } = understoodBench(bench, belt, 'weights');
    expect(faults).toEqual({});
    expect(data!.spans.map(({ lengthM }) => [lengthM.value, lengthM.standardUncertainty])).toEqual([
      [0.06, expect.closeTo(0.0002, 9)],
      [0.24, 0.0005],
    ]);
    // 306 g under standard gravity, exact 9.80665 m/s², is 3.0008 N
    expect(forceN.l1).toBeCloseTo(3.0008, 4);
    expect(forceN.l2).toBe(12);
    expect(data!.takes[0]!.partials[2]).toEqual({ number: 3, frequencyHz: { value: 612, standardUncertainty: expect.closeTo(1.224, 9) } });
  });

  it('adds hook and belt below to each mass, not to a force, with gravity where it hangs', () => {
    const { data, faults, forceN } = understoodBench(
      { ...bench, hanger: '20 ± 1', beltBelow: '500', latitude: '45,0°', height: '200' },
      { ...belt, linearDensityKgPerM: [{ value: 0.008, standardUncertainty: 0.0001, from: 'told', got }] },
      'weights',
    );
    expect(faults).toEqual({});
    // (0.306 + 0.02 + 0.5 · 0.008) kg at 45° and 200 m: 9.80620 − 0.00062 m/s² (WGS84, free air)
    expect(forceN.l1).toBeCloseTo(0.33 * 9.80558, 4);
    expect(forceN.l2).toBe(12);
    expect(data!.forceScaleRelativeU).toBeLessThan(0.001);
  });

  it('names what cannot be read of the rig, and goes on with standard gravity', () => {
    const { faults, forceN } = understoodBench({ ...bench, latitude: '97', hanger: 'a nail' }, belt, 'weights');
    expect(Object.keys(faults).sort()).toEqual(['hanger', 'latitude']);
    expect(forceN.l1).toBeCloseTo(3.0008, 4);
  });

  it('names what cannot be read by its field, and goes on with the rest', () => {
    const odd = {
      ...bench,
      spans: [
        { id: 's1', length: '60', knownTo: 'parrots' },
        { id: 's2', length: '2 bananas', knownTo: '1' },
      ],
      takes: [...bench.takes, { spanId: 's1', loadId: 'l2', typed: '100 zwei' }],
    };
    const { data, faults } = understoodBench(odd, belt, 'weights');
    expect(Object.keys(faults).sort()).toEqual(['s1 knownTo', 's1 l2', 's2 length']);
    expect(data!.takes).toHaveLength(1);
  });

  it('takes one force that nobody knows for every position', () => {
    const { data } = understoodBench({ ...bench, loads: [{ id: 'l1', weight: '', knownTo: '' }] }, belt, 'positions');
    expect(data!.loads).toEqual([{}]);
    expect(data!.takes[0]!.sharedRelativeU).toBeGreaterThan(0);
  });

  it('has nothing to reckon before something was plucked', () => {
    expect(
      understoodBench(
        EMPTY_BENCH.weights(() => 'x'),
        belt,
        'weights',
      ).data,
    ).toBeUndefined();
  });
});

describe('readPartials', () => {
  it.each([
    ['82.1 165 249', [1, 2, 3]],
    ['82,1; 165; 249', [1, 2, 3]],
    ['82.1, 165, 249 Hz', [1, 2, 3]],
    ['– 165 249', [2, 3]],
    ['82.1', [1]],
  ])('reads %s', (text, numbers) => {
    const partials = readPartials(text, 0.002);
    expect('ok' in partials ? partials : partials.map(({ number }) => number)).toEqual(numbers);
  });
});

describe('withTakeAt', () => {
  it('replaces a take in its place, and drops an emptied one', () => {
    const other = withTakeAt(bench, { spanId: 's1', loadId: 'l1', typed: '181 382' });
    expect(other.takes).toHaveLength(1);
    expect(other.takes[0]!.typed).toBe('181 382');
    expect(withTakeAt(bench, { spanId: 's1', loadId: 'l1', typed: ' ' }).takes).toHaveLength(0);
  });
});

describe('what is found', () => {
  const found = withFound(
    belt,
    { from: 'bench', note: 'two spans', values: { linearDensityKgPerM: { value: 0.0082, standardUncertainty: 4e-5 } } },
    got,
  );

  it('is added behind what was there', () => {
    const again = withFound(found, { from: 'weighed', values: { linearDensityKgPerM: { value: 0.0081, standardUncertainty: 3e-5 } } }, got);
    expect(again.linearDensityKgPerM.map(({ value }) => value)).toEqual([0.0082, 0.0081]);
    expect(withoutLast(again, 'linearDensityKgPerM').linearDensityKgPerM.map(({ value }) => value)).toEqual([0.0082]);
  });

  it('does not count as known before the next fit of the same bench', () => {
    expect(priorOf(found).linearDensityKgPerM.value).toBe(0.0078);
    const weighed = withFound(
      found,
      { from: 'weighed', values: { linearDensityKgPerM: { value: 0.0081, standardUncertainty: 3e-5 } } },
      got,
    );
    expect(priorOf(weighed).linearDensityKgPerM).toEqual({ value: 0.0081, standardUncertainty: 3e-5 });
  });
});
