/** Counsel from a worker that stays: of questions that come faster than answers only the newest is answered. */

import type { Take } from '../core/answer.ts';
import type { Counsel } from '../core/counsel.ts';
import type { Counsellor } from '../ports.ts';

/** A worker as the page sees it. */
export interface CounselWorker {
  postMessage(take: Take): void;
  onmessage: ((event: MessageEvent<Counsel>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

const counselWorker = (): CounselWorker => new Worker(new URL('./counsel.worker.ts', import.meta.url), { type: 'module' }) as CounselWorker;

interface Question {
  readonly take: Take;
  readonly onAnswer: (counsel: Counsel) => void;
}

/** @param spawn  makes the worker, at the first question and after one that broke */
export function createCounsellor(spawn: () => CounselWorker = counselWorker): Counsellor {
  let worker: CounselWorker | undefined;
  let asked: Question | undefined;
  let waiting: Question | undefined;

  function ask(question: Question): void {
    asked = question;
    worker ??= start();
    worker.postMessage(question.take);
  }

  function start(): CounselWorker {
    const started = spawn();
    started.onmessage = ({ data }) => {
      const { onAnswer } = asked!;
      const next = waiting;
      [asked, waiting] = [undefined, undefined];
      if (next) ask(next);
      else onAnswer(data);
    };
    // Nothing is lost but the counsel: the reading stands without it.
    started.onerror = (event) => {
      event.preventDefault();
      started.terminate();
      const next = waiting;
      [worker, asked, waiting] = [undefined, undefined, undefined];
      if (next) ask(next);
    };
    return started;
  }

  return {
    ask(take, onAnswer) {
      if (asked) waiting = { take, onAnswer };
      else ask({ take, onAnswer });
    },
  };
}
