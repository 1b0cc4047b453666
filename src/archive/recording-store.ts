/** Sounds of plucks in the same database as the document, one row for each take, so that they can be looked at again and dropped. */

import { z } from '../../shared/schema.ts';
import type { KeptRecording, RecordingArchive, SoundClip } from '../ports.ts';
import type { Database } from './database.ts';
import { packedClip, packedClipSchema, unpackedClip } from './packed-sound.ts';

const KEY = 'spanwright.keep-sounds';
const partsSchema = z.array(packedClipSchema);

export class RecordingStore implements RecordingArchive {
  readonly #database: () => Promise<Database>;
  readonly #storageOf: () => Storage;

  /** @param storageOf  called each time, since a browser that forbids it throws already when it is named */
  constructor(database: () => Promise<Database>, storageOf: () => Storage) {
    this.#database = database;
    this.#storageOf = storageOf;
  }

  get isOn(): boolean {
    try {
      return this.#storageOf().getItem(KEY) === 'on';
    } catch {
      return false;
    }
  }

  setOn(isOn: boolean): void {
    try {
      if (isOn) this.#storageOf().setItem(KEY, 'on');
      else this.#storageOf().removeItem(KEY);
    } catch {
      // where nothing can be kept, sounds cannot either
    }
  }

  async keep(takeId: string, clips: readonly SoundClip[]): Promise<boolean> {
    const parts = await Promise.all(clips.map(packedClip));
    const bytes = parts.reduce((sum, { data }) => sum + data.length, 0);
    try {
      const transaction = (await this.#database()).transaction('recordings', 'readwrite', { durability: 'strict' });
      await Promise.all([transaction.store.put({ id: takeId, bytes, parts }), transaction.done]);
      return true;
    } catch {
      return false;
    }
  }

  async list(): Promise<readonly KeptRecording[]> {
    try {
      const found: KeptRecording[] = [];
      let cursor = await (await this.#database()).transaction('recordings').store.openCursor();
      while (cursor) {
        const { id, bytes, parts } = cursor.value;
        found.push({ takeId: id, bytes, plucks: parts.length });
        cursor = await cursor.continue();
      }
      return found;
    } catch {
      return [];
    }
  }

  async clips(takeId: string): Promise<readonly SoundClip[]> {
    try {
      const checked = partsSchema.safeParse((await (await this.#database()).get('recordings', takeId))?.parts);
      if (!checked.success) return [];
      const clips = await Promise.all(checked.data.map(unpackedClip));
      return clips.filter((clip) => clip !== undefined);
    } catch {
      return [];
    }
  }

  async drop(takeId?: string): Promise<void> {
    try {
      const database = await this.#database();
      await (takeId === undefined ? database.clear('recordings') : database.delete('recordings', takeId));
    } catch {
      // what cannot be reached takes no room that could be given back
    }
  }
}
