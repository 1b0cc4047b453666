import { describe, expect, test } from 'vitest';
import { belts } from '../../../../shared/belts.ts';
import { beltKnowledge } from '../../../../src/core/belt/catalogue.ts';
import { centralSpan, knownSpan } from '../../../../src/core/force/known-span.ts';
import { ASSUMED_UNCERTAINTY, UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { spanOf, WEIGHED_BELT } from '../../../support/heard.ts';

test('without span or belt nothing is known', () => {
  expect(knownSpan({ ends: UNKNOWN_ENDS, belt: WEIGHED_BELT })).toBeUndefined();
  expect(knownSpan({ ends: UNKNOWN_ENDS, spanLengthM: { value: 0.1, standardUncertainty: 0.0005 } })).toBeUndefined();
});

test('uncertainties become relative, and a caller’s values stay as they were told', () => {
  const known = knownSpan(spanOf(0.2))!;
  expect(known).toMatchObject({ spanLengthM: 0.2, linearDensityKgPerM: 0.0078 });
  expect(known.spanLengthRelativeU).toBeCloseTo(0.0005 / 0.2, 15);
});

describe('the air that moves along', () => {
  // Density of air at 20 °C and 101.325 kPa, 1.204 kg/m³; a flat strip carries ρ π w²/4 per metre (potential flow, Lamb, Hydrodynamics, art. 71).
  const airKgPerM = (widthM: number) => (1.204 * Math.PI * widthM ** 2) / 4;

  const weighed = belts.map((entry) => {
    const { value } = entry.linearDensityKgPerM;
    const known = (standardUncertainty: number) =>
      knownSpan(spanOf(0.15, { ...beltKnowledge(entry), linearDensityKgPerM: { value, standardUncertainty } }))!.linearDensityRelativeU;
    return {
      airRelative: airKgPerM(entry.widthM) / value,
      exactlyU: known(0),
      usuallyU: known(ASSUMED_UNCERTAINTY.linearDensityRelative * value),
    };
  });

  test('is within two standard uncertainties of most belts of the catalogue, were they weighed without any doubt', () => {
    const covered = weighed.filter(({ airRelative, exactlyU }) => airRelative <= 2 * exactlyU);
    expect(covered.length).toBeGreaterThan(weighed.length / 2);
  });

  test('and within one of every belt that was weighed as well as people weigh', () => {
    for (const { airRelative, usuallyU } of weighed) expect(airRelative).toBeLessThan(usuallyU);
  });

  test('joins what is told of the density, and hardly counts beside a catalogue’s', () => {
    const relativeU = (standardUncertainty: number) =>
      knownSpan(spanOf(0.15, { ...WEIGHED_BELT, linearDensityKgPerM: { value: 0.0078, standardUncertainty } }))!.linearDensityRelativeU;
    const airAlone = relativeU(0);
    expect(relativeU(0.000156) ** 2 - airAlone ** 2).toBeCloseTo(0.02 ** 2, 12);
    expect(relativeU(0.00078) / 0.1).toBeLessThan(1.001);
  });
});

describe('the middle of what is known, for first-order propagation', () => {
  test('unknown ends: 0.5 ± 0.441 each, half alike', () => {
    const central = centralSpan(knownSpan(spanOf(0.15))!);
    // Variance of a third at 0, a third at 1, a third even between: 1/6 + 1/36.
    const variance = 1 / 6 + 1 / 36;
    expect(central.fixity).toEqual([expect.closeTo(0.5, 12), expect.closeTo(0.5, 12)]);
    expect(central.fixityU[0]).toBeCloseTo(Math.sqrt(variance), 12);
    expect(central.fixityU[1]).toBeCloseTo(Math.sqrt(variance), 12);
    expect(central.fixityCovariance).toBeCloseTo(variance / 2, 12);
  });

  test('ends that differ keep their own middle', () => {
    const ends = [
      { kind: 'between', low: 0.7, high: 1 },
      { kind: 'known', value: { value: 0.2, standardUncertainty: 0.05 } },
    ] as const;
    const central = centralSpan(knownSpan(spanOf(0.15, WEIGHED_BELT, { ends }))!);
    expect(central.fixity[0]).toBeCloseTo(0.85, 12);
    expect(central.fixity[1]).toBeCloseTo(0.2, 12);
    expect(central.fixityU[0]).toBeCloseTo(0.3 / Math.sqrt(12), 12);
    expect(central.fixityCovariance).toBeCloseTo(0, 12);
  });

  test('a range of stiffness: geometric middle, a little wider than even', () => {
    const central = centralSpan(knownSpan(spanOf(0.15))!);
    expect(central.bendingStiffnessNm2).toBeCloseTo(Math.sqrt(5e-5 * 3e-4), 12);
    expect(central.lnStiffnessU).toBeGreaterThan(Math.log(6) / Math.sqrt(12));
    expect(central.lnStiffnessU).toBeLessThan(0.65);
  });

  test('a belt without stiffness', () => {
    const belt = { ...WEIGHED_BELT, bendingStiffnessNm2: { kind: 'known', value: { value: 0, standardUncertainty: 0 } } } as const;
    const central = centralSpan(knownSpan(spanOf(0.15, belt))!);
    expect(central.bendingStiffnessNm2).toBe(0);
    expect(central.lnStiffnessU).toBe(0);
  });

  test('two known ends move each by itself', () => {
    const ends = [
      { kind: 'known', value: { value: 0.3, standardUncertainty: 0.05 } },
      { kind: 'known', value: { value: 0.6, standardUncertainty: 0.08 } },
    ] as const;
    const central = centralSpan(knownSpan(spanOf(0.15, WEIGHED_BELT, { ends }))!);
    // What lies beyond three standard deviations is cut off: 1 % of the spread.
    expect(central.fixity).toEqual([expect.closeTo(0.3, 9), expect.closeTo(0.6, 9)]);
    for (const [i, u] of [0.05, 0.08].entries()) expect(Math.abs(central.fixityU[i]! / u - 1)).toBeLessThan(0.02);
    expect(central.fixityCovariance).toBeCloseTo(0, 12);
  });

  test('a known stiffness keeps its value, its uncertainty as that of its logarithm', () => {
    const belt = {
      ...WEIGHED_BELT,
      bendingStiffnessNm2: { kind: 'known', value: { value: 1.2e-4, standardUncertainty: 2.4e-5 } },
    } as const;
    const central = centralSpan(knownSpan(spanOf(0.15, belt))!);
    expect(central.bendingStiffnessNm2 / 1.2e-4).toBeCloseTo(1, 9);
    expect(Math.abs(central.lnStiffnessU / 0.2 - 1)).toBeLessThan(0.02);
  });
});
