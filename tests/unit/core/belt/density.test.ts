import { describe, expect, test } from 'vitest';
import { lengthOfTeeth, weighedDensity } from '../../../../src/core/belt/density.ts';
import { createRandom } from '../../../../src/core/math/random.ts';

const PIECE = { kind: 'piece', lengthM: { value: 1, standardUncertainty: 0.0003 }, massKg: 0.0078, scaleStepKg: 0.0001 } as const;

test('a metre of 7.8 g is 7.8 g/m, and air hides less than a thousandth', () => {
  const { value } = weighedDensity(PIECE).linearDensityKgPerM;
  expect(value / 0.0078).toBeGreaterThan(1);
  expect(value / 0.0078).toBeLessThan(1.001);
});

// GUM (JCGM 100:2008), F.2.2.1: a display that steps by δ has u = 0.29 δ. Twice, for reading and zero: 0.041 g of 7.8 g is 0.52 %.
test('a scale of a tenth of a gram makes it 0.5 %', () => {
  const { linearDensityKgPerM: density, scaleShare } = weighedDensity(PIECE);
  expect((100 * density.standardUncertainty) / density.value).toBeCloseTo(0.53, 1);
  expect(scaleShare).toBeGreaterThan(0.95);
});

test('of a loop only the scale and the pitch count, of a short piece the cuts', () => {
  const loop = weighedDensity({ ...PIECE, kind: 'loop' }).linearDensityKgPerM;
  expect(loop.standardUncertainty).toBeLessThan(weighedDensity(PIECE).linearDensityKgPerM.standardUncertainty);
  const short = { ...PIECE, lengthM: { value: 0.05, standardUncertainty: 0.0003 }, massKg: 0.00039, scaleStepKg: 0.000001 };
  const { linearDensityKgPerM: density, scaleShare } = weighedDensity(short);
  expect(density.standardUncertainty / density.value).toBeGreaterThan(0.008);
  expect(scaleShare).toBeLessThan(0.1);
});

test('draws of ruler, cuts, rounding and zero scatter as it says', () => {
  const random = createRandom(8);
  const truth = 0.0078;
  const step = 0.0001;
  let inside = 0;
  const DRAWS = 4000;
  for (let i = 0; i < DRAWS; i++) {
    const length = 0.4 + 0.4 * random.uniform();
    const cuts = 0.0005 * (2 * random.uniform() - 1) + 0.0005 * (2 * random.uniform() - 1);
    const zero = step * (random.uniform() - 0.5);
    const shown = step * Math.round((truth * length * (1 - 0.0008) + zero) / step);
    const lengthM = { value: length + cuts + 0.0003 * random.gaussian(), standardUncertainty: 0.0003 };
    const { value, standardUncertainty } = weighedDensity({ kind: 'piece', lengthM, massKg: shown, scaleStepKg: step }).linearDensityKgPerM;
    if (Math.abs(value - truth) < 2 * standardUncertainty) inside++;
  }
  expect(inside / DRAWS).toBeGreaterThan(0.94);
});

describe('what cannot be weighed', () => {
  test.each([{ massKg: 0 }, { scaleStepKg: 0 }, { lengthM: { value: 0, standardUncertainty: 0 } }, { massKg: Number.NaN }])(
    '%o',
    (wrong) => {
      expect(() => weighedDensity({ ...PIECE, ...wrong })).toThrow(RangeError);
    },
  );
});

test('teeth make a length', () => {
  expect(lengthOfTeeth(100, 0.002)).toEqual({ value: 0.2, standardUncertainty: expect.closeTo(0.0002, 9) });
  expect(() => lengthOfTeeth(9.5, 0.002)).toThrow(RangeError);
});
