/** The kept document as time lines: whose readings they are, what was deleted, and which temperature holds. */

import { describe, expect, it } from 'vitest';
import type { KeptDocument } from '../../../../shared/document.ts';
import { bookOf, booksOf, ELSEWHERE, verifiedForce, withDeleted, withReadingNotes } from '../../../../src/ui/state/logbook.ts';
import { exampleDocument } from '../../../support/kept-example.ts';

const [take] = exampleDocument.takes;
const hours = (count: number) => ({ at: new Date(Date.parse(take!.heard.at) + count * 3_600_000).toISOString(), zone: 'UTC' });

describe('a machine’s time line', () => {
  it('has its takes as readings, its entries as events, its groups as pairs', () => {
    const book = bookOf(exampleDocument, 'machine-1')!;
    expect(book.logged.map(({ kind }) => kind).sort()).toEqual(['note', 'reading']);
    expect(book.belts[0]).toMatchObject({ name: 'A', targetForceN: { lowN: 6, highN: 9 } });
    expect(book.pairs).toEqual([{ oneId: 'belt-a', otherId: 'belt-b', toleranceRelative: 0.05 }]);
  });

  it('leaves deleted ones out, and has them again when that is undone', () => {
    const without = withDeleted(exampleDocument, ['take-1'], '2026-04-01T00:00:00.000Z');
    expect(bookOf(without, 'machine-1')!.logged.length).toBe(1);
    expect(without.takes.length).toBe(1);
    expect(bookOf(withDeleted(without, ['take-1'], undefined), 'machine-1')!.logged.length).toBe(2);
  });

  it('has what a gauge read beside a reading, kept in the gauge’s own record', () => {
    const [gauge] = exampleDocument.gauges;
    const document: KeptDocument = {
      ...exampleDocument,
      gauges: [{ ...gauge!, crossChecks: [{ id: 'check-1', at: take!.heard, reading: 5.4, takeId: 'take-1' }] }],
    };
    const event = bookOf(document, 'machine-1')!.logged.find(({ kind }) => kind === 'gauge-reading');
    expect(event).toMatchObject({ text: 'Brass fork', beltIds: ['belt-a'], gaugeId: 'gauge-1' });
    expect(verifiedForce(gauge!, document)).toBeUndefined();
  });

  it('tells between which forces a gauge was proved', () => {
    const weights = [2, 5, 8, 11, 14, 18].map((newtons) => ({ id: `w-${newtons}`, name: `${newtons} N`, massKg: newtons / 9.80665 }));
    const readings = weights.flatMap(({ id, massKg }, index) =>
      ['1', '2', '3'].map((series) => ({
        id: `${id}-${series}`,
        weightId: id,
        how: 'inserted' as const,
        series,
        reading: 0.4 * massKg * 9.80665 + 0.01 * ((index + Number(series)) % 3),
        at: take!.heard,
      })),
    );
    const proved = { ...exampleDocument.gauges[0]!, weights, readings };
    const verified = verifiedForce(proved, exampleDocument)!;
    expect(verified.lowN).toBeGreaterThanOrEqual(1.9);
    expect(verified.highN).toBeLessThanOrEqual(18.1);
    expect(verified.highN).toBeGreaterThan(10);
  });

  it('carries a temperature to readings near it that tell none', () => {
    const [entry] = exampleDocument.entries;
    const at = (hoursAway: number): KeptDocument => ({
      ...exampleDocument,
      entries: [{ ...entry!, kind: 'temperature', happened: hours(hoursAway), temperatureK: 293.15 }],
    });
    const temperature = (document: KeptDocument) =>
      bookOf(document, 'machine-1')!.logged.find(({ kind }) => kind === 'reading')!.temperatureC;
    expect(temperature(at(5))).toBeCloseTo(20, 9);
    expect(temperature(at(-5))).toBeCloseTo(20, 9);
    expect(temperature(at(7))).toBeUndefined();
    const told = withReadingNotes(at(1), ['take-1'], { temperatureC: 12, note: '' });
    expect(temperature(told)).toBeCloseTo(12, 9);
  });
});

describe('takes on no machine', () => {
  it('have a book of their own, a belt for each name', () => {
    const document: KeptDocument = {
      ...exampleDocument,
      takes: [
        take!,
        { ...take!, id: 'take-2', on: undefined, name: 'the press' },
        { ...take!, id: 'take-3', on: { machineId: 'gone', machineBeltId: 'b' } },
      ],
    };
    expect(booksOf(document).map(({ id, count }) => [id, count])).toEqual([
      ['machine-1', 2],
      [ELSEWHERE, 2],
    ]);
    expect(bookOf(document, ELSEWHERE)!.belts.map(({ name }) => name)).toEqual(['the press', '']);
  });
});
