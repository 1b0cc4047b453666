/** The page's end of a live take: a port for the sound, the worker's events, and an end that always comes. */

import { assertNever } from '../core/outcome.ts';
import type { SpanSetup } from '../core/setup.ts';
import type { AnalystEvent, LiveTake } from '../ports.ts';
import type { AnalysisWorker } from './messages.ts';

/** Far beyond what hearing out the last pluck can take; a worker that is silent for longer hangs. */
const END_LIMIT_MS = 20_000;

export function liveTake({
  worker,
  sampleRateHz,
  setup,
  onEvent,
}: {
  readonly worker: AnalysisWorker;
  readonly sampleRateHz: number;
  readonly setup: SpanSetup;
  readonly onEvent: (event: AnalystEvent) => void;
}): LiveTake {
  const { port1: port, port2 } = new MessageChannel();
  let isOver = false;
  let resolveEnded = (): void => {};
  const ended = new Promise<void>((resolve) => {
    resolveEnded = resolve;
  });
  const finish = () => {
    isOver = true;
    worker.terminate();
    resolveEnded();
  };
  const fail = (detail: string) => {
    if (isOver) return;
    onEvent({ kind: 'failed', detail });
    finish();
  };

  worker.onmessage = ({ data }) => {
    if (isOver) return;
    switch (data.kind) {
      case 'event':
        return onEvent(data.event);
      case 'ended':
        return finish();
      case 'failed':
        return fail(data.detail);
      case 'analysed':
      case 'inspected':
        return fail('an answer to a question that was not asked');
      default:
        return assertNever(data);
    }
  };
  worker.onerror = (event) => {
    event.preventDefault();
    fail(event.message || 'the analysis could not be started'); // a script that does not load has no words
  };
  worker.onmessageerror = () => fail('a message could not be read');
  worker.postMessage({ kind: 'listen', sampleRateHz, setup, port: port2 }, [port2]);

  let isEnding = false;
  return {
    port,
    async end() {
      if (!isOver && !isEnding) {
        isEnding = true;
        worker.postMessage({ kind: 'end' }, []);
        const limit = setTimeout(() => fail('no answer at the end of the take'), END_LIMIT_MS);
        ended.then(() => clearTimeout(limit));
      }
      await ended;
    },
  };
}
