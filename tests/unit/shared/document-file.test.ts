import { describe, expect, it } from 'vitest';
import { fileText, readFileText } from '../../../shared/document/file.ts';
import { exampleDocument } from '../../support/kept-example.ts';

const AT = '2026-05-01T10:00:00.000Z';
const text = fileText(exampleDocument, AT);
const GONE = undefined;

/** The file with one value set anew, or taken out where it is `GONE`. */
function altered(path: string, value: unknown): string {
  const names = path.split('.');
  const file = JSON.parse(text) as Record<string, unknown>;
  const owner = names.slice(0, -1).reduce((inner, name) => inner[name] as Record<string, unknown>, file);
  owner[names.at(-1)!] = value;
  return JSON.stringify(file);
}

describe('the document as a file', () => {
  it('comes back as it was, also with a byte order mark', () => {
    for (const one of [text, `\uFEFF${text}`]) expect(readFileText(one)).toEqual({ ok: true, document: exampleDocument, savedAt: AT });
  });

  it('may lack sections that came later', () => {
    const read = readFileText(altered('gauges', GONE));
    expect(read.ok && read.document.gauges).toEqual([]);
  });

  it('is refused where it is no JSON, or something else’s', () => {
    expect(readFileText(text.slice(0, -20))).toMatchObject({ ok: false, why: 'not-json' });
    for (const foreign of ['[]', '7', 'null', '{"format":"another"}']) expect(readFileText(foreign)).toEqual({ ok: false, why: 'foreign' });
  });

  it('is refused where a later version wrote it', () => {
    expect(readFileText(altered('version', 99))).toEqual({ ok: false, why: 'newer', version: 99 });
  });

  it.each([
    ['version', 'one'],
    ['takes', {}],
    ['machines.0.belts.1.spans.0.lengthM.value', -1],
    ['takes.0.sounds.0.evidence.ownShare', GONE],
    ['belts.0.linearDensityKgPerM.1.got.at', 'yesterday'],
    ['gauges.1.id', 'gauge-1'],
    ['spoons', []],
  ])('names the path of the fault: %s', (path, value) => {
    const damaged = path.startsWith('gauges.1') ? altered('gauges.1', exampleDocument.gauges[0]) : altered(path, value);
    expect(readFileText(damaged)).toMatchObject({ ok: false, why: 'fault', path });
  });

  it.each([
    ['machines.0.belts.1.spans.0.lengthM.value', -1, 'a number above 0 is needed'],
    ['machines.0.name', 7, 'text is needed'],
    ['machines.0.id', 'Two Words', 'an id has small letters, digits and hyphens'],
    ['machines.0.belts', GONE, 'a list is needed'],
    ['takes.0.source', 'drum', 'one of'],
    ['machines.0.made.at', 'yesterday', 'a time such as 2026-03-02T08:15:00Z is needed'],
  ])('says in plain words what is needed: %s', (path, value, words) => {
    const read = readFileText(altered(path, value));
    expect(read).toMatchObject({ ok: false, why: 'fault', path });
    expect('detail' in read && read.detail).toContain(words);
  });

  it('refuses what is nested deeper than it could be written again, and names the item', () => {
    const deep = `${'['.repeat(20_000)}${']'.repeat(20_000)}`;
    for (const place of ['"note":', '"__proto__":']) {
      const text = fileText(exampleDocument, AT).replace('"id": "roll-1"', `${place} ${deep}, "id": "roll-1"`);
      expect(readFileText(text)).toMatchObject({ ok: false, why: 'fault', path: 'belts.0' });
    }
  });

  it('comes through the same steps as the store', () => {
    const old = JSON.stringify({ format: 'spanwright document', version: 1, tools: [{ id: 'g', name: 'Fork' }] });
    const made = exampleDocument.gauges[0]!.made;
    const steps = {
      1: ({ tools = [], ...others }: Readonly<Record<string, readonly unknown[]>>) => ({
        ...others,
        gauges: tools.map((tool) => ({ ...(tool as object), made, changedAt: made.at })),
      }),
    };
    expect(readFileText(old, { version: 2, steps })).toMatchObject({ ok: true, document: { gauges: [{ id: 'g', name: 'Fork' }] } });
  });
});
