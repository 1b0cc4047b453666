/** The whole screen over an outside made by hand, so that each state can be had at once. */

import { readingsCsv, reportJson } from '../../../src/export/report-files.ts';
import { zipOf } from '../../../src/export/zip.ts';
import { Effects, type Outside } from '../../../src/ui/state/effects.ts';
import { Kept } from '../../../src/ui/state/kept.ts';
import { LiveMoments } from '../../../src/ui/state/live.ts';
import { SoundCue } from '../../../src/ui/state/sound-cue.ts';
import { EMPTY_SETUP } from '../../../src/ui/state/span-setup.ts';
import { initialState } from '../../../src/ui/state/state.ts';
import { Store } from '../../../src/ui/state/store.ts';
import { MemoryArchive, NoRecordings } from '../../support/memory-archive.ts';
import '../../../src/ui/app.ts';
import '../../../src/ui/tokens.css';

const silentOutside = (): Outside => ({
  recorder: {
    devices: async () => [],
    onDevicesChanged: () => () => {},
    open: async () => ({ kind: 'capture-failure', why: 'none', detail: '' }),
  },
  analyst: {
    listen: () => ({ port: new MessageChannel().port1, end: async () => {} }),
    analyse: async () => [],
    inspect: () => new Promise(() => {}),
  },
  counsellor: { ask: () => {} },
  player: { play: async () => {} },
  pluckFiles: { wav: () => new Blob(), json: () => new Blob() },
  draws: { draw: async () => undefined },
  planner: { plan: async () => undefined, second: async () => undefined, tryHere: async () => [] },
  decoder: { decode: async () => ({ kind: 'file-failure', why: 'empty', text: 'It is empty.' }) },
  replay: { start: () => ({ stop: () => {} }) },
  memory: { last: () => undefined, keep: () => {}, forget: () => {} },
  demo: async () => ({ recording: { samples: new Float32Array(8), sampleRateHz: 48_000 }, entered: EMPTY_SETUP }),
});

export function mountApp() {
  const store = new Store(initialState());
  const live = new LiveMoments();
  const app = document.createElement('spanwright-app');
  const kept = new Kept({ archive: new MemoryArchive() });
  const updates = Object.assign(new EventTarget(), { state: 'not-offline' as const, use: () => {} });
  app.workbench = {
    store,
    live,
    kept,
    updates,
    recordings: new NoRecordings(),
    sessions: { last: async () => undefined, keep: async () => true, forget: async () => true },
    reportFiles: { csv: readingsCsv, json: reportJson, zip: zipOf },
    cue: new SoundCue({ store }),
    effects: new Effects({ store, live, outside: silentOutside() }),
  };
  document.body.replaceChildren(app);
  return { app, store, live, kept };
}

/** Finds through open shadow roots. */
export function deep(selector: string, root: ParentNode = document): Element | undefined {
  const here = root.querySelector(selector);
  if (here) return here;
  for (const element of root.querySelectorAll('*')) {
    const found = element.shadowRoot && deep(selector, element.shadowRoot);
    if (found) return found;
  }
  return undefined;
}

/** After everything that was asked to draw has drawn. */
export async function drawn(): Promise<void> {
  for (let frame = 0; frame < 3; frame += 1) await new Promise((resolve) => requestAnimationFrame(resolve));
}
