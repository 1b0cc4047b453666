import fc from 'fast-check';
import { expect, test } from 'vitest';
import { forceFromPartial, partialHz } from '../../src/core/vibration/beam.ts';
import { forceOfString, fundamentalOfString } from '../../src/core/vibration/string.ts';

/** Spans that machines have, and far beyond: slackness 0.001 to 30. */
const span = fc
  .record({
    forceN: fc.double({ min: 0.05, max: 80, noNaN: true }),
    spanLengthM: fc.double({ min: 0.02, max: 0.8, noNaN: true }),
    linearDensityKgPerM: fc.double({ min: 0.003, max: 0.06, noNaN: true }),
    bendingStiffnessNm2: fc.double({ min: 1e-5, max: 5e-3, noNaN: true }),
    fixity: fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
  })
  .filter(({ forceN, spanLengthM, bendingStiffnessNm2 }) => bendingStiffnessNm2 < 900 * forceN * spanLengthM ** 2);
const mode = fc.integer({ min: 1, max: 8 });

test('the force of a partial’s frequency is the force that made it', () => {
  fc.assert(
    fc.property(span, mode, (given, number) => {
      const forceN = forceFromPartial({ ...given, number, partialHz: partialHz({ ...given, number }) });
      // Where the stiffness alone sets the frequency, a part in 1e15 of it is a larger part of the force.
      const slackness = Math.sqrt(given.bendingStiffnessNm2 / given.forceN) / given.spanLengthM;
      expect(Math.abs(forceN! / given.forceN - 1)).toBeLessThan(1e-9 * (1 + (number * slackness) ** 2));
    }),
  );
});

test('more force, more stiffness or firmer ends raise every partial; more length or mass lower it', () => {
  fc.assert(
    fc.property(span, mode, fc.double({ min: 1.01, max: 2, noNaN: true }), (given, number, factor) => {
      const [φ1, φ2] = given.fixity;
      const hz = partialHz({ ...given, number });
      const slack = 1e-12 * hz;
      expect(partialHz({ ...given, number, forceN: given.forceN * factor })).toBeGreaterThan(hz);
      expect(partialHz({ ...given, number, bendingStiffnessNm2: given.bendingStiffnessNm2 * factor })).toBeGreaterThan(hz);
      expect(partialHz({ ...given, number, fixity: [1 - (1 - φ1) / factor, φ2] })).toBeGreaterThanOrEqual(hz - slack);
      expect(partialHz({ ...given, number, spanLengthM: given.spanLengthM * factor })).toBeLessThan(hz);
      expect(partialHz({ ...given, number, linearDensityKgPerM: given.linearDensityKgPerM * factor })).toBeLessThan(hz);
    }),
  );
});

test('each partial lies between the hinged and the clamped one, and above the one before', () => {
  fc.assert(
    fc.property(span, mode, (given, number) => {
      const at = (fixity: readonly [number, number]) => partialHz({ ...given, fixity, number });
      const hz = at(given.fixity);
      expect(hz).toBeGreaterThanOrEqual(at([0, 0]) * (1 - 1e-12));
      expect(hz).toBeLessThanOrEqual(at([1, 1]) * (1 + 1e-12));
      expect(partialHz({ ...given, number: number + 1 })).toBeGreaterThan(hz);
    }),
  );
});

test('a string: twice the frequency is four times the force, and back again', () => {
  fc.assert(
    fc.property(span, ({ forceN, spanLengthM, linearDensityKgPerM }) => {
      const string = { spanLengthM, linearDensityKgPerM };
      const fundamentalHz = fundamentalOfString({ ...string, forceN });
      expect(forceOfString({ ...string, fundamentalHz })).toBeCloseTo(forceN, 9);
      expect(forceOfString({ ...string, fundamentalHz: 2 * fundamentalHz }) / forceN).toBeCloseTo(4, 9);
    }),
  );
});
