/**
 * A validation session in a database of its own, recordings and all, so that a reload loses nothing. Takes are never changed: each is written
 * once. What comes back is checked first.
 */

import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { measuredSchema, positiveMeasuredSchema } from '../../shared/document/common.ts';
import { z } from '../../shared/schema.ts';
import { takeTruthSchema } from '../../shared/take-truth.ts';
import type { KeptSession, SessionArchive, SessionTake } from '../ports.ts';

/** No field holds more; longer texts are damage. */
const text = z.string().max(120);
const end = z.enum(['unknown', 'pulley', 'idler', 'clip']);
const finite = z.number().optional();

const headSchema = z.strictObject({
  texts: z.strictObject({
    density: text,
    densityFrom: z.enum(['weighed', 'stated', 'catalogue']),
    ends: z.tuple([end, end]),
    span: text,
    spanKnownTo: text,
    weight: text,
  }),
  count: z.int().nonnegative(),
  /** Of the takes, in their order. */
  names: z.array(text),
});

const takeSchema = z.strictObject({
  name: text,
  truth: takeTruthSchema,
  known: z.strictObject({
    name: text,
    knownForceN: positiveMeasuredSchema,
    spanLengthM: positiveMeasuredSchema,
    linearDensityKgPerM: positiveMeasuredSchema,
    heard: z
      .strictObject({
        forceN: z.strictObject({ ...measuredSchema.pick({ value: true }).shape, low: finite, high: finite, u95: finite }),
        frequencyRelativeU: z.number().nonnegative(),
        grade: z.enum(['trusted', 'doubtful', 'unusable']),
      })
      .optional(),
  }),
  recording: z.strictObject({
    samples: z.instanceof(Float32Array),
    sampleRateHz: z.number().positive(),
    processing: z.enum(['untouched', 'altered', 'unknown']).optional(),
  }),
});

interface Tables extends DBSchema {
  head: { key: 'head'; value: unknown };
  takes: { key: string; value: unknown };
}

export class SessionStore implements SessionArchive {
  readonly #name: string;
  #database: Promise<IDBPDatabase<Tables>> | undefined;
  /** Takes as they stand on the disk, by name. */
  readonly #written = new Map<string, SessionTake>();

  constructor({ name = 'spanwright-validation' }: { readonly name?: string | undefined } = {}) {
    this.#name = name;
  }

  async last(): Promise<KeptSession | undefined> {
    try {
      const database = await this.#open();
      const head = headSchema.safeParse(await database.get('head', 'head'));
      if (!head.success) return undefined;
      const { texts, count, names } = head.data;
      const rows = await Promise.all(names.map((name) => database.get('takes', name)));
      const takes = rows.flatMap((row) => takeSchema.safeParse(row).data ?? []);
      for (const take of takes) this.#written.set(take.name, take);
      return { texts, count, takes };
    } catch {
      return undefined;
    }
  }

  async keep({ texts, count, takes }: KeptSession): Promise<boolean> {
    try {
      const transaction = (await this.#open()).transaction(['head', 'takes'], 'readwrite', { durability: 'strict' });
      const names = takes.map(({ name }) => name);
      const rows = transaction.objectStore('takes');
      const gone = [...this.#written.keys()].filter((name) => !names.includes(name));
      const fresh = takes.filter((take) => this.#written.get(take.name) !== take);
      await Promise.all([
        transaction.objectStore('head').put({ texts: { ...texts, ends: [...texts.ends] }, count, names }, 'head'),
        ...gone.map((name) => rows.delete(name)),
        ...fresh.map((take) => rows.put(take, take.name)),
        transaction.done,
      ]);
      for (const name of gone) this.#written.delete(name);
      for (const take of fresh) this.#written.set(take.name, take);
      return true;
    } catch {
      return false;
    }
  }

  async forget(): Promise<boolean> {
    try {
      const transaction = (await this.#open()).transaction(['head', 'takes'], 'readwrite', { durability: 'strict' });
      await Promise.all([transaction.objectStore('head').clear(), transaction.objectStore('takes').clear(), transaction.done]);
      this.#written.clear();
      return true;
    } catch {
      return false;
    }
  }

  async close(): Promise<void> {
    (await this.#database?.catch(() => undefined))?.close();
    this.#database = undefined;
  }

  #open(): Promise<IDBPDatabase<Tables>> {
    this.#database ??= openDB<Tables>(this.#name, 1, {
      upgrade(database) {
        database.createObjectStore('head');
        database.createObjectStore('takes');
      },
    });
    return this.#database;
  }
}
