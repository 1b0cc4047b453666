/** The corpus's belts against laws and a simulation of another kind, so that their truth can be believed. */

import { expect, test } from 'vitest';
import { partialHz } from '../../../src/core/vibration/beam.ts';
import { modeShape, spanGrid } from '../../support/corpus/mode-shapes.ts';
import { normalModes } from '../../support/corpus/normal-modes.ts';
import { pickupOf, releasedSpan, shapeAt } from '../../support/corpus/pluck-shape.ts';
import { rung } from '../../support/corpus/ring.ts';
import { toneHz } from '../../support/heterodyne.ts';

const BELT = { forceN: 12, spanLengthM: 0.16, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 2e-4, fixity: [0.3, 0.8] as const };

test('shapes of different modes carry no common momentum, and meet the moment condition at the far end too', () => {
  const grid = spanGrid(BELT.spanLengthM);
  const modes = Array.from({ length: 12 }, (_, index) => modeShape(BELT, index + 1, grid));
  const overlap = (one: number, other: number) =>
    modes[one]!.shape.reduce(
      (sum, value, point) => sum + BELT.linearDensityKgPerM * value * modes[other]!.shape[point]! * grid.weightM[point]!,
      0,
    );
  for (let one = 0; one < 12; one++) {
    for (let other = 0; other < 12; other++) expect(overlap(one, other)).toBeCloseTo(one === other ? 1 : 0, 6);
  }
});

test('energy integrals of the shapes give back the frequencies of the frequency equation', () => {
  const even = { ripple: { toothPitchM: 0.01, massShare: 0, stiffnessShare: 0, slowShares: [], phase: 0 } };
  const { angularRadPerS, first } = normalModes(BELT, 10, even);
  expect(first).toBe(0);
  for (let number = 1; number <= 10; number++) {
    expect(Math.abs(angularRadPerS[number - 1]! / (2 * Math.PI) / partialHz({ ...BELT, number }) - 1)).toBeLessThan(3e-6);
  }
});

test('a gentle pluck rings at the partials of the frequency equation', () => {
  const modes = normalModes(BELT, 8);
  const pressure = rung(
    {
      modes,
      dampingPerS: new Float64Array(8).fill(3),
      released: releasedSpan(modes, { placeShare: 0.23, heightM: 1e-5, fingerWidthM: 0.008, letGoS: 0.0003 }),
      axialStiffnessN: 8000,
      sampleRateHz: 48_000,
      sampleCount: 48_000,
    },
    pickupOf(modes, { placeShare: 0.31, distanceM: 0.01, twistShare: 0 }),
  ).pressure;
  for (let number = 1; number <= 5; number++) {
    const nearHz = partialHz({ ...BELT, number });
    const measured = toneHz(pressure, { nearHz, firstS: 0.1, secondS: 0.3, lengthS: 0.2, sampleRateHz: 48_000 });
    expect(Math.abs(measured / nearHz - 1)).toBeLessThan(2e-5);
  }
});

/** Frequency of the first mode alone over its first swings, undamped, from where it crosses zero. */
function swingHz(forceN: number, axialStiffnessN: number, amplitudeM: number): number {
  const belt = { forceN, spanLengthM: 0.15, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1e-9, fixity: [0, 0] as const };
  const modes = normalModes(belt, 1);
  const still = { ofAcceleration: new Float64Array([1]), ofJerk: new Float64Array(1) };
  const middle = shapeAt(modes, 0.5)[0]!;
  const sampleRateHz = 192_000;
  const { pressure } = rung(
    {
      modes,
      dampingPerS: new Float64Array(1),
      released: new Float64Array([amplitudeM / middle]),
      axialStiffnessN,
      sampleRateHz,
      sampleCount: 40_000,
    },
    still,
  );
  const crossings: number[] = [];
  for (let index = 1; index < pressure.length; index++) {
    const [before, after] = [pressure[index - 1]!, pressure[index]!];
    if (before < 0 && after >= 0) crossings.push(index - 1 + before / (before - after));
  }
  return ((crossings.length - 1) * sampleRateHz) / (crossings.at(-1)! - crossings[0]!);
}

// Exact frequency of the cubic oscillator, f/f0 = π sqrt(1 + c a²)/(2 K(k)), k² = c a²/(2 (1 + c a²)), worked out to ten digits for a
// span of 150 mm: EA, T, a, relative rise.
test.each([
  [10_000, 30, 0.001, 0.013600062],
  [10_000, 30, 0.002, 0.053190668],
  [50_000, 30, 0.001, 0.066015477],
  [10_000, 5, 0.002, 0.28337158],
])('EA %d N at %d N swinging by %d m rings higher by %d', (axialStiffnessN, forceN, amplitudeM, rise) => {
  const rest = Math.sqrt(forceN / 0.0078) / 0.3;
  expect(Math.abs(swingHz(forceN, axialStiffnessN, amplitudeM) / rest - 1 - rise)).toBeLessThan(2e-4 * (1 + rise));
});

/** Explicit differences in place and time of μ ẅ = T(t) w'' − EI w'''', hinged at one end and clamped at the other; returns w at one point. */
function byDifferences(options: {
  readonly shape: (place: number) => number;
  readonly axialStiffnessN: number;
  readonly probe: number;
  readonly untilS: number;
}) {
  const { forceN: T, spanLengthM: L, linearDensityKgPerM: μ, bendingStiffnessNm2: EI } = BELT;
  const pieces = 160;
  const h = L / pieces;
  const dt = 0.4 / Math.sqrt((4 * 1.5 * T) / (μ * h * h) + (16 * EI) / (μ * h ** 4));
  let now = Float64Array.from({ length: pieces + 1 }, (_, index) => options.shape(index * h));
  let before = now.slice();
  const steps = Math.round(options.untilS / dt);
  const heard = new Float64Array(steps);
  for (let step = 0; step < steps; step++) {
    heard[step] = now[Math.round(options.probe * pieces)]!;
    let strain = 0;
    for (let index = 0; index < pieces; index++) strain += (now[index + 1]! - now[index]!) ** 2 / h;
    const tension = T + (options.axialStiffnessN / (2 * L)) * strain;
    const next = new Float64Array(pieces + 1);
    const at = (index: number) => (index < 0 ? -now[-index]! : index > pieces ? now[2 * pieces - index]! : now[index]!);
    for (let index = 1; index < pieces; index++) {
      const bend = (at(index + 1) - 2 * at(index) + at(index - 1)) / h ** 2;
      const fourth = (at(index + 2) - 4 * at(index + 1) + 6 * at(index) - 4 * at(index - 1) + at(index - 2)) / h ** 4;
      const force = (tension * bend - EI * fourth) / μ;
      next[index] = step === 0 ? now[index]! + 0.5 * dt * dt * force : 2 * now[index]! - before[index]! + dt * dt * force;
    }
    [before, now] = [now, next];
  }
  return { heard, dt };
}

test('modes with the tension of their amplitude move as a simulation by finite differences does', () => {
  const belt = { ...BELT, fixity: [0, 1] as const };
  const modes = normalModes(belt, 16);
  // The first three modes at once, so that the common tension couples them; 6 % glide at this amplitude.
  const released = new Float64Array(16);
  const share = [0.0016, -0.0005, 0.0003];
  const middle = shapeAt(modes, 0.4);
  share.forEach((height, mode) => {
    released[mode] = height / Math.abs(middle[mode]!);
  });
  const start = (place: number) => shapeAt(modes, place / BELT.spanLengthM).reduce((sum, shape, mode) => sum + shape * released[mode]!, 0);
  const untilS = 0.04;
  const { heard, dt } = byDifferences({ shape: start, axialStiffnessN: 6000, probe: 0.35, untilS });
  // A probe of displacement: pressure of ∓ω² q turned back into q by its own weight.
  const probe = shapeAt(modes, 0.35);
  const ofAcceleration = probe.map((value, mode) => -value / modes.angularRadPerS[mode]! ** 2);
  const { pressure } = rung(
    {
      modes,
      dampingPerS: new Float64Array(16),
      released,
      axialStiffnessN: 6000,
      sampleRateHz: 192_000,
      sampleCount: Math.round(untilS * 192_000),
    },
    { ofAcceleration, ofJerk: new Float64Array(16) },
  );
  let [difference, power] = [0, 0];
  for (let index = 0; index < pressure.length; index++) {
    const step = index / 192_000 / dt;
    const low = Math.floor(step);
    if (low + 1 >= heard.length) break;
    const other = heard[low]! + (step - low) * (heard[low + 1]! - heard[low]!);
    difference += (pressure[index]! - other) ** 2;
    power += other ** 2;
  }
  // Second-order differences at 160 pieces put the modes some hundred thousandths off; over 6 swings that is a phase of a percent or two.
  expect(Math.sqrt(difference / power)).toBeLessThan(0.04);
});
