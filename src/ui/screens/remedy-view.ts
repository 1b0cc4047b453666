/** What each remedy would give, as rows of the remedy ruler, and which of them can be taken up on this page. */

import type { BudgetInput, ForceN, Reading, Reason } from '../../core/outcome.ts';
import { MEASURED_SPAN_M, type Remedy } from '../../core/remedies.ts';
import type { SpanSetup } from '../../core/setup.ts';
import { en } from '../../words/en.ts';
import type { Figures } from '../format.ts';
import type { RemedyRow } from '../parts/remedy-ruler.ts';
import type { PlotTable } from '../parts/spoken-table.ts';
import type { AppState } from '../state/state.ts';

const words = en.remedies;
const NO_BREAK = '\u00a0';
const COVERAGE_FACTOR = 2;
/** As many as one look takes in. */
const TOLD = 4;

export interface RemedyView {
  readonly title: string;
  readonly rows: readonly RemedyRow[];
  readonly table: PlotTable;
}

/** Undefined where there is no force, or where nothing that is known here would help. */
export function remedyView(
  { remedies: all, setup, now }: { readonly remedies: readonly Remedy[]; readonly setup: SpanSetup; readonly now: Reading },
  figures: Figures,
): RemedyView | undefined {
  const { forceN } = now;
  if (!forceN || !setup.spanLengthM) return undefined;
  const remedies = all.slice(0, TOLD);
  if (remedies.length === 0) return undefined;
  const asNow = words.asNow(figures.typed(setup.spanLengthM.value * 1000, 'mm'));
  const rows = [{ ...rowOf(asNow, now, figures), isNow: true }, ...remedies.map((remedy) => remedyRow(remedy, figures))];
  return { title: words.title(nearText(forceN, figures)), rows, table: tableOf(rows, figures) };
}

/** The force in the digits that it has earned. */
function nearText(forceN: ForceN, figures: Figures): string {
  const figure = figures.force(forceN);
  return figure ? `${figure.value}${NO_BREAK}N` : figures.rough(forceN.value, 'N');
}

function remedyRow({ kind, spanLengthM, reading }: Remedy, figures: Figures): RemedyRow {
  const span = figures.typed(spanLengthM * 1000, 'mm');
  const to = figures.typed(COVERAGE_FACTOR * MEASURED_SPAN_M * 1000, 'mm');
  return rowOf(words.names[kind](span, to), reading, figures);
}

function rowOf(name: string, { forceN, grade }: Reading, figures: Figures): RemedyRow {
  return {
    name,
    lowN: forceN?.low,
    highN: forceN?.high,
    valueN: grade === 'unusable' ? undefined : forceN?.value,
    grade,
    gradeWord: en.reading.grades[grade],
    figure: forceN ? doubtText(forceN, figures) : '',
  };
}

/** '± 0.4 N', or the one bound that there is. */
function doubtText(forceN: ForceN, figures: Figures): string {
  const figure = figures.force(forceN);
  return figure ? `±${NO_BREAK}${figure.doubt}${NO_BREAK}N` : `${figures.bounds(forceN)}${NO_BREAK}N`;
}

const tableOf = (rows: readonly RemedyRow[], figures: Figures): PlotTable => ({
  caption: words.label,
  columns: words.columns,
  rows: rows.map(({ name, lowN, highN, figure, gradeWord }) => [
    name,
    `${figures.bounds({ value: 0, low: lowN, high: highN })}${NO_BREAK}N`,
    figure,
    gradeWord,
  ]),
});

/** The best first: it stands out. */
export type RemedyAct = 'weigh' | 'change-span' | 'tell-ends';

/** What a person can take up here and now about the inputs of a reading below trusted. */
export function remedyActs({ answer }: AppState): readonly RemedyAct[] {
  const { reading } = answer;
  if (!reading || reading.grade === 'trusted') return [];
  const doubts = reading.reasons.filter(({ about, holdsAt }) => about === 'inputs' && holdsAt !== 'trusted');
  if (doubts.length === 0) return [];
  const acts = new Set(doubts.map(actAgainst));
  const inOrder = ACTS.filter((act) => acts.has(act));
  return inOrder.length > 0 ? inOrder : ['change-span'];
}

/** Whether something else than listening again, or keeping, is the main act of the screen. */
export const hasBetterAct = (state: AppState): boolean => state.answer.octave !== undefined || remedyActs(state).length > 0;

const ACTS: readonly RemedyAct[] = ['weigh', 'change-span', 'tell-ends'];

const AGAINST_INPUT: Partial<Record<BudgetInput, RemedyAct>> = {
  'linear density': 'weigh',
  'span length': 'change-span',
  'end fixity': 'tell-ends',
};

function actAgainst(reason: Reason): RemedyAct | undefined {
  switch (reason.id) {
    case 'density-from-catalogue':
      return 'weigh';
    case 'span-too-short':
      return 'change-span';
    case 'ends-and-stiffness-unknown':
      return 'tell-ends';
    case 'input-decides':
      return AGAINST_INPUT[reason.input];
    default:
      return undefined;
  }
}
