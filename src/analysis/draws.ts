/** The check by random draws in a worker of its own, which is let go when it has answered or is given up. */

import type { Take } from '../core/answer.ts';
import type { DrawnAnswer } from '../core/drawn-answer.ts';
import type { RandomDraws } from '../ports.ts';

export interface ToDraws {
  readonly take: Take;
  readonly seed: number;
}

export type FromDraws =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'drawn'; readonly answer: DrawnAnswer | undefined };

/** A worker as the page sees it. */
export interface DrawsWorker {
  postMessage(message: ToDraws): void;
  onmessage: ((event: MessageEvent<FromDraws>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

const drawsWorker = (): DrawsWorker => new Worker(new URL('./draws.worker.ts', import.meta.url), { type: 'module' }) as DrawsWorker;

/** @param spawn  makes one worker for each check */
export function createRandomDraws(spawn: () => DrawsWorker = drawsWorker): RandomDraws {
  return {
    draw: ({ take, seed, onProgress, signal }) =>
      new Promise((resolve, reject) => {
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
          else over(() => resolve(data.answer));
        };
        worker.onerror = (event) => {
          event.preventDefault();
          over(() => reject(new Error(event.message || 'the draws broke')));
        };
        worker.postMessage({ take, seed });
      }),
  };
}
