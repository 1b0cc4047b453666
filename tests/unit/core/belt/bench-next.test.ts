import { describe, expect, it } from 'vitest';
import type { BenchData } from '../../../../src/core/belt/bench-data.ts';
import { type BenchFinding, benchFindings } from '../../../../src/core/belt/bench-findings.ts';
import { benchFit } from '../../../../src/core/belt/bench-fit.ts';
import { laterU95Relative } from '../../../../src/core/belt/bench-linear.ts';
import { nextMeasurements, outlookNow } from '../../../../src/core/belt/bench-next.ts';
import { createRandom } from '../../../../src/core/math/random.ts';
import { type BenchPlan, readBench, type TrueBelt } from '../../../support/bench-belt.ts';

const BELT: TrueBelt = { linearDensityKgPerM: 0.0081, bendingStiffnessNm2: 1.2e-4, fixity: 0.5 };
const RATED_N = 26;

function told(plan: BenchPlan, seed = 7) {
  const data = readBench(createRandom(seed), BELT, plan);
  const fit = benchFit(data)!;
  return { data, fit, ids: ids(benchFindings(data, fit)) };
}
const ids = (findings: readonly BenchFinding[]): string[] => findings.map(({ id }) => id);
const fitted = (data: BenchData) => benchFit(data)!;

describe('what a bench can tell apart', () => {
  it.each([
    [0.15, 10],
    [0.08, 5],
    [0.3, 10],
  ])('one span of %s m under %s N: ends and density are not parted', (spanM, forceN) => {
    expect(told({ spansM: [spanM], forcesN: [forceN], partials: 3 }).ids).toContain('density-and-ends');
  });

  it('four forces on that span part them and say how well; what is left of the density is the length', () => {
    const { fit, ids } = told({ spansM: [0.15], forcesN: [3, 6, 12, 24], partials: 3 });
    expect(ids).not.toContain('density-and-ends');
    expect(ids).toContain('density-and-length');
    // Computed independently for this plan: density 0.87 %, stiffness 6 %, fixity 0.06.
    expect(fit.linearDensityKgPerM.standardUncertainty / fit.linearDensityKgPerM.value).toBeLessThan(0.01);
    expect(fit.fixity.standardUncertainty).toBeLessThan(0.08);
  });

  it('first partials alone never part stiffness from fixity, of however many forces and spans', () => {
    const { ids, fit } = told({ spansM: [0.06, 0.24], forcesN: [3, 6, 12, 24], partials: 1 });
    expect(ids).toContain('stiffness-and-fixity');
    expect(ids).not.toContain('density-and-ends');
    // Their product shows all the same.
    const { low, value, high } = fit.endEffect;
    expect((high - low) / (2 * value)).toBeLessThan(0.3);
    expect(told({ spansM: [0.06, 0.24], forcesN: [3, 6, 12, 24], partials: 3 }).ids).not.toContain('stiffness-and-fixity');
  });

  it('names ends that hold the more the less they are pulled', () => {
    // κ of the ends the same at every force: φ = κ/(κ + sqrt(EI T)), 0.5 at 8 N
    const forcesN = [2, 5, 10, 25];
    const parts = forcesN.map((forceN, i) =>
      readBench(
        { ...createRandom(i), gaussian: () => 0 },
        { ...BELT, fixity: 1 / (1 + Math.sqrt(forceN / 8)) },
        { spansM: [0.06], forcesN: [forceN], partials: 3 },
      ),
    );
    const data: BenchData = {
      ...parts[0]!,
      loads: parts.map(({ loads }) => loads[0]!),
      takes: parts.map(({ takes }, load) => ({ ...takes[0]!, load })),
    };
    const sharper = {
      ...data,
      takes: data.takes.map((take) => ({ ...take, partials: take.partials.map(fiveTimesSharper) })),
      loads: data.loads.map(({ forceN }) => ({ forceN: { value: forceN!.value, standardUncertainty: 1e-4 * forceN!.value } })),
    };
    expect(ids(benchFindings(sharper, fitted(sharper))).some((id) => id === 'trend-with-force' || id === 'does-not-fit')).toBe(true);
  });
});

describe('the next measurement', () => {
  it('for one span under one force is one that parts ends and density, and does so once it is made', () => {
    const plan = { spansM: [0.15], forcesN: [10], partials: 3 };
    const { data, fit } = told(plan);
    const [best] = nextMeasurements(data, fit, RATED_N);
    const { measurement } = best!;
    expect(measurement.kind).toBe('pluck');
    if (measurement.kind !== 'pluck') return;
    expect(best!.laterU95).toBeLessThan(0.4 * outlookNow(data, fit)!.laterU95);
    // Made: the same belt read with that span and force beside the first.
    const more = readBench(createRandom(8), BELT, { spansM: [measurement.spanLengthM], forcesN: [measurement.forceN], partials: 3 });
    const both: BenchData = {
      ...data,
      spans: measurement.isNewSpan ? [...data.spans, ...more.spans] : data.spans,
      loads: [...data.loads, ...more.loads],
      takes: [...data.takes, { ...more.takes[0]!, span: measurement.isNewSpan ? 1 : 0, load: 1 }],
    };
    const parted = fitted(both);
    expect(ids(benchFindings(both, parted))).not.toContain('density-and-ends');
    // What was foretold came true.
    const u = parted.linearDensityKgPerM.standardUncertainty / parted.linearDensityKgPerM.value;
    expect(u / best!.densityU).toBeGreaterThan(0.6);
    expect(u / best!.densityU).toBeLessThan(1.6);
  });

  it('is the higher partials where the first alone were told on one span', () => {
    const { data, fit } = told({ spansM: [0.08, 0.3], forcesN: [4, 24], partials: 1 });
    const kinds = nextMeasurements(data, fit, RATED_N);
    const higher = kinds.find(({ measurement }) => measurement.kind === 'higher-partials')!;
    expect(higher.stiffnessU).toBeLessThan(0.4 * outlookNow(data, fit)!.stiffnessU);
  });

  it('proposes no weight beyond what the belt is rated for', () => {
    const { data, fit } = told({ spansM: [0.15], forcesN: [3], partials: 3 });
    const forces = nextMeasurements(data, fit, 10).flatMap(({ measurement }) => (measurement.kind === 'pluck' ? [measurement.forceN] : []));
    expect(Math.max(...forces)).toBeLessThanOrEqual(9.5);
  });

  it('proposes weighing only where nobody has weighed', () => {
    const { data, fit } = told({ spansM: [0.08], forcesN: [5], partials: 3 });
    const value = 0.0081;
    const weighed = { ...data, prior: { ...data.prior, linearDensityKgPerM: { value, standardUncertainty: 0.004 * value } } };
    const proposes = (of: BenchData, by: typeof fit): boolean =>
      nextMeasurements(of, by).some(({ measurement }) => measurement.kind === 'weigh');
    expect(proposes(data, fit)).toBe(true);
    expect(proposes(weighed, fitted(weighed))).toBe(false);
  });
});

describe('laterU95Relative', () => {
  it('is the density alone where a span is long and tight', () => {
    const covariance = [1e-4, 0, 0, 0, 0.01, 0, 0, 0, 0.01];
    expect(laterU95Relative(BELT, covariance, 3, { spanLengthM: 20, forceN: 200 })).toBeCloseTo(1.96 * 0.01, 4);
  });
});

function fiveTimesSharper<P extends { frequencyHz: { value: number; standardUncertainty: number } }>(partial: P): P {
  return { ...partial, frequencyHz: { ...partial.frequencyHz, standardUncertainty: partial.frequencyHz.standardUncertainty / 20 } };
}
