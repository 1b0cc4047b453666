import { describe, expect, expectTypeOf, it } from 'vitest';
import type { z } from 'zod';
import { currentOf } from '../../../shared/document/common.ts';
import type { keptEnteredSchema, keptSetupSchema, keptSoundSchema } from '../../../shared/document/take.ts';
import { DOCUMENT_VERSION, EMPTY_DOCUMENT, MIGRATIONS, migrated, SECTION_NAMES, SECTIONS } from '../../../shared/document.ts';
import type { PluckSound } from '../../../src/core/outcome.ts';
import type { SpanSetup } from '../../../src/core/setup.ts';
import type { EnteredSetup } from '../../../src/ports.ts';
import { exampleDocument } from '../../support/kept-example.ts';

describe('the document', () => {
  it('has a section for each kind of item, empty at first', () => {
    expect(SECTION_NAMES.map((name) => EMPTY_DOCUMENT[name])).toEqual(SECTION_NAMES.map(() => []));
  });

  it('takes up a whole example, and gives it back as it was', () => {
    for (const name of SECTION_NAMES) {
      for (const item of exampleDocument[name]) expect(SECTIONS[name].parse(JSON.parse(JSON.stringify(item)))).toEqual(item);
    }
    expect(SECTION_NAMES.filter((name) => exampleDocument[name].length === 0)).toEqual([]);
  });

  it('holds what the core answers and asks', () => {
    expectTypeOf<z.infer<typeof keptSoundSchema>>().toExtend<PluckSound>();
    expectTypeOf<SpanSetup>().toExtend<Immutable<z.input<typeof keptSetupSchema>>>();
    expectTypeOf<z.infer<typeof keptSetupSchema>>().toExtend<SpanSetup>();
    expectTypeOf<keyof z.infer<typeof keptSetupSchema>>().toEqualTypeOf<keyof SpanSetup>();
    expectTypeOf<z.infer<typeof keptEnteredSchema>>().toExtend<EnteredSetup>();
    expectTypeOf<keyof z.infer<typeof keptEnteredSchema>>().toEqualTypeOf<Exclude<keyof EnteredSetup, 'on'>>();
  });

  it('refuses a field that nobody knows, rather than losing it', () => {
    const [machine] = exampleDocument.machines;
    const { success, error } = SECTIONS.machines.safeParse({ ...machine, colour: 'blue' });
    expect(success).toBe(false);
    expect(error?.issues[0]?.code).toBe('unrecognized_keys');
  });

  it('refuses a group of belts that the machine does not have', () => {
    const [machine] = exampleDocument.machines;
    const { error } = SECTIONS.machines.safeParse({ ...machine, belts: machine!.belts.slice(1) });
    expect(error?.issues[0]?.path).toEqual(['groups']);
  });

  it('counts the last of several values, and keeps the others', () => {
    expect(currentOf([1, 2, 3])).toBe(3);
    expect(currentOf([])).toBeUndefined();
  });
});

describe('versions of the document', () => {
  const steps = {
    1: (document: Readonly<Record<string, readonly unknown[]>>) => ({ ...document, tools: document.gauges ?? [] }),
    2: ({ gauges: _, ...others }: Readonly<Record<string, readonly unknown[]>>) => others,
  };

  it('comes to the present one step at a time', () => {
    expect(migrated({ gauges: ['g'] }, 1, { to: 3, steps })).toEqual({ tools: ['g'] });
    expect(migrated({ gauges: ['g'] }, 2, { to: 3, steps })).toEqual({});
    expect(migrated({ gauges: ['g'] }, 3, { to: 3, steps })).toEqual({ gauges: ['g'] });
  });

  it('has a step for every version before this one', () => {
    expect(Object.keys(MIGRATIONS).map(Number)).toEqual(Array.from({ length: DOCUMENT_VERSION - 1 }, (_, index) => index + 1));
    expect(() => migrated({}, 1, { to: 2, steps: {} })).toThrow('no step from document version 1');
  });
});

/** The core's types are readonly throughout; what a schema takes is not. */
type Immutable<T> = T extends readonly unknown[] | object ? { readonly [Key in keyof T]: Immutable<T[Key]> } : T;
