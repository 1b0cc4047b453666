/** Labels get out of one another's way, the weightier first, and stay inside the drawing. */

import { expect, it } from 'vitest';
import { labelPlaces } from '../../../../src/ui/parts/label-places.ts';

const room = { xPx: 0, yPx: 0, widthPx: 100, heightPx: 40 };
const at = (text: string, xPx: number, yPx = 0) => ({ text, xPx, yPx, widthPx: 40, heightPx: 16 });

it('the first label gets its best place, the next one its second', () => {
  const [first, second] = labelPlaces([[at('a', 10)], [at('b', 30), at('b', 50)]], room);
  expect(first).toEqual(at('a', 10));
  expect(second).toEqual(at('b', 50));
});

it('a label without room is left out', () => {
  expect(labelPlaces([[at('a', 10)], [at('b', 30)], [at('c', 70)]], room)).toEqual([at('a', 10), undefined, undefined]);
});

it('no label covers what is taken', () => {
  expect(labelPlaces([[at('a', 10), at('a', 10, 20)]], room, [at('', 20, -4)])).toEqual([at('a', 10, 20)]);
});
