/** A setup with a kept belt through a link: the other device reckons with the very same numbers, and keeps the belt under its id. */

import { describe, expect, it } from 'vitest';
import { EMPTY_DOCUMENT } from '../../../../shared/document.ts';
import { keptBeltOf, linkedBelt, withLinkedBelt } from '../../../../src/ui/state/linked-belt.ts';
import { setupFromHash, setupHref } from '../../../../src/ui/state/linked-setup.ts';
import { EMPTY_SETUP, understood } from '../../../../src/ui/state/span-setup.ts';
import { exampleDocument } from '../../../support/kept-example.ts';

const [roll] = exampleDocument.belts;
const PAGE = 'https://192.168.7.20:4443/app/?x=1#/listen';
const ENTERED = { ...EMPTY_SETUP, beltId: roll!.id, spanLength: '180', targetFrom: '6', targetTo: '9', ends: ['pulley', 'clip'] as const };

const brought = (href: string) => {
  const read = setupFromHash(new URL(href).hash);
  if ('kind' in read) throw new Error(read.why);
  return read;
};

describe('a setup in a link', () => {
  it('stands after the # of the page, wherever that is', () => {
    expect(setupHref(ENTERED, [], PAGE)).toMatch(/^https:\/\/192\.168\.7\.20:4443\/app\/#\/listen\/from\?v=1&/u);
  });

  it('brings a kept belt along, to the last digit', () => {
    const { entered, belt } = brought(setupHref(ENTERED, [roll!], PAGE)!);
    expect(understood(entered, [belt!]).setup).toEqual(understood(ENTERED, [roll!]).setup);
    expect(belt!.id).toBe(roll!.id);
  });

  it('tells its density as typed where the belt is not kept', () => {
    const own = { ...ENTERED, beltId: 'gone', linearDensity: '7.8 g/m' };
    expect(brought(setupHref(own, [], PAGE)!).entered).toMatchObject({ beltId: 'own', linearDensity: '7.8 g/m' });
  });

  it('says so where it would hold too much', () => {
    expect(
      setupHref({ ...ENTERED, linearDensity: '±'.repeat(120), toothPitch: '±'.repeat(120), tolerance: '±'.repeat(120) }, [roll!], PAGE),
    ).toBeUndefined();
  });

  it('refuses a belt that neither the catalogue nor the link has', () => {
    expect(setupFromHash('#/listen/from?v=1&belt=roll-9')).toMatchObject({ kind: 'link-fault', field: 'belt' });
  });
});

describe('a belt from a link', () => {
  it('is added once, under its id', () => {
    const belt = keptBeltOf(linkedBelt(roll!));
    const once = withLinkedBelt(EMPTY_DOCUMENT, belt);
    expect(once.belts.map(({ id }) => id)).toEqual([roll!.id]);
    expect(withLinkedBelt(once, belt).belts).toEqual(once.belts);
  });

  it('adds a value that differs to those that were there', () => {
    const document = { ...EMPTY_DOCUMENT, belts: [roll!] };
    const weighedAnew = keptBeltOf({ ...linkedBelt(roll!), density: [0.0077, 4e-5, 'weighed', '2027-04-01T08:00:00.000Z'] });
    const [joined] = withLinkedBelt(document, weighedAnew).belts;
    expect(joined!.linearDensityKgPerM.map(({ value }) => value)).toEqual([0.0078, 0.0079, 0.0077]);
    expect(joined!.name).toBe(roll!.name);
  });
});
