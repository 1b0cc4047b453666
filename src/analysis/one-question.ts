/** One question to a worker of its own, which tells how far it is, and is let go when it has answered, broke or is given up. */

/** How far the answer is, beside the answers themselves. */
export interface Progress {
  readonly kind: 'progress';
  readonly share: number;
}

/** A worker as the page sees it. */
export interface QuestionWorker<Question, Told> {
  postMessage(message: Question): void;
  onmessage: ((event: MessageEvent<Told>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

interface Asked<Question, Told> {
  readonly spawn: () => QuestionWorker<Question, Told | Progress>;
  readonly question: Question;
  readonly signal: AbortSignal;
  readonly onProgress: (share: number) => void;
  /** Says what broke where the browser does not. */
  readonly broken: string;
}

/** Rejects with the signal's reason when aborted, and with an Error when the worker breaks. */
export function askedOnce<Question, Told extends { readonly kind: string }>(asked: Asked<Question, Told>): Promise<Told> {
  const { spawn, question, signal, onProgress, broken } = asked;
  return new Promise((resolve, reject) => {
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
      if (isProgress(data)) onProgress(data.share);
      else over(() => resolve(data));
    };
    worker.onerror = (event) => {
      event.preventDefault();
      over(() => reject(new Error(event.message || broken)));
    };
    worker.postMessage(question);
  });
}

const isProgress = <Told extends { readonly kind: string }>(told: Told | Progress): told is Progress => told.kind === 'progress';
