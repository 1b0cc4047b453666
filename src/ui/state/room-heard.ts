/** Some seconds of an open microphone as one recording. */

import type { SoundBlock } from '../../core/samples/block.ts';
import type { Recording } from '../../core/samples/recording.ts';
import type { OpenMicrophone } from '../../ports.ts';

/** A microphone begins with digital silence, which is no room. */
const isSound = (samples: Float32Array): boolean => samples.some((sample) => sample !== 0);

/** Rejects with the signal's reason when aborted, and where the microphone fails meanwhile. */
export function roomHeard(
  microphone: OpenMicrophone,
  { seconds, onProgress, signal }: { seconds: number; onProgress: (share: number) => void; signal: AbortSignal },
): Promise<Recording> {
  const { sampleRateHz, processing } = microphone;
  const samples = new Float32Array(Math.ceil(seconds * sampleRateHz));
  const { port1, port2 } = new MessageChannel();
  return new Promise<Recording>((resolve, reject) => {
    let heard = 0;
    const over = (settle: () => void) => {
      signal.removeEventListener('abort', abort);
      port2.close();
      settle();
    };
    const abort = () => over(() => reject(signal.reason));
    if (signal.aborted) return abort();
    signal.addEventListener('abort', abort, { once: true });
    microphone.onTrouble((trouble) => {
      if (trouble === 'gone' || trouble === 'recorder-failed') over(() => reject(new Error(trouble)));
    });
    port2.onmessage = ({ data }: MessageEvent<SoundBlock>) => {
      if (heard === 0 && !isSound(data.samples)) return;
      samples.set(data.samples.subarray(0, samples.length - heard), heard);
      heard = Math.min(samples.length, heard + data.samples.length);
      onProgress(heard / samples.length);
      if (heard === samples.length) over(() => resolve({ samples, sampleRateHz, processing }));
    };
    microphone.sendTo(port1);
  });
}
