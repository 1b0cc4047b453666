/** The real browser's parts for the recorder, with the stream, the context and the node that it made kept for the test to look at. */

import { createRecorder } from '../../../src/capture/microphone.ts';
import { browserPlatform, type CapturePlatform } from '../../../src/capture/platform.ts';
import type { CaptureTrouble, OpenMicrophone, SoundBlock } from '../../../src/ports.ts';

export async function openedMicrophone(changes: Partial<CapturePlatform> = {}) {
  const parts: { stream?: MediaStream; context?: AudioContext; recorder?: AudioWorkletNode } = {};
  const real = { ...browserPlatform(), ...changes };
  const mediaDevices = new Proxy(real.mediaDevices!, {
    get(devices, name) {
      if (name !== 'getUserMedia') return Reflect.get(devices, name, devices)?.bind?.(devices);
      return async (constraints: MediaStreamConstraints) => (parts.stream = await devices.getUserMedia(constraints));
    },
  });
  const microphone = await createRecorder({
    ...real,
    mediaDevices,
    createContext: () => (parts.context = real.createContext()),
    makeRecorder: (context) => (parts.recorder = real.makeRecorder(context)),
  }).open({});
  if ('why' in microphone) throw new Error(`not opened: ${microphone.why}, ${microphone.detail}`);
  const told: CaptureTrouble[] = [];
  microphone.onTrouble((trouble) => told.push(trouble));
  const { stream, context, recorder } = parts;
  return { microphone: microphone as OpenMicrophone, told, context: context!, recorder: recorder!, track: stream!.getAudioTracks()[0]! };
}

/** So many blocks from a microphone. */
export function blocksOf(microphone: OpenMicrophone, count: number): Promise<readonly SoundBlock[]> {
  const { port1, port2 } = new MessageChannel();
  const blocks: SoundBlock[] = [];
  return new Promise((resolve) => {
    port2.onmessage = ({ data }: MessageEvent<SoundBlock>) => {
      blocks.push(data);
      if (blocks.length < count) return;
      port2.close();
      resolve(blocks);
    };
    microphone.sendTo(port1);
  });
}
