/** Plans and trials in a worker of their own, which is let go when it has answered or is given up. */

import type { AskedPlan, PlanAnswer } from '../core/machine/ask-plan.ts';
import type { AskedSecond, PlannedSecond } from '../core/machine/second-position.ts';
import type { TrialQuestion, TrialRow } from '../core/machine/trial.ts';
import type { Planner } from '../ports.ts';
import { askedOnce, type Progress, type QuestionWorker } from './one-question.ts';

export type ToPlanner =
  | { readonly kind: 'plan'; readonly asked: AskedPlan }
  | { readonly kind: 'second'; readonly asked: AskedSecond }
  | { readonly kind: 'try'; readonly question: TrialQuestion };

type Planned =
  | { readonly kind: 'planned'; readonly answer: PlanAnswer | undefined }
  | { readonly kind: 'second-planned'; readonly second: PlannedSecond | undefined }
  | { readonly kind: 'tried'; readonly rows: readonly TrialRow[] };

export type FromPlanner = Progress | Planned;
export type PlannerWorker = QuestionWorker<ToPlanner, FromPlanner>;

const plannerWorker = (): PlannerWorker => new Worker(new URL('./planner.worker.ts', import.meta.url), { type: 'module' }) as PlannerWorker;

/** @param spawn  makes one worker for each question */
export function createPlanner(spawn: () => PlannerWorker = plannerWorker): Planner {
  const ask = (question: ToPlanner, signal: AbortSignal, onProgress: (share: number) => void) =>
    askedOnce<ToPlanner, Planned>({ spawn, question, signal, onProgress, broken: 'the planner broke' });
  return {
    async plan(asked, { signal }) {
      const told = await ask({ kind: 'plan', asked }, signal, () => {});
      return told.kind === 'planned' ? told.answer : undefined;
    },
    async second(asked, { signal }) {
      const told = await ask({ kind: 'second', asked }, signal, () => {});
      return told.kind === 'second-planned' ? told.second : undefined;
    },
    async tryHere(question, { signal, onProgress }) {
      const told = await ask({ kind: 'try', question }, signal, onProgress);
      return told.kind === 'tried' ? told.rows : [];
    },
  };
}
