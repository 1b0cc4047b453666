/** A reminder as iCalendar text (RFC 5545): one all-day event with an alarm, for any calendar program. */

export interface Reminder {
  /** Stays the same when the reminder is made anew, so that a calendar moves the event instead of doubling it. */
  readonly uid: string;
  /** Day of the event, `YYYY-MM-DD`. */
  readonly day: string;
  readonly summary: string;
  readonly description: string;
  /** When the text is made, ISO 8601 in UTC. */
  readonly madeAt: string;
  /** Counts how often this reminder was made; a calendar takes the greatest. */
  readonly sequence?: number | undefined;
  /** The alarm rings so many hours after the day began. */
  readonly alarmAfterH?: number | undefined;
}

/** RFC 5545, 3.1: a line should not be longer than this, its end not counted. */
const MOST_OCTETS = 75;
const PRODUCT = '-//Spanwright//Spanwright//EN';

/** RFC 5545, 3.3.11: backslash, semicolon, comma and line ends are escaped; other control characters may not occur. */
export const escapedText = (text: string): string =>
  text
    .replace(/\r\n?/gu, '\n')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what has to go
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/gu, '')
    .replace(/[\\;,]/gu, (sign) => `\\${sign}`)
    .replaceAll('\n', '\\n');

const octetsOf = (character: string): number => {
  const point = character.codePointAt(0)!;
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
};

/** RFC 5545, 3.1: a long line goes on in the next one, which begins with a space; a character is never cut. */
export function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > MOST_OCTETS) {
      parts.push(part);
      part = ' ';
      octets = 1;
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join('\r\n');
}

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/u;

/** `YYYYMMDD`. @throws RangeError for a day that no calendar has */
function dateText(day: string): string {
  const match = DAY.exec(day);
  const date = new Date(`${day}T00:00:00Z`);
  if (!match || Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== day) {
    throw new RangeError(`a reminder needs a day such as 2027-01-18, got ${day}`);
  }
  return match.slice(1).join('');
}

/** `YYYYMMDDTHHMMSSZ`. */
const momentText = (iso: string): string => `${new Date(iso).toISOString().slice(0, 19).replace(/[-:]/gu, '')}Z`;

function dayAfter(day: string): string {
  const date = new Date(`${day}T00:00:00Z`);
  date.setUTCDate(date.getUTCDate() + 1);
  return date.toISOString().slice(0, 10);
}

/** @returns lines end in CR LF, the last one too */
export function calendarText({ uid, day, summary, description, madeAt, sequence = 0, alarmAfterH = 9 }: Reminder): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    `PRODID:${PRODUCT}`,
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    'BEGIN:VEVENT',
    `UID:${escapedText(uid)}`,
    `DTSTAMP:${momentText(madeAt)}`,
    `SEQUENCE:${sequence}`,
    `DTSTART;VALUE=DATE:${dateText(day)}`,
    `DTEND;VALUE=DATE:${dateText(dayAfter(day))}`, // the day after: RFC 5545, 3.6.1, the end is not part of the event
    `SUMMARY:${escapedText(summary)}`,
    `DESCRIPTION:${escapedText(description)}`,
    'TRANSP:TRANSPARENT',
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `DESCRIPTION:${escapedText(summary)}`,
    `TRIGGER;RELATED=START:PT${alarmAfterH}H`,
    'END:VALARM',
    'END:VEVENT',
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}
