/** Why no microphone could be opened: the one place where the browser's exceptions become our own closed list. */

import type { CaptureFailure } from '../ports.ts';

const failure = (why: CaptureFailure['why'], detail = ''): CaptureFailure => ({ kind: 'capture-failure', why, detail });

/** The page has no `mediaDevices` at all. */
export const withoutMediaDevices = (isSecure: boolean): CaptureFailure => failure(isSecure ? 'not-supported' : 'insecure-page');

/**
 * Why `getUserMedia` refused.
 *
 * @param permission  what the browser answers when asked for the microphone's permission after the refusal; not told: it cannot be asked
 */
export function refusedMicrophone(error: unknown, permission: PermissionState | undefined): CaptureFailure {
  const { name, detail } = told(error);
  switch (name) {
    case 'NotAllowedError':
    case 'PermissionDeniedError':
      return failure(isDismissed(detail, permission) ? 'dismissed' : 'blocked', detail);
    case 'SecurityError':
      return failure('blocked', detail);
    case 'NotFoundError':
    case 'DevicesNotFoundError':
      return failure('none', detail);
    case 'NotReadableError':
    case 'TrackStartError':
    case 'AbortError': // a device that was allowed and could not be started
      return failure('in-use', detail);
    case 'OverconstrainedError':
    case 'ConstraintNotSatisfiedError':
      return failure('device-not-found', detail); // the device is the only thing that is demanded
    case 'NotSupportedError':
    case 'TypeError':
      return failure('not-supported', detail);
    default:
      return failure('unknown', detail);
  }
}

/** Why a microphone that was allowed could not be connected to the recorder. */
export function refusedRecorder(error: unknown): CaptureFailure {
  const { name, detail } = told(error);
  return failure(name === 'NotSupportedError' || name === 'TypeError' ? 'not-supported' : 'unknown', detail);
}

/** A closed prompt leaves the permission open; where that cannot be asked, the words must do. */
const isDismissed = (detail: string, permission: PermissionState | undefined): boolean =>
  permission === undefined ? /dismiss/i.test(detail) : permission === 'prompt';

/** Name and words of an exception; an overconstrained error has no words and names its constraint instead. */
function told(error: unknown): { readonly name: string; readonly detail: string } {
  if (typeof error !== 'object' || error === null) return { name: '', detail: String(error) };
  const { name = '', message = '', constraint = '' } = error as { name?: string; message?: string; constraint?: string };
  return { name, detail: [name, message || constraint].filter(Boolean).join(': ') };
}
