/** A browser for the recorder's tests: contexts and nodes of web-audio-test-api, which checks every call, and devices made here. */

import WebAudioTestAPI from 'web-audio-test-api';
import type { CapturePlatform } from '../../../src/capture/platform.ts';

WebAudioTestAPI.setState({
  'AudioContext#suspend': 'enabled',
  'AudioContext#resume': 'enabled',
  'AudioContext#close': 'enabled',
});

/** The library takes only events of its own. */
export const nodeEvent = (type: string): Event => new WebAudioTestAPI.Event(type);

export const newContext = () => new WebAudioTestAPI.AudioContext();

export class FakeTrack extends EventTarget {
  readonly kind = 'audio';
  readonly label = 'Bench microphone';
  muted = false;
  readyState: MediaStreamTrackState = 'live';
  settings: Record<string, unknown> = {
    deviceId: 'bench',
    sampleRate: 16_000,
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
  };
  getSettings() {
    return this.settings;
  }
  stop() {
    this.readyState = 'ended';
  }
}

export function streamOf(...tracks: readonly FakeTrack[]): MediaStream {
  return Object.assign(Object.create(WebAudioTestAPI.MediaStream.prototype), { getTracks: () => tracks, getAudioTracks: () => tracks });
}

/** The library has no worklets: a gain node stands for the recorder in the graph, with a port that the test holds the other end of. */
export function recorderNode(context: BaseAudioContext) {
  const { port1, port2 } = new MessageChannel();
  const node = Object.assign(context.createGain(), { port: port1 }) as unknown as AudioWorkletNode;
  return { node, farPort: port2 };
}

interface Fakes {
  readonly getUserMedia?: (constraints: MediaStreamConstraints) => Promise<MediaStream>;
  readonly devices?: readonly Partial<MediaDeviceInfo>[];
  readonly supported?: Readonly<Record<string, boolean>>;
  readonly permission?: PermissionState;
  readonly platform?: Partial<CapturePlatform>;
}

/** A platform whose microphone opens, unless told otherwise; what it made is kept for the test to look at. */
export function fakePlatform({ getUserMedia, devices = [], supported = {}, permission, platform = {} }: Fakes = {}) {
  const track = new FakeTrack();
  const stream = streamOf(track);
  const made: { context?: ReturnType<typeof newContext>; node?: AudioWorkletNode; farPort?: MessagePort } = {};
  const asked: MediaStreamConstraints[] = [];
  const mediaDevices = Object.assign(new EventTarget(), {
    getUserMedia: (constraints: MediaStreamConstraints) => {
      asked.push(constraints);
      return getUserMedia?.(constraints) ?? Promise.resolve(stream);
    },
    enumerateDevices: async () => devices,
    getSupportedConstraints: () => supported,
  }) as unknown as MediaDevices;
  const permissions = permission && ({ query: async () => ({ state: permission }) } as unknown as Permissions);
  const complete: CapturePlatform = {
    mediaDevices,
    permissions: permissions || undefined,
    isSecure: true,
    createContext: () => (made.context = newContext()),
    loadRecorder: async () => {},
    makeRecorder: (context) => {
      const { node, farPort } = recorderNode(context);
      made.node = node;
      made.farPort = farPort;
      return node;
    },
    ...platform,
  };
  return { platform: complete, track, made, asked, mediaDevices };
}
