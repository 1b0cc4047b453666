/** Every fixture through the whole chain: belts give an interval that holds their true force, nothing else gives a reading. */
import { describe, expect, it } from 'vitest';
import { beltById } from '../../shared/belts.ts';
import { beltKnowledge } from '../../src/core/belt/catalogue.ts';
import { measure } from '../../src/core/measure.ts';
import { ASSUMED_UNCERTAINTY, type SpanSetup, UNKNOWN_ENDS } from '../../src/core/setup.ts';
import { soundOf, storedBelts, storedNoBelts } from '../support/read-fixtures.ts';

/** What a person knows who measures the span and picks the belt from the catalogue. */
const setupOf = (spanLengthM: number): SpanSetup => ({
  spanLengthM: { value: spanLengthM, standardUncertainty: ASSUMED_UNCERTAINTY.spanLengthM },
  belt: beltKnowledge(beltById('curvilinear-2mm-6mm')!),
  ends: UNKNOWN_ENDS,
});

describe.each(storedBelts)('$name', (fixture) => {
  const { truth } = fixture;
  const { outcome, plucks } = measure(soundOf(fixture), setupOf(truth.spanLengthM));

  it('gives an interval that holds the true force', () => {
    if (outcome.kind !== 'reading') throw new Error(`nothing heard: ${outcome.why}`);
    expect(outcome.forceN!.low ?? 0).toBeLessThan(truth.forceN);
    expect(outcome.forceN!.high ?? Number.POSITIVE_INFINITY).toBeGreaterThan(truth.forceN);
  });

  it('gives the frequency within its uncertainty and 0.3 %', () => {
    if (outcome.kind !== 'reading') throw new Error(`nothing heard: ${outcome.why}`);
    const off = Math.abs(outcome.frequencyHz.value - truth.frequencyHz);
    expect(off).toBeLessThan(0.003 * truth.frequencyHz);
    expect(off).toBeLessThan(outcome.frequencyHz.u95);
  });

  it('hears each pluck where it was', () => {
    expect(plucks.map(({ sound }) => sound.startS).length).toBe(truth.pluckStartsS.length);
    plucks.forEach(({ sound }, index) => {
      expect(Math.abs(sound.startS - truth.pluckStartsS[index]!)).toBeLessThan(0.03);
    });
  });
});

describe.each(storedNoBelts)('$name', (fixture) => {
  // Told a span and told nothing: the second leaves more room for a false answer.
  it.each([
    ['a span and a belt', setupOf(0.15)],
    ['nothing', { ends: UNKNOWN_ENDS }],
  ])('gives nothing when told %s', (_, setup) => {
    expect(measure(soundOf(fixture), setup).outcome.kind).toBe('nothing');
  });
});
