/** Everything that crosses between the page and an analysis worker. One worker serves one take or one job, and is then let go. */

import type { InspectedSound, Inspection } from '../core/inspection/inspect.ts';
import type { SpanSetup } from '../core/setup.ts';
import type { AnalystEvent, HeardEvent } from '../ports.ts';

export type ToWorker =
  /** `SoundBlock`s will come by the port, which is transferred. */
  | { readonly kind: 'listen'; readonly sampleRateHz: number; readonly setup: SpanSetup; readonly port: MessagePort }
  /** The source has stopped; what is still on its way is heard out. */
  | { readonly kind: 'end' }
  /** A whole recording; `samples.buffer` is transferred. */
  | { readonly kind: 'analyse'; readonly sampleRateHz: number; readonly setup: SpanSetup; readonly samples: Float32Array<ArrayBuffer> }
  /** What one sound was read from. */
  | { readonly kind: 'inspect'; readonly inspected: InspectedSound };

export type FromWorker =
  | { readonly kind: 'event'; readonly event: AnalystEvent }
  /** The last message of a take. */
  | { readonly kind: 'ended' }
  | { readonly kind: 'analysed'; readonly events: readonly HeardEvent[] }
  | { readonly kind: 'inspected'; readonly inspection: Inspection }
  /** The last message of a take or a job that broke. */
  | { readonly kind: 'failed'; readonly detail: string };

/** A worker as the page sees it. */
export interface AnalysisWorker {
  postMessage(message: ToWorker, transfer: Transferable[]): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onmessageerror: ((event: MessageEvent) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}
