import { describe, expect, it } from 'vitest';
import { longitudinalStiffness } from '../../../../src/core/belt/stretch.ts';
import { createRandom } from '../../../../src/core/math/random.ts';

const told = { gaugeLengthM: { value: 1, standardUncertainty: 0.0005 }, readingUM: 0.00005, forceScaleRelativeU: 0.001 };

describe('longitudinalStiffness', () => {
  it('meets the acceptance limit of an open-hardware bill of materials: 10 kg on 1 m stretch it by at most 10 mm, EA >= 9.8 kN', () => {
    const readings = [0, 5, 10].map((kg) => ({ forceN: kg * 9.80665, lengtheningM: 0.001 * kg }));
    const { value } = longitudinalStiffness({ ...told, readings })!.longitudinalStiffnessN;
    expect(value).toBeCloseTo(9806.65, 2);
  });

  it('does not care where the zero of the ruler is', () => {
    const readings = [2, 6, 12, 20].map((forceN) => ({ forceN, lengtheningM: 0.07 + forceN / 18_000 }));
    expect(longitudinalStiffness({ ...told, readings })!.longitudinalStiffnessN.value).toBeCloseTo(18_000, 3);
  });

  it('holds the truth in about 95 of 100 repeats', () => {
    let held = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const random = createRandom(seed);
      const readings = [2, 6, 10, 14, 18, 22, 24, 26].map((forceN) => ({
        forceN,
        lengtheningM: forceN / 12_000 + 0.00005 * random.gaussian(),
      }));
      const { value, standardUncertainty } = longitudinalStiffness({ ...told, readings })!.longitudinalStiffnessN;
      if (Math.abs(value - 12_000) < 2 * standardUncertainty) held++;
    }
    expect(held).toBeGreaterThanOrEqual(184);
  });

  it('says that a belt stiffens under load where the readings bend', () => {
    const readings = [2, 6, 10, 14, 18, 22].map((forceN) => ({ forceN, lengtheningM: forceN / 9000 - (forceN * forceN) / 900_000 }));
    const { changesFrom } = longitudinalStiffness({ ...told, readings, readingUM: 0.00002 })!;
    expect(changesFrom!.highN).toBeGreaterThan(1.3 * changesFrom!.lowN);
    const straight = readings.map(({ forceN }) => ({ forceN, lengtheningM: forceN / 9000 }));
    expect(longitudinalStiffness({ ...told, readings: straight })!.changesFrom).toBeUndefined();
  });

  it('is nothing for one force, or for a belt that gets shorter', () => {
    expect(longitudinalStiffness({ ...told, readings: [5, 5, 5].map((forceN) => ({ forceN, lengtheningM: 0.001 })) })).toBeUndefined();
    expect(
      longitudinalStiffness({ ...told, readings: [5, 10, 15].map((forceN) => ({ forceN, lengtheningM: -forceN / 1e4 })) }),
    ).toBeUndefined();
  });
});
