/** Keeps the document in IndexedDB. Every change is one transaction over what is there at that moment, so that tabs cannot overwrite each other. */

import type { IDBPTransaction } from 'idb';
import type { KeptDocument } from '../../shared/document.ts';
import type { DocumentArchive, KeepingFailure, KeepingSpace, OpenedDocument } from '../ports.ts';
import { type Database, type DatabaseOptions, openDatabase, type Tables } from './database.ts';
import { keepingFailure } from './failure.ts';
import { documentOf, rowChanges } from './rows.ts';

type News = OpenedDocument | KeepingFailure;

interface Known {
  readonly revision: number;
  readonly opened: OpenedDocument;
}

export class KeptArchive implements DocumentArchive {
  readonly #options: Pick<DatabaseOptions, 'name' | 'version' | 'steps'>;
  readonly #listeners = new Set<(news: News) => void>();
  readonly #channel: BroadcastChannel;
  #database: Promise<Database> | undefined;
  /** What was read or written last, with its revision: as long as that is the store's own, nothing needs to be read again. */
  #known: Known | undefined;

  constructor(options: Pick<DatabaseOptions, 'name' | 'version' | 'steps'> = {}) {
    this.#options = options;
    this.#channel = new BroadcastChannel(`${options.name ?? 'spanwright'} kept`);
    this.#channel.addEventListener('message', () => void this.#readAgain());
  }

  async open(): Promise<News> {
    try {
      const transaction = (await this.#opened()).transaction(['items', 'meta'], 'readonly');
      return await this.#current(transaction.objectStore('items'), transaction.objectStore('meta')).then(({ opened }) => opened);
    } catch (fault) {
      return this.#failed(fault);
    }
  }

  async change(change: (document: KeptDocument) => KeptDocument): Promise<News> {
    let transaction: IDBPTransaction<Tables, ('items' | 'meta')[], 'readwrite'>;
    try {
      transaction = (await this.#opened()).transaction(['items', 'meta'], 'readwrite', { durability: 'strict' });
    } catch (fault) {
      return this.#failed(fault);
    }
    const [items, meta] = [transaction.objectStore('items'), transaction.objectStore('meta')];
    const done = transaction.done.catch((fault: unknown) => fault ?? transaction.error);
    let next: Known;
    try {
      const { revision, opened } = await this.#current(items, meta);
      const { document, put, remove } = changed(opened.document, change, () => transaction.abort());
      if (put.length + remove.length === 0) return opened;
      next = { revision: revision + 1, opened: { ...opened, document } };
      const writes = [...put.map((row) => items.put(row)), ...remove.map(([section, id]) => items.delete([section, id]))];
      await Promise.all([...writes, meta.put(next.revision, 'revision')]);
    } catch (fault) {
      if (fault instanceof CallersMistake) throw fault.cause;
      return this.#failed((await done) ?? fault);
    }
    const fault = await done; // only now it is on the disk
    if (fault !== undefined) return this.#failed(fault);
    this.#known = next;
    this.#channel.postMessage(next.revision);
    return next.opened;
  }

  onNews(listener: (news: News) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  async space(): Promise<KeepingSpace> {
    const { storage } = navigator as Partial<Navigator>;
    const estimate = await storage?.estimate().catch(() => undefined);
    const isPersistent = (await storage?.persisted().catch(() => false)) ?? false;
    return { usedBytes: estimate?.usage, quotaBytes: estimate?.quota, isPersistent };
  }

  async askToPersist(): Promise<boolean> {
    const { storage } = navigator as Partial<Navigator>;
    return (await storage?.persist().catch(() => false)) ?? false;
  }

  /** The same database for what is kept beside the document. */
  readonly database = (): Promise<Database> => this.#opened();

  /** Ends the use of the store; for tests, and for a page that goes away. */
  async close(): Promise<void> {
    this.#channel.close();
    (await this.#database?.catch(() => undefined))?.close();
  }

  #opened(): Promise<Database> {
    this.#database ??= openDatabase({
      ...this.#options,
      onBlocked: () => this.#tell({ kind: 'keeping-failure', why: 'other-tab', detail: '' }),
      onClosed: (why) => {
        this.#database = why === 'taken-over' ? Promise.reject(new TakenOver()) : undefined;
        this.#database?.catch(() => {});
        this.#tell({ kind: 'keeping-failure', why, detail: '' });
      },
    });
    return this.#database;
  }

  async #current(
    items: { getAll(): Promise<Parameters<typeof documentOf>[0]> },
    meta: { get(key: 'revision'): Promise<number | undefined> },
  ): Promise<Known> {
    const revision = (await meta.get('revision')) ?? 0;
    if (this.#known?.revision === revision) return this.#known;
    const opened = revision === 0 ? documentOf([]) : documentOf(await items.getAll());
    this.#known = { revision, opened };
    return this.#known;
  }

  async #readAgain(): Promise<void> {
    this.#tell(await this.open());
  }

  /** A store that did not open is tried again at the next call. */
  #failed(fault: unknown): KeepingFailure {
    if (fault instanceof TakenOver) return { kind: 'keeping-failure', why: 'taken-over', detail: '' };
    const opening = this.#database;
    opening?.catch(() => {
      if (this.#database === opening) this.#database = undefined;
    });
    return keepingFailure(fault);
  }

  #tell(news: News): void {
    for (const listener of this.#listeners) listener(news);
  }
}

class TakenOver extends Error {}
/** A change that throws has kept nothing, and its own fault goes to whoever asked for it. */
class CallersMistake extends Error {}

function changed(before: KeptDocument, change: (document: KeptDocument) => KeptDocument, abort: () => void) {
  try {
    const document = change(before);
    return { document, ...rowChanges(before, document) };
  } catch (fault) {
    abort();
    throw new CallersMistake('', { cause: fault });
  }
}
