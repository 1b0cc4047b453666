/** What every screen may ask for: the store, what a person can do, and the sound of the moment. */

import { createContext } from '@lit/context';
import type { ProgramUpdates, RecordingArchive, ReportFiles, SessionArchive } from '../../ports.ts';
import type { Effects } from './effects.ts';
import type { Kept } from './kept.ts';
import type { LiveMoments } from './live.ts';
import type { SoundCue } from './sound-cue.ts';
import type { Store } from './store.ts';

export interface Workbench {
  readonly store: Store;
  readonly effects: Effects;
  readonly live: LiveMoments;
  /** What a person keeps. */
  readonly kept: Kept;
  /** Sounds that are kept beside takes. */
  readonly recordings: RecordingArchive;
  readonly sessions: SessionArchive;
  readonly updates: ProgramUpdates;
  readonly reportFiles: ReportFiles;
  readonly cue: SoundCue;
}

export const workbenchContext = createContext<Workbench>('workbench');
