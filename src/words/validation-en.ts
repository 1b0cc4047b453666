/** The words of the validation kit in English: a session of known weights and plucks. */

/** What the session still lacks; `src/ui/state/validation-session.ts` decides. */
type SessionStep = 'first' | 'more-here' | 'another-weight' | 'another-span' | 'enough';

export const validationEn = {
  over: 'Logbook, validation kit',
  answer: {
    start: ['Hang a weight, ', 'pluck, compare'],
    taken: (count: number) => ['Sound against weights: ', `${count} ${count === 1 ? 'take' : 'takes'}`],
  },
  lead: 'Six takes of your own belt, on two spans and under three weights, say how far the sound can be believed, and what is off where it cannot.',
  cautions: 'Weights hang low, over a box, with no feet below. Eye protection on; stay below the rated load of the belt.',

  belt: 'The belt',
  density: 'Linear density',
  densityNote: 'A number alone is g/m, known to 2 %; or write 7.8 ± 0.1 g/m.',
  densityFrom: 'Where it comes from',
  densityFroms: { weighed: 'this belt was weighed', stated: 'told by somebody', catalogue: 'from a catalogue' },
  ends: { first: 'First end', second: 'Second end' },
  endKinds: { unknown: 'not known', pulley: 'round a pulley', idler: 'round an idler', clip: 'in a clip' },

  take: 'The next take',
  span: 'Span length',
  spanKnownTo: 'Known to ±',
  weight: 'What hangs',
  weightNote: 'All of it, hook and pan too. A number alone is grams; or write 8 N.',
  listen: 'Listen to this take',
  stop: 'Stop and take it',
  recording: 'Or open a recording',
  leave: 'Leave it out',
  missing: 'Fill in density, span and weight first.',
  hearing: 'Three light plucks, each until it is silent.',
  heard: (count: number) => (count === 0 ? 'No pluck yet.' : count === 1 ? 'One pluck.' : `${count} plucks.`),
  nothing: 'No plucked span was heard, so that there is nothing to compare. Come closer and try again.',
  failed: 'The sound did not come: see Listen for what stands in the way, or open a recording.',

  steps: {
    first: 'Begin with the longest span and a weight in the middle of what the belt is made for.',
    'another-weight': 'Next: the same span under another weight, five times as much or as little.',
    'another-span': 'Next: a span half as long, under the same weights.',
    'more-here': 'Next: fill up, so that each span has each weight.',
    enough: 'This is enough for an answer. More takes make it surer.',
  } satisfies Record<SessionStep, string>,
  description: (span: string, weight: string) => `${span} under ${weight}.`,
  takeName: (number: number) => `take-${String(number).padStart(2, '0')}`,

  takes: 'Takes',
  drop: (name: string) => `Drop ${name}`,
  dropped: (name: string) => `${name} was dropped.`,
  undo: 'Undo',
  none: '–',
  report: 'What they come to',
  save: 'Save the folder',
  saveNote: 'Recordings with their truth beside them, in one file to unpack.',
  stay: 'Until you begin anew, the takes stay in this browser too.',
  doNotStay: 'This browser keeps nothing: save them before you close the page.',
  beginAnew: 'Begin anew',
  allDropped: 'All takes were dropped.',
  fileName: 'spanwright-takes.zip',
  command: 'The command line reads the folder and prints the same: npm run --silent agreement -- FOLDER',
} as const;
