/** What the Reading says in the state that the page is in: large words, one sentence, grade, and the same in words for the ear. */

import { answerOf } from '../../core/answer.ts';
import type { ForceN, Grade, Reading, Reason } from '../../core/outcome.ts';
import { assertNever } from '../../core/outcome.ts';
import { againstTarget } from '../../core/verdict/against-target.ts';
import { en } from '../../words/en.ts';
import { nothingText, reasonName } from '../../words/reasons-en.ts';
import { type Figures, together } from '../format.ts';
import type { AppState, Notice } from '../state/state.ts';

export type Large =
  | { readonly kind: 'force'; readonly value: string; readonly doubt: string }
  | { readonly kind: 'frequency'; readonly value: string; readonly doubt: string }
  /** Bounds or rivals without a value: '2.3 to 5.7'. */
  | { readonly kind: 'bounds'; readonly text: string }
  | { readonly kind: 'sentence'; readonly text: string };

export interface ReadingView {
  readonly caption: string;
  readonly large: Large;
  /** Beside a force. */
  readonly frequency?: { readonly value: string; readonly doubt: string } | undefined;
  readonly grade?: { readonly grade: Grade | 'nothing'; readonly word: string } | undefined;
  /** What follows for the target, or what to do. */
  readonly lead: string;
  /** What the sound and then the inputs are worth, or what the browser said. */
  readonly second: string;
  /** One sentence for the ear. It changes once for each pluck and for each thing that a person has to know. */
  readonly spoken: string;
}

const words = en.reading;

export function readingView(state: AppState, figures: Figures): ReadingView {
  return noticeView(state) ?? busyView(state) ?? answerView(state, figures) ?? nothingView(state) ?? quietView(state);
}

function captionOf({ answer, take }: AppState): string {
  const count = answer.reading?.pluckCount ?? 0;
  if (take?.source === 'demo') return words.captionDemo(count);
  return take?.fileName !== undefined ? words.captionFile(count, take.fileName) : words.caption(count);
}

function sentenceView(state: AppState, [text = '', lead = '']: readonly string[], second = ''): ReadingView {
  const spoken = [text.endsWith('.') ? text : `${text}.`, lead, second].filter((part) => part !== '').join(' ');
  return { caption: captionOf(state), large: { kind: 'sentence', text }, lead, second, spoken };
}

/** What the person has to know before anything else goes on. */
function noticeView(state: AppState): ReadingView | undefined {
  const { notice, take } = state;
  return notice && sentenceView(state, noticeText(notice, take?.plucks.length ?? 0), noticeDetail(notice));
}

function noticeText(notice: Notice, pluckCount: number): readonly string[] {
  switch (notice.kind) {
    case 'capture-failure':
      return en.failures[notice.failure.why];
    case 'lost':
      return notice.why === 'gone' ? en.failures.gone(pluckCount) : en.failures[notice.why];
    case 'file-failure':
      return [en.failures.file, notice.failure.text];
    default:
      return assertNever(notice);
  }
}

function noticeDetail(notice: Notice): string {
  const detail = notice.kind === 'capture-failure' && notice.failure.why === 'unknown' ? notice.failure.detail : '';
  return detail === '' ? '' : en.failures.browserSays(detail);
}

/** States of listening in which even a reading that is there gives way. */
function busyView(state: AppState): ReadingView | undefined {
  const { activity } = state;
  if (activity.kind === 'asking') return sentenceView(state, words.asking);
  if (activity.kind === 'opening') return sentenceView(state, words.opening);
  if (activity.kind === 'listening' && activity.obstacle) return sentenceView(state, words[activity.obstacle]);
  return undefined;
}

/** States before the first reading. */
function quietView(state: AppState): ReadingView {
  const { activity } = state;
  if (activity.kind !== 'listening') return sentenceView(state, words.empty);
  const view = sentenceView(state, words[activity.ear]);
  return activity.ear === 'ringing' ? { ...view, spoken: sentenceView(state, words.ready).spoken } : view;
}

/** Something was heard, and nothing of it was a pluck. */
function nothingView(state: AppState): ReadingView | undefined {
  const { take, activity } = state;
  const why = take?.missed.at(-1);
  if (!take || (activity.kind === 'listening' && (!why || activity.ear === 'ringing'))) return undefined;
  if (activity.kind === 'idle' && take.source !== 'recording' && !why) return undefined;
  const [lead, second] = missedText(take.missed);
  return {
    caption: captionOf(state),
    large: { kind: 'sentence', text: '' },
    grade: { grade: 'nothing', word: words.nothingHeard },
    lead,
    second,
    spoken: `${words.gradeSentence(words.nothingHeard)} ${lead} ${second}`.trim(),
  };
}

function missedText(missed: NonNullable<AppState['take']>['missed']): readonly [string, string] {
  const why = missed.at(-1) ?? 'no-onset';
  if (why === 'too-quiet') return [words.tooQuiet, ''];
  if (why === 'not-a-span') return [words.knocks(missed.filter((one) => one === 'not-a-span').length), words.knocksRemedy];
  return [nothingText(why), ''];
}

function answerView(state: AppState, figures: Figures): ReadingView | undefined {
  const { reading } = state.answer;
  if (!reading) return undefined;
  const frequency = figures.frequency(reading.frequencyHz);
  const grade = { grade: reading.grade, word: words.grades[reading.grade] };
  const large = largeOf(state, reading, figures);
  const lead = leadOf(state, reading, figures);
  const second = secondOf(state, reading);
  const view = { caption: captionOf(state), large, grade, lead, second, spoken: '' };
  const shown = large.kind === 'frequency' ? view : { ...view, frequency };
  return { ...shown, spoken: spokenReading(shown, frequency) };
}

function largeOf(state: AppState, reading: Reading, figures: Figures): Large {
  const { forceN, grade } = reading;
  if (!forceN) return { kind: 'frequency', ...figures.frequency(reading.frequencyHz) };
  const rival = octaveOpen(reading) && rivalForceN(state);
  if (rival) return { kind: 'bounds', text: words.either(figures.rough(forceN.value), figures.rough(rival.value)) };
  const figure = grade === 'unusable' ? undefined : figures.force(forceN);
  return figure ? { kind: 'force', ...figure } : { kind: 'bounds', text: figures.bounds(forceN) };
}

const octaveOpen = ({ reasons }: Reading): boolean =>
  reasons.some(({ id, holdsAt }) => id === 'octave-not-certain' && holdsAt === 'unusable');

/** The force that the second fundamental would mean on this span, by the same reckoning. */
export function rivalForceN({ take, answer, understood }: AppState): ForceN | undefined {
  const open = answer.reading?.reasons.find((reason) => reason.id === 'octave-not-certain');
  const sound = take?.plucks[0]?.sound;
  if (!take || !sound || open?.id !== 'octave-not-certain') return undefined;
  const factor = open.rivalHz / sound.frequencyHz.value;
  const frequencyHz = { value: open.rivalHz, standardUncertainty: sound.frequencyHz.standardUncertainty * factor };
  const rival = { ...sound, frequencyHz, partials: [], inharmonicity: undefined };
  return answerOf({ sounds: [rival], setup: understood.setup, sampleRateHz: take.sampleRateHz }).reading?.forceN;
}

function leadOf(state: AppState, reading: Reading, figures: Figures): string {
  const { setup } = state.understood;
  if (!reading.forceN) {
    if (!setup.spanLengthM) return setup.belt ? words.needsSpan : words.needsBoth;
    return words.needsBelt;
  }
  if (octaveOpen(reading)) return words.twoFit;
  if (reading.grade === 'unusable') return reading.soundGrade === 'unusable' ? words.soundCannotTell : words.cannotTell;
  return targetText(state, reading.forceN, figures) ?? (reading.pluckCount === 1 ? words.onePluck : '');
}

function targetText({ understood }: AppState, forceN: ForceN, figures: Figures): string | undefined {
  const target = understood.setup.targetForceN;
  if (!target) return undefined;
  const verdict = againstTarget(forceN, target);
  switch (verdict.kind) {
    case 'low':
    case 'high':
      return words.target[verdict.kind](figures.rough(verdict.byN, 'N'));
    case 'inside':
      return { whole: words.target.insideWhole, lower: words.target.insideLower, upper: words.target.insideUpper }[verdict.part];
    case 'probably-inside':
      return words.target.probablyInside;
    case 'cannot-tell':
      return words.target.cannotTell;
    default:
      return assertNever(verdict);
  }
}

/** The sound first, then the inputs; while it listens, what the last sound was where it changed nothing. */
function secondOf(state: AppState, reading: Reading): string {
  const { take, answer } = state;
  const missed = take?.missed.at(-1);
  if (missed && state.activity.kind === 'listening') return missed === 'too-quiet' ? words.lastSoundFaint : words.lastSoundLeft;
  const last = answer.plucks.at(-1);
  if (last && !last.used) return leftOutText(last.reasons);
  return `${soundText(reading)} ${inputsText(state, reading)}`.trim();
}

function leftOutText(reasons: readonly Reason[]): string {
  if (reasons.some(({ id }) => id === 'clipped')) return words.clippedLeft;
  const worst = reasons.find(({ about }) => about === 'sound');
  return worst ? words.lastPluckLeft(reasonName(worst)) : '';
}

function soundText({ soundGrade, reasons }: Reading): string {
  const worst = soundGrade === 'trusted' ? undefined : reasons.find(({ about, holdsAt }) => about === 'sound' && holdsAt === soundGrade);
  return worst ? words.soundBecause(reasonName(worst)) : words.sound[soundGrade];
}

function inputsText({ understood }: AppState, { forceN, grade }: Reading): string {
  const { belt, ends, targetForceN, toleranceRelative } = understood.setup;
  if (!forceN || !belt) return '';
  if (grade === 'unusable') return words.tooWide(targetForceN && toleranceRelative === undefined ? 'target' : 'tolerance');
  if (grade === 'doubtful' && belt.densityFrom === 'catalogue') return words.weigh;
  return words.inputs(words.belt[belt.densityFrom], ends.some(({ kind }) => kind === 'unknown') ? words.endsAssumed : words.endsTold);
}

/** 'Reading: 9.7 newtons, plus or minus 0.5. Trusted. 116.3 hertz, plus or minus 0.3. Inside the target.' */
function spokenReading({ large, grade, lead, second }: Omit<ReadingView, 'spoken'>, frequency: { value: string; doubt: string }): string {
  const hertz = words.spokenHertz(frequency.value, frequency.doubt);
  const gradeSentence = grade ? words.gradeSentence(grade.word) : '';
  const force = large.kind === 'force' ? words.spokenForce(large.value, large.doubt) : '';
  const bounds = large.kind === 'bounds' ? words.spokenSentence(large.text) : '';
  return words.spokenReading([force || bounds, gradeSentence, hertz, lead, second]);
}

/** The figure in one line, for names of drawings. */
export function figureText(large: Large): string {
  switch (large.kind) {
    case 'force':
      return together(large, 'N');
    case 'frequency':
      return together(large, 'Hz');
    case 'bounds':
      return `${large.text}\u00a0N`;
    case 'sentence':
      return large.text;
    default:
      return assertNever(large);
  }
}
