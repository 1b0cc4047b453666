import { describe, expect, it } from 'vitest';
import type { BenchData } from '../../../../src/core/belt/bench-data.ts';
import { type BenchFit, benchFit } from '../../../../src/core/belt/bench-fit.ts';
import type { BenchValue } from '../../../../src/core/belt/bench-slices.ts';
import { createRandom } from '../../../../src/core/math/random.ts';
import { BENCH_PRIOR, drawTrueBelt, FULL_PLAN, readBench, type TrueBelt, USUAL_DOUBTS } from '../../../support/bench-belt.ts';

const BELT: TrueBelt = { linearDensityKgPerM: 0.0082, bendingStiffnessNm2: 1.2e-4, fixity: 0.5 };
/** No doubt but the one that the fit is told of, and that not drawn. */
const SILENT = { ...createRandom(1), gaussian: () => 0 };
const fitOf = (data: BenchData): BenchFit => {
  const fit = benchFit(data);
  if (!fit) throw new Error('the bench gave no fit');
  return fit;
};
const holds = ({ low, high }: BenchValue, truth: number): boolean => low <= truth && truth <= high;
const halfRelative = ({ value, low, high }: BenchValue): number => (high - low) / (2 * value);

describe('benchFit', () => {
  it.each([0.02, 0.5, 0.97])('finds density, stiffness and ends of a belt that energies alone made, ends held by %s', (fixity) => {
    const fit = fitOf(readBench(SILENT, { ...BELT, fixity }));
    expect(Math.abs(fit.linearDensityKgPerM.value / BELT.linearDensityKgPerM - 1)).toBeLessThan(0.002);
    expect(Math.abs(fit.bendingStiffnessNm2.value / BELT.bendingStiffnessNm2 - 1)).toBeLessThan(0.02);
    expect(Math.abs(fit.fixity.value - fixity)).toBeLessThan(0.02);
  });

  // Computed for a plan of 60 and 240 mm, 3 to 24 N, three partials, by an independent linear propagation: density 0.49 %, stiffness 1.5 %, fixity 0.02.
  it('is as sure as such a bench can be', () => {
    const fit = fitOf(readBench(SILENT, BELT));
    const { value, standardUncertainty } = fit.linearDensityKgPerM;
    expect(standardUncertainty / value).toBeGreaterThan(0.0045);
    expect(standardUncertainty / value).toBeLessThan(0.0055);
    expect(fit.bendingStiffnessNm2.standardUncertainty / fit.bendingStiffnessNm2.value).toBeLessThan(0.018);
    expect(fit.fixity.standardUncertainty).toBeLessThan(0.025);
  });

  it('holds density, stiffness and end effect in nearly every one of 40 drawn belts, in intervals narrower than a quarter', {
    timeout: 60_000,
  }, () => {
    const belts = 40;
    const held = { density: 0, stiffness: 0, ends: 0, within: 0, narrow: 0 };
    for (let seed = 1; seed <= belts; seed++) {
      const random = createRandom(seed, 77);
      const truth = drawTrueBelt(random);
      const fit = fitOf(readBench(random, truth));
      held.density += Number(holds(fit.linearDensityKgPerM, truth.linearDensityKgPerM));
      held.stiffness += Number(holds(fit.bendingStiffnessNm2, truth.bendingStiffnessNm2));
      held.ends += Number(holds(fit.endEffect, truth.fixity * Math.sqrt(truth.bendingStiffnessNm2)));
      held.within += Number(Math.abs(fit.linearDensityKgPerM.value / truth.linearDensityKgPerM - 1) < 0.01);
      // Ends that hold by less than a quarter have an effect too small for its doubt to be a small share of it.
      held.narrow += Number(halfRelative(fit.bendingStiffnessNm2) < 0.25 && (truth.fixity < 0.25 || halfRelative(fit.endEffect) < 0.25));
    }
    for (const count of [held.density, held.stiffness, held.ends, held.within]) expect(count).toBeGreaterThanOrEqual(34);
    expect(held.narrow).toBe(belts);
  });

  it('takes the same belt from the same plucks, whatever order they are told in', () => {
    const data = readBench(createRandom(3), BELT);
    const turned = { ...data, takes: data.takes.toReversed() };
    expect(fitOf(turned).linearDensityKgPerM.value).toBeCloseTo(fitOf(data).linearDensityKgPerM.value, 9);
  });

  it('passes a scale error of all weights on to the density, and says so in its width', () => {
    const exact = { ...USUAL_DOUBTS, lengthM: 1e-6, force: 1e-5 };
    const sure = fitOf({ ...readBench(SILENT, BELT, FULL_PLAN, exact), forceScaleRelativeU: 1e-5 });
    const unsure = fitOf({ ...readBench(SILENT, BELT, FULL_PLAN, exact), forceScaleRelativeU: 0.01 });
    const u = ({ linearDensityKgPerM: { value, standardUncertainty } }: BenchFit): number => standardUncertainty / value;
    expect(Math.abs(Math.hypot(u(sure), 0.01) / u(unsure) - 1)).toBeLessThan(0.05);
  });

  it('widens where the partials lie farther off than their doubt', () => {
    const honest = readBench(createRandom(9), BELT);
    const calm = { ...honest, takes: honest.takes.map((take) => ({ ...take, partials: take.partials.map(bolder) })) };
    const fit = fitOf(calm);
    expect(fit.fitProbability).toBeLessThan(1e-6);
    expect(halfRelative(fit.bendingStiffnessNm2)).toBeGreaterThan(0.015);
  });

  it('gives the ends from two positions of a carriage under one force that nobody knows, with an honest width', () => {
    let held = 0;
    for (let seed = 1; seed <= 20; seed++) {
      const data = readBench(createRandom(seed, 4), BELT, { spansM: [0.08, 0.3], forcesN: [8], partials: 3 });
      const fit = fitOf({ ...data, loads: [{}], takes: data.takes.map((take) => ({ ...take, sharedRelativeU: 0.002 })) });
      held += Number(holds(fit.endEffect, BELT.fixity * Math.sqrt(BELT.bendingStiffnessNm2)));
      expect(halfRelative(fit.endEffect)).toBeGreaterThan(0.15);
      // Of the density nothing is learned.
      expect(halfRelative(fit.linearDensityKgPerM)).toBeGreaterThan(0.17);
    }
    expect(held).toBeGreaterThanOrEqual(17);
  });

  it('asks for partials, and refuses what cannot be', () => {
    const data = readBench(SILENT, BELT);
    expect(benchFit({ ...data, takes: [] })).toBeUndefined();
    expect(() => benchFit({ ...data, spans: [] })).toThrow('which are not there');
    expect(() => benchFit({ ...data, loads: data.loads.map(() => ({ forceN: { value: -1, standardUncertainty: 0 } })) })).toThrow(
      'a force above 0',
    );
    expect(BENCH_PRIOR.linearDensityKgPerM.value).toBeGreaterThan(0);
  });
});

function bolder<P extends { frequencyHz: { value: number; standardUncertainty: number } }>(partial: P): P {
  return { ...partial, frequencyHz: { ...partial.frequencyHz, standardUncertainty: partial.frequencyHz.standardUncertainty / 10 } };
}
