import { describe, expect, it } from 'vitest';
import { stampOf } from '../../../../src/core/logbook/versions.ts';
import type { KeepingFailure } from '../../../../src/ports.ts';
import { type DocumentChange, Kept } from '../../../../src/ui/state/kept.ts';
import { exampleDocument } from '../../../support/kept-example.ts';
import { MemoryArchive } from '../../../support/memory-archive.ts';

const LATER = '2026-04-01T00:00:00.000Z';
const FULL: KeepingFailure = { kind: 'keeping-failure', why: 'full', detail: '' };

const renamed =
  (name: string): DocumentChange =>
  (document) => ({ ...document, machines: document.machines.map((machine) => ({ ...machine, name })) });
const noted =
  (note: string): DocumentChange =>
  (document) => ({ ...document, machines: document.machines.map((machine) => ({ ...machine, note })) });

async function keptExample() {
  const archive = new MemoryArchive(exampleDocument);
  const kept = new Kept({ archive, now: () => LATER });
  await kept.opened;
  return { archive, kept };
}

describe('what is kept', () => {
  it('is empty until it is opened', async () => {
    const kept = new Kept({ archive: new MemoryArchive(exampleDocument) });
    expect(kept.keeping.isOpen).toBe(false);
    expect(kept.document.machines).toEqual([]);
    await kept.opened;
    expect(kept.keeping.isOpen).toBe(true);
    expect(kept.document).toBe(exampleDocument);
  });

  it('gives what was changed its time and the version that it came from, and leaves the rest alone', async () => {
    const { kept, archive } = await keptExample();
    expect(await kept.change(renamed('Bench plotter'))).toBe(true);
    const [machine] = kept.document.machines;
    expect(machine).toMatchObject({ name: 'Bench plotter', changedAt: LATER, earlier: [stampOf(exampleDocument.machines[0]!)] });
    expect(kept.document.takes).toBe(exampleDocument.takes);
    expect(archive.document).toBe(kept.document);
    expect(archive.persistAsked).toBe(1);
  });

  it('takes items from elsewhere as they are', async () => {
    const { kept } = await keptExample();
    await kept.change(renamed('From a file'), { asTheyAre: true });
    expect(kept.document.machines[0]?.changedAt).toBe(exampleDocument.machines[0]?.changedAt);
  });

  it('follows what other tabs keep', async () => {
    const { kept, archive } = await keptExample();
    let told = 0;
    kept.addEventListener('change', () => {
      told += 1;
    });
    archive.elsewhere({ ...exampleDocument, gauges: [] });
    expect(kept.document.gauges).toEqual([]);
    expect(told).toBe(1);
  });

  it('goes on in the page where the store fails, and keeps everything once it can', async () => {
    const { kept, archive } = await keptExample();
    archive.failure = FULL;
    expect(await kept.change(renamed('One'))).toBe(false);
    expect(await kept.change(noted('two'))).toBe(false);
    expect(kept.document.machines[0]).toMatchObject({ name: 'One', note: 'two' });
    expect(kept.keeping).toMatchObject({ failure: FULL, unkept: 2 });
    expect(archive.document).toBe(exampleDocument);

    archive.failure = undefined;
    expect(await kept.retry()).toBe(true);
    expect(archive.document.machines[0]).toMatchObject({ name: 'One', note: 'two' });
    expect(kept.keeping).toMatchObject({ failure: undefined, unkept: 0 });
  });

  it('leaves out a change that cannot be kept, says so, and goes on with the next', async () => {
    const { kept, archive } = await keptExample();
    const broken: DocumentChange = () => {
      throw new RangeError('belts.0.name: too long');
    };
    expect(await kept.change(broken)).toBe(false);
    expect(kept.keeping).toMatchObject({ failure: { why: 'not-fitting', detail: 'belts.0.name: too long' }, unkept: 0 });
    expect(await kept.change(renamed('Next'))).toBe(true);
    expect(kept.keeping.failure).toBeUndefined();
    expect(archive.document.machines[0]?.name).toBe('Next');
  });

  it('does not lose what is in the page only when another tab changes something', async () => {
    const { kept, archive } = await keptExample();
    archive.failure = FULL;
    await kept.change(renamed('Mine'));
    archive.elsewhere({ ...exampleDocument, gauges: [] });
    expect(kept.document.machines[0]?.name).toBe('Mine');
    expect(kept.document.gauges).toEqual([]);
    expect(kept.keeping).toMatchObject({ failure: FULL, unkept: 1 });
  });
});
