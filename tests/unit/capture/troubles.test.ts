import { expect, test } from 'vitest';
import { Troubles } from '../../../src/capture/troubles.ts';
import type { CaptureTrouble } from '../../../src/ports.ts';

function heard() {
  const troubles = new Troubles();
  const told: CaptureTrouble[] = [];
  troubles.listen((trouble) => told.push(trouble));
  return { troubles, told };
}

test('two causes of one trouble are told once, and end with the last', () => {
  const { troubles, told } = heard();
  troubles.note('track-muted', true);
  troubles.note('digital-silence', true);
  troubles.note('track-muted', false);
  expect(told).toEqual(['silent']);
  troubles.note('digital-silence', false);
  expect(told).toEqual(['silent', 'sound-again']);
});

test('pause and silence are told apart', () => {
  const { troubles, told } = heard();
  troubles.note('context-not-running', true);
  troubles.note('no-blocks', true);
  troubles.note('context-not-running', false);
  expect(told).toEqual(['paused', 'silent', 'resumed']);
});

test('what did not hold cannot end', () => {
  const { troubles, told } = heard();
  troubles.note('track-muted', false);
  troubles.note('clock-stalled', false);
  expect(told).toEqual([]);
});

test('a lost microphone is told once, and nothing after it', () => {
  const { troubles, told } = heard();
  troubles.end('gone');
  troubles.end('recorder-failed');
  troubles.note('track-muted', true);
  expect(told).toEqual(['gone']);
});

test('whoever listens late hears what holds', () => {
  const troubles = new Troubles();
  troubles.note('context-not-running', true);
  troubles.note('track-muted', true);
  const told: CaptureTrouble[] = [];
  troubles.listen((trouble) => told.push(trouble));
  expect(told).toEqual(['paused', 'silent']);
});
