/** The audio graph of an open microphone: source into recorder, and nothing to the loudspeaker. */

export interface CaptureGraph {
  readonly recorder: AudioWorkletNode;
  /** Lets go of both nodes; the context is its maker's to close. */
  disconnect(): void;
}

/** One channel whatever the device has: the browser mixes, and the recorder sees exactly one. */
export const RECORDER_OPTIONS = {
  numberOfInputs: 1,
  numberOfOutputs: 0,
  channelCount: 1,
  channelCountMode: 'explicit',
} as const satisfies AudioWorkletNodeOptions;

/** @param makeRecorder  makes the recorder's node in the context, with `RECORDER_OPTIONS` */
export function captureGraph<Context extends BaseAudioContext & Pick<AudioContext, 'createMediaStreamSource'>>({
  context,
  stream,
  makeRecorder,
}: {
  readonly context: Context;
  readonly stream: MediaStream;
  readonly makeRecorder: (context: Context) => AudioWorkletNode;
}): CaptureGraph {
  const source = context.createMediaStreamSource(stream);
  const recorder = makeRecorder(context);
  source.connect(recorder);
  return {
    recorder,
    disconnect() {
      source.disconnect();
      recorder.disconnect();
      recorder.port.close();
    },
  };
}
