import { describe, expect, test } from 'vitest';
import { grantedProcessing, microphoneConstraints } from '../../../src/capture/constraints.ts';

describe('what is asked', () => {
  test('voice processing off, whatever the browser knows; no rate, no channel count', () => {
    expect(microphoneConstraints({ supported: {} })).toEqual({
      audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
      video: false,
    });
  });
  test('voice isolation only where the browser knows it', () => {
    expect(microphoneConstraints({ supported: { voiceIsolation: true } }).audio).toHaveProperty('voiceIsolation', false);
    expect(microphoneConstraints({ supported: { voiceIsolation: false } }).audio).not.toHaveProperty('voiceIsolation');
  });
  test('a chosen device is demanded; an empty choice is the browser’s', () => {
    expect(microphoneConstraints({ supported: {}, deviceId: 'usb' }).audio).toHaveProperty('deviceId', { exact: 'usb' });
    expect(microphoneConstraints({ supported: {}, deviceId: '' }).audio).not.toHaveProperty('deviceId');
  });
});

describe('what was granted', () => {
  const off = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };
  test.each([
    ['all off', off, 'untouched'],
    ['all off and voice isolation off', { ...off, voiceIsolation: false }, 'untouched'],
    ['echo cancellation on', { ...off, echoCancellation: true }, 'altered'],
    ['a kind of echo cancellation named', { ...off, echoCancellation: 'remote-only' }, 'altered'],
    ['noise suppression on', { ...off, noiseSuppression: true }, 'altered'],
    ['gain control on', { ...off, autoGainControl: true }, 'altered'],
    ['voice isolation on', { ...off, voiceIsolation: true }, 'altered'],
    ['one on and the rest not told', { autoGainControl: true }, 'altered'],
    ['one not told', { echoCancellation: false, noiseSuppression: false }, 'unknown'],
    ['nothing told', {}, 'unknown'],
  ] as const)('%s', (_, settings, processing) => {
    expect(grantedProcessing(settings)).toBe(processing);
  });
});
