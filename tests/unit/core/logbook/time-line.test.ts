/** One machine over time: what a trend may count, pairs that drift apart, before and after an event, and the rows of the list. */

import { describe, expect, it } from 'vitest';
import { changeAt } from '../../../../src/core/logbook/compare.ts';
import { mismatches } from '../../../../src/core/logbook/mismatch.ts';
import { outlookOf } from '../../../../src/core/logbook/outlook.ts';
import { narrowed, type Row, rowsOf } from '../../../../src/core/logbook/rows.ts';
import { countedReadings, type LoggedReading, sharedUN } from '../../../../src/core/logbook/time-line.ts';
import { createRandom } from '../../../../src/core/math/random.ts';
import { DAY_S, event, reading, START_S } from './logged.ts';

describe('what a trend counts', () => {
  it('begins anew after a belt change or an adjustment of that belt, not of another', () => {
    const logged = [
      reading('a', 1, 8),
      event('belt-changed', 2, ['b']),
      reading('a', 3, 7.9),
      event('adjusted', 4, ['a']),
      reading('a', 5, 8.5),
      event('note', 6),
      reading('a', 7, 8.4),
    ];
    expect(countedReadings(logged, 'a').map(({ id }) => id)).toEqual(['a-5', 'a-7']);
    expect(countedReadings([...logged, event('adjusted', 8)], 'a')).toEqual([]);
  });

  it('leaves out what decides nothing', () => {
    const logged = [reading('a', 1, 8), reading('a', 2, 8, { grade: 'unusable' }), reading('a', 3, 8, { forceN: undefined })];
    expect(countedReadings(logged, 'a').map(({ id }) => id)).toEqual(['a-1']);
  });

  it('keeps apart what all readings share: 0.4 N at 95 % is 0.204 N, own part 0.3 % of 8 N', () => {
    expect(sharedUN([reading('a', 1, 8)])).toBeCloseTo(Math.sqrt((0.4 / 1.96) ** 2 - 0.024 ** 2), 10);
    expect(sharedUN([])).toBe(0);
  });
});

describe('mismatch', () => {
  it('is the other over the one, from readings taken together', () => {
    const found = mismatches([reading('a', 1, 8), reading('b', 1.1, 7.6), reading('b', 3, 7)], { oneId: 'a', otherId: 'b' });
    expect(found.length).toBe(1);
    expect(found[0]!.value).toBeCloseTo(-0.05, 12);
    expect(found[0]!.standardUncertainty).toBeCloseTo(0.95 * Math.hypot(0.003, 0.003), 12);
  });

  it('never reaches over a change of either belt', () => {
    const logged = [reading('a', 1, 8), event('adjusted', 1.05, ['b']), reading('b', 1.1, 9)];
    expect(mismatches(logged, { oneId: 'a', otherId: 'b' })).toEqual([]);
    const before = [reading('a', 0, 8), reading('b', 0.1, 7), ...logged];
    expect(mismatches(before, { oneId: 'a', otherId: 'b' })).toEqual([]);
    expect(mismatches(before, { oneId: 'a', otherId: 'b' }, { all: true }).length).toBe(1);
  });
});

describe('before and after', () => {
  const random = createRandom(21);
  const noisy = (day: number, force: number): LoggedReading => reading('a', day, force * (1 + 0.003 * random.gaussian()));

  it('finds a step and gives it an interval that holds it', () => {
    const days = [0, 2, 4, 6, 8, 10, 12, 14];
    let held = 0;
    for (let round = 0; round < 200; round++) {
      const change = changeAt(
        days.map((day) => noisy(day, day < 7 ? 8 : 7.6)),
        START_S + 7 * DAY_S,
      )!;
      if (Math.abs(change.differenceN + 0.4) <= change.u95N) held++;
      expect(change.verdict).toBe('fell');
    }
    expect(held).toBeGreaterThan(184); // 95 % of 200 less three standard deviations of a count
  });

  it('sees nothing where nothing changed, in about 95 of 100', () => {
    const seen = Array.from({ length: 200 }, () =>
      changeAt(
        [0, 2, 4, 6, 8, 10].map((day) => noisy(day, 8)),
        START_S + 5 * DAY_S,
      ),
    ).filter((change) => change!.verdict !== 'not-seen');
    expect(seen.length).toBeLessThan(20);
  });

  it('does not take a fall that goes on for the event’s doing', () => {
    const seen = Array.from({ length: 100 }, () =>
      changeAt(
        [0, 7, 14, 21, 28, 35, 42, 49].map((day) => noisy(day, 8 - 0.02 * day)),
        START_S + 25 * DAY_S,
      ),
    ).filter((change) => change!.verdict !== 'not-seen');
    expect(seen.length).toBeLessThan(12);
  });

  it('keeps silent with too few readings', () => {
    expect(changeAt([noisy(0, 8), noisy(9, 7)], START_S + 5 * DAY_S)).toBeUndefined();
    expect(changeAt([noisy(0, 8), noisy(1, 7), noisy(2, 8)], START_S - DAY_S)).toBeUndefined();
  });
});

describe('outlook', () => {
  const days = [0, 3, 7, 12, 18, 25, 33, 42, 52, 63, 75];
  const random = createRandom(22);
  const course = (beltId: string, force: (day: number) => number) =>
    days.map((day) => reading(beltId, day + (beltId === 'b' ? 0.02 : 0), force(day) * (1 + 0.002 * random.gaussian())));
  const belts = [
    { id: 'a', name: 'A', targetForceN: { lowN: 6, highN: 9 } },
    { id: 'b', name: 'B', targetForceN: { lowN: 6, highN: 9 } },
  ];
  const pairs = [{ oneId: 'a', otherId: 'b', toleranceRelative: 0.05 }];
  const nowS = START_S + 76 * DAY_S;

  it('names the belt that slips away, because of the match, before its force is low', () => {
    const logged = [...course('a', () => 8), ...course('b', (day) => 8 * (1 - 0.0006 * day))];
    const { first, pairs: seen } = outlookOf({ logged, belts, pairs, nowS });
    expect(first).toMatchObject({ beltId: 'b', because: 'match', forecast: { kind: 'by-about' } });
    expect(seen[0]!.side).toBe('below');
    if (first?.forecast.kind !== 'by-about') throw new Error('a date was expected');
    const trueS = START_S + (0.05 / 0.0006) * DAY_S;
    expect(first.forecast.earliestS).toBeLessThan(trueS);
    expect(first.forecast.latestS).toBeGreaterThan(trueS);
  });

  it('names the one that stands lower where the other rises', () => {
    const logged = [...course('a', (day) => 8 * (1 - 0.0006 * day)), ...course('b', () => 8)];
    const { first, pairs: seen } = outlookOf({ logged, belts, pairs, nowS });
    expect(first).toMatchObject({ beltId: 'a', because: 'match' });
    expect(seen[0]!.side).toBe('above');
  });

  it('says nothing of belts that were read too seldom, and everything is empty for an empty log', () => {
    const { first, belts: seen } = outlookOf({ logged: [reading('a', 0, 8), reading('a', 5, 7.9)], belts, pairs, nowS });
    expect(first).toBeUndefined();
    expect(seen[0]!.last?.id).toBe('a-5');
    expect(outlookOf({ logged: [], belts, pairs, nowS }).first).toBeUndefined();
  });
});

describe('rows', () => {
  it('put one visit into one row and hide no reading', () => {
    const rows = rowsOf([
      reading('b', 1.01, 7.9),
      reading('a', 1, 8, { temperatureC: 18 }),
      reading('a', 1.02, 8.1),
      event('note', 2, [], 'Moved to the window'),
      reading('a', 3, 8),
    ]);
    expect(rows.map(({ kind }) => kind)).toEqual(['readings', 'note', 'readings', 'readings']);
    const visit = rows[3] as Extract<Row, { kind: 'readings' }>;
    expect([...visit.byBelt.keys()].sort()).toEqual(['a', 'b']);
    expect(visit.temperatureC).toBe(18);
  });

  it('are found by kind and by words', () => {
    const rows = rowsOf([reading('a', 1, 8), event('note', 2, [], 'Moved to the window'), event('note', 3, [], 'New screw')]);
    const textOf = (row: Row) => (row.kind === 'readings' ? '' : row.event.text);
    const all = new Set<Row['kind']>(['readings', 'note']);
    expect(narrowed(rows, { kinds: all, find: ' WINDOW moved ', textOf }).map(({ id }) => id)).toEqual(['note-2']);
    expect(narrowed(rows, { kinds: new Set(['readings']), find: '', textOf }).length).toBe(1);
  });

  it('are made from ten thousand entries in one pass', () => {
    const many = Array.from({ length: 10_000 }, (_, index) => reading(index % 2 ? 'b' : 'a', index, 8));
    expect(rowsOf(many).length).toBe(10_000);
  });
});
