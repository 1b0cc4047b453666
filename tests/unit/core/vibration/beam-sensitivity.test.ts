import { expect, test } from 'vitest';
import { type BeamSpan, forceFromPartial, partialHz } from '../../../../src/core/vibration/beam.ts';
import { forceSlopes, stretchAt } from '../../../../src/core/vibration/beam-sensitivity.ts';

interface TestedSpan extends BeamSpan {
  readonly forceN: number;
}

const SPANS: readonly TestedSpan[] = [
  { forceN: 10, spanLengthM: 0.15, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1.2e-4, fixity: [0.5, 0.5], number: 1 },
  { forceN: 5, spanLengthM: 0.06, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 2e-4, fixity: [0.3, 0.9], number: 1 },
  { forceN: 5, spanLengthM: 0.06, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 2e-4, fixity: [0.3, 0.9], number: 4 },
  { forceN: 0.3, spanLengthM: 0.04, linearDensityKgPerM: 0.0117, bendingStiffnessNm2: 5e-4, fixity: [0.7, 0.05], number: 1 },
];

test.each(SPANS)('slopes agree with differences of the solver: $forceN N, $spanLengthM m, partial $number', (span) => {
  const heardHz = partialHz(span);
  const lnForce = (change: Partial<TestedSpan> & { factor?: number }) =>
    Math.log(forceFromPartial({ ...span, ...change, partialHz: heardHz * (change.factor ?? 1) })!);
  const h = 1e-4;
  const central = (at: (sign: number) => Parameters<typeof lnForce>[0]) => (lnForce(at(h)) - lnForce(at(-h))) / (2 * h);
  const slopes = forceSlopes(span);
  const [φ1, φ2] = span.fixity;
  const expected = [
    [slopes.perLnLinearDensity, central((d) => ({ linearDensityKgPerM: span.linearDensityKgPerM * Math.exp(d) }))],
    [slopes.perLnSpanLength, central((d) => ({ spanLengthM: span.spanLengthM * Math.exp(d) }))],
    [slopes.perLnBendingStiffness, central((d) => ({ bendingStiffnessNm2: span.bendingStiffnessNm2 * Math.exp(d) }))],
    [slopes.perFixity[0], central((d) => ({ fixity: [φ1 + d, φ2] }))],
    [slopes.perFixity[1], central((d) => ({ fixity: [φ1, φ2 + d] }))],
    [slopes.perLnFrequency, central((d) => ({ factor: Math.exp(d) }))],
  ] as const;
  for (const [slope, difference] of expected) expect(Math.abs(slope - difference)).toBeLessThan(2e-6 * (1 + Math.abs(difference)));
});

test('ends and stiffness of a string count for nothing', () => {
  const slopes = forceSlopes({ ...SPANS[0]!, bendingStiffnessNm2: 0 });
  expect(slopes).toEqual({
    perLnLinearDensity: 1,
    perLnSpanLength: 2,
    perLnBendingStiffness: -0,
    perFixity: [-0, -0],
    perLnFrequency: 2,
  });
});

test('the stretch of a hinged span has a closed form: ½ ln(1 + n² π² ε²)', () => {
  for (const number of [1, 3]) {
    const slackness = 0.07;
    const B = (number * Math.PI * slackness) ** 2;
    const stretch = stretchAt({ slackness, fixity: [0, 0], number });
    expect(stretch.lnStretch).toBeCloseTo(Math.log1p(B) / 2, 12);
    expect(stretch.perLnSlackness).toBeCloseTo(B / (1 + B), 12);
  }
});
