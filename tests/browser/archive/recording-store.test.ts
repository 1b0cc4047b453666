/** Sounds of plucks in a real browser: as they were to 16 bits of their peak, smaller than that, and gone when they are dropped. */

import { deleteDB, openDB } from 'idb';
import { afterEach, describe, expect, it } from 'vitest';
import { KeptArchive } from '../../../src/archive/kept-archive.ts';
import { packedClip, unpackedClip } from '../../../src/archive/packed-sound.ts';
import { RecordingStore } from '../../../src/archive/recording-store.ts';
import type { SoundClip } from '../../../src/ports.ts';

const NAME = 'spanwright sounds test';
const RATE_HZ = 48_000;

/** A decaying tone in a little noise, as quiet as a far microphone hears it. */
function clip(startS: number, amplitude = 0.02): SoundClip {
  let state = 7;
  const noise = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 31 - 1;
  };
  const samples = Float32Array.from({ length: 60_000 }, (_, n) => {
    const t = n / RATE_HZ;
    return amplitude * (Math.exp(-t / 0.15) * Math.sin(2 * Math.PI * 113 * t) + 0.002 * noise());
  });
  return { samples, sampleRateHz: RATE_HZ, startS };
}

let archive = new KeptArchive({ name: NAME });
const store = () => new RecordingStore(archive.database, () => localStorage);

afterEach(async () => {
  await archive.close();
  await deleteDB(NAME);
  localStorage.clear();
  archive = new KeptArchive({ name: NAME });
});

describe('packed sound', () => {
  it('comes back to 1/32767 of its own peak, in fewer bytes', async () => {
    const one = clip(0.4);
    const packed = await packedClip(one);
    const back = (await unpackedClip(packed))!;
    const furthest = one.samples.reduce((most, sample, n) => Math.max(most, Math.abs(sample - back.samples[n]!)), 0);
    expect(furthest).toBeLessThanOrEqual((0.5 / 32_767) * packed.peak * 1.001);
    expect([back.sampleRateHz, back.startS]).toEqual([RATE_HZ, 0.4]);
    expect(packed.data.length).toBeLessThan(2 * one.samples.length);
  });

  it('takes silence, and gives nothing for bytes that are not its own', async () => {
    const silent = { samples: new Float32Array(100), sampleRateHz: RATE_HZ, startS: 0 };
    expect((await unpackedClip(await packedClip(silent)))?.samples).toEqual(silent.samples);
    const packed = await packedClip(clip(0));
    expect(await unpackedClip({ ...packed, data: packed.data.slice(0, -9) })).toBeUndefined();
    expect(await unpackedClip({ ...packed, frames: packed.frames + 1 })).toBeUndefined();
  });
});

describe('kept sounds', () => {
  it('stay over a restart, are listed with their size, and go one by one or all', async () => {
    expect(await store().keep('take-1', [clip(0.4), clip(1.9)])).toBe(true);
    expect(await store().keep('take-2', [clip(0.2)])).toBe(true);
    await archive.close();
    archive = new KeptArchive({ name: NAME });
    const listed = await store().list();
    expect(listed.map(({ takeId, plucks }) => [takeId, plucks])).toEqual([
      ['take-1', 2],
      ['take-2', 1],
    ]);
    expect(listed[0]!.bytes).toBeGreaterThan(10_000);
    expect((await store().clips('take-1')).map(({ startS }) => startS)).toEqual([0.4, 1.9]);
    await store().drop('take-1');
    expect((await store().list()).map(({ takeId }) => takeId)).toEqual(['take-2']);
    await store().drop();
    expect(await store().list()).toEqual([]);
    expect(await store().clips('take-1')).toEqual([]);
  });

  it('leave the document alone', async () => {
    await store().keep('take-1', [clip(0.4)]);
    expect(await archive.open()).toMatchObject({ kind: 'opened', damaged: [] });
  });

  it('that were damaged are none', async () => {
    await store().keep('take-1', [clip(0.4)]);
    const database = await openDB(NAME);
    await database.put('recordings', { id: 'take-1', bytes: 3, parts: [{ frames: 'many' }] });
    database.close();
    expect(await store().clips('take-1')).toEqual([]);
  });

  it('are off until a person says so', () => {
    expect(store().isOn).toBe(false);
    store().setOn(true);
    expect(store().isOn).toBe(true);
    store().setOn(false);
    expect(store().isOn).toBe(false);
  });
});
