/** The archive: its checksum, and its files read back by another reader. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32, zipOf } from '../../../src/export/zip.ts';
import { unzipped } from '../../support/unzip.ts';

describe('archive', () => {
  // The check value of this checksum for the nine digits '123456789' (catalogue of parametrised CRC algorithms, from memory): CBF43926.
  it('has the published check value', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
    expect(crc32(new Uint8Array())).toBe(0);
  });

  it('gives every file back, whatever it holds and is called', () => {
    const file = fc.record({
      name: fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }),
      bytes: fc.uint8Array({ maxLength: 200 }),
    });
    fc.assert(
      fc.property(fc.uniqueArray(file, { selector: ({ name }) => name, maxLength: 6 }), (files) => {
        const well = files.filter(({ name }) => !/\p{Cs}/u.test(name));
        const back = unzipped(Buffer.from(zipOf(well, new Date(2027, 3, 5, 6, 7, 8))));
        expect([...back.keys()]).toEqual(well.map(({ name }) => name));
        for (const { name, bytes } of well) expect(back.get(name)).toEqual(Buffer.from(bytes));
      }),
      { numRuns: 100, seed: 9 },
    );
  });
});
