/** The logbook's headline from simulated time lines: what is due is said, and what cannot be told is not. */

import { describe, expect, it } from 'vitest';
import { outlookOf } from '../../../../src/core/logbook/outlook.ts';
import type { Logged } from '../../../../src/core/logbook/time-line.ts';
import { createRandom } from '../../../../src/core/math/random.ts';
import { Figures } from '../../../../src/ui/format.ts';
import { answerView } from '../../../../src/ui/screens/logbook/answer-view.ts';
import { Dates, isoDay, isoMinute } from '../../../../src/ui/screens/logbook/dates.ts';
import { DAY_S, reading, START_S } from '../../core/logbook/logged.ts';

const days = [0, 3, 7, 12, 18, 25, 33, 42, 52, 63, 75];
const random = createRandom(5);
const course = (beltId: string, forceN: (day: number) => number, more: Parameters<typeof reading>[3] = {}): readonly Logged[] =>
  days.map((day) => reading(beltId, day, forceN(day) * (1 + 0.002 * random.gaussian()), more));
const belts = [
  { id: 'a', name: 'A', targetForceN: { lowN: 6, highN: 9 } },
  { id: 'b', name: 'B', targetForceN: { lowN: 6, highN: 9 } },
];
const nowS = START_S + 76 * DAY_S;
const told = { nowS, dates: new Dates('en-GB'), figures: new Figures('en-GB') };
const said = (logged: readonly Logged[]) => {
  const pairs = [{ oneId: 'a', otherId: 'b', toleranceRelative: 0.05 }];
  const { answer, under } = answerView(outlookOf({ logged, belts, pairs, nowS }), told);
  return { answer: answer.join(''), under };
};

describe('headline', () => {
  it('names the belt and the day', () => {
    const { answer, under } = said([...course('a', () => 8), ...course('b', (day) => 8 * (1 - 0.0006 * day))]);
    expect(answer).toMatch(/^Retension B by about \d+ \w+$/u);
    expect(under).toMatch(/Both belts are inside the target\. B slips away from A by 1\.\d\s% a month\./u);
  });

  it('says now where a belt is below its target already', () => {
    const { answer, under } = said([...course('a', (day) => 6.2 - 0.008 * day), ...course('b', (day) => 6.2 - 0.008 * day)]);
    expect(answer).toMatch(/^(?:Retension|Look at) [AB] (?:now|soon)$/u);
    expect(under).toMatch(/target/u);
  });

  it('says until when all holds where nothing changes', () => {
    const { answer, under } = said([...course('a', () => 8), ...course('b', () => 8)]);
    expect(answer).toMatch(/^(?:All holds until|Nothing to do before) \d+ \w+(?: at least)?$/u);
    expect(under).not.toMatch(/slips|falls/u);
  });

  it('counts the readings that a trend still needs', () => {
    expect(said([reading('a', 1, 8), reading('a', 5, 8)]).answer).toBe('No trend yet, 3 readings more');
    expect(said([]).answer).toBe('No reading yet');
  });

  it('says what a degree does, where that can be told', () => {
    const warm = (day: number) => 18 + 6 * Math.sin(1.7 * day);
    const logged = days.map((day) =>
      reading('a', day, (8 + 0.06 * (warm(day) - 18)) * (1 + 0.002 * random.gaussian()), { temperatureC: warm(day) }),
    );
    expect(said(logged).under).toMatch(/A changes by 0\.0\d+\sN\s±\s0\.0\d+\sN for each degree\./u);
  });
});

describe('days', () => {
  it('carry their year only where it could be another', () => {
    const { dates } = told;
    expect(dates.day(nowS + 30 * DAY_S, nowS)).toMatch(/^\d+ \w+$/u);
    expect(dates.day(nowS + 400 * DAY_S, nowS)).toMatch(/^\d+ \w+ \d{4}$/u);
  });

  it('are written as date fields have them, by the local clock', () => {
    const local = new Date(2027, 0, 5, 7, 8).getTime() / 1000;
    expect(isoDay(local)).toBe('2027-01-05');
    expect(isoMinute(local)).toBe('2027-01-05T07:08');
  });
});
