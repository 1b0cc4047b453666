import { expect, test } from 'vitest';
import { heardPartials } from '../../../../src/core/force/heard-partials.ts';
import { heardPluck } from '../../../support/heard.ts';

test('partials 1 to 4 of one pluck, on the fundamental of the reading', () => {
  const found = heardPartials([heardPluck(120, { partialNumbers: [1, 2, 4, 5] })], 121, 0.001);
  expect(found.map(({ number }) => number)).toEqual([1, 2, 4]);
  for (const { number, frequencyHz } of found) expect(frequencyHz).toBeCloseTo(121 * number, 9);
});

test('several plucks are surer of a ratio than one, unless they scatter', () => {
  const one = heardPartials([heardPluck(120)], 120, 0.001)[1]!;
  const three = heardPartials([heardPluck(120), heardPluck(121), heardPluck(119)], 120, 0.001)[1]!;
  expect(three.relativeU).toBeLessThan(0.6 * one.relativeU);
  const odd = heardPluck(120);
  const off = { ...odd, partials: odd.partials.map((p) => (p.number === 2 ? { ...p, frequencyHz: { ...p.frequencyHz, value: 252 } } : p)) };
  expect(heardPartials([heardPluck(120), off], 120, 0.001)[1]!.relativeU).toBeGreaterThan(0.02);
});

test('a glide widens all but the first, which alone was taken to small amplitude', () => {
  const [first, second] = heardPartials([heardPluck(120, { glideRelative: 0.006 })], 120, 0.001);
  expect(first!.relativeU).toBeLessThan(0.0015);
  expect(second!.relativeU).toBeGreaterThan(0.006);
});

test('a first partial far below the others is less sure than the fundamental that they tell', () => {
  const pluck = heardPluck(120);
  const faint = { ...pluck, partials: pluck.partials.map((p) => (p.number === 1 ? { ...p, levelDbfs: p.levelDbfs - 30 } : p)) };
  const uOfFirst = (sound: typeof pluck) => heardPartials([sound], 120, 0.001)[0]!.relativeU;
  expect(uOfFirst(faint)).toBeGreaterThan(10 * uOfFirst(pluck));
});

test('a missing first partial stays missing; where none of four was heard the fundamental stands in', () => {
  expect(heardPartials([heardPluck(120, { partialNumbers: [2, 3] })], 120, 0.001).map(({ number }) => number)).toEqual([2, 3]);
  const [only, ...others] = heardPartials([heardPluck(120, { partialNumbers: [5, 6] })], 120, 0.002);
  expect(only).toEqual({ number: 1, frequencyHz: 120, relativeU: 0.002 });
  expect(others).toEqual([]);
});

test('a partial of which next to nothing is known counts as not heard', () => {
  const pluck = heardPluck(120);
  const vague = {
    ...pluck,
    partials: pluck.partials.map((p) => (p.number === 2 ? { ...p, frequencyHz: { value: 240, standardUncertainty: 1e15 } } : p)),
  };
  expect(heardPartials([vague], 120, 0.001).map(({ number }) => number)).toEqual([1, 3]);
});
