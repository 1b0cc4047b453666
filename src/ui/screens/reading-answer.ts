/** The Reading where there is one: figures, grade, what follows for the target, and what sound and inputs are worth. */

import { readingAgainstTarget } from '../../core/machine/target.ts';
import { assertNever, type Reading, type Reason } from '../../core/outcome.ts';
import { adviceEn } from '../../words/advice-en.ts';
import { en } from '../../words/en.ts';
import { octaveEn } from '../../words/octave-en.ts';
import { reasonName } from '../../words/reasons-en.ts';
import type { Figures } from '../format.ts';
import type { AppState } from '../state/state.ts';
import { captionOf, type Large, type ReadingView } from './reading-shape.ts';

const words = en.reading;

export function answerView(state: AppState, figures: Figures): ReadingView | undefined {
  const { reading } = state.answer;
  if (!reading) return undefined;
  const frequency = figures.frequency(reading.frequencyHz);
  const grade = { grade: reading.grade, word: words.grades[reading.grade] };
  const large = largeOf(state, reading, figures);
  const lead = leadOf(state, reading, figures);
  const second = secondOf(state, reading);
  const advice = adviceText(state, reading, figures);
  const view = { caption: captionOf(state), large, grade, lead, second, advice, spoken: '' };
  const shown = large.kind === 'frequency' ? view : { ...view, frequency };
  return { ...shown, spoken: spokenReading(shown, frequency) };
}

function largeOf(state: AppState, reading: Reading, figures: Figures): Large {
  const { forceN, grade } = reading;
  if (!forceN) return { kind: 'frequency', ...figures.frequency(reading.frequencyHz) };
  const rival = octaveOpen(reading) && state.answer.octave?.rival.forceN;
  if (rival) return { kind: 'bounds', text: words.either(figures.rough(forceN.value), figures.rough(rival.value)) };
  const figure = grade === 'unusable' ? undefined : figures.force(forceN);
  return figure ? { kind: 'force', ...figure } : { kind: 'bounds', text: figures.bounds(forceN) };
}

const octaveOpen = ({ reasons }: Reading): boolean =>
  reasons.some(({ id, holdsAt }) => id === 'octave-not-certain' && holdsAt === 'unusable');

function leadOf(state: AppState, reading: Reading, figures: Figures): string {
  const { setup } = state.understood;
  if (!reading.forceN) {
    if (!setup.spanLengthM) return setup.belt ? words.needsSpan : words.needsBoth;
    return setup.belt ? words.noForceFits : words.needsBelt;
  }
  if (state.answer.octave || octaveOpen(reading)) return words.twoFit;
  if (reading.grade === 'unusable') return reading.soundGrade === 'unusable' ? words.soundCannotTell : words.cannotTell;
  return targetText(state, reading, figures) ?? (reading.pluckCount === 1 ? words.onePluck : '');
}

function targetText({ understood }: AppState, reading: Reading, figures: Figures): string | undefined {
  const verdict = readingAgainstTarget(reading, understood.setup);
  if (!verdict) return undefined;
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
  const settled = answer.plucks.some(({ sound }) => sound.evidence.numberingTested) && !answer.octave ? octaveEn.settled : '';
  return [soundText(reading), settled || inputsText(state, reading)].filter((part) => part !== '').join(' ');
}

/** What the next pluck could do better, and what that would have given; nothing where the printed doubt would be the same. */
function adviceText({ counsel }: AppState, { forceN, grade }: Reading, figures: Figures): string | undefined {
  const advice = counsel?.advice;
  if (!advice) return undefined;
  if (advice.grade !== grade) return adviceEn.better(advice.kind, advice.grade);
  const [now, then] = [forceN && figures.force(forceN), advice.forceN && figures.force(advice.forceN)];
  return now && then && now.doubt !== then.doubt
    ? adviceEn.narrower(advice.kind, `±\u00a0${now.doubt}`, `±\u00a0${then.doubt}\u00a0N`)
    : undefined;
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
