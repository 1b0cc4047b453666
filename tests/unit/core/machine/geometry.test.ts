import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BeltSection,
  cordRadiusM,
  freeSpans,
  pitchDiameterM,
  tangentSpan,
  type Wheel,
} from '../../../../src/core/machine/geometry.ts';
import { type BeltLoop, beltLoop, centreOfLoopM, loopLengthM, spanOfCentreM } from '../../../../src/core/machine/loop.ts';

/** 2 mm pitch: 1.52 mm thick, teeth 0.76 mm, cord 0.254 mm above their root. */
const BELT: BeltSection = { toothPitchM: 0.002, cordOverTipsM: 0.001014, backOverCordM: 0.000506 };
const pulley = (teeth: number, xM: number, yM = 0): Wheel => ({ kind: 'pulley', teeth, xM, yM });
const idler = (diameterM: number, touches: 'teeth' | 'back', xM: number, yM: number): Wheel => ({
  kind: 'idler',
  diameterM,
  touches,
  xM,
  yM,
});
const loopOf = (...wheels: readonly Wheel[]): BeltLoop => {
  const loop = beltLoop(wheels, BELT);
  if (loop.kind !== 'loop') throw new Error(loop.kind);
  return loop;
};

describe('free span between two wheels', () => {
  it('lies on both pitch circles and is square to their radii', () => {
    const [a, b] = [
      { xM: 0.01, yM: -0.02, radiusM: 0.0064 },
      { xM: 0.11, yM: 0.03, radiusM: -0.0191 },
    ];
    const span = tangentSpan(a, b)!;
    const d = { x: span.end.xM - span.start.xM, y: span.end.yM - span.start.yM };
    expect(Math.hypot(d.x, d.y)).toBeCloseTo(span.lengthM, 12);
    for (const [wheel, point] of [
      [a, span.start],
      [b, span.end],
    ] as const) {
      const r = { x: point.xM - wheel.xM, y: point.yM - wheel.yM };
      expect(Math.hypot(r.x, r.y)).toBeCloseTo(Math.abs(wheel.radiusM), 12);
      expect(r.x * d.x + r.y * d.y).toBeCloseTo(0, 12);
    }
  });

  it('is there only where the wheels leave room', () => {
    expect(tangentSpan({ xM: 0, yM: 0, radiusM: 0.02 }, { xM: 0.01, yM: 0, radiusM: 0.005 })).toBeUndefined();
    expect(freeSpans([pulley(20, 0), pulley(60, 0.012)], BELT)).toEqual({ kind: 'overlap', from: 0, to: 1 });
  });

  it('runs from a tangent point to the clamp at the carriage', () => {
    const spans = freeSpans([pulley(20, 0), { kind: 'clamp', xM: 0.13, yM: -0.0063662 }], BELT);
    // The clamp stands at the height of the belt: the span is the way from axis to clamp, along the belt.
    expect((spans as readonly { lengthM: number }[])[0]!.lengthM).toBeCloseTo(0.13, 6);
  });

  it('goes round a smooth idler on the cord, not on its rim', () => {
    expect(cordRadiusM(idler(0.01, 'back', 0, 0), BELT)).toBeCloseTo(-0.005506, 9);
    expect(cordRadiusM(idler(0.01, 'teeth', 0, 0), BELT)).toBeCloseTo(0.006014, 9);
  });

  it('does not change when all is moved and turned', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }), (turn, shift) => {
        const moved = (wheel: Wheel): Wheel => ({
          ...wheel,
          xM: shift + wheel.xM * Math.cos(turn) - wheel.yM * Math.sin(turn),
          yM: -shift + wheel.xM * Math.sin(turn) + wheel.yM * Math.cos(turn),
        });
        const wheels = [pulley(20, 0), idler(0.012, 'back', 0.06, 0.002), pulley(36, 0.12), idler(0.013, 'teeth', 0.05, 0.08)];
        const lengths = (list: readonly Wheel[]) => loopOf(...list).spans.map(({ lengthM }) => lengthM);
        const still = lengths(wheels);
        lengths(wheels.map(moved)).forEach((length, i) => {
          expect(length).toBeCloseTo(still[i]!, 9);
        });
      }),
      { numRuns: 40 },
    );
  });
});

describe('closed loop', () => {
  it('turns once round, over wheels inside and idlers on its back, either way in which they are named', () => {
    const wheels = [pulley(20, 0), idler(0.012, 'back', 0.06, 0.002), pulley(20, 0.12), pulley(20, 0.06, 0.09)];
    const loop = loopOf(...wheels);
    const [one, back, other, top] = loop.wrapsRad as [number, number, number, number];
    expect(one - back + other + top).toBeCloseTo(2 * Math.PI, 9);
    expect(loopOf(...wheels.toReversed()).lengthM).toBeCloseTo(loop.lengthM, 12);
    // An idler that presses from outside makes the way longer than the plain triangle would be.
    expect(loop.lengthM).toBeGreaterThan(loopOf(...wheels.filter(({ kind }) => kind === 'pulley')).lengthM);
  });

  it('says that wheels on the wrong side make no loop', () => {
    expect(beltLoop([idler(0.02, 'back', 0, 0), idler(0.02, 'back', 0.1, 0)], BELT)).toEqual({ kind: 'no-loop' });
    expect(beltLoop([pulley(20, 0), pulley(60, 0.01)], BELT)).toMatchObject({ kind: 'overlap' });
  });
});

describe('two pulleys', () => {
  /** An open note on parts: 20 and 20 teeth of 2 mm pitch at 149 mm have pitch diameters of 12.73 mm and a belt of 338 mm. */
  it('meets a published worked example', () => {
    expect(1000 * pitchDiameterM(20, 0.002)).toBeCloseTo(12.73, 2);
    expect(1000 * loopLengthM({ teeth: [20, 20], toothPitchM: 0.002 }, 0.149)).toBeCloseTo(338, 9);
    expect(1000 * loopOf(pulley(20, 0), pulley(20, 0.149)).lengthM).toBeCloseTo(338, 9);
    expect(spanOfCentreM({ teeth: [20, 20], toothPitchM: 0.002 }, 0.149)).toBeCloseTo(0.149, 12);
  });

  /**
   * SDP/SI handbook D790, eq. 1-3: span t = sqrt(CD² − ((PD − pd)/2)²). Figures by that formula and by
   * 2 sqrt(C² − (R − r)²) + π (R + r) + 2 (R − r) asin((R − r)/C), to the digit given.
   */
  it.each([
    { pitchMm: 2, teeth: [20, 60], centreMm: 100, spanMm: 99.186119, crossedMm: 96.703384, loopMm: 281.62334 },
    { pitchMm: 5, teeth: [16, 40], centreMm: 120, spanMm: 118.470434, crossedMm: 111.418602, loopMm: 383.046101 },
  ] as const)('meets the handbook formula: $teeth teeth of $pitchMm mm at $centreMm mm', (row) => {
    const pulleys = { teeth: row.teeth, toothPitchM: row.pitchMm / 1000 };
    expect(1000 * spanOfCentreM(pulleys, row.centreMm / 1000)!).toBeCloseTo(row.spanMm, 6);
    expect(1000 * loopLengthM(pulleys, row.centreMm / 1000)).toBeCloseTo(row.loopMm, 5);
    const radii = row.teeth.map((teeth) => pitchDiameterM(teeth, pulleys.toothPitchM) / 2);
    const crossed = tangentSpan({ xM: 0, yM: 0, radiusM: radii[0]! }, { xM: row.centreMm / 1000, yM: 0, radiusM: -radii[1]! })!;
    expect(1000 * crossed.lengthM).toBeCloseTo(row.crossedMm, 6);
  });

  /** A catalogue of technical timing belts: a = K + sqrt(K² − (d2 − d1)²/8), K = L/4 − 0.392699 (d1 + d2); an approximation, 11 ppm off here. */
  it('finds the centre distance of a loop as a catalogue formula does', () => {
    const pulleys = { teeth: [20, 60], toothPitchM: 0.002 } as const;
    const [d1, d2] = pulleys.teeth.map((teeth) => pitchDiameterM(teeth, 0.002)) as [number, number];
    const K = (141 * 0.002) / 4 - 0.392699 * (d1 + d2);
    const catalogue = K + Math.sqrt(K * K - (d2 - d1) ** 2 / 8);
    expect(centreOfLoopM(pulleys, 141)! / catalogue - 1).toBeCloseTo(0, 4);
    expect(1000 * loopLengthM(pulleys, centreOfLoopM(pulleys, 141)!)).toBeCloseTo(282, 9);
  });

  it('has no centre distance where the loop is too short', () => {
    expect(centreOfLoopM({ teeth: [20, 60], toothPitchM: 0.002 }, 60)).toBeUndefined();
    expect(centreOfLoopM({ teeth: [60, 60], toothPitchM: 0.002 }, 62)).toBeUndefined();
    expect(() => loopLengthM({ teeth: [20, 60], toothPitchM: 0.002 }, 0.01)).toThrow(/centre distance above/u);
  });
});
