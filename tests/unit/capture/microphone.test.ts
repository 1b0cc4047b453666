import { describe, expect, test, vi } from 'vitest';
import { createRecorder } from '../../../src/capture/microphone.ts';
import type { CaptureTrouble, OpenMicrophone } from '../../../src/ports.ts';
import { FakeTrack, fakePlatform, newContext, nodeEvent, streamOf } from './fake-platform.ts';

async function opened(fakes = fakePlatform()) {
  const microphone = await createRecorder(fakes.platform).open({});
  if ('why' in microphone) throw new Error(`not opened: ${microphone.why} ${microphone.detail}`);
  const told: CaptureTrouble[] = [];
  microphone.onTrouble((trouble) => told.push(trouble));
  return { ...fakes, microphone: microphone as OpenMicrophone, told, context: fakes.made.context! };
}

describe('opening', () => {
  test('tells rate, device and what was granted', async () => {
    const { microphone } = await opened();
    expect(microphone).toMatchObject({
      sampleRateHz: 44_100, // the library's contexts
      deviceSampleRateHz: 16_000,
      device: { id: 'bench', label: 'Bench microphone' },
      processing: 'untouched',
    });
    await microphone.close();
  });

  test('what the browser left on is told, whatever was asked', async () => {
    const fakes = fakePlatform();
    fakes.track.settings.noiseSuppression = true;
    const { microphone } = await opened(fakes);
    expect(microphone.processing).toBe('altered');
    await microphone.close();
  });

  test('asks for the device that was chosen', async () => {
    const { platform, asked } = fakePlatform({ supported: { voiceIsolation: true } });
    const microphone = await createRecorder(platform).open({ deviceId: 'usb' });
    expect(asked).toEqual([
      {
        audio: {
          echoCancellation: false,
          noiseSuppression: false,
          autoGainControl: false,
          voiceIsolation: false,
          deviceId: { exact: 'usb' },
        },
        video: false,
      },
    ]);
    await (microphone as OpenMicrophone).close();
  });

  test('a context that stays asleep does not hold it up: the microphone is open, and paused', async () => {
    vi.useFakeTimers();
    const sleeping = newContext();
    await sleeping.suspend();
    sleeping.resume = () => new Promise(() => {}); // what browsers do before the first gesture
    const opening = createRecorder(fakePlatform({ platform: { createContext: () => sleeping } }).platform).open({});
    await vi.advanceTimersByTimeAsync(5000);
    const microphone = (await opening) as OpenMicrophone;
    const told: CaptureTrouble[] = [];
    microphone.onTrouble((trouble) => told.push(trouble));
    expect(told).toEqual(['paused']);
    const resuming = microphone.resume();
    await vi.advanceTimersByTimeAsync(5000);
    await resuming;
    await microphone.close();
    vi.useRealTimers();
  });
});

describe('not opened', () => {
  const refusing = (error: unknown, permission?: PermissionState) =>
    createRecorder(fakePlatform({ getUserMedia: () => Promise.reject(error), ...(permission && { permission }) }).platform).open({});

  test.each([
    [new DOMException('Permission denied', 'NotAllowedError'), 'denied', 'blocked'],
    [new DOMException('Permission dismissed', 'NotAllowedError'), 'prompt', 'dismissed'],
    [new DOMException('Permission dismissed', 'NotAllowedError'), undefined, 'dismissed'],
    [new DOMException('Requested device not found', 'NotFoundError'), 'granted', 'none'],
    [new DOMException('Could not start audio source', 'NotReadableError'), 'granted', 'in-use'],
    [{ name: 'OverconstrainedError', message: '', constraint: 'deviceId' }, 'granted', 'device-not-found'],
  ] as const)('%s with permission %s: %s', async (error, permission, why) => {
    expect(await refusing(error, permission)).toMatchObject({ kind: 'capture-failure', why });
  });

  test('a browser that cannot be asked for permissions is no further trouble', async () => {
    const query = () => Promise.reject(new TypeError('microphone is no permission'));
    const { platform } = fakePlatform({ getUserMedia: () => Promise.reject(new DOMException('no', 'NotAllowedError')) });
    const asking = { ...platform, permissions: { query } as unknown as Permissions };
    expect(await createRecorder(asking).open({})).toMatchObject({ why: 'blocked' });
  });

  test.each([
    [false, 'insecure-page'],
    [true, 'not-supported'],
  ] as const)('no mediaDevices on a page whose security is %s: %s', async (isSecure, why) => {
    const { platform } = fakePlatform({ platform: { mediaDevices: undefined, isSecure } });
    const recorder = createRecorder(platform);
    expect(await recorder.open({})).toMatchObject({ why });
    expect(await recorder.devices()).toEqual([]);
    recorder.onDevicesChanged(() => {})();
  });

  test.each([
    ['loadRecorder', () => Promise.reject(new DOMException('no audio worklet', 'NotSupportedError')), 'not-supported'],
    ['loadRecorder', () => Promise.reject(new DOMException('Unable to load', 'AbortError')), 'unknown'],
    [
      'makeRecorder',
      () => {
        throw new DOMException('no such name', 'InvalidStateError');
      },
      'unknown',
    ],
  ] as const)('%s fails: nothing is left open', async (step, failing, why) => {
    const { platform, track, made } = fakePlatform({ platform: { [step]: failing } });
    expect(await createRecorder(platform).open({})).toMatchObject({ why });
    expect(track.readyState).toBe('ended');
    expect(made.context?.state).toBe('closed');
  });

  test('a stream without a sound track is none', async () => {
    const { platform } = fakePlatform({ getUserMedia: async () => streamOf() });
    expect(await createRecorder(platform).open({})).toMatchObject({ kind: 'capture-failure', why: 'unknown' });
  });
});

describe('while open', () => {
  test('the track ends: gone, and nothing after it', async () => {
    const { track, told, microphone } = await opened();
    track.dispatchEvent(new Event('ended'));
    track.dispatchEvent(new Event('mute'));
    expect(told).toEqual(['gone']);
    await microphone.close();
  });

  test('a track that had ended before anyone listened is gone too', async () => {
    const fakes = fakePlatform();
    fakes.track.readyState = 'ended';
    const { told, microphone } = await opened(fakes);
    expect(told).toEqual(['gone']);
    await microphone.close();
  });

  test('muted by a key: silent, then sound again', async () => {
    const { track, told, microphone } = await opened();
    track.dispatchEvent(new Event('mute'));
    track.dispatchEvent(new Event('unmute'));
    expect(told).toEqual(['silent', 'sound-again']);
    await microphone.close();
  });

  test('the browser pauses the context; resume goes on', async () => {
    const { context, told, microphone } = await opened();
    await context.suspend();
    expect(told).toEqual(['paused']);
    await microphone.resume();
    expect(told).toEqual(['paused', 'resumed']);
    await microphone.close();
  });

  test('a context that the browser closes has failed', async () => {
    const { context, told, microphone } = await opened();
    await context.close();
    expect(told).toEqual(['recorder-failed']);
    await microphone.close();
  });

  test('an error in the recorder', async () => {
    const { made, told, microphone } = await opened();
    made.node!.dispatchEvent(nodeEvent('processorerror'));
    expect(told).toEqual(['recorder-failed']);
    await microphone.close();
  });

  test('zeros from the recorder for two seconds: silent', async () => {
    const { made, told, microphone } = await opened();
    for (let block = 0; block < 100; block++) made.farPort!.postMessage({ samples: new Float32Array(1024), firstFrame: block * 1024 });
    await expect.poll(() => told).toEqual(['silent']);
    made.farPort!.postMessage({ samples: Float32Array.of(0, 0.1), firstFrame: 102_400 });
    await expect.poll(() => told).toEqual(['silent', 'sound-again']);
    await microphone.close();
  });

  test('a clock that stands: paused; a fresh start that does not help: failed', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'performance'] });
    const { told, microphone } = await opened(); // the library's clock moves only when told to
    await vi.advanceTimersByTimeAsync(4000);
    expect(told).toEqual(['paused']);
    const resuming = microphone.resume();
    await vi.advanceTimersByTimeAsync(4000);
    await resuming;
    expect(told.at(-1)).toBe('recorder-failed');
    await microphone.close();
    vi.useRealTimers();
  });

  test('the port for the blocks is handed to the recorder', async () => {
    const { made, microphone } = await opened();
    const handed = new Promise<MessagePort>((resolve) => {
      made.farPort!.onmessage = ({ ports }) => resolve(ports[0]!);
    });
    const { port1, port2 } = new MessageChannel();
    microphone.sendTo(port1);
    const got = new Promise((resolve) => {
      port2.onmessage = ({ data }) => resolve(data);
    });
    (await handed).postMessage('block');
    expect(await got).toBe('block');
    port2.close();
    await microphone.close();
  });
});

describe('closing', () => {
  test('releases everything and tells nothing any more', async () => {
    const { context, track, made, told, microphone } = await opened();
    const left: string[] = [];
    for (const target of [track, context] as EventTarget[]) {
      const remove = target.removeEventListener.bind(target);
      target.removeEventListener = (type: string, listener: never) => {
        left.push(type);
        remove(type, listener);
      };
    }
    await microphone.close();
    expect(track.readyState).toBe('ended');
    expect(context.state).toBe('closed');
    expect((made.node as unknown as { toJSON(): { inputs: unknown[] } }).toJSON().inputs).toEqual([]);
    expect(left.sort()).toEqual(['ended', 'error', 'mute', 'statechange', 'unmute']);
    track.dispatchEvent(new Event('ended'));
    made.node!.dispatchEvent(nodeEvent('processorerror'));
    expect(told).toEqual([]);
  });

  test('twice is no harm', async () => {
    const { microphone } = await opened();
    await microphone.close();
    await microphone.close();
  });

  test('every track of the stream is stopped', async () => {
    const second = new FakeTrack();
    const fakes = fakePlatform({ getUserMedia: async () => streamOf(fakes.track, second) });
    const { microphone } = await opened(fakes);
    await microphone.close();
    expect([fakes.track.readyState, second.readyState]).toEqual(['ended', 'ended']);
  });
});

describe('devices', () => {
  test('microphones only, and none without a name to choose it by', async () => {
    const { platform } = fakePlatform({
      devices: [
        { kind: 'audioinput', deviceId: 'a', label: 'Desk' },
        { kind: 'audiooutput', deviceId: 'b', label: 'Loudspeaker' },
        { kind: 'audioinput', deviceId: '', label: '' },
      ],
    });
    expect(await createRecorder(platform).devices()).toEqual([{ id: 'a', label: 'Desk' }]);
  });

  test('their coming and going is told until nobody asks any more', () => {
    const { platform, mediaDevices } = fakePlatform();
    const listener = vi.fn();
    const stop = createRecorder(platform).onDevicesChanged(listener);
    mediaDevices.dispatchEvent(new Event('devicechange'));
    stop();
    mediaDevices.dispatchEvent(new Event('devicechange'));
    expect(listener).toHaveBeenCalledTimes(1);
  });
});
