import { expect, test } from 'vitest';
import { captureGraph } from '../../../src/capture/graph.ts';
import { FakeTrack, newContext, recorderNode, streamOf } from './fake-platform.ts';

interface Seen {
  toJSON(): { readonly inputs: readonly { readonly name: string }[] };
}
const inputsOf = (node: unknown) => (node as Seen).toJSON().inputs.map(({ name }) => name);

function built() {
  const context = newContext();
  const { node, farPort } = recorderNode(context);
  const graph = captureGraph({ context, stream: streamOf(new FakeTrack()), makeRecorder: () => node });
  return { context, node, farPort, graph };
}

test('the microphone goes into the recorder, and nothing to the loudspeaker', () => {
  const { context, node, graph } = built();
  expect(graph.recorder).toBe(node);
  expect(inputsOf(node)).toEqual(['MediaStreamAudioSourceNode']);
  expect(inputsOf(context.destination)).toEqual([]);
});

test('disconnected, nothing is left of it: no connection, and the port is closed', async () => {
  const { node, farPort, graph } = built();
  const closed = new Promise((resolve) => farPort.addEventListener('close', resolve));
  farPort.start();
  graph.disconnect();
  expect(inputsOf(node)).toEqual([]);
  await closed;
});

test('a stream that is none is refused by the context itself', () => {
  const context = newContext();
  const makeRecorder = () => recorderNode(context).node;
  expect(() => captureGraph({ context, stream: {} as MediaStream, makeRecorder })).toThrow(TypeError);
});
