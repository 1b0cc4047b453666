/** Reasons, budget and plucks of a reading as texts for the drawings. */

import type { BudgetInput, PluckReading, Reading, Reason } from '../../core/outcome.ts';
import { capital, en } from '../../words/en.ts';
import { reasonName, reasonRemedy, reasonSentence } from '../../words/reasons-en.ts';
import { type Figures, together } from '../format.ts';
import type { DoubtGroup } from '../parts/doubt-bars.ts';
import type { WordedReason } from '../parts/reasons-list.ts';

/** A 95 % interval for each part alone, as everywhere on the page. */
const COVERAGE_FACTOR = 2;
const OF_THE_SOUND: readonly BudgetInput[] = ['frequency', 'repeatability', 'amplitude'];

/** What holds the reading below trusted, worst first; empty where nothing does. */
export function wordedReasons({ grade, reasons }: Reading): readonly WordedReason[] {
  if (grade === 'trusted') return [];
  const order: readonly Reason['holdsAt'][] = ['unusable', 'doubtful'];
  return order.flatMap((holdsAt) => reasons.filter((reason) => reason.holdsAt === holdsAt)).map(worded);
}

const worded = (reason: Reason): WordedReason => ({
  id: reason.id,
  grade: reason.holdsAt,
  gradeWord: en.reading.grades[reason.holdsAt],
  name: capital(reasonName(reason)),
  sentence: reasonSentence(reason),
  remedy: reasonRemedy(reason),
});

/** Inputs above sound, the largest first; what would show as nothing but zeros is left out. */
export function doubtGroups({ budget, forceN }: Reading, figures: Figures): readonly DoubtGroup[] {
  const whole = forceN && figures.force(forceN);
  if (!whole) return [];
  const lines = [...budget].sort((a, b) => b.forceUN - a.forceUN);
  const linesOf = (sound: boolean) =>
    lines
      .filter(({ input }) => OF_THE_SOUND.includes(input) === sound)
      .map(({ input, forceUN }) => {
        const valueN = COVERAGE_FACTOR * forceUN;
        return { name: en.doubt.names[input], valueN, figure: figures.part(valueN, whole) };
      })
      .filter(({ figure }) => /[1-9]/u.test(figure));
  const groups = [
    { name: en.doubt.inputs, lines: linesOf(false) },
    { name: en.doubt.sound, lines: linesOf(true) },
  ];
  return groups.filter((group) => group.lines.length > 0);
}

/** One row for each pluck: number, frequency, force, what the sound is worth, the partials heard. */
export function pluckRows(plucks: readonly PluckReading[], figures: Figures): readonly (readonly string[])[] {
  return plucks.map(({ frequencyHz, forceN, soundGrade, sound, used }, index) => {
    const force = forceN && figures.force(forceN);
    return [
      used ? String(index + 1) : `${index + 1}, ${en.doubt.leftOut}`,
      together(figures.frequency(frequencyHz), 'Hz'),
      force ? together(force, 'N') : forceN ? `${figures.bounds(forceN)}\u00a0N` : en.doubt.noForce,
      en.reading.grades[soundGrade],
      sound.partials.map(({ number, frequencyHz: hz }) => `${number}: ${figures.typed(hz.value, 'Hz')}`).join(', '),
    ];
  });
}
