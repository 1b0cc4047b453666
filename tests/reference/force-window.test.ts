/** Force windows of worked examples: computed by hand beside each, or by another way of reckoning. */
import { describe, expect, it } from 'vitest';
import { type Drive, driveForce, forceWindow, shaftLoadN } from '../../src/core/machine/force-window.ts';

const LBF_N = 4.4482216152605; // NIST SP 811, B.8
const INCH_M = 0.0254; // exact
const carriage: Drive = { kind: 'carriage', movingMassKg: 0.45, accelerationMPerS2: 8, frictionN: 0.9 };

describe('drive force', () => {
  it('is mass times acceleration and friction', () => {
    expect(driveForce(carriage)).toBeCloseTo(4.5, 12); // by hand: 0.45 · 8 + 0.9
  });

  it('of a crossed gantry is half of both directions together', () => {
    const x = { movingMassKg: 0.3, accelerationMPerS2: 10, frictionN: 1 };
    const y = { movingMassKg: 0.8, accelerationMPerS2: 5, frictionN: 2 };
    expect(driveForce({ kind: 'crossed-gantry', x, y })).toBeCloseTo(5, 12); // by hand: (0.3 · 10 + 1 + 0.8 · 5 + 2)/2
    // Another way: the sum of both belts' work over a small move equals the gantry's, for a move along x and one along y.
    const [Fx, Fy] = [4, 6];
    const [A, B] = [(Fx + Fy) / 2, (Fx - Fy) / 2];
    const beltTravel = (dx: number, dy: number) => [dx + dy, dx - dy] as const;
    for (const [dx, dy] of [
      [1, 0],
      [0, 1],
    ] as const) {
      const [a, b] = beltTravel(dx, dy);
      expect(A * a + B * b).toBeCloseTo(Fx * dx + Fy * dy, 12);
    }
  });

  it('of a turned pulley is twice the torque over the pitch diameter', () => {
    // T_e = 2 M / d, as belt handbooks print it (Gates Mectrol, Timing Belt Theory, on the effective tension; from memory): 10 lbf·in on 0.5 in is 40 lbf
    expect(driveForce({ kind: 'torque', torqueNm: 10 * LBF_N * INCH_M, pitchDiameterM: 0.5 * INCH_M }) / LBF_N).toBeCloseTo(40, 9);
  });
});

describe('window', () => {
  it('of a worked example has both ends as computed by hand', () => {
    const window = forceWindow({
      drive: carriage,
      loop: { loopLengthM: 1, shortestSideM: 0.06 },
      ratings: { beltForceN: 26, shaftLoadN: 20, bearingLoadN: 40 },
      slackMargin: 0.2,
    });
    // By hand. Share 0.94. Low: 4.5 · (0.94 + 0.2) = 5.13 N. Belt: 26 − 4.5 · 0.94 = 21.77 N. Bearing, half a turn: 40/2 − 4.23 = 15.77 N.
    // Shaft, half a turn: T1 + T2 = 20 and T1 − T2 = 4.5 give T1 = 12.25, less 4.23 is 8.02 N.
    expect(window.tightShare).toBeCloseTo(0.94, 12);
    expect(window.lower[0].forceN).toBeCloseTo(5.13, 9);
    const [belt, shaft, bearing] = window.upper.map(({ forceN }) => forceN);
    expect([belt, shaft, bearing]).toEqual([expect.closeTo(21.77, 9), expect.closeTo(8.02, 9), expect.closeTo(15.77, 9)]);
    expect(window.outcome).toEqual({ kind: 'window', lowN: expect.closeTo(5.13, 9), highN: expect.closeTo(8.02, 9) });
  });

  it('agrees with two springs in a row, solved by themselves', () => {
    // A carriage between two spans of belt, EA the same: it gives way by u until the forces differ by F. k1 u + k2 u = F.
    const [L, near, F, pretension] = [1.4, 0.1, 6, 9];
    const EA = 15_000;
    const [k1, k2] = [EA / near, EA / (L - near)];
    const u = F / (k1 + k2);
    const slackNear = pretension - k1 * u;
    // What is left on the slack side at the lower bound is the margin times F, here nothing.
    const window = forceWindow({
      drive: { kind: 'carriage', movingMassKg: 1, accelerationMPerS2: F, frictionN: 0 },
      loop: { loopLengthM: L, shortestSideM: near },
      ratings: {},
      slackMargin: 0,
    });
    expect(window.lower[0].forceN).toBeCloseTo(pretension - slackNear, 9);
    expect(window.outcome).toMatchObject({ kind: 'window', highN: undefined });
  });

  it('loses half of the drive force only where both sides are equal', () => {
    const { tightShare } = forceWindow({ drive: carriage, loop: { loopLengthM: 1, shortestSideM: 0.5 }, ratings: {} });
    expect(tightShare).toBe(0.5);
  });

  it('says which two bounds leave none, and how much less drive force would', () => {
    const { outcome } = forceWindow({
      drive: { kind: 'carriage', movingMassKg: 1.2, accelerationMPerS2: 20, frictionN: 1 },
      loop: { loopLengthM: 1, shortestSideM: 0.05 },
      ratings: { beltForceN: 26, shaftLoadN: 60 },
    });
    expect(outcome).toMatchObject({ kind: 'none', needed: { name: 'slack-side' }, allowed: { name: 'belt' } });
    // By hand: F (0.95 + 0.2) = 26 − 0.95 F at F = 26/2.1 = 12.381 N, of 25 N a share of 0.49524
    expect(outcome.kind === 'none' && outcome.driveShare).toBeCloseTo(26 / 2.1 / 25, 6);
    const least = forceWindow({
      drive: carriage,
      loop: { loopLengthM: 1, shortestSideM: 0.05 },
      ratings: { leastForceN: 9, shaftLoadN: 12 },
    });
    expect(least.outcome).toMatchObject({
      kind: 'none',
      needed: { name: 'teeth' },
      allowed: { name: 'shaft' },
      driveShare: expect.any(Number),
    });
  });

  it('takes the centrifugal part of a fast belt to the lower bound', () => {
    const at = (beltSpeedMPerS: number) =>
      forceWindow({
        drive: carriage,
        loop: { loopLengthM: 1, shortestSideM: 0.5, linearDensityKgPerM: 0.008, beltSpeedMPerS },
        ratings: {},
      }).lower[0].forceN;
    expect(at(10) - at(0)).toBeCloseTo(0.8, 9); // μ v² = 0.008 · 10²
  });
});

describe('load on a shaft', () => {
  it('is the sum for half a turn, √2 of one for a quarter, and the cosine law between', () => {
    expect(shaftLoadN({ tightN: 12.25, slackN: 7.75, wrapRad: Math.PI })).toBeCloseTo(20, 12);
    expect(shaftLoadN({ tightN: 10, slackN: 10, wrapRad: Math.PI / 2 })).toBeCloseTo(10 * Math.SQRT2, 12);
    // By components: T1 along x, T2 turned round by 120° of wrap.
    const θ = (120 * Math.PI) / 180;
    const [x, y] = [9 - 5 * Math.cos(θ), 5 * Math.sin(θ)];
    expect(shaftLoadN({ tightN: 9, slackN: 5, wrapRad: θ })).toBeCloseTo(Math.hypot(x, y), 12);
  });
});
