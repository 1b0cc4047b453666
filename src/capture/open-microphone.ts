/** A microphone from its opening to its release: graph, watch and troubles joined, and everything let go at the end. */

import type { SoundBlock } from '../core/samples/block.ts';
import type { OpenMicrophone } from '../ports.ts';
import { grantedProcessing } from './constraints.ts';
import { captureGraph } from './graph.ts';
import type { CapturePlatform } from './platform.ts';
import { SoundWatch } from './sound-watch.ts';
import { keptWithin } from './time-limit.ts';
import { Troubles } from './troubles.ts';

const RESUME_LIMIT_MS = 1500;
const LOOK_EVERY_MS = 500;
const nowS = (): number => performance.now() / 1000;

/** @throws whatever the browser throws while the graph is built; nothing is left open then, except the stream itself */
export async function openMicrophone(platform: CapturePlatform, stream: MediaStream): Promise<OpenMicrophone> {
  const [track] = stream.getAudioTracks();
  if (track === undefined) throw new DOMException('a stream without sound', 'NotFoundError');
  const context = platform.createContext();
  try {
    await platform.loadRecorder(context);
    const { recorder, disconnect } = captureGraph({ context, stream, makeRecorder: platform.makeRecorder });
    const microphone = connected({ context, stream, track, recorder, disconnect }); // at once: the recorder may fail on its first call
    if (context.state !== 'running') await keptWithin(context.resume(), RESUME_LIMIT_MS);
    return microphone;
  } catch (error) {
    await context.close().catch(() => {});
    throw error;
  }
}

interface Parts {
  readonly context: AudioContext;
  readonly stream: MediaStream;
  readonly track: MediaStreamTrack;
  readonly recorder: AudioWorkletNode;
  disconnect(): void;
}

function connected({ context, stream, track, recorder, disconnect }: Parts): OpenMicrophone {
  const troubles = new Troubles();
  const watch = new SoundWatch({ troubles, sampleRateHz: context.sampleRate, nowS: nowS() });
  const letGo: (() => void)[] = [];
  const on = (target: EventTarget, type: string, listener: () => void) => {
    target.addEventListener(type, listener);
    letGo.push(() => target.removeEventListener(type, listener));
  };
  const noteState = () => {
    const state: string = context.state; // some browsers say 'interrupted' as well
    if (state === 'closed') troubles.end('recorder-failed');
    else troubles.note('context-not-running', state !== 'running');
  };
  const noteMuted = () => troubles.note('track-muted', track.muted);
  const look = () => watch.look({ isRunning: context.state === 'running', clockS: context.currentTime, nowS: nowS() });

  on(track, 'ended', () => troubles.end('gone'));
  on(track, 'mute', () => troubles.note('track-muted', true));
  on(track, 'unmute', () => troubles.note('track-muted', false));
  on(context, 'statechange', noteState);
  on(context, 'error', () => troubles.end('recorder-failed'));
  recorder.onprocessorerror = () => troubles.end('recorder-failed'); // a listener that is added instead is not called in every browser
  recorder.port.onmessage = ({ data }: MessageEvent<SoundBlock>) => watch.hear(data, nowS());
  const looking = setInterval(look, LOOK_EVERY_MS);
  noteState();
  noteMuted();
  if (track.readyState === 'ended') troubles.end('gone');

  const settings = track.getSettings();
  return {
    sampleRateHz: context.sampleRate,
    deviceSampleRateHz: settings.sampleRate,
    device: { id: settings.deviceId ?? '', label: track.label },
    processing: grantedProcessing(settings as Readonly<Record<string, unknown>>),
    sendTo: (port) => recorder.port.postMessage(undefined, [port]),
    onTrouble: (listener) => troubles.listen(listener),
    async resume() {
      const stalled = troubles.holds('clock-stalled');
      if (stalled) await keptWithin(context.suspend(), RESUME_LIMIT_MS); // it says running and stands: only a fresh start can help
      const stoodAtS = context.currentTime;
      await keptWithin(context.resume(), RESUME_LIMIT_MS);
      if (!stalled) return;
      await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
      if (context.currentTime === stoodAtS) troubles.end('recorder-failed');
    },
    async close() {
      clearInterval(looking);
      for (const each of letGo) each();
      troubles.clear();
      recorder.onprocessorerror = null;
      recorder.port.onmessage = null;
      disconnect();
      for (const each of stream.getTracks()) each.stop();
      if (context.state !== 'closed') await keptWithin(context.close(), RESUME_LIMIT_MS);
    },
  };
}
