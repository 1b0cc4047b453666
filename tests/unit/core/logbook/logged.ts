/** Readings and events of a simulated machine, for the tests of the time line. */

import type { LoggedEvent, LoggedReading } from '../../../../src/core/logbook/time-line.ts';

export const DAY_S = 86_400;
export const START_S = Date.UTC(2027, 2, 1, 9) / 1000;

export const reading = (beltId: string, day: number, forceN: number, more: Partial<LoggedReading> = {}): LoggedReading => ({
  kind: 'reading',
  id: `${beltId}-${day}`,
  atS: START_S + day * DAY_S,
  beltId,
  forceN: { value: forceN, low: forceN - 0.4, high: forceN + 0.4, u95: 0.4 },
  frequencyRelativeU: 0.001,
  frequencyHz: 20 * Math.sqrt(forceN),
  grade: 'trusted',
  ...more,
});

export const event = (kind: LoggedEvent['kind'], day: number, beltIds: readonly string[] = [], text = ''): LoggedEvent => ({
  kind,
  id: `${kind}-${day}`,
  atS: START_S + day * DAY_S,
  text,
  beltIds,
});
