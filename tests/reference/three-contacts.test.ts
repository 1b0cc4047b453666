/** Force law of three contacts, the wire's force and the insertion rise, against a beam of finite elements and against published figures. */

import { describe, expect, it } from 'vitest';
import { insertionRiseN } from '../../src/core/gauge/insertion-rise.ts';
import { wireForceN } from '../../src/core/gauge/reference-wire.ts';
import { midSpanFactor, midSpanInsertionShare } from '../../src/core/gauge/rig.ts';
import { ceilingOf, sideForcePerDeflection, travelUnder } from '../../src/core/gauge/three-contact.ts';
import { solvePositiveDefinite } from '../../src/core/math/linear-solve.ts';

/**
 * Side force per deflection of a tensioned beam pressed aside in the middle between two supports, running on beyond them; half of it in
 * cubic elements with their bending and their geometric stiffness (Przemieniecki, Theory of Matrix Structural Analysis, from memory).
 */
function elementSideForce({ EI, T, baseM, runOnM }: { EI: number; T: number; baseM: number; runOnM: number }): number {
  const inside = 60;
  const beyond = runOnM > 0 ? 60 : 0;
  const lengths = [...Array<number>(inside).fill(baseM / 2 / inside), ...Array<number>(beyond).fill(runOnM / Math.max(1, beyond))];
  const n = 2 * (lengths.length + 1);
  const K = new Float64Array(n * n);
  for (const [i, h] of lengths.entries()) {
    const bend = [
      [12, 6 * h, -12, 6 * h],
      [6 * h, 4 * h * h, -6 * h, 2 * h * h],
      [-12, -6 * h, 12, -6 * h],
      [6 * h, 2 * h * h, -6 * h, 4 * h * h],
    ];
    const pull = [
      [36, 3 * h, -36, 3 * h],
      [3 * h, 4 * h * h, -3 * h, -h * h],
      [-36, -3 * h, 36, -3 * h],
      [3 * h, -h * h, -3 * h, 4 * h * h],
    ];
    for (let a = 0; a < 4; a++) {
      for (let b = 0; b < 4; b++) K[(2 * i + a) * n + 2 * i + b]! += (EI / h ** 3) * bend[a]![b]! + (T / (30 * h)) * pull[a]![b]!;
    }
  }
  // Held: the middle at 1 without slope, and the contact at 0. A belt that runs on for long tends to a level of its own.
  const held = new Set([0, 1, 2 * inside]);
  const free = Array.from({ length: n }, (_, k) => k).filter((k) => !held.has(k));
  const A = new Float64Array(free.length ** 2);
  for (const [a, row] of free.entries()) for (const [b, column] of free.entries()) A[a * free.length + b] = K[row * n + column]!;
  const w = solvePositiveDefinite(
    A,
    Float64Array.from(free, (row) => -K[row * n]!),
  )!;
  const reaction = K[0]! + free.reduce((sum, column, b) => sum + K[column]! * w[b]!, 0);
  return 2 * reaction;
}

describe('three contacts', () => {
  it.each([
    { EI: 1.2e-4, T: 10, baseM: 0.03 },
    { EI: 1.2e-4, T: 10, baseM: 0.08 },
    { EI: 1e-3, T: 5, baseM: 0.04 },
    { EI: 5e-5, T: 40, baseM: 0.06 },
  ])('side force of EI $EI at $T N over $baseM m as the elements have it', ({ EI, T, baseM }) => {
    const runOnM = 25 * Math.sqrt(EI / T);
    const ours = sideForcePerDeflection({ forceN: T, baseM, bendingStiffnessNm2: EI });
    expect(ours / elementSideForce({ EI, T, baseM, runOnM })).toBeCloseTo(1, 4);
  });

  it('a limp belt has F = 4 T d/b', () => {
    // SDP/SI, Handbook of Design and Components: deflection 1/64 of the span takes a sixteenth of the force, 4 · 1/64.
    expect(sideForcePerDeflection({ forceN: 16, baseM: 0.064, bendingStiffnessNm2: 0 }) * 0.001).toBeCloseTo(1, 12);
  });

  it('saturates as p F/(F + k b/4), and meets its stop where the law says', () => {
    const build = { baseM: 0.06, reachM: 0.004, springNPerM: 800, travelM: 0.003 };
    const Fh = (800 * 0.06) / 4;
    expect(travelUnder({ ...build, travelM: 0.004 }, 9)).toBeCloseTo((0.004 * 9) / (9 + Fh), 12);
    const { why, forceN } = ceilingOf(build);
    expect(why).toBe('stop');
    expect(travelUnder(build, forceN! * 0.999)).toBeLessThan(0.003);
    expect(travelUnder(build, forceN! * 1.001)).toBe(0.003);
    expect(ceilingOf({ ...build, travelM: 0.004 })).toEqual({ why: 'level', travelM: 0.004 });
  });
});

describe('reference wire', () => {
  it('a wire on two supports bends as the elements have it: F = 48 EI d/b³, the force of a limp belt 12 EI/b²', () => {
    const EI = (206e9 * Math.PI * 0.001 ** 4) / 64;
    const side = elementSideForce({ EI, T: 0, baseM: 0.06, runOnM: 0 });
    expect(side / ((48 * EI) / 0.06 ** 3)).toBeCloseTo(1, 8);
    const wire = wireForceN({
      diameterM: { value: 0.001, standardUncertainty: 5e-6 },
      youngPa: { value: 206e9, standardUncertainty: 0 },
      baseM: { value: 0.06, standardUncertainty: 0 },
    });
    expect(side).toBeCloseTo((4 * wire.value) / 0.06, 3);
    expect(wire.value).toBeCloseTo(33.7, 1); // 1 mm of steel over 60 mm: some 33 N
    expect(wire.standardUncertainty / wire.value).toBeCloseTo(4 * 0.005, 4);
  });
});

describe('insertion rise', () => {
  // EA 2 d²/(s L) of a trapped span; the exact path is shorter by (d/s)² of it.
  it.each([
    [9800, 30, 150, 2.34375, 4.784],
    [9800, 30, 60, 1, 5.4429],
    [50000, 30, 60, 1, 27.7701],
    [13000, 50, 100, 1.5625, 6.3461],
  ])('EA %d N, %d N, %d mm pressed in by %d mm: %d N', (EA, forceN, spanMm, deflectionMm, rise) => {
    const found = insertionRiseN({
      deflectionM: { value: deflectionMm / 1000, standardUncertainty: 0 },
      baseM: spanMm / 1000,
      axialStiffnessN: { value: EA, standardUncertainty: 0 },
      givingLengthM: { value: spanMm / 1000, standardUncertainty: 0 },
    });
    expect(found.value / rise).toBeCloseTo(1, 3);
    if (spanMm === 60) expect([0.18, 0.93].some((share) => Math.abs(found.value / forceN - share) < 0.01)).toBe(true);
  });

  it('halves where the frame gives as much as the belt, and carries the doubts', () => {
    const belt = { value: 10_000, standardUncertainty: 1000 };
    const told = { baseM: 0.06, axialStiffnessN: belt, givingLengthM: { value: 0.3, standardUncertainty: 0 } };
    const rigid = insertionRiseN({ ...told, deflectionM: { value: 0.001, standardUncertainty: 0.0001 } });
    const giving = insertionRiseN({ ...told, deflectionM: { value: 0.001, standardUncertainty: 0 }, frameStiffnessNPerM: 10_000 / 0.3 });
    expect(giving.value / rigid.value).toBeCloseTo(0.5, 9);
    expect(rigid.standardUncertainty / rigid.value).toBeCloseTo(Math.hypot(0.1, 0.2), 2);
  });
});

describe('weight at mid-span', () => {
  it('each half carries half of the weight: statics', () => {
    // 200 mm half distance, 10 mm sag: the slope is 1/√401 of each half's length, so that T = m g √401/2.
    expect(midSpanFactor(0.2, 0.01)).toBeCloseTo(Math.sqrt(401) / 2, 12);
  });

  it('a gauge pressed in by 1 mm over 60 mm raises it by about 3 % there', () => {
    const sag = { halfDistanceM: { value: 0.2, standardUncertainty: 0 }, sagM: { value: 0.01, standardUncertainty: 0 } };
    expect(midSpanInsertionShare(sag, (2 * 0.001 ** 2) / 0.06)).toBeCloseTo(0.035, 2);
  });
});
