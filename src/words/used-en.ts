/** Words of 'What was used': one sound laid open. */

import type { NothingWhy } from '../core/outcome.ts';
import { nothingText } from './reasons-en.ts';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

export const usedEn = {
  title: 'What was used',
  choose: 'Sound',
  pluck: (number: number) => `Pluck ${number}`,
  touched: 'Finger on the middle',
  refused: (at: string) => `Left aside, at ${at}`,
  play: 'Hear it',
  stop: 'Stop',
  playingWhileListening: 'It can be heard once listening has stopped.',
  saveSound: 'Save the sound',
  saveFigures: 'Save its figures',
  looking: 'Looking at the sound',
  broken: 'The sound could not be looked at. Nothing else is lost; try again.',
  again: 'Try again',
  soundGone: 'The sound of this pluck is no longer kept; only the latest are.',
  sentence: (partials: number, share: string, from: string, to: string) =>
    `${capital(NUMBERS[partials] ?? String(partials))} ${partials === 1 ? 'partial makes' : 'partials make'} ${share} of what rang from ${from} to ${to} after it was let go.`,
  residual: (below: string) => `What they leave lies ${below} below.`,
  refusal: (why: NothingWhy) => nothingText(why),
  plot: {
    title: 'Over time and frequency',
    label: (partials: string) =>
      partials === '' ? 'Sound over time and frequency.' : `Sound over time and frequency. Partials followed: ${partials}.`,
    window: 'read from here',
    partial: (number: number) => `partial ${number}`,
    hum: 'hum, left out',
    steady: 'steady, left out',
    letGo: 'let go',
  },
  decay: {
    title: 'How each partial died, and what the fit leaves',
    label: (residual: string) => `Level of each partial over time, dots as heard, lines as fitted. ${residual}`,
    residual: 'left over',
    room: 'room before',
    partial: (number: number) => `partial ${number}`,
    note: 'Dots as heard, lines as fitted.',
  },
  table: {
    caption: 'Partials of this sound',
    columns: ['Partial', 'Frequency', 'Decay time', 'Level when let go'],
  },
  fileName: (pluck: string) => `spanwright-${pluck}`,
} as const;

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
