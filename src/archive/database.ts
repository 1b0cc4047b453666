/** The database under the document: one row for each item, and a counter that goes up with every change. */

import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import { DOCUMENT_VERSION, MIGRATIONS, type Migration, migrated } from '../../shared/document.ts';
import { type Row, rawOf, rowsOf } from './rows.ts';

export interface Tables extends DBSchema {
  items: { key: [section: string, id: string]; value: Row };
  meta: { key: 'revision'; value: number };
  /** Sound of takes, by the take's id. */
  recordings: { key: string; value: { readonly id: string; readonly bytes: number; readonly parts: readonly unknown[] } };
}

export type Database = IDBPDatabase<Tables>;

export interface DatabaseOptions {
  readonly name?: string | undefined;
  readonly version?: number | undefined;
  readonly steps?: Readonly<Record<number, Migration>> | undefined;
  /** Another tab holds an older version open. */
  readonly onBlocked: () => void;
  /** A newer version wants the store, or the browser closed it. */
  readonly onClosed: (why: 'taken-over' | 'failed') => void;
}

export async function openDatabase(options: DatabaseOptions): Promise<Database> {
  const { name = 'spanwright', version = DOCUMENT_VERSION, steps = MIGRATIONS, onBlocked, onClosed } = options;
  let fault: unknown;
  try {
    return await openDB<Tables>(name, version, {
      upgrade(db, oldVersion, _newVersion, transaction) {
        if (oldVersion === 0) createTables(db);
        else
          void migrate(transaction, oldVersion, version, steps).catch((thrown: unknown) => {
            fault = thrown;
            transaction.done.catch(() => {}); // the opening tells it
            transaction.abort();
          });
      },
      blocked: onBlocked,
      blocking(_current, _wanted, event) {
        (event.target as IDBDatabase).close();
        onClosed('taken-over');
      },
      terminated: () => onClosed('failed'),
    });
  } catch (thrown) {
    throw fault ?? thrown;
  }
}

function createTables(database: Database): void {
  database.createObjectStore('items', { keyPath: ['section', 'id'] });
  database.createObjectStore('meta');
  database.createObjectStore('recordings', { keyPath: 'id' });
}

type Upgrade = IDBPTransaction<Tables, ('items' | 'meta' | 'recordings')[], 'versionchange'>;

/** All rows through the steps, in the one transaction that raises the version: it happens whole or not at all. */
async function migrate(transaction: Upgrade, from: number, to: number, steps: Readonly<Record<number, Migration>>): Promise<void> {
  const items = transaction.objectStore('items');
  const document = migrated(rawOf(await items.getAll()), from, { to, steps });
  await items.clear();
  for (const row of rowsOf(document)) await items.put(row);
}
