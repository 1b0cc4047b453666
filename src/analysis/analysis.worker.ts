/** The worker: listens to one take that comes in by its port, or analyses one recording. Everything that it computes stands in the core. */

import { createListening } from '../core/listening.ts';
import { assertNever } from '../core/outcome.ts';
import type { SoundBlock } from '../core/samples/block.ts';
import type { FromWorker, ToWorker } from './messages.ts';
import { Take } from './take.ts';

/** Blocks travel by another way than the word that the source has stopped; so long is waited for the last ones. */
const LAST_BLOCK_WITHIN_MS = 60;

/** A source that goes on after the end is not waited for longer. */
const HEARD_AFTER_END_S = 5;

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
  postMessage(message: FromWorker, transfer?: Transferable[]): void;
};

let endTake = (): void => {};

scope.onmessage = ({ data }) => {
  switch (data.kind) {
    case 'listen':
      return listen(data);
    case 'end':
      return endTake();
    case 'analyse':
      return guarded(() => {
        const listening = createListening(data);
        const events = [...listening.push(data.samples), ...listening.finish()];
        scope.postMessage({ kind: 'analysed', events });
      });
    default:
      return assertNever(data);
  }
};

function listen({ port, sampleRateHz, setup }: Extract<ToWorker, { kind: 'listen' }>): void {
  guarded(() => {
    const take = new Take({
      sampleRateHz,
      setup,
      createListening,
      tell: (event) => scope.postMessage({ kind: 'event', event }, event.kind === 'moment' ? [event.levelsDbfs.buffer] : []),
    });
    let isEnding = false;
    let framesAfterEnd = 0;
    let waiting: ReturnType<typeof setTimeout> | undefined;
    const finish = () => {
      port.close();
      guarded(() => {
        take.finish();
        scope.postMessage({ kind: 'ended' });
      });
    };
    const wait = () => {
      clearTimeout(waiting);
      waiting = setTimeout(finish, LAST_BLOCK_WITHIN_MS);
    };
    port.onmessage = ({ data }: MessageEvent<SoundBlock>) => {
      if (isEnding) {
        framesAfterEnd += data.samples.length;
        if (framesAfterEnd > HEARD_AFTER_END_S * sampleRateHz) return;
      }
      guarded(() => take.hear(data), port);
      if (isEnding) wait();
    };
    endTake = () => {
      isEnding = true;
      wait();
    };
  });
}

/** What breaks inside is told to the page, which still has the sound. */
function guarded(work: () => void, port?: MessagePort): void {
  try {
    work();
  } catch (error) {
    port?.close();
    scope.postMessage({ kind: 'failed', detail: error instanceof Error ? `${error.name}: ${error.message}` : String(error) });
  }
}
