/** Laws of the merge: devices that change, delete and exchange in any order come to the same, and no version is lost unseen. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differences, mergedVersions, settled, sortedOut } from '../../src/core/logbook/merge.ts';
import { changed, contentText, type Item, stampOf, withAncestry } from '../../src/core/logbook/versions.ts';

interface Kept extends Item {
  readonly text: string;
  readonly deletedAt?: string | undefined;
}

const at = (minute: number): string => new Date(Date.UTC(2027, 2, 1, 8, minute)).toISOString();

/** What three devices do one after another: make, change, delete, or take over what another one has. */
const deeds = fc.array(
  fc.record({
    device: fc.nat(2),
    what: fc.constantFrom('make', 'change', 'delete', 'merge', 'settle'),
    id: fc.constantFrom('a', 'b', 'c'),
    text: fc.string({ maxLength: 3 }),
    minute: fc.nat(5), // clocks differ and go back
    from: fc.nat(2),
  }),
  { maxLength: 40 },
);

type Deed = typeof deeds extends fc.Arbitrary<infer T> ? (T extends readonly (infer One)[] ? One : never) : never;

function lived(done: readonly Deed[]): readonly (readonly Kept[])[] {
  const devices: (readonly Kept[])[] = [[], [], []];
  for (const { device, what, id, text, minute, from } of done) {
    const mine = devices[device]!;
    const { items, conflicts } = sortedOut(mine);
    const known = items.find((item) => item.id === id);
    const replace = (next: Kept) => {
      devices[device] = mergedVersions(mine, [next]);
    };
    if (what === 'make' && !known) replace({ id, changedAt: at(minute), text });
    if (what === 'change' && known) replace(changed(known, { text }, at(minute)));
    if (what === 'delete' && known) replace(changed(known, { deletedAt: at(minute) }, at(minute)));
    if (what === 'merge') devices[device] = mergedVersions(mine, devices[from]!);
    const conflict = conflicts.find((one) => one.id === id);
    if (what === 'settle' && conflict) replace(settled(conflict, conflict.rivals[0]!, at(minute)));
  }
  return devices;
}

describe('merge', () => {
  it('is commutative, associative and idempotent', () => {
    fc.assert(
      fc.property(deeds, (done) => {
        const [a, b, c] = lived(done) as [readonly Kept[], readonly Kept[], readonly Kept[]];
        expect(mergedVersions(a, b)).toEqual(mergedVersions(b, a));
        expect(mergedVersions(mergedVersions(a, b), c)).toEqual(mergedVersions(a, mergedVersions(b, c)));
        const once = mergedVersions(a, b);
        expect(mergedVersions(once, once)).toEqual(once);
        expect(mergedVersions(once, b)).toEqual(once);
      }),
      { numRuns: 500, seed: 7 },
    );
  });

  it('loses no version: each is there, or one that was made from it is', () => {
    fc.assert(
      fc.property(deeds, (done) => {
        const [a, b] = lived(done) as [readonly Kept[], readonly Kept[]];
        const merged = mergedVersions(a, b);
        for (const version of [...a, ...b]) {
          const there = merged.filter(({ id }) => id === version.id);
          const kept = there.some((one) => contentText(one) === contentText(version));
          expect(kept || there.some(({ earlier }) => earlier?.includes(stampOf(version)))).toBe(true);
        }
      }),
      { numRuns: 500, seed: 11 },
    );
  });

  it('gives every device the same version in use and the same conflicts', () => {
    fc.assert(
      fc.property(deeds, (done) => {
        const [a, b, c] = lived(done) as [readonly Kept[], readonly Kept[], readonly Kept[]];
        const one = sortedOut(mergedVersions(a, mergedVersions(b, c)));
        const other = sortedOut(mergedVersions(c, a, b));
        expect(one).toEqual(other);
        expect(new Set(one.items.map(({ id }) => id)).size).toBe(one.items.length);
      }),
      { numRuns: 300, seed: 13 },
    );
  });

  it('keeps both where two changed one item, and ends the conflict for all once somebody chose', () => {
    const first: Kept = { id: 'x', changedAt: at(0), text: 'as fitted' };
    const laptop = changed(first, { text: 'from the laptop' }, at(3));
    const phone = changed(first, { text: 'from the phone' }, at(2));
    const { items, conflicts } = sortedOut(mergedVersions([laptop], [phone]));
    expect(items).toEqual([laptop]);
    expect(conflicts).toEqual([{ id: 'x', used: laptop, rivals: [phone] }]);
    expect(differences(laptop, phone)).toEqual([{ path: 'text', one: 'from the laptop', other: 'from the phone' }]);
    const chosen = settled(conflicts[0]!, phone, at(4));
    const after = sortedOut(mergedVersions([chosen], [laptop], [phone], [first]));
    expect(after.conflicts).toEqual([]);
    expect(after.items[0]?.text).toBe('from the phone');
  });

  it('takes a later version for what it is, whatever the clocks say', () => {
    const first: Kept = { id: 'x', changedAt: at(30), text: 'one' };
    const later = changed(first, { text: 'two' }, at(5)); // a clock that goes wrong
    expect(mergedVersions([first], [later])).toEqual([later]);
    expect(mergedVersions([later], [first])).toEqual([later]);
  });

  it('finds out by itself which version a change was made from', () => {
    const before: readonly Kept[] = [{ id: 'x', changedAt: at(0), text: 'one' }];
    const after = withAncestry(before, [
      { id: 'x', changedAt: at(1), text: 'two' },
      { id: 'y', changedAt: at(1), text: 'new' },
    ]);
    expect(sortedOut(mergedVersions(before, after)).conflicts).toEqual([]);
    expect(withAncestry(after, after)).toEqual(after);
  });
});
