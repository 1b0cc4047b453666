/** The words of Settings in English: what is kept, files out and in, space, and working offline. */

import type { SectionName } from '../../shared/document.ts';
import type { ProgramState } from '../ports.ts';

const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

const sections: Record<SectionName, readonly [string, string]> = {
  machines: ['machine', 'machines'],
  belts: ['belt', 'belts'],
  takes: ['take', 'takes'],
  gauges: ['gauge', 'gauges'],
  entries: ['entry', 'entries'],
  rivals: ['version to choose from', 'versions to choose from'],
};

export const settingsEn = {
  title: 'Settings',
  over: 'Settings',
  answer: ['Everything stays ', 'in this browser'],
  nothing: 'Nothing is kept yet.',
  holds: (parts: readonly string[]) => `It holds ${parts.join(', ')}.`,
  count: (section: SectionName, count: number) => counted(count, ...sections[section]),

  file: 'One file of everything',
  fileNote: 'A file is the only copy that no browser can clear away. It opens here, on another computer, and in every later version.',
  save: 'Save a file',
  open: 'Open a file',
  refused: 'This file was not taken. Nothing has changed.',
  notJson: (detail: string) => `It is no JSON, or it was cut short: ${detail}`,
  foreign: 'It is JSON, but not a file of this program. A saved one begins with its format.',
  newer: (version: number) =>
    `A newer version of this program wrote it (document version ${version}). Reload the page to get the newer version.`,
  fault: (path: string, detail: string) => `At ${path}: ${detail}.`,
  savedAt: (when: string) => `Saved ${when}`,
  how: 'What is to be done with it',
  merge: 'Merge',
  mergeNote:
    'Keeps what is here and adds what is in the file. Where both changed one thing, the later one is used and the other stays beside it.',
  replace: 'Replace',
  replaceNote: 'Puts the file in the place of everything that is here.',
  previewCaption: { merge: 'What merging would change', replace: 'What replacing would change' },
  columns: { what: 'what', added: 'new', changed: 'changed', removed: 'gone', same: 'as it is' },
  section: (section: SectionName) => sections[section][1],
  names: { added: 'New', changed: 'Changed', removed: 'Gone' },
  noChange: 'It holds nothing that is not here already.',
  doIt: { merge: 'Merge it', replace: 'Replace everything' },
  leave: 'Leave it',
  done: { merge: 'Merged.', replace: 'Replaced.' },
  untitled: 'without a name',

  sounds: 'Sound',
  cue: 'A short sound when listening has ended',
  cueNote: 'Rising where there is a reading, falling where there is none. Never while the page listens.',

  space: 'Space',
  used: (used: string, quota: string) => `${used} of ${quota} that the browser gives this page.`,
  usedUnknown: 'The browser does not say how much it takes.',
  persistent: 'The browser has promised not to clear it away by itself.',
  notPersistent: 'The browser may clear it away when space runs short. A saved file is safe from that.',
  ask: 'Ask the browser to keep it',
  askedNo: 'The browser did not promise it. Some ask for an installed page or a bookmark first.',
  damaged: (count: number) =>
    count === 1 ? 'One item cannot be read and is left where it is:' : `${count} items cannot be read and are left where they are:`,
  damagedItem: (section: string, id: string, path: string) => `${section} ${id}, at ${path}`,

  recordings: {
    title: 'Sound of the plucks',
    keep: 'Keep the sound of each pluck with its take',
    keepNote:
      'About a second and a half each, so that a doubtful reading can be looked at again. It stays in this browser and is not in the saved file.',
    none: 'No sounds are kept.',
    some: (takes: number, size: string) => `Sounds of ${counted(takes, 'take', 'takes')} are kept, ${size} in all.`,
    show: 'Show each',
    size: (plucks: number, size: string) => `${counted(plucks, 'pluck', 'plucks')}, ${size}.`,
    on: (machine: string, belt: string) => `${machine}, belt ${belt}`,
    take: (on: string, when: string) => (on ? `${on}, ${when}` : when),
    gone: 'A take that is gone',
    again: 'Look again',
    againNamed: (name: string) => `Look again at ${name}`,
    drop: 'Drop',
    dropNamed: (name: string) => `Drop the sound of ${name}`,
    dropAll: 'Drop all sounds',
    unreadable: 'It cannot be read any more.',
  },

  offline: 'Without a network',
  program: (version: string) => `This is version ${version}.`,
  offlineState: {
    unknown: 'Being prepared to work without a network.',
    offline: 'The whole program is on this device: it opens and works without a network.',
    'not-offline': 'Here it needs the network. Opened over https, or as localhost, it would work without.',
    'newer-waits': 'A newer version was fetched and waits.',
    'newer-elsewhere': 'A newer version runs in another tab. Reload this page to use it too.',
  } satisfies Record<ProgramState, string>,

  wipe: 'Remove everything',
  wipeTitle: 'Remove everything that is kept here?',
  wipeLead: 'Machines, belts, takes, gauges and entries go for good. A saved file brings them back.',
  wipeDo: 'Remove it all',
  wipeLeave: 'Keep it',
  wiped: 'Everything was removed.',
};
