/** What the recorder needs of a browser, in one place, so that tests can bring their own. */

import workletUrl from './block-sender.worklet.ts?worker&url';
import { RECORDER_OPTIONS } from './graph.ts';

export interface CapturePlatform {
  /** Missing on pages that are not secure. */
  readonly mediaDevices: MediaDevices | undefined;
  readonly permissions: Permissions | undefined;
  readonly isSecure: boolean;
  /** A context at its own rate. */
  createContext(): AudioContext;
  /** Loads the recorder's code into the context; to be done before its node is made. */
  loadRecorder(context: AudioContext): Promise<void>;
  makeRecorder(context: AudioContext): AudioWorkletNode;
}

export const browserPlatform = (): CapturePlatform => ({
  mediaDevices: navigator.mediaDevices as MediaDevices | undefined,
  permissions: navigator.permissions as Permissions | undefined,
  isSecure: isSecureContext,
  createContext: () => new AudioContext(),
  async loadRecorder(context) {
    const worklet = context.audioWorklet as AudioWorklet | undefined;
    if (worklet === undefined) throw new DOMException('no audio worklet', 'NotSupportedError');
    await worklet.addModule(workletUrl);
  },
  makeRecorder: (context) => new AudioWorkletNode(context, 'block-sender', RECORDER_OPTIONS),
});
