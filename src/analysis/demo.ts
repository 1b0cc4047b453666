/** The demo take, made in a worker of its own: it takes some tenths of a second, in which the page must not stand still. */

import type { DemoTake } from '../core/synthesis/demo.ts';

/** A worker as the page sees it. */
export interface DemoWorker {
  onmessage: ((event: MessageEvent<DemoTake>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

const demoWorker = (): DemoWorker => new Worker(new URL('./demo.worker.ts', import.meta.url), { type: 'module' }) as DemoWorker;

/** Rejects where the worker breaks. @param spawn  makes one worker for each demo */
export function madeDemoTake(spawn: () => DemoWorker = demoWorker): Promise<DemoTake> {
  return new Promise((resolve, reject) => {
    const worker = spawn();
    worker.onmessage = ({ data }) => {
      worker.terminate();
      resolve(data);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      worker.terminate();
      reject(new Error(event.message || 'the demo could not be made'));
    };
  });
}
