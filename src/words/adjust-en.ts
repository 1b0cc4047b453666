/** The words of adjusting, in English: one instruction of at most five words, what follows from it, and what was learned. */

const counts = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const counted = (count: number): string => counts[count] ?? String(count);
const list = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
const times = (count: number): string => (count === 1 ? 'once' : count === 2 ? 'twice' : `${counted(count)} times`);

export const adjustEn = {
  title: (machine: string) => `Adjust ${machine}`,
  over: (names: readonly string[], crossed: boolean) => {
    if (names.length === 1) return `belt ${names[0]}`;
    const what = names.length === 2 ? 'pair' : 'group';
    return `belts ${list(names)}, ${crossed ? 'a crossed' : 'a'} ${what}`;
  },
  list,
  leave: 'Leave',
  undo: 'Undo step',
  startAnew: 'Start anew',
  listen: 'Listen',
  stop: 'Stop',
  speakOn: 'Speak aloud: on',
  speakOff: 'Speak aloud: off',
  speakOnShort: 'Speak: on',
  speakOffShort: 'Speak: off',
  far: 'Large figures',
  near: 'All figures',
  thatWas: (name: string) => `That was ${name}`,
  farHint: (key: string) => `Press ${key} for large figures`,

  listening: 'Listening',
  listeningTo: (name: string) => `Listening to ${name}`,
  hearingRoom: 'Hearing the room',
  speaking: 'Speaking, not listening',
  paused: 'Not listening',
  plucks: (have: number, need: number) => `${have} of ${need} ${need === 1 ? 'pluck' : 'plucks'}`,

  /** Large; at most five words. */
  say: {
    pluck: (name: string, more: number) => ['Pluck', ` ${name} ${times(more)}`],
    pluckOne: (name: string) => ['Pluck', ` ${name}`],
    pluckMore: (name: string) => ['Pluck', ` ${name} again`],
    tighten: (name: string, amount: string) => [`Tighten ${name}`, ` ${amount}`],
    loosen: (name: string, amount: string) => [`Loosen ${name}`, ` ${amount}`],
    tightenSome: (name: string) => [`Tighten ${name}`, ' a little'],
    loosenSome: (name: string) => [`Loosen ${name}`, ' a little'],
    done: 'Done.',
    doneMatch: (names: readonly string[], percent: string) => `${list(names)} match within ${percent}.`,
    doneOne: (name: string) => `${name} is inside its target.`,
    stuckForce: 'No force can be told',
    stuckMove: 'No safe turn helps',
    stuckInputs: 'As good as can be told',
    stuckTell: 'The match stays open',
    ready: 'Press Listen once',
  },
  after: {
    ready: 'From then on nothing needs to be touched: the screen asks, and hears.',
    first: 'In the middle, lightly. Let it ring until it is silent.',
    neighbour: (moved: string) => `Turning ${moved} may have moved it too.`,
    open: 'In turn with the other, until it is certain whether they match.',
    unexpected: 'That one lay far from what was expected. Pluck it again.',
    move: (way: string, name: string, need: number) =>
      `${way}Run the carriage end to end twice by hand. Then pluck ${name} ${times(need)}.`,
    done: 'Nothing more to turn.',
    stuckForce: 'On these spans the sound leaves no room for a force. Check the lengths and the belt.',
    stuckMove: 'Any more could pass what the belt is made for. Check the target and the limit.',
    stuckInputs:
      'The belts match in the middle of the target, as far as is known. Weigh the belt, or measure the spans closer, to be sure of the force.',
    stuckRolls:
      'Belts of two rolls differ by more than that. If both were cut from one roll, say so where the machine tells which belts must match.',
    stuckTell:
      'What the belts do not share leaves it open, however often they are plucked. Belts of one roll, weighed, on equal spans tell more.',
  },
  clockwise: 'Clockwise. ',
  counterclockwise: 'Counterclockwise. ',
  degrees: (degrees: string) => `That is about ${degrees}°. `,
  /** For the ear: '3 eighths of a turn', '1 and 1 quarter turns'. */
  spokenTurn: (whole: number, top: number, bottom: 1 | 2 | 4 | 8 | 16 | 32) => {
    const part = { 1: '', 2: 'half', 4: 'quarter', 8: 'eighth', 16: 'sixteenth', 32: 'thirty-second' }[bottom];
    const parts = top === 1 ? `a ${part}` : `${counted(top)} ${part}s`;
    if (top === 0) return whole === 1 ? 'one turn' : `${counted(whole)} turns`;
    if (whole === 0) return top === 1 && bottom !== 1 ? `${part === 'eighth' ? 'an' : 'a'} ${part} turn` : `${parts} of a turn`;
    return `${counted(whole)} and ${top === 1 && part === 'eighth' ? 'an eighth' : parts} turns`;
  },
  turn: (count: string, plural: boolean) => `${count} ${plural ? 'turns' : 'turn'}`,

  reading: {
    none: 'not plucked yet',
    wait: 'moved since, pluck it again',
    inside: 'inside the target',
    low: (by: string) => `low by ${by}`,
    high: (by: string) => `high by ${by}`,
    probablyInside: 'probably inside the target',
    cannotTell: 'cannot tell against the target',
    noForce: 'no force can be told',
    grades: { trusted: 'trusted', doubtful: 'doubtful', unusable: 'unusable' },
  },
  ruler: {
    target: (range: string) => `target ${range}`,
    targetShort: 'target',
    aim: (name: string) => `aim for ${name}`,
    label: (target: string, belts: readonly string[]) => `Forces on a ruler. Target ${target}. ${belts.join(' ')}`,
    belt: (name: string, force: string) => `${name}: ${force}.`,
  },
  match: {
    title: 'The match',
    open: 'Not told yet',
    again: 'To be told anew',
    againWhy: (name: string) => `${name} is still to be plucked.`,
    equal: (a: string, b: string, percent: string) => `${a} and ${b} are alike within ${percent}`,
    apart: (low: string, high: string, percent: string, doubt: string) => `${low} is ${percent} ± ${doubt} below ${high}`,
    wanted: (percent: string) => `Wanted: within ${percent}.`,
    verdict: { matched: 'They match.', 'not-matched': 'They do not match.', undecided: 'It is open whether they match.' },
    why: {
      'one-belt': '',
      'same-roll': 'The belts share their density and ends, so the difference is known better than either force.',
      'two-kinds': 'They are belts of two kinds: each force stands by itself, and the match is only as sure as both.',
      'two-rolls': 'They are not told to be from one roll, so each may weigh a little differently.',
    },
  },
  screw: {
    titles: { screw: 'The screw', slide: 'The slide', spring: 'The spring' },
    titleMany: { screw: 'The screws', slide: 'The slides', spring: 'The springs' },
    titleMixed: 'How they are tightened',
    turn: (name: string, own: string) => `One turn of ${name} moves ${name} by ${own}`,
    millimetre: (name: string, own: string) => `One millimetre of ${name} moves ${name} by ${own}`,
    guessed: (name: string) => `What a turn of ${name} does is not known yet`,
    guessedMillimetre: (name: string) => `What a millimetre of ${name} does is not known yet`,
    guess: (range: string) => `: by stiffness and path ${range}.`,
    other: (name: string, by: string) => ` and ${name} by ${by}`,
    learned: (steps: number) =>
      steps === 0 ? ', guessed from stiffness and path.' : `, learned from ${counted(steps)} ${steps === 1 ? 'step' : 'steps'}.`,
    limit: (limit: string) => `The belt's limit is ${limit}.`,
    noLimit: 'No limit of the belt is known: watch it.',
    spring: (name: string) => `${name} is held by a spring: only the way can be told.`,
  },
  path: {
    title: 'The way so far',
    start: 'start',
    next: 'next',
    target: 'target',
    move: (name: string, amount: string) => `${name} ${amount}`,
    label: (steps: number) =>
      steps === 0 ? 'Forces at the start.' : `Forces at the start and after ${counted(steps)} ${steps === 1 ? 'step' : 'steps'}.`,
    table: 'The way so far',
    step: 'Step',
  },

  moved: (name: string, amount: string) => `${name} ${amount}`,
  begun: (names: readonly string[]) => `Adjusting ${list(names)} begun`,
  loosened: 'loosened',
  tightened: 'tightened',

  lacking: {
    over: 'Before adjusting',
    answer: 'Something is still missing',
    span: (belt: string) => `${belt} has no span to pluck.`,
    length: (belt: string) => `The length of ${belt}'s span is not told.`,
    target: (belt: string) => `${belt} has no target.`,
    density: (belt: string) => `The linear density of ${belt} is not told.`,
    targetsApart: 'The targets of these belts leave no force in common. Set them alike.',
    gone: 'These belts are not here any more.',
    back: 'Back to the machine',
    all: 'All machines',
  },
  care: 'Power off and unplugged, motors free. Fingers out of the pulleys.',
};

export type AdjustSaying = readonly string[];
