/** The worker: listens to one take that comes in by its port, or analyses one recording. Everything that it computes stands in the core. */

import { inspected } from '../core/inspection/inspect.ts';
import { createListening } from '../core/listening.ts';
import { assertNever } from '../core/outcome.ts';
import type { SoundBlock } from '../core/samples/block.ts';
import type { HeardEvent, LiveMoment } from '../ports.ts';
import type { FromWorker, ToWorker } from './messages.ts';
import { clipAt } from './sound-memory.ts';
import { Take, withClip } from './take.ts';

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
        const heard = [...listening.push(data.samples), ...listening.finish()];
        const events = heard.map((event) => withClip(event, (atS) => clipAt({ ...data, fromS: 0 }, atS)));
        scope.postMessage(
          { kind: 'analysed', events },
          events.flatMap(({ clip }) => clip?.samples.buffer ?? []),
        );
      });
    case 'inspect':
      return guarded(() => scope.postMessage({ kind: 'inspected', inspection: inspected(data.inspected) }));
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
      keepsSound: true,
      tell: (event) => scope.postMessage({ kind: 'event', event }, ownBuffers(event)),
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

/** What the worker gives away with an event. */
function ownBuffers(event: HeardEvent | LiveMoment): Transferable[] {
  if (event.kind === 'moment') return [event.levelsDbfs.buffer];
  return event.clip ? [event.clip.samples.buffer] : [];
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
