import { html } from 'lit';
import { describe, expect, it } from 'vitest';
import { type Place, places, shownAt } from '../../../src/ui/places.ts';
import { hrefOf, routeOf } from '../../../src/ui/route.ts';

const page = (pattern: string) => ({ pattern, draw: () => html`` });
const two: readonly [Place, ...Place[]] = [
  { id: 'listen', pages: [page('far'), page('')] },
  { id: 'machines', pages: [page(':machine/plan'), page(':machine/adjust/:pair'), page(':machine?')] },
];
const shown = (hash: string) => {
  const { place, page: found, params } = shownAt(routeOf(hash), two);
  return { place: place.id, pattern: found.pattern, ...params };
};

describe('addresses', () => {
  it('says place, parts and questions', () => {
    const { place, rest, query } = routeOf('#/machines/a%20b/plan?span=x%2Fy');
    expect([place, rest, query.get('span')]).toEqual(['machines', ['a b', 'plan'], 'x/y']);
  });

  it('comes back from a link of any text', () => {
    for (const text of ['a/b', 'ä ö?#', '%', '..']) expect(routeOf(hrefOf('machines', text)).rest).toEqual([text]);
  });

  it('takes a broken encoding as it stands', () => {
    expect(routeOf('#/machines/%E0%A4%A').rest).toEqual(['%E0%A4%A']);
  });
});

describe('what an address shows', () => {
  it.each([
    ['', { place: 'listen', pattern: '' }],
    ['#/listen/far', { place: 'listen', pattern: 'far' }],
    ['#/machines', { place: 'machines', pattern: ':machine?', machine: undefined }],
    ['#/machines/m1', { place: 'machines', pattern: ':machine?', machine: 'm1' }],
    ['#/machines/m1/plan', { place: 'machines', pattern: ':machine/plan', machine: 'm1' }],
    ['#/machines/m1/adjust/p', { place: 'machines', pattern: ':machine/adjust/:pair', machine: 'm1', pair: 'p' }],
    // What is not there leads to the nearest thing that is.
    ['#/machines/m1/nowhere', { place: 'machines', pattern: ':machine?' }],
    ['#/listen/nowhere', { place: 'listen', pattern: '' }],
    ['#/nowhere/far', { place: 'listen', pattern: '' }],
  ])('%s', (hash, wanted) => {
    expect(shown(hash)).toEqual(wanted);
  });

  it('begins with Listen', () => {
    expect(places[0].id).toBe('listen');
  });
});
