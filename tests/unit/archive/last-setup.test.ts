import { describe, expect, it } from 'vitest';
import { createSetupMemory } from '../../../src/archive/last-setup.ts';
import { EMPTY_SETUP } from '../../../src/ui/state/span-setup.ts';

/** A storage in memory. */
function storage(): Storage {
  const kept = new Map<string, string>();
  return {
    get length() {
      return kept.size;
    },
    clear: () => kept.clear(),
    getItem: (key) => kept.get(key) ?? null,
    key: (index) => [...kept.keys()][index] ?? null,
    removeItem: (key) => void kept.delete(key),
    setItem: (key, value) => void kept.set(key, value),
  };
}

describe('setup memory', () => {
  it('gives back what it kept', () => {
    const place = storage();
    const entered = { ...EMPTY_SETUP, spanLength: '5,9 in', ends: ['pulley', 'clip'] as const };
    createSetupMemory(() => place).keep(entered);
    expect(createSetupMemory(() => place).last()).toEqual(entered);
  });

  it('gives back a weighing and how the belt lies, and opens what was kept before there were any', () => {
    const place = storage();
    const weighing = { beltId: 'own', kind: 'loop', length: '250', mass: '3.9', scaleStep: '0.1', density: '7.8 g/m ± 0.2 g/m' } as const;
    const entered = { ...EMPTY_SETUP, ends: ['idler', 'clip'] as const, lie: 'flat' as const, weighing };
    const memory = createSetupMemory(() => place);
    memory.keep(entered);
    expect(memory.last()).toEqual(entered);
    place.setItem(place.key(0)!, JSON.stringify({ version: 1, setup: EMPTY_SETUP }));
    expect(memory.last()).toEqual(EMPTY_SETUP);
  });

  it('forgets', () => {
    const place = storage();
    const memory = createSetupMemory(() => place);
    memory.keep(EMPTY_SETUP);
    memory.forget();
    expect(memory.last()).toBeUndefined();
    expect(place.length).toBe(0);
  });

  it('is empty at first', () => {
    expect(createSetupMemory(storage).last()).toBeUndefined();
  });

  it.each([
    ['no JSON', '{'],
    ['another shape', '{"version":1,"setup":{"spanLength":5}}'],
    ['another version', '{"version":2,"setup":{}}'],
    ['an end that nobody knows', JSON.stringify({ version: 1, setup: { ...EMPTY_SETUP, ends: ['glued', 'clip'] } })],
    ['a text without end', JSON.stringify({ version: 1, setup: { ...EMPTY_SETUP, spanLength: '1'.repeat(5000) } })],
  ])('leaves %s aside', (_name, text) => {
    const place = storage();
    const memory = createSetupMemory(() => place);
    memory.keep(EMPTY_SETUP);
    place.setItem(place.key(0)!, text);
    expect(memory.last()).toBeUndefined();
  });

  it('forgets quietly where storage is forbidden or full', () => {
    const forbidden = createSetupMemory(() => {
      throw new Error('SecurityError');
    });
    forbidden.keep(EMPTY_SETUP);
    expect(forbidden.last()).toBeUndefined();
  });
});
