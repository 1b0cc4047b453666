/** Whole recordings, each in a worker of its own, so that one can be given up without harm to another. */

import type { ListeningEvent } from '../core/listening.ts';
import type { Recording } from '../core/samples/recording.ts';
import type { SpanSetup } from '../core/setup.ts';
import type { AnalysisWorker } from './messages.ts';

/** Workers at the same time; a folder of recordings must not start a hundred. */
const WORKERS_AT_ONCE = 2;

export interface Job {
  readonly recording: Recording;
  readonly setup: SpanSetup;
  readonly signal?: AbortSignal | undefined;
}

export class Jobs {
  readonly #spawn: () => AnalysisWorker;
  readonly #waiting: (() => void)[] = [];
  #running = 0;

  constructor(spawn: () => AnalysisWorker) {
    this.#spawn = spawn;
  }

  /** Rejects with the signal's reason when aborted, waiting or running, and with an Error when the worker breaks. */
  async run(job: Job): Promise<readonly ListeningEvent[]> {
    job.signal?.throwIfAborted();
    await this.#takePlace(job.signal);
    try {
      return await answerOf(this.#spawn(), job);
    } finally {
      this.#leavePlace();
    }
  }

  async #takePlace(signal: AbortSignal | undefined): Promise<void> {
    if (this.#running < WORKERS_AT_ONCE) {
      this.#running++;
      return;
    }
    await new Promise<void>((resolve, reject) => {
      const leave = () => {
        this.#waiting.splice(this.#waiting.indexOf(begin), 1);
        reject(signal?.reason);
      };
      const begin = () => {
        signal?.removeEventListener('abort', leave);
        resolve();
      };
      this.#waiting.push(begin);
      signal?.addEventListener('abort', leave, { once: true });
    });
  }

  /** The place goes straight to whoever waits longest, so that nobody slips in between. */
  #leavePlace(): void {
    const next = this.#waiting.shift();
    if (next) next();
    else this.#running--;
  }
}

function answerOf(worker: AnalysisWorker, { recording, setup, signal }: Job): Promise<readonly ListeningEvent[]> {
  const { promise, resolve, reject } = settled<readonly ListeningEvent[]>();
  const abort = () => reject(signal?.reason);
  if (signal?.aborted) abort();
  signal?.addEventListener('abort', abort, { once: true });
  worker.onmessage = ({ data }) => {
    if (data.kind === 'analysed') resolve(data.events);
    else reject(new Error(data.kind === 'failed' ? data.detail : 'an answer to a question that was not asked'));
  };
  worker.onerror = (event) => {
    event.preventDefault();
    reject(new Error(event.message || 'the analysis broke'));
  };
  worker.onmessageerror = () => reject(new Error('a message could not be read'));
  const samples = new Float32Array(recording.samples); // a copy to give away: the page keeps its own
  worker.postMessage({ kind: 'analyse', sampleRateHz: recording.sampleRateHz, setup, samples }, [samples.buffer]);
  return promise.finally(() => {
    signal?.removeEventListener('abort', abort);
    worker.terminate();
  });
}

function settled<T>() {
  let resolve: (value: T) => void = () => {};
  let reject: (reason: unknown) => void = () => {};
  const promise = new Promise<T>((keep, refuse) => {
    resolve = keep;
    reject = refuse;
  });
  return { promise, resolve, reject };
}
