/** A small share of the long run of hostile input: the same cases, so that what it finds can be found again by kind and number. */
import { describe, expect, it } from 'vitest';
import { countsOf, faultOf, KIND_NAMES } from '../fuzz/run.ts';
import { notANumberIn } from '../fuzz/wanted.ts';

const SEED = 1;
const counts = countsOf(520);

describe('hostile input', () => {
  it.each(KIND_NAMES)('%s: is answered or refused by name', (name) => {
    const faults = Array.from({ length: counts[name] }, (_, number) => faultOf(name, SEED, number)).filter((fault) => fault !== undefined);
    expect(counts[name]).toBeGreaterThan(0);
    expect(faults).toEqual([]);
  });

  it('would notice what is no number, wherever it stands', () => {
    expect(notANumberIn({ a: [1, { b: Number.NaN }] })).toBe('.a.1.b');
    expect(notANumberIn({ samples: Float32Array.of(0, Number.NaN) })).toBe('.samples[1]');
    expect(notANumberIn(new Map([['x', Number.NaN]]))).toBe('.x');
    expect(notANumberIn({ a: 1, b: 'NaN', c: Number.POSITIVE_INFINITY })).toBeUndefined();
  });
});
