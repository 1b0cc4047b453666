/** Makes the demo take as soon as it is started. */

import { type DemoTake, demoTake } from '../core/synthesis/demo.ts';

const scope = self as unknown as { postMessage(message: DemoTake, transfer: Transferable[]): void };

const demo = demoTake();
scope.postMessage(demo, [demo.recording.samples.buffer as ArrayBuffer]);
