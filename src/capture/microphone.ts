/** Opens the microphone so that it alters nothing, or says why there is none. */

import type { Recorder } from '../ports.ts';
import { microphoneConstraints } from './constraints.ts';
import { inputDevices, watchDevices } from './devices.ts';
import { refusedMicrophone, refusedRecorder, withoutMediaDevices } from './failure.ts';
import { openMicrophone } from './open-microphone.ts';
import { browserPlatform, type CapturePlatform } from './platform.ts';

export function createRecorder(platform: CapturePlatform = browserPlatform()): Recorder {
  const { mediaDevices } = platform;
  return {
    devices: () => inputDevices(mediaDevices),
    onDevicesChanged: (listener) => watchDevices(mediaDevices, listener),
    async open({ deviceId }) {
      if (mediaDevices?.getUserMedia === undefined) return withoutMediaDevices(platform.isSecure);
      const supported = { ...mediaDevices.getSupportedConstraints() };
      let stream: MediaStream;
      try {
        stream = await mediaDevices.getUserMedia(microphoneConstraints({ deviceId, supported }));
      } catch (error) {
        return refusedMicrophone(error, await permissionState(platform.permissions));
      }
      try {
        return await openMicrophone(platform, stream);
      } catch (error) {
        for (const track of stream.getTracks()) track.stop();
        return refusedRecorder(error);
      }
    },
  };
}

/** Undefined where the browser cannot be asked. */
async function permissionState(permissions: Permissions | undefined): Promise<PermissionState | undefined> {
  try {
    return (await permissions?.query({ name: 'microphone' }))?.state;
  } catch {
    return undefined;
  }
}
