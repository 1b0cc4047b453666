/** Words about what is kept: where it cannot be, files out and in, and the space that it takes. */

import type { KeepingFailure } from '../ports.ts';

const things = (count: number) => (count === 1 ? 'One change is' : `${count} changes are`);

export const keepingEn = {
  failures: {
    forbidden: ['This browser keeps nothing for this page', 'What you enter stays until the page is closed. Save a file before that.'],
    full: ['There is no room left to keep this', 'Save a file now, then drop recordings in Settings, or free space on this device.'],
    newer: ['A newer version of this program wrote what is kept', 'Reload the page, so that the newer version opens it.'],
    'other-tab': ['An older version is open in another tab', 'Close that tab or reload it. This page goes on by itself.'],
    'taken-over': ['A newer version is open in another tab', 'Reload this page, so that both are the same.'],
    'not-fitting': ['That change cannot be kept, and was left out', 'Everything else is safe. Try it with other values.'],
    failed: ['What you changed could not be kept', 'Save a file now, then try again.'],
  } satisfies Record<KeepingFailure['why'], readonly [string, string]>,
  keep: 'Keep in logbook',
  keepShort: 'Keep',
  keepAgain: 'Keep the change',
  isKept: 'Kept',
  temperature: 'How warm was it?',
  temperatureNote: 'If you know it: warmth can then be told from wear.',
  temperatureFault: 'Write a temperature in degrees, such as 18.',
  keepTitle: 'Keep in logbook',
  keepLead: 'The sounds of the plucks are kept as figures, with the inputs that the force was computed from.',
  keepName: 'What was plucked',
  keepNameNote: 'A name that you will know again, such as: plotter, left belt.',
  keepNote: 'Note',
  keepIt: 'Keep it',
  leaveIt: 'Leave it',
  unkept: (count: number) => `${things(count)} only in this page.`,
  browserSays: (detail: string) => `The browser says: ${detail}`,
  newer: {
    'newer-waits': ['A newer version is ready', 'It begins with a reload; a take that is being heard would end.'],
    'newer-elsewhere': ['Another tab uses a newer version', 'Reload this page, so that both are the same.'],
  },
  useNewer: 'Use it now',
  later: 'Later',
  saveFile: 'Save a file',
  tryAgain: 'Try again',
  reload: 'Reload the page',
};
