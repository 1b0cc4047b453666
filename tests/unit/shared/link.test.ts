/** Setups as links: what goes in comes out to the letter; what is cut, old or hostile is refused with the field that is at fault. */

import fc from 'fast-check';
import { describe, expect, expectTypeOf, it } from 'vitest';
import { type LinkedSetup, LONGEST_LINK, linkOf, readLink } from '../../../shared/link.ts';
import type { EnteredSetup } from '../../../src/ports.ts';

const SETUP: LinkedSetup = {
  beltId: 'own',
  linearDensity: '7.74 g/m ± 0.06 g/m',
  toothPitch: '2 mm',
  bendingStiffness: '',
  spanLength: '7,1 in',
  spanKnownTo: '0.5',
  targetFrom: '6',
  targetTo: '9',
  forceUnit: 'N',
  tolerance: '10 %',
  ends: ['pulley', 'clip'],
  lie: 'flat',
  keptBelt: {
    id: 'roll-1',
    name: 'The roll in the drawer',
    pitch: 0.002,
    density: [0.00781234567890123, 3.1e-5, 'weighed', '2027-01-02T03:04:05.678Z'],
  },
  weighing: { beltId: 'own', kind: 'piece', length: '500', mass: '3.87', scaleStep: '0.01', density: '7.74 g/m ± 0.06 g/m' },
};

const typed = fc.string({ maxLength: 40, unit: fc.constantFrom(...'0123456789.,±% &=~?#+/mgNé²"<>\\\''.split('')) });
const anySetup = fc.record<LinkedSetup>({
  beltId: fc.constantFrom('own', 'curvilinear-2mm-6mm'),
  linearDensity: typed,
  toothPitch: typed,
  bendingStiffness: typed,
  spanLength: typed,
  spanKnownTo: typed,
  targetFrom: typed,
  targetTo: typed,
  forceUnit: fc.constantFrom('N', 'lbf'),
  tolerance: typed,
  ends: fc.tuple(fc.constantFrom('unknown', 'pulley'), fc.constantFrom('idler', 'clip')),
  lie: fc.constantFrom('edge', 'flat'),
  weighing: fc.record({
    beltId: typed,
    kind: fc.constantFrom('piece', 'loop'),
    length: typed,
    mass: typed,
    scaleStep: typed,
    density: typed,
  }),
});

describe('a link', () => {
  it('brings every field back to the letter', () => {
    expect(readLink(linkOf(SETUP))).toEqual(SETUP);
    fc.assert(
      fc.property(anySetup, (setup) => {
        const link = linkOf(setup);
        fc.pre(link.length <= LONGEST_LINK);
        expect(readLink(link)).toEqual(setup);
      }),
      { numRuns: 300, seed: 3 },
    );
  });

  it('is short and readable where little was told, and holds nothing that ends an address', () => {
    const { lie: _, weighing: __, keptBelt: ___, ...plain } = SETUP;
    const link = linkOf({
      ...plain,
      linearDensity: '',
      toothPitch: '',
      spanLength: '180',
      spanKnownTo: '1',
      tolerance: '',
      ends: ['unknown', 'unknown'],
    });
    expect(link).toBe('v=1&span=180&from=6&to=9');
    expect(linkOf(SETUP)).toMatch(/^[\w.~%&=,*'()!-]+$/u);
  });

  it('has the fields of a setup as it is typed, no more and no fewer', () => {
    expectTypeOf<LinkedSetup>().toExtend<EnteredSetup>();
    expectTypeOf<Exclude<keyof EnteredSetup, 'on'>>().toEqualTypeOf<Exclude<keyof LinkedSetup, 'keptBelt'>>();
  });

  it.each([
    ['', 'empty', undefined],
    ['v=1&span=180&password=x', 'unknown-field', 'password'],
    ['v=1&__proto__=x', 'unknown-field', '__proto__'],
    ['v=1&constructor=x', 'unknown-field', 'constructor'],
    ['v=1&<b>=x', 'unknown-field', '?b?'],
    ['v=1&span=180&span=90', 'field-twice', 'span'],
    ['v=1&span=%zz', 'bad-encoding', 'span'],
    ['v=1&span=%ff', 'bad-encoding', 'span'],
    ['v=1&span=1%0a2', 'bad-field', 'span'],
    ['v=1&span=%e2%80%ae1', 'bad-field', undefined],
    [`v=1&span=${'9'.repeat(121)}`, 'bad-field', 'span'],
    ['v=1&ends=pulley', 'bad-field', 'ends'],
    ['v=1&ends=pulley,clip,clip', 'bad-field', 'ends'],
    ['v=1&lie=upright', 'bad-field', 'lie'],
    ['v=1&weighed=piece~1', 'bad-field', 'weighed'],
    ['v=1&own=roll', 'bad-field', 'own'],
    [
      'v=1&own=%7B%22id%22%3A%22a%22%2C%22name%22%3A%22b%22%2C%22density%22%3A%5B-1%2C0%2C%22told%22%2C%222027-01-02T03%3A04%3A05Z%22%5D%7D',
      'bad-field',
      'own',
    ],
    ['v=1&own=%7B%22id%22%3A%22a%22%2C%22name%22%3A%22b%22%2C%22__proto__%22%3A1%7D', 'bad-field', 'own'],
    ['v=2&span=180', 'other-version', undefined],
    ['span=180', 'other-version', undefined],
    [`v=1&span=${'%20'.repeat(700)}`, 'too-long', undefined],
  ])('is refused where it is not ours: %s', (query, why, field) => {
    const read = readLink(query);
    expect(read).toMatchObject(field === undefined ? { kind: 'link-fault', why } : { kind: 'link-fault', why, field });
  });

  it('never throws, whatever comes', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (query) => {
        readLink(query);
        readLink(`v=1&${query}`);
      }),
      { numRuns: 500, seed: 4 },
    );
  });
});
