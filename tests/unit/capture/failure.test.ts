/** Names of the exceptions as Media Capture and Streams (W3C), section 10.3.1 getUserMedia, gives them, and the older ones that some browsers still use. */
import { describe, expect, test } from 'vitest';
import { refusedMicrophone, refusedRecorder, withoutMediaDevices } from '../../../src/capture/failure.ts';

const exception = (name: string, message = 'its words') => new DOMException(message, name);

describe('getUserMedia refused', () => {
  test.each([
    ['NotFoundError', 'none'],
    ['DevicesNotFoundError', 'none'],
    ['NotReadableError', 'in-use'],
    ['TrackStartError', 'in-use'],
    ['AbortError', 'in-use'],
    ['SecurityError', 'blocked'],
    ['ConstraintNotSatisfiedError', 'device-not-found'],
    ['NotSupportedError', 'not-supported'],
    ['InvalidStateError', 'unknown'],
  ] as const)('%s is %s', (name, why) => {
    expect(refusedMicrophone(exception(name), undefined)).toEqual({ kind: 'capture-failure', why, detail: `${name}: its words` });
  });

  test.each([
    ['denied', 'Permission denied', 'blocked'],
    ['prompt', 'Permission denied', 'dismissed'],
    ['granted', 'Permission denied by system', 'blocked'],
    [undefined, 'Permission dismissed', 'dismissed'],
    [undefined, 'The request is not allowed by the user agent', 'blocked'],
  ] as const)('NotAllowedError with permission %s and the words "%s" is %s', (permission, words, why) => {
    expect(refusedMicrophone(exception('NotAllowedError', words), permission)).toMatchObject({ why });
  });

  test('an overconstrained error has no words of its own: the constraint is named', () => {
    const error = { name: 'OverconstrainedError', message: '', constraint: 'deviceId' };
    expect(refusedMicrophone(error, undefined)).toEqual({
      kind: 'capture-failure',
      why: 'device-not-found',
      detail: 'OverconstrainedError: deviceId',
    });
  });

  test('a TypeError: the browser does not know what it was asked', () => {
    expect(refusedMicrophone(new TypeError('no'), 'granted')).toMatchObject({ why: 'not-supported' });
  });

  test('anything may be thrown', () => {
    expect(refusedMicrophone('odd', undefined)).toMatchObject({ why: 'unknown', detail: 'odd' });
    expect(refusedMicrophone(null, undefined)).toMatchObject({ why: 'unknown', detail: 'null' });
  });
});

test('no mediaDevices: the page is not secure, or the browser is too old', () => {
  expect(withoutMediaDevices(false).why).toBe('insecure-page');
  expect(withoutMediaDevices(true).why).toBe('not-supported');
});

test.each([
  ['NotSupportedError', 'not-supported'],
  ['AbortError', 'unknown'],
  ['InvalidStateError', 'unknown'],
] as const)('the recorder refused with %s: %s', (name, why) => {
  expect(refusedRecorder(exception(name))).toMatchObject({ why });
});
