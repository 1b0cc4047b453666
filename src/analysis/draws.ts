/** The check by random draws in a worker of its own, which is let go when it has answered or is given up. */

import type { Take } from '../core/answer.ts';
import type { DrawnAnswer } from '../core/drawn-answer.ts';
import type { RandomDraws } from '../ports.ts';
import { askedOnce, type Progress, type QuestionWorker } from './one-question.ts';

export interface ToDraws {
  readonly take: Take;
  readonly seed: number;
}

interface Drawn {
  readonly kind: 'drawn';
  readonly answer: DrawnAnswer | undefined;
}

export type FromDraws = Progress | Drawn;
export type DrawsWorker = QuestionWorker<ToDraws, FromDraws>;

const drawsWorker = (): DrawsWorker => new Worker(new URL('./draws.worker.ts', import.meta.url), { type: 'module' }) as DrawsWorker;

/** @param spawn  makes one worker for each check */
export function createRandomDraws(spawn: () => DrawsWorker = drawsWorker): RandomDraws {
  return {
    async draw({ take, seed, onProgress, signal }) {
      const told = await askedOnce<ToDraws, Drawn>({ spawn, question: { take, seed }, signal, onProgress, broken: 'the draws broke' });
      return told.answer;
    },
  };
}
