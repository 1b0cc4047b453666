/** The store in a real browser: what is kept survives, tabs do not overwrite each other, versions are raised whole or not at all. */

import { deleteDB, openDB } from 'idb';
import { afterEach, describe, expect, it } from 'vitest';
import { EMPTY_DOCUMENT, type KeptDocument, type Migration } from '../../../shared/document.ts';
import { KeptArchive } from '../../../src/archive/kept-archive.ts';
import type { KeepingFailure, OpenedDocument } from '../../../src/ports.ts';
import { exampleDocument } from '../../support/kept-example.ts';

const NAME = 'spanwright test';
const open: KeptArchive[] = [];
const tab = (options: { version?: number; steps?: Readonly<Record<number, Migration>> } = {}): KeptArchive => {
  const archive = new KeptArchive({ name: NAME, ...options });
  open.push(archive);
  return archive;
};
const documentIn = (news: OpenedDocument | KeepingFailure): KeptDocument => {
  if (news.kind === 'keeping-failure') throw new Error(`${news.why}: ${news.detail}`);
  return news.document;
};
const closeAll = async () => {
  for (const archive of open.splice(0)) await archive.close();
};
const noted = (text: string) => (document: KeptDocument) => ({
  ...document,
  entries: [...document.entries, { ...exampleDocument.entries[0]!, id: `entry-${text}`, text }],
});

afterEach(async () => {
  await closeAll();
  await deleteDB(NAME);
});

describe('the store', () => {
  it('is empty at first, and gives back what it kept', async () => {
    expect(documentIn(await tab().open())).toEqual(EMPTY_DOCUMENT);
    await tab().change(() => exampleDocument);
    await closeAll();
    expect(documentIn(await tab().open())).toEqual(exampleDocument);
  });

  it('writes one row for each item, and only those that have changed', async () => {
    const archive = tab();
    await archive.change(() => exampleDocument);
    const database = await openDB(NAME);
    expect(await database.count('items')).toBe(6);
    await database.put('items', { section: 'gauges', id: 'gauge-1', item: { ...exampleDocument.gauges[0], name: 'touched' } });
    await archive.change(noted('x')); // knows the document and must not write the gauge again
    expect((await database.get('items', ['gauges', 'gauge-1'])).item.name).toBe('touched');
    expect(await database.count('items')).toBe(7);
    database.close();
  });

  it('lets two tabs add at once, and tells each of the other', async () => {
    const [one, other] = [tab(), tab()];
    await Promise.all([one.open(), other.open()]);
    const told: string[] = [];
    one.onNews((news) =>
      told.push(
        documentIn(news)
          .entries.map(({ text }) => text)
          .join(),
      ),
    );
    await Promise.all(['a', 'b', 'c', 'd'].map((text, index) => (index % 2 ? one : other).change(noted(text))));
    expect(
      documentIn(await tab().open())
        .entries.map(({ text }) => text)
        .sort(),
    ).toEqual(['a', 'b', 'c', 'd']);
    await expect.poll(() => told.at(-1)?.split(',').sort().join()).toBe('a,b,c,d');
  });

  it('keeps nothing of a change that throws, or that could not be read again', async () => {
    const archive = tab();
    await archive.change(() => exampleDocument);
    await expect(
      archive.change(() => {
        throw new TypeError('no');
      }),
    ).rejects.toThrow('no');
    const [take] = exampleDocument.takes;
    await expect(archive.change((document) => ({ ...document, takes: [{ ...take!, sampleRateHz: Number.NaN }] }))).rejects.toThrow('takes');
    await closeAll();
    expect(documentIn(await tab().open())).toEqual(exampleDocument);
  });

  it('leaves a row that cannot be read where it is, and names the fault', async () => {
    await tab().change(() => exampleDocument);
    await closeAll();
    const database = await openDB(NAME);
    const damaged = { section: 'machines', id: 'odd', item: { ...exampleDocument.machines[0], id: 'odd', belts: [{ id: 'a' }] } };
    await database.put('items', damaged);
    const archive = tab();
    const opened = await archive.open();
    expect(opened).toMatchObject({ document: exampleDocument, damaged: [{ section: 'machines', id: 'odd', path: 'belts.0.name' }] });
    await archive.change(noted('after'));
    expect(await database.get('items', ['machines', 'odd'])).toEqual(damaged);
    database.close();
  });
});

describe('versions of the store', () => {
  const toTwo: Migration = ({ entries = [], ...others }) => ({
    ...others,
    entries: entries.map((entry) => ({ ...(entry as object), text: `${(entry as { text: string }).text}, brought along` })),
  });

  it('are raised with everything in it', async () => {
    await tab().change(() => exampleDocument);
    await closeAll();
    const document = documentIn(await tab({ version: 2, steps: { 1: toTwo } }).open());
    expect(document).toEqual({
      ...exampleDocument,
      entries: [{ ...exampleDocument.entries[0], text: 'Moved to the window, brought along' }],
    });
  });

  it('are raised whole or not at all', async () => {
    await tab().change(() => exampleDocument);
    await closeAll();
    const broken: Migration = () => {
      throw new Error('stop');
    };
    expect(await tab({ version: 3, steps: { 1: toTwo, 2: broken } }).open()).toMatchObject({
      kind: 'keeping-failure',
      why: 'failed',
      detail: 'stop',
    });
    await closeAll();
    expect(documentIn(await tab().open())).toEqual(exampleDocument);
  });

  it('refuse one from the future, and say so', async () => {
    await tab({ version: 2, steps: { 1: toTwo } }).change(() => exampleDocument);
    await closeAll();
    const old = tab();
    expect(await old.open()).toMatchObject({ kind: 'keeping-failure', why: 'newer' });
    expect(await old.change(noted('x'))).toMatchObject({ kind: 'keeping-failure', why: 'newer' });
  });

  it('let a newer tab take over: the older one closes, says so, and keeps nothing more', async () => {
    const old = tab();
    await old.change(() => exampleDocument);
    const news: string[] = [];
    old.onNews((one) => news.push(one.kind === 'keeping-failure' ? one.why : 'opened'));
    expect(documentIn(await tab({ version: 2, steps: { 1: toTwo } }).open()).entries).toHaveLength(1);
    expect(news).toContain('taken-over');
    expect(await old.change(noted('late'))).toMatchObject({ kind: 'keeping-failure', why: 'taken-over' });
  });

  it('say that they wait where an older tab does not close', async () => {
    await tab().change(() => exampleDocument);
    await closeAll();
    const stubborn = await openDB(NAME, 1);
    const news: string[] = [];
    const newer = tab({ version: 2, steps: { 1: toTwo } });
    newer.onNews((one) => news.push(one.kind === 'keeping-failure' ? one.why : 'opened'));
    const opening = newer.open();
    await expect.poll(() => news).toContain('other-tab');
    stubborn.close();
    expect(documentIn(await opening).entries).toHaveLength(1);
  });
});
