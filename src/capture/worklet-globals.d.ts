/** What the audio thread knows; its own list, because no library of the compiler has it and nothing else exists there. */

interface MessagePort {
  onmessage: ((event: { readonly ports: readonly MessagePort[] }) => void) | null;
  postMessage(message: unknown, transfer: readonly ArrayBuffer[]): void;
}
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;
declare const currentFrame: number;
