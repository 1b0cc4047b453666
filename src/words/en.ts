/** Every word of the page in English, by the place where it stands. Reasons and faults of files have tables of their own. */

import type { BudgetInput, Grade } from '../core/outcome.ts';
import type { RemedyKind } from '../core/remedies.ts';

const NUMBER_WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** A small count as a word, as sentences want it. */
const counted = (count: number): string => NUMBER_WORDS[count] ?? String(count);
export const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
const plucks = (count: number): string => `${counted(count)} ${count === 1 ? 'pluck' : 'plucks'}`;

export const en = {
  productName: 'Spanwright',
  placeListen: 'Listen',
  cautionsLink: 'Cautions',
  range: (low: string, high: string) => `${low} to ${high}`,

  setup: {
    title: 'The span',
    fold: 'Change',
    unfold: 'Done',
    foldedSpanMissing: 'length not told',
    demoMark: 'demo',
    leaveDemo: 'Now your own belt',
    belt: 'Belt',
    ownBelt: 'My own belt',
    densityCatalogue: (density: string, doubt: string) => `${density} ± ${doubt}, catalogue`,
    weigh: 'Weigh it',
    linearDensity: 'Linear density',
    linearDensityNote: 'Weigh a metre, or as long a piece as you have.',
    spanLength: 'Span length',
    knownTo: 'Known to ±',
    spanNote: 'Free belt, tangent point to tangent point',
    target: 'Target',
    targetOptional: '(if you have one)',
    targetFrom: 'Target from',
    targetTo: 'Target to',
    forceUnit: 'Unit of force',
    targetHalf: 'Give both ends, or neither.',
    expect: (range: string) => `Expect ${range} on this span`,
    short: {
      span: 'Span',
      expect: (range: string) => `${range} on this span`,
      ends: 'Ends',
      end: { unknown: 'not known', pulley: 'round a pulley', clip: 'in a clip' },
      bothEnds: { unknown: 'not known', pulley: 'both round pulleys', clip: 'both in clips' },
      eachEnd: (one: string, other: string) => `one ${one}, one ${other}`,
      endsAssumed: 'anywhere from hinged to clamped',
      stiffness: 'Stiffness',
      tolerance: 'Tolerance',
    },
    more: 'Ends, stiffness, tolerance',
    firstEnd: 'First end',
    secondEnd: 'Second end',
    ends: { unknown: 'not known', pulley: 'runs round a pulley', clip: 'held in a clip or clamp' },
    toothPitch: 'Tooth pitch',
    toothPitchNote: 'Then lengths may be told in teeth.',
    stiffness: 'Bending stiffness',
    stiffnessNote: 'Left empty: the usual range for such a width.',
    tolerance: 'Tolerance ±',
    toleranceNote: (assumed: string) => `Left empty: ${assumed}.`,
    toleranceFromTarget: 'half the width of the target',
    understood: (text: string) => `Read as ${text}`,
    faults: {
      'not-a-number': 'Write a number, such as 150 or 150 mm.',
      'ambiguous-number': 'This may be thousands or decimals. Leave the thousands sign out.',
      'unknown-unit': (unit: string) => `The unit ${unit} is not known here.`,
      'needs-tooth-pitch': 'Teeth need a tooth pitch. Choose a belt from the list, or write a length.',
      'not-positive': 'Write a number above zero.',
      'same-as-other-end': 'Leave some room between the two ends.',
    },
  },

  listen: {
    listen: 'Listen',
    stop: 'Stop',
    notNow: 'Not now',
    keyHint: (key: string) => `Key ${key}`,
    microphone: 'Microphone',
    systemChoice: 'The system’s choice',
    unnamedDevice: (number: number) => `Microphone ${number}`,
    explanation: 'Your browser will ask for the microphone. The sound never leaves this computer.',
    explanationShort: 'Uses the microphone. The sound stays here.',
    firstCautions: 'First: power off, unplugged, fingers clear.',
    allCautions: 'All cautions',
    askingLine: 'The browser is asking',
    hearingRoom: 'Hearing the room',
    listening: 'Listening',
    demoPlaying: 'Playing the demo take',
    opening: 'Reading the file',
    taken: (count: number) => (count < 3 ? `${count} of 3 plucks` : `${count} plucks`),
    level: 'Sound level',
    levelText: (level: string, room: string | undefined) => (room === undefined ? `${level} dB` : `${level} dB, the room ${room} dB`),
    silence: 'silent',
    clips: 'clips',
    granted: {
      untouched: (device: string, rate: string) => `${device}, sound unprocessed, ${rate}`,
      altered: (device: string, rate: string) => `${device}, sound filtered by the browser, ${rate}`,
      unknown: (device: string, rate: string) => `${device}, the browser does not say whether it filters, ${rate}`,
    },
    thisDevice: 'This microphone',
  },

  sources: {
    title: 'No belt at hand?',
    titleAgain: 'Another take',
    demo: 'Play the demo take',
    open: 'Open a recording',
    drop: 'Let go to open the recording',
    fileTaken: (name: string) => `Heard in ${name}`,
  },

  beforeYouPluck: {
    title: 'Before you pluck',
    points: [
      'Power off and unplugged',
      'Hot parts cold, motors free',
      'Fingers clear of pulleys',
      'Eye protection for wire or a loaded belt',
    ],
  },

  cautions: {
    title: 'Cautions',
    lead: 'The instructions of the machine’s maker come first. Where they differ from this page, follow them.',
    points: [
      'Power off and unplugged before a hand comes near the belts.',
      'Hot parts cold, motors free to turn.',
      'Fingers out of the places where belt and pulley meet.',
      'Eye protection when wire or a loaded belt is plucked.',
      'Weights hang low, over a box, with no feet below.',
      'Never above the rated load of the belt, the shaft or the machine.',
    ],
    close: 'Close',
  },

  reading: {
    name: 'Reading',
    caption: (count: number) => (count === 0 ? 'Reading' : `Reading, ${plucks(count)}`),
    captionFile: (count: number, file: string) => (count === 0 ? `Reading, ${file}` : `Reading, ${plucks(count)} in ${file}`),
    captionDemo: (count: number) => (count === 0 ? 'Reading, demo' : `Reading, ${plucks(count)}, demo`),
    undo: 'Undo last pluck',
    startOver: 'Start over',
    back: 'Back to the figures',
    space: '\u00a0',
    grades: { trusted: 'trusted', doubtful: 'doubtful', unusable: 'unusable' } satisfies Record<Grade, string>,
    nothingHeard: 'nothing heard',

    empty: ['No reading yet', 'Press Listen, pluck the middle of the span, let it ring. Three plucks make a good reading.'],
    asking: ['Allow the microphone', 'Your browser is asking. The sound stays on this computer.'],
    waiting: ['Quiet for a moment', 'Hearing the room first, so that fans and hum can be told from the belt.'],
    ready: ['Pluck the span', 'In the middle, lightly. Let it ring until it is silent.'],
    ringing: ['Heard it', 'Let it ring until it is silent.'],
    opening: ['Reading the recording', 'It is worked through as if it were heard now.'],
    paused: ['Listening has paused', 'Tap anywhere to go on. Nothing is lost.'],
    silent: ['The microphone gives silence', 'It may be muted by a key or by the system. The level line moves when it is not.'],

    knocks: (count: number) => `${capital(counted(count))} ${count === 1 ? 'knock' : 'knocks'}, but no ringing span.`,
    knocksRemedy: 'Pluck the belt itself, and bring the microphone within a hand’s width.',
    tooQuiet: 'Something moved, too faint to measure. Come closer, or pluck a little harder.',
    lastSoundLeft: 'The last sound was no pluck of a span, and the reading stays.',
    lastSoundFaint: 'The last sound was too faint to measure, and the reading stays.',
    clippedLeft: 'That pluck was too loud and was left out. Pluck softer or move the microphone away.',
    lastPluckLeft: (name: string) => `The last pluck was left out: ${name}.`,

    needsSpan: 'Type the span length: the same plucks then give the force.',
    needsBelt: 'Type the linear density: the same plucks then give the force.',
    needsBoth: 'Type the span length and the linear density: the same plucks then give the force.',
    noForceFits: 'No force makes this span sound so. See that its length and its belt are right.',
    onePluck: 'One pluck. Two more make it surer.',
    twoFit: 'Two readings fit this sound.',
    cannotTell: 'This span cannot tell the force.',
    soundCannotTell: 'This sound cannot tell the force.',
    weigh: 'Nobody has weighed this belt: weigh a metre of it.',
    either: (one: string, other: string) => `${one} or ${other}`,
    below: (high: string) => `below ${high}`,
    above: (low: string) => `above ${low}`,
    noBounds: 'no bounds',

    target: {
      low: (by: string) => `Low by ${by}.`,
      high: (by: string) => `High by ${by}.`,
      insideWhole: 'Inside the target.',
      insideLower: 'Inside the target, in its lower part.',
      insideUpper: 'Inside the target, in its upper part.',
      probablyInside: 'Probably inside the target.',
      cannotTell: 'Cannot tell against this target.',
    },
    sound: { trusted: 'Clear sound.', doubtful: 'Doubtful sound.', unusable: 'The sound is not good enough.' } satisfies Record<
      Grade,
      string
    >,
    soundBecause: (name: string) => `Sound: ${name}.`,
    belt: { catalogue: 'Belt from the catalogue', stated: 'Density as you gave it', weighed: 'Belt weighed' },
    endsAssumed: 'ends assumed',
    endsTold: 'ends told',
    inputs: (belt: string, ends: string) => `${belt}, ${ends}.`,
    tooWide: (than: 'target' | 'tolerance') =>
      than === 'target' ? 'The doubt is wider than the target.' : 'The doubt is more than twice the tolerance.',

    spokenForce: (value: string, doubt: string) => `${value} newtons, plus or minus ${doubt}.`,
    spokenHertz: (value: string, doubt: string) => `${value} hertz, plus or minus ${doubt}.`,
    spokenBounds: (low: string, high: string) => `${low} to ${high} newtons.`,
    spokenSentence: (text: string) => `${text} newtons.`,
    spokenReading: (parts: readonly string[]) => `Reading: ${parts.filter((part) => part !== '').join(' ')}`,
    gradeSentence: (word: string) => `${capital(word)}.`,
  },

  failures: {
    blocked: [
      'The microphone is blocked',
      'Click the microphone sign beside the address, choose Allow, then try again. A recording works too.',
    ],
    dismissed: ['The question was closed', 'Press Listen and choose Allow when the browser asks. A recording works too.'],
    none: ['No microphone found', 'Plug one in, or open a recording made on a phone.'],
    'in-use': ['Another program holds the microphone', 'Close it there, then try again.'],
    'insecure-page': ['This page may not listen', 'Open it over https, or on this computer as localhost.'],
    'not-supported': ['This browser cannot listen', 'Open the page in a current browser, or open a recording.'],
    'device-not-found': ['That microphone is not there', 'Choose another one, then try again.'],
    unknown: ['The microphone did not open', 'Try again, or open a recording.'],
    gone: (count: number) =>
      [
        'The microphone went away',
        count === 0
          ? 'Plug it in again or choose another.'
          : `Plug it in again or choose another. Your ${plucks(count)} ${count === 1 ? 'is' : 'are'} safe.`,
      ] as const,
    'recorder-failed': ['Listening broke off', 'Press Listen to go on. The plucks so far are safe.'],
    'analysis-failed': ['The analysis broke off', 'Try again. The plucks so far are safe.'],
    file: 'This file could not be read',
    browserSays: (detail: string) => `The browser says: ${detail}`,
  },

  ruler: {
    hint: 'Each pluck will stand here, and below them the reading',
    target: (range: string) => `target ${range}`,
    targetShort: 'target',
    pluck: (number: number) => `pluck ${number}`,
    pluckOnly: (number: number, frequency: string) => `pluck ${number}, ${frequency}`,
    leftOut: (label: string) => `${label}, left out`,
    reading: 'reading',
    boundsOnly: 'anywhere in here',
    orHere: 'or here',
    name: 'Force ruler.',
    nameTarget: (range: string) => `Target ${range}.`,
    namePluck: (number: number, range: string) => `Pluck ${number}: ${range}.`,
    nameTogether: (figure: string) => `Together: ${figure}.`,
    nameEmpty: 'Nothing on it yet.',
  },

  span: {
    title: 'Where to measure, where to pluck',
    pluckHere: 'pluck here, lightly',
    tangentPoint: 'tangent point',
    label: (length: string) => `A span between two pulleys, ${length} from tangent point to tangent point, plucked in the middle.`,
    labelNoLength: 'A span between two pulleys. Its length is measured from tangent point to tangent point; it is plucked in the middle.',
  },

  spectrum: {
    title: 'Spectrum',
    partial: (number: number) => `partial ${number}`,
    hum: 'hum, left out',
    steady: 'steady, left out',
    room: 'the room before the pluck',
    live: 'The sound of this moment, with the places where the partials of this span should lie.',
    label: (heard: string) => `Spectrum of the last pluck. Partials heard: ${heard}.`,
    nothingYet: 'Spectrum. Nothing heard yet.',
    caption: 'Partials of the last pluck',
    columns: ['Partial', 'Frequency', 'Level', 'Decay time', 'Expected'],
    notExpected: 'not known',
  },

  doubt: {
    title: 'What the doubt is made of',
    inputs: 'Inputs',
    sound: 'Sound',
    label: 'Parts of the uncertainty of the force',
    note: 'Each at 95 %, were it the only doubt. They add as squares.',
    nameHeading: 'From',
    figureHeading: 'Uncertainty',
    names: {
      'span length': 'span length',
      'linear density': 'linear density',
      'end fixity': 'end fixity',
      'bending stiffness': 'bending stiffness',
      frequency: 'within a pluck',
      repeatability: 'between plucks',
      amplitude: 'amplitude',
    } satisfies Record<BudgetInput, string>,
    fold: 'Each pluck with its partials',
    pluckColumns: ['Pluck', 'Frequency', 'Force', 'Sound', 'Partials heard'],
    leftOut: 'left out',
    noForce: 'not known',
  },

  help: {
    title: 'What would help most',
    becomes: (now: string, then: string) => `${now} → ${then}`,
    weigh: 'Weigh a metre of the belt',
    measureSpan: (to: string) => `Measure the span to ${to}`,
    tellEnds: 'Tell how the ends are held, if both run round pulleys',
  },

  reasons: {
    title: 'Why, and what to do',
    label: 'Reasons',
    spectrumFold: 'Spectrum',
    none: 'No single reason stands out: the doubt is made of many small parts.',
  },

  remedies: {
    title: (force: string) => `What each would give, near ${force}`,
    label: 'What each remedy would give',
    columns: ['Remedy', 'Force', 'Uncertainty', 'Grade'],
    asNow: (span: string) => `${span}, as it is now`,
    names: {
      'longer-span': (span: string) => `A span of ${span}`,
      weighed: () => 'Belt weighed',
      'longer-span-weighed': (span: string) => `${span} and belt weighed`,
      'ends-and-stiffness-known': () => 'Ends and stiffness known',
      'span-measured': (_span: string, to: string) => `Span measured to ${to}`,
    } satisfies Record<RemedyKind, (span: string, to: string) => string>,
    note: 'Reckoned for this belt under this force, each at 95 %.',
    weigh: 'Weigh this belt',
    changeSpan: 'Change the span',
    tellEnds: 'Tell the ends',
  },

  notes: { title: 'About this file' },
};

export type Words = typeof en;
/** A headline, and one sentence on what to do. */
export type TwoLines = readonly [string, string] | readonly string[];
