import { expect, test } from 'vitest';
import { readStretch, stretchTable } from '../../../../src/core/force/stretch-table.ts';
import { stretchAt } from '../../../../src/core/vibration/beam-sensitivity.ts';

const empty = () => ({ lnStretch: 0, perLnSlackness: 0, perFixity1: 0, perFixity2: 0 });

test.each([[[0, 0]], [[1, 1]], [[0.125, 0.875]], [[0.5, 1]]] as const)('ends %s: between its rows the table is the beam', (fixity) => {
  const table = stretchTable(fixity);
  for (let slackness = 2e-4; slackness < 60; slackness *= 1.37) {
    const read = readStretch(table, Math.log(slackness), empty());
    const solved = stretchAt({ slackness, fixity, number: 1 });
    expect(Math.abs(read.lnStretch - solved.lnStretch)).toBeLessThan(2e-6);
    expect(Math.abs(read.perLnSlackness - solved.perLnSlackness)).toBeLessThan(2e-3);
    // The slopes by fixity only spread the cells.
    expect(Math.abs(read.perFixity1 - solved.perFixity[0])).toBeLessThan(5e-3 * (1 + solved.perFixity[0]));
    expect(Math.abs(read.perFixity2 - solved.perFixity[1])).toBeLessThan(5e-3 * (1 + solved.perFixity[1]));
  }
});

test('below its first row the end correction shrinks with slackness, above its last the beam’s own law goes on', () => {
  const table = stretchTable([1, 1]);
  for (const slackness of [1e-6, 3e-5, 300, 2000]) {
    const read = readStretch(table, Math.log(slackness), empty());
    const solved = stretchAt({ slackness, fixity: [1, 1], number: 1 });
    expect(Math.abs(read.lnStretch - solved.lnStretch)).toBeLessThan(1e-4 * Math.max(solved.lnStretch, 1e-3));
  }
  expect(readStretch(table, -Infinity, empty())).toEqual(empty());
});
