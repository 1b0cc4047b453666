import { describe, expect, test } from 'vitest';
import { referenceValues } from '../../shared/reference-values.ts';
import { forceBudget } from '../../src/core/force/budget.ts';
import { forceFromPartial, partialHz } from '../../src/core/vibration/beam.ts';
import { forceSlopes } from '../../src/core/vibration/beam-sensitivity.ts';

const { clampedBeam, heldBeam, beamWithoutForce, stiffWire } = referenceValues;

/** f_n over the string's first partial, on a span whose string rings at 1 Hz. */
function ratio(slackness: number, fixity: readonly [number, number], number: number): number {
  return partialHz({ forceN: 4, spanLengthM: 1, linearDensityKgPerM: 1, bendingStiffnessNm2: 4 * slackness ** 2, fixity, number });
}

describe('ratios to the string, from arithmetic of 30 digits', () => {
  test.each(clampedBeam.rows)('clamped, slackness $slackness', ({ slackness, ratios }) => {
    // Twelve digits are given; half of the last one, in the largest.
    ratios.forEach((expected, i) => {
      expect(Math.abs(ratio(slackness, [1, 1], i + 1) / expected - 1)).toBeLessThan(1e-10);
    });
  });

  test.each(heldBeam.rows)('ends $fixity, slackness $slackness', ({ slackness, fixity, ratios }) => {
    ratios.forEach((expected, i) => {
      expect(Math.abs(ratio(slackness, fixity, i + 1) / expected - 1)).toBeLessThan(1e-10);
    });
  });
});

// Roots of cos b cosh b = 1, 14 digits; the force that is left moves them by less than 1e-10.
test('a clamped beam whose force is all but nothing rings as the beam without force', () => {
  beamWithoutForce.clampedRoots.forEach((root, i) => {
    const span = { forceN: 1e-9, spanLengthM: 1, linearDensityKgPerM: 1, bendingStiffnessNm2: 1, fixity: [1, 1] as const };
    const b = Math.sqrt(2 * Math.PI * partialHz({ ...span, number: i + 1 }));
    expect(Math.abs(b - root)).toBeLessThan(1e-9);
  });
});

// R. W. Young, J. Acoust. Soc. Am. 24 (1952) 267: two digits of the coefficient are printed, 3.404e13 follows from his Q/ρ.
test('a hinged steel wire is as inharmonic as Young found it', () => {
  const [diameterM, lengthM, frequencyHz, density] = [0.001, 0.62, 261.6, 7850];
  const linearDensityKgPerM = (density * Math.PI * diameterM ** 2) / 4;
  const span = {
    forceN: 4 * linearDensityKgPerM * (lengthM * frequencyHz) ** 2,
    spanLengthM: lengthM,
    linearDensityKgPerM,
    bendingStiffnessNm2: (stiffWire.youngOverDensityM2PerS2 * density * Math.PI * diameterM ** 4) / 64,
    fixity: [0, 0] as const,
  };
  for (const number of [2, 4, 6]) {
    const cents = 1200 * Math.log2(partialHz({ ...span, number }) / (number * frequencyHz));
    const printed = (stiffWire.coefficient * number ** 2 * (100 * diameterM) ** 2) / (frequencyHz ** 2 * (100 * lengthM) ** 4);
    expect(Math.abs(cents / printed - 1)).toBeLessThan(stiffWire.relativeTolerance);
  }
});

describe('values computed with 30 digits for one belt: 7.8 g/m', () => {
  const long = { spanLengthM: 0.15, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1.2e-4, fixity: [0.5, 0.5] as const };
  const short = { spanLengthM: 0.06, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 2e-4, fixity: [0.3, 0.9] as const };

  test('partials 1 to 4 in hertz', () => {
    const partials = (span: typeof long | typeof short, forceN: number) =>
      [1, 2, 3, 4].map((number) => partialHz({ ...span, forceN, number }));
    const expected = [
      [partials(long, 10), [122.48920086, 246.85900013, 374.93747413, 508.45432901]],
      [partials(short, 5), [253.11976965, 568.82845456, 986.19550213, 1523.8242744]],
    ] as const;
    for (const [found, values] of expected) {
      for (const [i, value] of values.entries()) expect(found[i]! / value).toBeCloseTo(1, 9);
    }
  });

  test('change of ln T at the first partial by ln μ, ln L, ln EI and each end', () => {
    const slopes = (span: typeof long | typeof short, forceN: number) => {
      const s = forceSlopes({ ...span, forceN, number: 1 });
      return [s.perLnLinearDensity, s.perLnSpanLength, s.perLnBendingStiffness, ...s.perFixity];
    };
    const expected = [
      [slopes(long, 10), [1.0295733, 2.1182931, -0.0295733, -0.0487185, -0.0487185]],
      [slopes(short, 5), [1.2892116, 3.1568462, -0.2892116, -0.2859028, -0.3278954]],
    ] as const;
    for (const [found, values] of expected) {
      for (const [i, value] of values.entries()) expect(found[i]).toBeCloseTo(value, 6);
    }
  });

  test.each([
    [{ ...long, fixity: [0, 0] as const, partialHz: 120, number: 1 }, 10.05616211],
    [{ ...long, partialHz: 120, number: 1 }, 9.585893943],
    [{ ...long, fixity: [1, 1] as const, partialHz: 120, number: 1 }, 9.100437269],
    [{ ...long, bendingStiffnessNm2: 3e-4, fixity: [0, 1] as const, partialHz: 120, number: 1 }, 9.221908912],
    [{ ...long, spanLengthM: 0.05, fixity: [0.3, 0.9] as const, partialHz: 300, number: 1 }, 5.041391492],
    [{ ...long, spanLengthM: 0.05, fixity: [0.3, 0.9] as const, partialHz: 600, number: 2 }, 3.573502335],
  ])('force from one partial: %o', (span, forceN) => {
    expect(forceFromPartial(span)! / forceN).toBeCloseTo(1, 9);
  });

  test('first-order budget: 4.043650 % of 10 N', () => {
    // Each end on its own 0.5 ± 0.440959, ln EI ± 0.517236 (ln 6 / √12), density 2 %, span 0.5 mm, frequency 0.1 %.
    const end = [
      { at: 0.5 - 0.440959, weight: 0.5 },
      { at: 0.5 + 0.440959, weight: 0.5 },
    ];
    const lines = forceBudget({
      forceN: 10,
      span: {
        spanLengthM: 0.15,
        spanLengthRelativeU: 0.0005 / 0.15,
        linearDensityKgPerM: 0.0078,
        linearDensityRelativeU: 0.02,
        stiffness: [{ lnStiffness: Math.log(1.2e-4), widthLn: Math.log(6), weight: 1 }],
        ends: end.flatMap((one) =>
          end.map((two) => ({ fixity: [one.at, two.at] as const, width: [0, 0] as const, alike: false, weight: one.weight * two.weight })),
        ),
      },
      doubt: { withinRelative: 0.001, repeatabilityRelative: 0, amplitudeRelative: 0 },
    });
    const relativeU = Math.hypot(...lines.map((line) => line.forceUN)) / 10;
    expect(Math.abs(100 * relativeU - 4.04365)).toBeLessThan(5e-6);
  });
});
