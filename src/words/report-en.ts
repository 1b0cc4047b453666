/** The words of the printed report in English. */

export const reportEn = {
  title: (machine: string) => `Report on ${machine}`,
  name: 'Report',
  made: (moment: string, program: string) => `Made on ${moment} with Spanwright ${program}.`,
  print: 'Print it',
  csv: 'Readings as a table',
  json: 'All of it as JSON',
  back: 'Back to the logbook',
  csvName: (machine: string) => `${machine}-readings.csv`,
  jsonName: (machine: string) => `${machine}-report.json`,

  now: 'How it stands',
  columns: { belt: 'Belt', last: 'Last reading', when: 'When', grade: 'Grade', target: 'Target', verdict: 'Against it', month: 'A month' },
  notTold: '–',
  steady: 'steady',
  match: 'Match',
  matchLine: (other: string, one: string, percent: string, doubt: string, tolerance: string) =>
    `${other} stands ${percent} ± ${doubt} from ${one}; wanted: within ${tolerance}.`,
  matchOpen: (other: string, one: string) => `${other} and ${one} were not read together yet.`,
  doubt: 'What the doubt of the last readings is made of',
  doubtColumns: { input: 'Standard uncertainty, N' },
  doubtNone: 'The last readings have no force, so that there is nothing to divide.',
  gauges: 'Gauges',
  gauge: (name: string, range: string) => `${name}: proved on weights, ${range}.`,
  gaugeUnproved: (name: string) => `${name}: not proved; its chart is not to be trusted.`,
  events: 'What happened',
  readings: 'Readings',
  readingColumns: {
    when: 'When',
    belt: 'Belt',
    force: 'Force',
    interval: '95 % interval',
    frequency: 'Frequency',
    grade: 'Grade',
    note: 'Note',
  },
  cautions: 'Cautions',
  limits:
    'Every ± is half of a 95 % interval. Spanwright measures; it does not certify. Where local codes or a licensed practice govern a machine, they decide, and so does the person responsible for it.',
  verdict: {
    low: (by: string) => `low by ${by}`,
    high: (by: string) => `high by ${by}`,
    inside: 'inside',
    'probably-inside': 'probably inside',
    'cannot-tell': 'cannot tell',
  },
} as const;
