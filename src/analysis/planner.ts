/** Plans and trials in a worker of their own, which is let go when it has answered or is given up. */

import type { AskedPlan, PlanAnswer } from '../core/machine/ask-plan.ts';
import type { AskedSecond, PlannedSecond } from '../core/machine/second-position.ts';
import type { TrialQuestion, TrialRow } from '../core/machine/trial.ts';
import type { Planner } from '../ports.ts';

export type ToPlanner =
  | { readonly kind: 'plan'; readonly asked: AskedPlan }
  | { readonly kind: 'second'; readonly asked: AskedSecond }
  | { readonly kind: 'try'; readonly question: TrialQuestion };

export type FromPlanner =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'planned'; readonly answer: PlanAnswer | undefined }
  | { readonly kind: 'second-planned'; readonly second: PlannedSecond | undefined }
  | { readonly kind: 'tried'; readonly rows: readonly TrialRow[] };

/** A worker as the page sees it. */
export interface PlannerWorker {
  postMessage(message: ToPlanner): void;
  onmessage: ((event: MessageEvent<FromPlanner>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

const plannerWorker = (): PlannerWorker => new Worker(new URL('./planner.worker.ts', import.meta.url), { type: 'module' }) as PlannerWorker;

/** @param spawn  makes one worker for each question */
export function createPlanner(spawn: () => PlannerWorker = plannerWorker): Planner {
  const ask = (message: ToPlanner, signal: AbortSignal, onProgress: (share: number) => void) =>
    new Promise<Exclude<FromPlanner, { kind: 'progress' }>>((resolve, reject) => {
      if (signal.aborted) return reject(signal.reason);
      const worker = spawn();
      const over = (settle: () => void) => {
        signal.removeEventListener('abort', abort);
        worker.terminate();
        settle();
      };
      const abort = () => over(() => reject(signal.reason));
      signal.addEventListener('abort', abort, { once: true });
      worker.onmessage = ({ data }) => {
        if (data.kind === 'progress') onProgress(data.share);
        else over(() => resolve(data));
      };
      worker.onerror = (event) => {
        event.preventDefault();
        over(() => reject(new Error(event.message || 'the planner broke')));
      };
      worker.postMessage(message);
    });
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
