/** What the force ruler shows: target, one interval for each pluck, the reading, and all of it in words. */

import type { ForceN, PluckReading } from '../../core/outcome.ts';
import { en } from '../../words/en.ts';
import { type Figures, together } from '../format.ts';
import type { RulerInterval } from '../parts/force-ruler.ts';
import type { AppState } from '../state/state.ts';
import { figureText, type ReadingView } from './reading-shape.ts';

const words = en.ruler;

export interface RulerView {
  readonly targetLabel: string;
  readonly plucks: readonly RulerInterval[];
  readonly reading?: RulerInterval | undefined;
  readonly rival?: RulerInterval | undefined;
  readonly boundsOnly: boolean;
  readonly label: string;
}

export function rulerView(state: AppState, { large }: ReadingView, figures: Figures): RulerView {
  const { answer, understood } = state;
  const { reading, plucks } = answer;
  const target = understood.setup.targetForceN;
  const boundsOnly = reading?.grade === 'unusable';
  const rivalN = answer.octave?.rival.forceN;
  return {
    targetLabel: target ? words.target(figures.forceRange(target)) : '',
    plucks: plucks.map((pluck, index) => pluckInterval(pluck, index + 1, figures)),
    reading: reading?.forceN && intervalOf(reading.forceN, boundsOnly ? words.boundsOnly : words.reading, boundsOnly),
    rival: rivalN && intervalOf(rivalN, words.orHere, true),
    boundsOnly,
    label: [
      words.name,
      target ? words.nameTarget(figures.forceRange(target)) : '',
      ...plucks.map((pluck, index) => pluckSentence(pluck, index + 1, figures)),
      reading?.forceN && large.kind !== 'sentence' ? words.nameTogether(figureText(large)) : '',
      plucks.length === 0 ? words.nameEmpty : '',
    ]
      .filter((part) => part !== '')
      .join(' '),
  };
}

const intervalOf = (force: ForceN, label: string, withoutValue: boolean): RulerInterval => ({
  lowN: force.low,
  highN: force.high,
  valueN: withoutValue ? undefined : force.value,
  label,
  shortLabel: '', // on a narrow ruler the heavy bar speaks for itself
});

function pluckInterval({ forceN, frequencyHz, grade, used }: PluckReading, number: number, figures: Figures): RulerInterval {
  const plain = forceN ? words.pluck(number) : words.pluckOnly(number, together(figures.frequency(frequencyHz), 'Hz'));
  const label = used ? plain : words.leftOut(plain);
  const interval = forceN ? intervalOf(forceN, label, grade === 'unusable') : { label };
  return { ...interval, shortLabel: String(number), leftOut: !used };
}

function pluckSentence({ forceN, frequencyHz }: PluckReading, number: number, figures: Figures): string {
  const force = forceN && figures.force(forceN);
  if (force) return words.namePluck(number, together(force, 'N'));
  return words.namePluck(number, forceN ? `${figures.bounds(forceN)}\u00a0N` : together(figures.frequency(frequencyHz), 'Hz'));
}
