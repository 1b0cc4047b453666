/** The real thing: permission, graph, worklet and their troubles in a browser whose microphone beeps twice a second. */
import { describe, expect, test } from 'vitest';
import { createRecorder } from '../../../src/capture/microphone.ts';
import { browserPlatform } from '../../../src/capture/platform.ts';
import { blocksOf, openedMicrophone } from './browser-parts.ts';

describe('an open microphone', () => {
  test('is untouched, and names its device and rates', async () => {
    const { microphone, context } = await openedMicrophone();
    expect(microphone.processing).toBe('untouched');
    expect(microphone.sampleRateHz).toBe(context.sampleRate);
    expect(microphone.deviceSampleRateHz).toBeGreaterThanOrEqual(8000);
    expect(microphone.device.label).not.toBe('');
    const devices = await createRecorder().devices();
    expect(devices.map(({ id }) => id)).toContain(microphone.device.id);
    await microphone.close();
  });

  test('opens the device that was chosen', async () => {
    const chosen = (await createRecorder().devices()).at(-1)!;
    const microphone = await createRecorder().open({ deviceId: chosen.id });
    expect(microphone).toMatchObject({ device: { id: chosen.id, label: chosen.label } });
    if ('close' in microphone) await microphone.close();
  });

  test('sends unbroken blocks in which the beeps are', async () => {
    const { microphone } = await openedMicrophone();
    await blocksOf(microphone, 10); // a browser may leave a gap while the device starts
    const blocks = await blocksOf(microphone, Math.ceil(microphone.sampleRateHz / 1024)); // one second: two beeps
    blocks.slice(1).forEach((block, index) => {
      expect(block.firstFrame).toBe(blocks[index]!.firstFrame + blocks[index]!.samples.length);
    });
    expect(blocks.every(({ samples }) => samples.length === 1024)).toBe(true);
    expect(Math.max(...blocks.flatMap(({ samples }) => [...samples]))).toBeGreaterThan(0.1);
    await microphone.close();
  });

  test('sends to the port that it was handed last', async () => {
    const { microphone } = await openedMicrophone();
    const [first] = await blocksOf(microphone, 1);
    const [second] = await blocksOf(microphone, 1);
    expect(second!.firstFrame).toBeGreaterThan(first!.firstFrame);
    await microphone.close();
  });

  test('closed, has let go of device and context', async () => {
    const { microphone, track, context } = await openedMicrophone();
    await microphone.close();
    expect(track.readyState).toBe('ended');
    expect(context.state).toBe('closed');
    await microphone.close();
  });

  test('can be opened again and again', async () => {
    for (let round = 0; round < 3; round++) {
      const { microphone } = await openedMicrophone();
      expect(await blocksOf(microphone, 1)).toHaveLength(1);
      await microphone.close();
    }
  });
});

describe('troubles', () => {
  test('beeps alone are none, and a stream of zeros is silence until the sound is back', async () => {
    const { microphone, track, told } = await openedMicrophone();
    await blocksOf(microphone, Math.ceil((3 * microphone.sampleRateHz) / 1024));
    expect(told).toEqual([]);
    track.enabled = false; // a disabled track gives zeros, as a muted one does
    await expect.poll(() => told, { timeout: 10_000 }).toEqual(['silent']);
    track.enabled = true;
    await expect.poll(() => told, { timeout: 10_000 }).toEqual(['silent', 'sound-again']);
    await microphone.close();
  });

  test('a context that is suspended is a pause, and resume goes on with sound', async () => {
    const { microphone, context, told } = await openedMicrophone();
    await context.suspend();
    await expect.poll(() => told).toEqual(['paused']);
    await microphone.resume();
    await expect.poll(() => told).toEqual(['paused', 'resumed']);
    expect(await blocksOf(microphone, 2)).toHaveLength(2);
    await microphone.close();
  });

  test('a track that ends is gone', async () => {
    const { microphone, track, told } = await openedMicrophone();
    track.dispatchEvent(new Event('ended'));
    expect(told).toEqual(['gone']);
    await microphone.close();
  });

  test('a track that gives no blocks any more, though nobody says so, is silent', async () => {
    const { microphone, track, told } = await openedMicrophone();
    track.stop(); // no event comes of it
    await expect.poll(() => told, { timeout: 10_000 }).toEqual(['silent']);
    await microphone.close();
  });

  test('an error on the audio thread', async () => {
    const code = "registerProcessor('block-sender', class extends AudioWorkletProcessor { process() { throw new RangeError('broke') } })";
    const url = URL.createObjectURL(new Blob([code], { type: 'text/javascript' }));
    const { microphone, told } = await openedMicrophone({ loadRecorder: (context) => context.audioWorklet.addModule(url) });
    await expect.poll(() => told).toEqual(['recorder-failed']);
    await microphone.close();
    URL.revokeObjectURL(url);
  });
});

describe('no microphone', () => {
  test('a device that is not there', async () => {
    expect(await createRecorder().open({ deviceId: 'unplugged' })).toEqual({
      kind: 'capture-failure',
      why: 'device-not-found',
      detail: 'OverconstrainedError: deviceId',
    });
  });

  test('a page that may not ask is blocked', async () => {
    const frame = document.createElement('iframe');
    frame.allow = "microphone 'none'";
    frame.src = 'about:blank';
    document.body.append(frame);
    const { mediaDevices, permissions } = frame.contentWindow!.navigator;
    expect(await createRecorder({ ...browserPlatform(), mediaDevices, permissions }).open({})).toMatchObject({
      kind: 'capture-failure',
      why: 'blocked',
    });
    frame.remove();
  });

  test.each([
    ['whose code does not load', 'data:text/javascript,throw new Error("no")'],
    ['that is another', 'data:text/javascript,registerProcessor("other", class extends AudioWorkletProcessor {})'],
  ])('a recorder %s leaves nothing open', async (_, url) => {
    const contexts: AudioContext[] = [];
    const real = browserPlatform();
    const answer = await createRecorder({
      ...real,
      createContext() {
        contexts.push(real.createContext());
        return contexts[0]!;
      },
      loadRecorder: (context) => context.audioWorklet.addModule(url),
    }).open({});
    expect(answer).toMatchObject({ kind: 'capture-failure', why: 'unknown', detail: expect.stringMatching(/Error: ./) });
    expect(contexts[0]!.state).toBe('closed');
  });
});
