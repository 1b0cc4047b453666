/** The words of the Logbook place in English. */

import type { Change } from '../core/logbook/compare.ts';
import type { EventKind } from '../core/logbook/time-line.ts';

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

export const logbookEn = {
  title: 'Logbook',
  list: 'Machines in the logbook',
  elsewhere: 'On no machine',
  listNote: (note: string, count: number) => [note, counted(count, 'entry', 'entries')].filter(Boolean).join(', '),
  since: (name: string, day: string) => `${name}, since ${day}`,

  /** Plain words before, heavy words after; the sentence that follows. */
  answer: {
    byAbout: (belt: string, day: string) => ['Retension ', `${belt} by about ${day}`],
    now: (belt: string) => ['Retension ', `${belt} now`],
    soon: (belt: string) => ['Look at ', `${belt} soon`],
    notBefore: (day: string) => ['Nothing to do ', `before ${day}`],
    holds: (day: string) => ['All holds ', `until ${day} at least`],
    noTrend: (more: number) => ['No trend yet, ', `${counted(more, 'reading', 'readings')} more`],
    nothingDue: ['Nothing ', 'is due'],
    empty: ['No reading ', 'yet'],
    none: ['Nothing is kept ', 'yet'],
  } as const,
  under: {
    inside: (belts: readonly string[]) =>
      belts.length === 2 ? 'Both belts are inside the target.' : `${listed(belts)} ${belts.length === 1 ? 'is' : 'are'} inside the target.`,
    outside: (belts: readonly string[], where: 'low' | 'high') =>
      `${listed(belts)} ${belts.length === 1 ? 'is' : 'are'} ${where === 'low' ? 'below' : 'above'} the target.`,
    openTarget: (belts: readonly string[]) => `For ${listed(belts)} the last reading leaves the target open.`,
    slips: (one: string, other: string, percent: string) => `${one} slips away from ${other} by ${percent} a month.`,
    falls: (belt: string, force: string) => `${belt} falls by ${force} a month.`,
    rises: (belt: string, force: string) => `${belt} rises by ${force} a month.`,
    steady: 'No change over time can be told from scatter.',
    cannotSay: 'When, the readings cannot tell.',
    passedPerhaps: 'It may be past its limit already.',
    perKelvin: (belt: string, force: string) => `${belt} changes by ${force} for each degree.`,
    empty: 'Keep a reading in Listen, on this machine. From five readings on a trend is told.',
    none: 'Keep a reading in Listen, or describe a machine first.',
  },

  adjust: 'Adjust now',
  remind: 'Remind me',
  toListen: 'Go to Listen',
  toMachines: 'Go to Machines',
  find: 'Find',
  findHint: 'a word, a belt, a day',
  show: 'Show',
  kinds: {
    readings: 'Readings',
    adjusted: 'Adjustments',
    'gauge-reading': 'Gauge readings',
    notes: 'Notes and belt changes',
    temperature: 'Temperatures',
  },
  report: 'Print a report',
  file: 'Save or merge a file',
  add: 'Add an entry',
  validate: 'Prove it with weights',
  bringPast: 'Bring in a past for the demo',
  past: { newBelt: 'New belt', moved: 'Moved to the window' },

  plot: {
    title: 'Forces over time',
    target: (range: string) => `target ${range}`,
    today: 'today',
    label: (belts: readonly string[], range: string) => `Forces of ${listed(belts)} ${range}, each reading as its 95 % interval.`,
    columns: ['Time', 'Belt', 'Force, N', 'From', 'To'],
    range: (from: string, to: string) => `from ${from} to ${to}`,
  },
  match: {
    title: (other: string, one: string) => `${other} against ${one}`,
    wanted: (percent: string) => `wanted: within ${percent}`,
    wantedShort: (percent: string) => `within ${percent}`,
    leaves: (from: string, to: string) => `leaves the match, ${from} to ${to}`,
    leavesShort: (from: string, to: string) => `${from} to ${to}`,
    label: (other: string, one: string) => `How far ${other} stands from ${one}, each with its 95 % interval.`,
    columns: ['Time', 'Difference', 'From', 'To'],
  },

  entries: 'Entries',
  columns: { date: 'date', kind: 'entry', force: (belt: string) => `${belt}, N`, match: 'match', note: 'note' },
  rowKinds: {
    readings: 'Reading',
    note: 'Note',
    'belt-changed': 'Belt changed',
    adjusted: 'Adjusted',
    'gauge-reading': 'Gauge reading',
    temperature: 'Temperature',
  } satisfies Record<EventKind | 'readings', string>,
  noneFound: 'Nothing here goes with that. Show more kinds, or find other words.',
  deleted: (what: string) => `${what} was deleted.`,
  undo: 'Undo',

  entry: {
    heading: 'An entry',
    newHeading: 'Add an entry',
    kind: 'What happened',
    when: 'When',
    belts: 'Which belts',
    wholeMachine: 'the whole machine',
    text: 'Note',
    temperature: 'Temperature, °C',
    force: 'Force by the gauge, N',
    forceNote: 'From its chart, inside its verified range.',
    save: 'Keep it',
    change: 'Keep the change',
    delete: 'Delete it',
    close: 'Close',
    toGauge: 'Open the gauge',
    needsText: 'Write what happened.',
    needsForce: 'Write the force that the gauge’s chart gives, a number above zero.',
    needsTemperature: 'Write a temperature in degrees, such as 18.',
    needsWhen: 'Choose a day and a time that are not in the future.',
    readings: 'Reading',
    did: 'What it did',
    changed: {
      rose: (belt: string, force: string) => `${belt} rose by ${force}.`,
      fell: (belt: string, force: string) => `${belt} fell by ${force}.`,
      'not-seen': (belt: string, force: string) => `${belt}: no change to be seen, ${force}.`,
    } satisfies Record<Change['verdict'], (belt: string, force: string) => string>,
  },

  reminder: {
    heading: 'Remind me',
    fromTrend: (day: string, from: string, to: string) => `The readings say about ${day}, with 95 % probability from ${from} to ${to}.`,
    noTrend: 'The readings do not tell a day yet. In three months is a guess.',
    day: 'Day',
    save: 'Save the calendar file',
    note: 'Open it with your calendar. It holds one event with an alarm; nothing is sent anywhere.',
    summary: (machine: string, belt: string) => (belt ? `Retension ${belt}, ${machine}` : `Check the belts, ${machine}`),
    description: (sentence: string) => `${sentence} Power off and unplugged first. Read again before you turn anything.`,
    needsDay: 'Choose a day that is still to come.',
    fileName: 'spanwright-reminder.ics',
  },
  gone: ['This machine is not here', 'It may have been removed, or kept in another browser.'],
} as const;
