/** What is asked of the browser for a microphone, and what it says that it gave: the sound must arrive as the air had it. */

import type { SoundProcessing } from '../core/samples/recording.ts';

/** Voice processing removes just what a belt is: a steady tone with a fast start. Defaults differ between browsers, so each is stated. */
const VOICE_PROCESSING = ['echoCancellation', 'noiseSuppression', 'autoGainControl'] as const;

/** Not in every browser, and off unless asked; where a browser knows it, it is stated too. */
const VOICE_ISOLATION = 'voiceIsolation';

/**
 * Plain values, since an exact one may refuse a microphone that works; no sample rate, since a context at another rate than the
 * microphone's cannot be connected in some browsers.
 *
 * @param deviceId   of the device to open; not told or empty: the browser's own choice
 * @param supported  names of the constraints that the browser knows
 */
export function microphoneConstraints({
  deviceId,
  supported,
}: {
  readonly deviceId?: string | undefined;
  readonly supported: Readonly<Record<string, boolean | undefined>>;
}): MediaStreamConstraints {
  const audio: Record<string, unknown> = Object.fromEntries(VOICE_PROCESSING.map((name) => [name, false]));
  if (supported[VOICE_ISOLATION] === true) audio[VOICE_ISOLATION] = false;
  if (deviceId) audio.deviceId = { exact: deviceId };
  return { audio: audio as MediaTrackConstraints, video: false };
}

/**
 * What stands between the air and the samples, from the settings of the open track.
 *
 * A setting that is neither off nor missing counts as on: newer browsers name the kind of echo cancellation instead of saying true.
 */
export function grantedProcessing(settings: Readonly<Record<string, unknown>>): SoundProcessing {
  const isOn = (name: string) => settings[name] !== undefined && settings[name] !== false;
  if (VOICE_PROCESSING.some(isOn) || isOn(VOICE_ISOLATION)) return 'altered';
  return VOICE_PROCESSING.every((name) => settings[name] === false) ? 'untouched' : 'unknown';
}
