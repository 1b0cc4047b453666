/** Whole recordings and single sounds, each in a worker of its own, so that one can be given up without harm to another. */

import type { InspectedSound, Inspection } from '../core/inspection/inspect.ts';
import type { Recording } from '../core/samples/recording.ts';
import type { SpanSetup } from '../core/setup.ts';
import type { HeardEvent } from '../ports.ts';
import type { AnalysisWorker, FromWorker, ToWorker } from './messages.ts';

/** Workers at the same time; a folder of recordings must not start a hundred. */
const WORKERS_AT_ONCE = 2;

/** One question to a worker: what is sent, and what of its answer is wanted. */
export interface Job<Answer> {
  readonly message: () => ToWorker;
  /** Undefined of an answer to another question. */
  readonly answerIn: (said: FromWorker) => Answer | undefined;
}

export const analysisOf = ({ samples, sampleRateHz }: Recording, setup: SpanSetup): Job<readonly HeardEvent[]> => ({
  // a copy to give away: the page keeps its own
  message: () => ({ kind: 'analyse', sampleRateHz, setup, samples: new Float32Array(samples) }),
  answerIn: (said) => (said.kind === 'analysed' ? said.events : undefined),
});

export const inspectionOf = (inspected: InspectedSound): Job<Inspection> => ({
  message: () => ({ kind: 'inspect', inspected }),
  answerIn: (said) => (said.kind === 'inspected' ? said.inspection : undefined),
});

export class Jobs {
  readonly #spawn: () => AnalysisWorker;
  readonly #waiting: (() => void)[] = [];
  #running = 0;

  constructor(spawn: () => AnalysisWorker) {
    this.#spawn = spawn;
  }

  /** Rejects with the signal's reason when aborted, waiting or running, and with an Error when the worker breaks. */
  async run<Answer>(job: Job<Answer>, signal?: AbortSignal): Promise<Answer> {
    signal?.throwIfAborted();
    await this.#takePlace(signal);
    try {
      return await answerOf(this.#spawn(), job, signal);
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

function answerOf<Answer>(worker: AnalysisWorker, job: Job<Answer>, signal: AbortSignal | undefined): Promise<Answer> {
  const { promise, resolve, reject } = settled<Answer>();
  const abort = () => reject(signal?.reason);
  if (signal?.aborted) abort();
  signal?.addEventListener('abort', abort, { once: true });
  worker.onmessage = ({ data }) => {
    const answer = job.answerIn(data);
    if (answer !== undefined) resolve(answer);
    else reject(new Error(data.kind === 'failed' ? data.detail : 'an answer to a question that was not asked'));
  };
  worker.onerror = (event) => {
    event.preventDefault();
    reject(new Error(event.message || 'the analysis broke'));
  };
  worker.onmessageerror = () => reject(new Error('a message could not be read'));
  const message = job.message();
  worker.postMessage(message, message.kind === 'analyse' ? [message.samples.buffer] : []);
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
