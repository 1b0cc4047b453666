/** A validation session in a real browser's database: it comes back as it was, and a damaged take leaves the others alone. */

import { deleteDB, openDB } from 'idb';
import { afterEach, describe, expect, it } from 'vitest';
import { SessionStore } from '../../../src/archive/session-store.ts';
import type { KeptSession, SessionTake } from '../../../src/ports.ts';

const NAME = 'spanwright session test';

const take = (name: string, level: number): SessionTake => ({
  name,
  truth: { description: '', forceN: 7, spanLengthM: 0.18, linearDensityKgPerM: 0.008, source: 'a test', licence: 'not told' },
  known: {
    name,
    knownForceN: { value: 7, standardUncertainty: 0.02 },
    spanLengthM: { value: 0.18, standardUncertainty: 0.0005 },
    linearDensityKgPerM: { value: 0.008, standardUncertainty: 0.0001 },
    heard: { forceN: { value: 7.1, low: 6.8, high: 7.4, u95: 0.3 }, frequencyRelativeU: 0.001, grade: 'trusted' },
  },
  recording: { samples: new Float32Array(64).fill(level), sampleRateHz: 48_000, processing: 'untouched' },
});
const session: KeptSession = {
  texts: { density: '8', densityFrom: 'stated', ends: ['clip', 'pulley'], span: '180', spanKnownTo: '1', weight: '7 N' },
  count: 3,
  takes: [take('take-01', 0.125), take('take-03', 0.25)],
};

const stores: SessionStore[] = [];
const open = (): SessionStore => {
  const store = new SessionStore({ name: NAME });
  stores.push(store);
  return store;
};
afterEach(async () => {
  for (const store of stores.splice(0)) await store.close();
  await deleteDB(NAME);
});

describe('SessionStore', () => {
  it('has nothing at first, then what was kept, in its order', async () => {
    expect(await open().last()).toBeUndefined();
    expect(await open().keep(session)).toBe(true);
    expect(await open().last()).toEqual(session);
  });

  it('forgets a take that was dropped, under the same name as a later one too', async () => {
    const store = open();
    await store.keep(session);
    await store.keep({ ...session, takes: [] });
    const again = { ...session, takes: [take('take-01', 0.5)] };
    await store.keep(again);
    expect(await open().last()).toEqual(again);
  });

  it('forgets all of it, and keeps a new one after that', async () => {
    const store = open();
    await store.keep(session);
    expect(await store.forget()).toBe(true);
    expect(await open().last()).toBeUndefined();
    await store.keep(session);
    expect(await open().last()).toEqual(session);
  });

  it('leaves out a damaged take, and all where the head is damaged', async () => {
    await open().keep(session);
    const database = await openDB(NAME, 1);
    await database.put('takes', { name: 'take-01', truth: {} }, 'take-01');
    expect((await open().last())?.takes).toEqual([session.takes[1]]);
    await database.put('head', { texts: 'none' }, 'head');
    database.close();
    expect(await open().last()).toBeUndefined();
  });
});
