/** Two devices change one machine apart from each other: both versions stand side by side, and a choice made on one ends it on both. */

import { describe, expect, it } from 'vitest';
import { EMPTY_DOCUMENT, type KeptDocument } from '../../../../shared/document.ts';
import { changed } from '../../../../src/core/logbook/versions.ts';
import { mergedDocument } from '../../../../src/ui/state/document-merge.ts';
import { rivalVersions, withChosen } from '../../../../src/ui/state/rivals.ts';
import { exampleDocument } from '../../../support/kept-example.ts';

const start: KeptDocument = { ...EMPTY_DOCUMENT, machines: exampleDocument.machines };
const noted = (note: string, now: string): KeptDocument => ({
  ...start,
  machines: start.machines.map((machine) => changed(machine, { note }, now)),
});
const laptop = noted('by the window', '2027-03-01T10:00:00.000Z');
const phone = noted('in the cellar', '2027-03-01T11:00:00.000Z');

describe('rival versions', () => {
  it('are none where one side only changed something', () => {
    expect(rivalVersions(mergedDocument(start, phone))).toEqual([]);
    expect(mergedDocument(phone, start).machines[0]!.note).toBe('in the cellar');
  });

  it('stand side by side, the later one in use', () => {
    const [versions, ...more] = rivalVersions(mergedDocument(laptop, phone));
    expect(more).toEqual([]);
    expect(versions!.section).toBe('machines');
    expect(versions!.used).toMatchObject({ note: 'in the cellar' });
    expect(versions!.rivals).toMatchObject([{ note: 'by the window' }]);
  });

  it('are settled for every device by one choice', () => {
    const both = mergedDocument(laptop, phone);
    const [versions] = rivalVersions(both);
    const chosen = withChosen(both, versions!, versions!.rivals[0]!, '2027-03-02T08:00:00.000Z');
    expect(rivalVersions(chosen)).toEqual([]);
    for (const elsewhere of [laptop, phone, start, both]) {
      const merged = mergedDocument(elsewhere, chosen);
      expect(rivalVersions(merged)).toEqual([]);
      expect(merged.machines[0]!.note).toBe('by the window');
    }
  });
});
