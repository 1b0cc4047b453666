/** Reminders as an independent library reads them, and as RFC 5545 prints its own examples. */

import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarText, escapedText, folded } from '../../src/core/logbook/calendar.ts';

const REMINDER = {
  uid: 'retension-b-plotter@spanwright',
  day: '2027-01-18',
  summary: 'Retension B',
  description: 'Both belts are inside the target.',
  madeAt: '2026-11-24T09:30:15.250Z',
};

const eventOf = (text: string) => {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return { calendar, event: calendar.getFirstSubcomponent('vevent')! };
};

describe('a reminder', () => {
  it('is read by another library as it was meant', () => {
    const { calendar, event } = eventOf(calendarText(REMINDER));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(event.getFirstPropertyValue('uid')).toBe(REMINDER.uid);
    expect(String(event.getFirstPropertyValue('dtstart'))).toBe('2027-01-18');
    expect(String(event.getFirstPropertyValue('dtend'))).toBe('2027-01-19');
    expect(String(event.getFirstPropertyValue('dtstamp'))).toBe('2026-11-24T09:30:15Z');
    const alarm = event.getFirstSubcomponent('valarm')!;
    expect(alarm.getFirstPropertyValue('action')).toBe('DISPLAY');
    expect(String(alarm.getFirstPropertyValue('trigger'))).toBe('PT9H');
  });

  it('keeps any text whole, in lines of at most 75 octets that end in CR LF', () => {
    const words = fc.string({ unit: 'grapheme', maxLength: 200 }).map((text) => text.replace(/[\p{Cc}\p{Cs}]/gu, '\n'));
    fc.assert(
      fc.property(words, words, (summary, description) => {
        const text = calendarText({ ...REMINDER, summary, description });
        expect(text.endsWith('\r\n')).toBe(true);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/u);
        for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        const { event } = eventOf(text);
        expect(event.getFirstPropertyValue('summary')).toBe(summary);
        expect(event.getFirstPropertyValue('description')).toBe(description);
      }),
      { numRuns: 300, seed: 5545 },
    );
  });

  // RFC 5545, section 3.3.11, the example of a TEXT value
  it('escapes as the standard prints it', () => {
    expect(escapedText('Project XYZ Final Review\nConference Room - 3B\nCome Prepared.')).toBe(
      'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
    );
    expect(escapedText('a,b;c\\d')).toBe('a\\,b\\;c\\\\d');
  });

  it('lets no text begin a line of its own', () => {
    const text = calendarText({ ...REMINDER, summary: 'x\r\nATTENDEE:mailto:a@example.org', uid: 'a\nURL:http://example.org' });
    expect(text).not.toMatch(/^(?:ATTENDEE|URL)/mu);
  });

  it('cuts no character in two', () => {
    const line = `SUMMARY:${'🪢'.repeat(40)}`;
    expect(folded(line).replaceAll('\r\n ', '')).toBe(line);
  });

  it.each(['2027-02-30', '18.1.2027', ''])('needs a day that a calendar has: %s', (day) => {
    expect(() => calendarText({ ...REMINDER, day })).toThrow(RangeError);
  });

  it('goes over the end of a year', () => {
    expect(calendarText({ ...REMINDER, day: '2027-12-31' })).toContain('DTEND;VALUE=DATE:20280101\r\n');
  });
});
