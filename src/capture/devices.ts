/** Which microphones the browser names, and word of their coming and going. */

import type { InputDevice } from '../ports.ts';

/** Without permission browsers name one nameless entry or none: what cannot be chosen is left out. */
export async function inputDevices(mediaDevices: MediaDevices | undefined): Promise<readonly InputDevice[]> {
  if (mediaDevices?.enumerateDevices === undefined) return [];
  const devices = await mediaDevices.enumerateDevices().catch(() => []); // refused: as good as not told
  return devices
    .filter(({ kind, deviceId }) => kind === 'audioinput' && deviceId !== '')
    .map(({ deviceId, label }) => ({ id: deviceId, label }));
}

/** @returns ends the watching */
export function watchDevices(mediaDevices: MediaDevices | undefined, listener: () => void): () => void {
  if (mediaDevices === undefined) return () => {};
  const tell = () => listener();
  mediaDevices.addEventListener('devicechange', tell);
  return () => mediaDevices.removeEventListener('devicechange', tell);
}
