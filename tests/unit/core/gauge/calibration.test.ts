/** What a calibration finds in readings made from a law that is known. Forces and readings are invented. */

import { describe, expect, it } from 'vitest';
import { type Calibration, type CalibrationRequest, calibrate } from '../../../../src/core/gauge/calibration.ts';
import { convert } from '../../../../src/core/gauge/convert.ts';
import type { LoadedReading } from '../../../../src/core/gauge/loaded-reading.ts';
import { checkedChart } from '../../../../src/core/gauge/maker-chart.ts';
import { suspicionsOf } from '../../../../src/core/gauge/suspicions.ts';
import { createRandom } from '../../../../src/core/math/random.ts';

const LOADS = [3, 6, 9, 12, 15, 18];

interface Making {
  readonly law: (forceN: number) => number;
  readonly loads?: readonly number[];
  readonly repeats?: number;
  readonly scatter?: number;
  readonly directions?: boolean;
  readonly series?: boolean;
  readonly seed?: number;
  readonly change?: (row: LoadedReading) => LoadedReading;
}

function run({
  law,
  loads = LOADS,
  repeats = 3,
  scatter = 0.01,
  directions = false,
  series = false,
  seed = 1,
  change = (row) => row,
}: Making) {
  const random = createRandom(seed);
  const rows: LoadedReading[] = [];
  for (let k = 1; k <= repeats; k++) {
    for (const direction of directions ? (['up', 'down'] as const) : [undefined]) {
      for (const forceN of loads) {
        const reading = Number((law(forceN) + scatter * random.gaussian()).toFixed(4));
        rows.push(change({ row: rows.length + 1, reading, forceN, direction, series: series ? String(k) : undefined }));
      }
    }
  }
  return rows;
}

function proved(rows: readonly LoadedReading[], more: Partial<CalibrationRequest> = {}): Calibration {
  const found = calibrate({ rows, toleranceRelative: 0.2, ...more });
  if (found.kind !== 'calibration') throw new Error(found.why);
  return found;
}

const force = (calibration: Calibration, reading: number) => {
  const found = convert(calibration, reading);
  if (found.kind !== 'converted') throw new Error(found.why);
  return found.force;
};

describe('the curve', () => {
  it.each([
    ['line', (F: number) => 0.3 + 0.2 * F],
    ['quadratic', (F: number) => 0.3 + 0.3 * F - 0.004 * F * F],
    ['saturating', (F: number) => 0.3 + (9 * F) / (F + 8)],
    ['spline', (F: number) => F / 4 + 0.6 * Math.sin(F / 3.5)],
  ])('is a %s where the law is one', (kind, law) => {
    const loads = [2, 4, 6, 8, 10, 12, 14, 16, 18, 20];
    const calibration = proved(run({ law, loads }));
    expect(calibration.fit.curve.kind).toBe(kind);
    for (const truth of [5, 9, 13]) {
      const { lowN, highN, forceN } = force(calibration, law(truth));
      expect(forceN).toBeCloseTo(truth, 0);
      expect(lowN).toBeLessThan(truth);
      expect(highN).toBeGreaterThan(truth);
    }
  });

  it('takes readings that fall with the force', () => {
    const law = (F: number) => 9 - 0.2 * F;
    const calibration = proved(run({ law }));
    expect(calibration.direction).toBe(-1);
    expect(force(calibration, law(10)).forceN).toBeCloseTo(10, 1);
    expect(convert(calibration, 8.9)).toMatchObject({ kind: 'refused', why: 'below-loads' });
    expect(convert(calibration, 1)).toMatchObject({ kind: 'refused', why: 'above-loads' });
  });

  it('goes through the origin where asked', () => {
    const calibration = proved(run({ law: (F) => 0.2 * F }), { throughOrigin: true });
    expect(calibration.fit.curve.names).toEqual(['b1']);
    expect(calibration.fit.curve.reading(0)).toBe(0);
  });

  it('says why there is none', () => {
    const why = (rows: readonly LoadedReading[], more: Partial<CalibrationRequest> = {}) => {
      const found = calibrate({ rows, toleranceRelative: 0.2, ...more });
      return found.kind === 'no-calibration' ? found.why : 'calibration';
    };
    const row = (reading: number, forceN: number, i = 1): LoadedReading => ({ row: i, reading, forceN });
    expect(why([row(1, 2), row(2, 3)])).toBe('too-few-rows');
    expect(why([row(1, 2), row(1.1, 2), row(1.2, 2)])).toBe('one-force');
    expect(why([row(1, 1), row(2, 2), row(3, 3e300)])).toBe('beyond-gauges');
    expect(why([row(1, 1), row(2, 2), row(-1e300, 3)])).toBe('beyond-gauges');
    expect(why([row(1, 0), row(2, 1e-12), row(3, 2e-12)])).toBe('beyond-gauges');
    expect(why([row(1, 1), row(2, 2), row(3, 2 + 1e-12)])).toBe('forces-too-close');
    expect(why([row(1, 2), row(1, 3), row(1, 4)])).toBe('all-alike');
    expect(why([row(1, 2), row(1.1, 2), row(2, 3)], { kind: 'quadratic' })).toBe('too-few-for-curve');
    expect(why(run({ law: (F) => 4 - (F - 10) ** 2 / 50 }), { kind: 'quadratic' })).toBe('turns-back');
  });
});

describe('what weights share', () => {
  const law = (F: number) => 0.2 * F;

  it('does not shrink with repeats: scale, gravity, tare', () => {
    const few = proved(run({ law, repeats: 3 }), { shared: { relative: 0.05, offsetN: 0 } });
    const many = proved(run({ law, repeats: 30 }), { shared: { relative: 0.05, offsetN: 0 } });
    for (const calibration of [few, many]) expect(force(calibration, 2).u95N).toBeGreaterThan(0.05 * 1.95 * 10);
    expect(force(many, 2).u95N).toBeLessThan(1.06);
  });

  it('nor does the doubt of a weight with the repeats that hang it', () => {
    const doubtful = (repeats: number) =>
      proved(run({ law, repeats, change: (row) => ({ ...row, forceUN: 0.3 }) }), { kind: 'line' }).prediction.doubtAt(10).u;
    const plain = proved(run({ law, repeats: 30 }), { kind: 'line' }).prediction.doubtAt(10).u;
    // Six weights with 0.3 N each leave the middle of a line 0.3/√6 N, however often each is read; slope 0.2.
    expect(doubtful(30)).toBeGreaterThan(0.8 * Math.hypot(0.2 * (0.3 / Math.sqrt(6)), plain));
    expect(doubtful(30) / doubtful(3)).toBeGreaterThan(0.8);
  });
});

describe('directions', () => {
  it('are both covered where both were run', () => {
    const gap = 0.3;
    const rows = run({
      law: (F) => 0.2 * F,
      directions: true,
      change: (row) => ({ ...row, reading: row.reading + (row.direction === 'up' ? gap / 2 : -gap / 2) }),
    });
    const calibration = proved(rows);
    const { lowN, highN } = force(calibration, 2);
    expect(lowN).toBeLessThan(10 - gap / 2 / 0.2);
    expect(highN).toBeGreaterThan(10 + gap / 2 / 0.2);
    expect(calibration.figures.reversibilityRelative).toBeCloseTo(gap / 0.2 / 3, 1); // the smallest load is the worst
  });
});

describe('stop and ceiling', () => {
  const law = (F: number) => Math.min(0.2 * F, 2.75);

  it('ends the verified range below a stop, which is no slip', () => {
    const calibration = proved(run({ law }));
    expect(calibration.slips).toEqual([]);
    expect(calibration.stop).toMatchObject({ heldFromN: 15, freeToN: 12, seen: 'plateau' });
    expect(calibration.stop!.reading).toBeCloseTo(2.75, 1);
    expect(convert(calibration, 2.75)).toMatchObject({ kind: 'refused', why: 'at-stop' });
    expect(calibration.verified).toMatchObject({ kind: 'verified', highEnds: 'stop' });
  });

  it('refuses a chart above the ceiling, point by point', () => {
    const chart = [
      { reading: 1, forceN: 5 },
      { reading: 2, forceN: 12 },
      { reading: 2.6, forceN: 13 },
      { reading: 3, forceN: 15 },
      { reading: 4, forceN: 20 },
    ];
    expect(checkedChart(proved(run({ law })), chart).map(({ kind }) => kind)).toEqual(['holds', 'off', 'unproved', 'refused', 'refused']);
    const byBuild = checkedChart(proved(run({ law: (F) => 0.2 * F })), chart, 3.5);
    expect(byBuild.map(({ kind }) => kind)).toEqual(['holds', 'off', 'holds', 'holds', 'refused']);
  });

  it('by the build of the gauge, even where no load reached it', () => {
    const calibration = proved(run({ law: (F) => 0.2 * F }), { ceilingReading: 3 });
    expect(calibration.verified).toMatchObject({ highEnds: 'ceiling' });
    expect(convert(calibration, 3.1)).toMatchObject({ kind: 'refused', why: 'at-ceiling' });
  });

  it('of a saturating curve with an interval', () => {
    const calibration = proved(run({ law: (F) => (9 * F) / (F + 6), loads: [1, 2, 4, 8, 12, 18, 24], scatter: 0.02 }));
    expect(calibration.fit.curve.kind).toBe('saturating');
    expect(checkedChart(calibration, [{ reading: 9.6, forceN: 100 }])[0]).toMatchObject({ kind: 'refused', why: 'asymptote' });
    expect(checkedChart(calibration, [{ reading: 8, forceN: 100 }])[0]).toMatchObject({ kind: 'unproved' });
  });
});

describe('tolerance', () => {
  it('cuts the range where the doubt exceeds it', () => {
    const rows = run({ law: (F) => 0.2 * F, scatter: 0.1, loads: [1, 3, 6, 9, 12, 15, 18] });
    const wide = proved(rows, { toleranceRelative: 0.5 });
    const strict = proved(rows, { toleranceRelative: 0.1 });
    if (wide.verified.kind !== 'verified' || strict.verified.kind !== 'verified') throw new Error('nowhere');
    expect(strict.verified.lowEnds).toBe('tolerance');
    expect(strict.verified.forceLowN).toBeGreaterThan(wide.verified.forceLowN);
    const end = force(strict, strict.verified.readingLow);
    expect(end.u95N / end.forceN).toBeCloseTo(0.1, 3);
    expect(convert(strict, strict.verified.readingLow - 0.1)).toMatchObject({ kind: 'refused', why: 'too-doubtful' });
    expect(proved(rows, { toleranceRelative: 0.001 }).verified).toEqual({ kind: 'nowhere' });
  });
});

describe('mistakes at the rig', () => {
  const law = (F: number) => 0.1 + 0.2 * F;
  const kinds = (rows: readonly LoadedReading[]) => suspicionsOf(proved(rows), rows);

  it('a sound run raises none', () => {
    for (let seed = 1; seed <= 10; seed++) {
      expect(kinds(run({ law, loads: [0, ...LOADS], directions: true, series: true, seed }))).toEqual([]);
    }
  });

  it('a hook that nobody weighed', () => {
    const rows = run({ law: (F) => law(F > 0 ? F + 0.8 : 0), loads: [0, ...LOADS] });
    const [found] = kinds(rows);
    expect(found).toMatchObject({ kind: 'unweighed' });
    if (found?.kind === 'unweighed') expect(found.forceN).toBeCloseTo(0.8, 1);
  });

  it('a tare forgotten in one series', () => {
    const [found] = kinds(
      run({ law, series: true, repeats: 4, change: (row) => (row.series === '3' ? { ...row, reading: row.reading + 0.2 * 0.5 } : row) }),
    );
    expect(found).toMatchObject({ kind: 'series-offset', series: '3' });
    if (found?.kind === 'series-offset') expect(found.forceN).toBeCloseTo(0.5, 1);
  });

  it('the gauge elsewhere on the span in one series', () => {
    const [found] = kinds(
      run({
        law: (F) => 0.2 * F,
        series: true,
        repeats: 4,
        change: (row) => (row.series === '2' ? { ...row, reading: row.reading * 1.06 } : row),
      }),
    );
    expect(found).toMatchObject({ kind: 'series-scale', series: '2' });
    if (found?.kind === 'series-scale') expect(found.relative).toBeCloseTo(0.06, 1);
  });

  it('a belt that holds on to its roller', () => {
    const [found] = kinds(
      run({
        law: (F) => 0.2 * F,
        directions: true,
        change: (row) => ({ ...row, reading: row.reading * (row.direction === 'up' ? 0.97 : 1.03) }),
      }),
    );
    expect(found).toMatchObject({ kind: 'friction' });
    if (found?.kind === 'friction') expect(found.relative).toBeCloseTo(0.06, 2);
  });

  it('a weight that is another one', () => {
    const [found] = kinds(
      run({
        law,
        loads: [3, 5, 7, 9, 11, 13, 15],
        change: (row) => (row.forceN === 9 ? { ...row, reading: row.reading + 0.2 * 0.6 } : row),
      }),
    );
    expect(found).toMatchObject({ kind: 'wrong-weight', forceN: 9 });
    if (found?.kind === 'wrong-weight') expect(Math.abs(found.offN - 0.6)).toBeLessThan(3 * (0.01 / 0.2) * Math.sqrt(1 / 3 + 1 / 6)); // means of three against a line of eighteen
  });
});
