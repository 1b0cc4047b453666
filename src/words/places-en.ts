/** The words of the frame in English: places, what stands beside them, and what is said where a place cannot be opened. */

export const placesEn = {
  navigation: 'Places',
  names: { listen: 'Listen', machines: 'Machines', belts: 'Belts', gauges: 'Gauges', logbook: 'Logbook', settings: 'Settings' },
  title: (place: string) => `${place}, Spanwright`,
  menu: 'Menu',
  closeMenu: 'Close',
  listening: (count: number) => (count === 0 ? 'Listening' : `Listening, ${count} ${count === 1 ? 'pluck' : 'plucks'}`),
  notOpened: [
    'This place did not open',
    'A part of the program could not be fetched. What you keep is safe. Reload the page, or go to another place.',
  ],
  reload: 'Reload the page',

  far: {
    name: 'Large figures',
    open: 'Large figures',
    leave: 'Leave',
    leaveHint: (key: string) => `Press ${key} to leave.`,
    idle: (count: number) => (count === 0 ? 'Not listening.' : `${count} ${count === 1 ? 'pluck' : 'plucks'}.`),
    listening: (count: number) => (count === 0 ? 'Listening.' : `Listening, ${count} ${count === 1 ? 'pluck' : 'plucks'}.`),
  },
} as const;

export type PlaceName = keyof typeof placesEn.names;
