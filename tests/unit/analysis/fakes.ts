/** A listening that repeats what it was told to say, and a worker that the test answers for. */

import type { AnalysisWorker, FromWorker, ToWorker } from '../../../src/analysis/messages.ts';
import type { Listening, ListeningEvent } from '../../../src/core/listening.ts';
import type { PluckSound } from '../../../src/core/outcome.ts';
import { type SpanSetup, UNKNOWN_ENDS } from '../../../src/core/setup.ts';

export const SETUP: SpanSetup = { ends: UNKNOWN_ENDS };

export const pluckAt = (startS: number): ListeningEvent => ({
  kind: 'pluck',
  sound: { startS, frequencyHz: { value: 110, standardUncertainty: 0.1 } } as PluckSound,
  spectrum: {} as Extract<ListeningEvent, { kind: 'pluck' }>['spectrum'],
  likeness: {} as Extract<ListeningEvent, { kind: 'pluck' }>['likeness'],
});

/** Notes what is pushed; says `onPush` for each block and `onFinish` at the end. */
export function fakeListening({
  onPush = [],
  onFinish = [],
}: {
  readonly onPush?: readonly ListeningEvent[];
  readonly onFinish?: readonly ListeningEvent[];
} = {}) {
  const pushed: number[] = [];
  const listening: Listening = {
    push: (samples) => {
      pushed.push(...samples);
      return onPush;
    },
    finish: () => onFinish,
  };
  return { listening, pushed };
}

export class FakeWorker implements AnalysisWorker {
  onmessage: AnalysisWorker['onmessage'] = null;
  onmessageerror: AnalysisWorker['onmessageerror'] = null;
  onerror: AnalysisWorker['onerror'] = null;
  isTerminated = false;
  readonly got: ToWorker[] = [];
  readonly transferred: Transferable[] = [];
  postMessage(message: ToWorker, transfer: Transferable[]) {
    this.got.push(message);
    this.transferred.push(...transfer);
  }
  terminate() {
    this.isTerminated = true;
  }
  say(data: FromWorker) {
    this.onmessage?.({ data } as MessageEvent<FromWorker>);
  }
  crash(message: string) {
    this.onerror?.({ message, preventDefault() {} } as ErrorEvent);
  }
}
