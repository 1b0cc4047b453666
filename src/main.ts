/** Builds the edges and hands them to the page; the only file that knows them all. */

import { createAnalyst } from './analysis/analyst.ts';
import { createCounsellor } from './analysis/counsel.ts';
import { madeDemoTake } from './analysis/demo.ts';
import { createRandomDraws } from './analysis/draws.ts';
import { createPlanner } from './analysis/planner.ts';
import { KeptArchive } from './archive/kept-archive.ts';
import { createSetupMemory } from './archive/last-setup.ts';
import { RecordingStore } from './archive/recording-store.ts';
import { SessionStore } from './archive/session-store.ts';
import { createRecorder } from './capture/microphone.ts';
import { createClipPlayer } from './capture/playback.ts';
import { createReplay } from './capture/replay.ts';
import { pluckFiles } from './export/pluck-files.ts';
import { readingsCsv, reportJson } from './export/report-files.ts';
import { zipOf } from './export/zip.ts';
import { ServiceWorkerUpdates } from './offline/program-updates.ts';
import './ui/app.ts';
import { demoEntered } from './ui/state/demo-setup.ts';
import { Effects } from './ui/state/effects.ts';
import { browserScreen, KeepAwake } from './ui/state/keep-awake.ts';
import { withTakesRecomputed } from './ui/state/keep-take.ts';
import { Kept } from './ui/state/kept.ts';
import { LiveMoments } from './ui/state/live.ts';
import { SoundCue } from './ui/state/sound-cue.ts';
import { initialState } from './ui/state/state.ts';
import { Store } from './ui/state/store.ts';

const memory = createSetupMemory(() => localStorage);
const store = new Store(initialState(memory.last()));
const live = new LiveMoments();

async function demo() {
  const { recording, setup } = await madeDemoTake();
  return { recording, entered: demoEntered(setup) };
}

const effects = new Effects({
  store,
  live,
  outside: {
    recorder: createRecorder(),
    analyst: createAnalyst(),
    draws: createRandomDraws(),
    counsellor: createCounsellor(),
    player: createClipPlayer(),
    pluckFiles,
    planner: createPlanner(),
    decoder: { decode: async (file) => (await import('./capture/audio-file.ts')).createFileDecoder().decode(file) },
    replay: createReplay(),
    memory,
    demo,
  },
});

const archive = new KeptArchive();
const recordings = new RecordingStore(archive.database, () => localStorage);
const kept = new Kept({ archive, follow: withTakesRecomputed });
kept.addEventListener('change', () => store.dispatch({ kind: 'own-belts-known', belts: kept.document.belts }));

const app = document.querySelector('spanwright-app');
if (!app) throw new Error('the page lacks its root element');
const updates = new ServiceWorkerUpdates();
new KeepAwake({ store, screen: browserScreen() });
app.workbench = {
  store,
  effects,
  live,
  kept,
  recordings,
  sessions: new SessionStore(),
  updates,
  cue: new SoundCue({ store }),
  reportFiles: { csv: readingsCsv, json: reportJson, zip: zipOf },
};
if (import.meta.env.PROD) void updates.start('./offline.js');
void effects.findDevices();
