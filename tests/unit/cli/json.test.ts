/** The JSON contract: every name, their order, and nothing else. */
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { jsonTake } from '../../../src/cli/json.ts';
import type { Measurement, PluckReading, Reading } from '../../../src/core/outcome.ts';
import { faultSchema, takeSchema } from '../../support/json-contract.ts';

const pluck: PluckReading = {
  sound: {
    startS: 0.3123456789,
    frequencyHz: { value: 113.2, standardUncertainty: 0.15 },
    partials: [{ number: 1, frequencyHz: { value: 113.23456789, standardUncertainty: 0.1 }, levelDbfs: -12.1, decayS: 0.21 }],
    evidence: {
      cyclesToDecay: 24,
      levelOverBackgroundDb: 40,
      clippedShare: 0,
      glideRelative: 0.001,
      leadOverRival: 30,
      foreignHz: [],
      ownShare: 0.99,
      firstPartialHeard: true,
      bandwidthHz: 24000,
    },
  },
  frequencyHz: { value: 113.23456789, standardUncertainty: 0.15, u95: 0.3 },
  forceN: { value: 9.7, low: 9.1, high: 10.3, u95: 0.6 },
  grade: 'doubtful',
  soundGrade: 'trusted',
  reasons: [{ about: 'inputs', holdsAt: 'doubtful', id: 'density-from-catalogue', relativeUncertainty: 0.1 }],
  used: true,
};

const reading: Reading = {
  kind: 'reading',
  frequencyHz: { value: 113.1, standardUncertainty: 0.1, u95: 0.2 },
  forceN: { value: 9.7, low: 9.2, high: 10.2, u95: 0.5 },
  grade: 'trusted',
  soundGrade: 'trusted',
  reasons: [],
  pluckCount: 1,
  budget: [
    { input: 'span length', forceUN: 0.16, share: 0.41 },
    { input: 'linear density', forceUN: 0.19, share: 0.59 },
  ],
};

const measurement: Measurement = { sampleRateHz: 48000, durationS: 2.1, plucks: [pluck], outcome: reading };
const text = (take: Partial<Parameters<typeof jsonTake>[0]>) =>
  JSON.stringify(jsonTake({ file: 'a.wav', measurement, notes: [], ...take }));

describe('jsonTake', () => {
  it('writes the names in the order that is promised', () => {
    const { reasons, ...first } = jsonTake({ file: 'a.wav', measurement, notes: [] }).plucks[0]!;
    expect(Object.keys(JSON.parse(text({})))).toEqual(['file', 'sampleRateHz', 'durationS', 'plucks', 'reading']);
    expect(text({}).replace(JSON.stringify(reasons), '[]')).toBe(
      '{"file":"a.wav","sampleRateHz":48000,"durationS":2.1,' +
        '"plucks":[{"startS":0.312346,"frequencyHz":113.235,"frequencyU95Hz":0.3,"forceN":9.7,"forceU95N":0.6,"forceLowN":9.1,"forceHighN":10.3,' +
        '"grade":"doubtful","soundGrade":"trusted","reasons":[],' +
        '"partials":[{"number":1,"frequencyHz":113.235,"levelDb":-12.1,"decayS":0.21}]}],' +
        '"reading":{"frequencyHz":113.1,"frequencyU95Hz":0.2,"forceN":9.7,"forceU95N":0.5,"forceLowN":9.2,"forceHighN":10.2,' +
        '"grade":"trusted","soundGrade":"trusted","reasons":[],' +
        '"budget":[{"input":"span length","share":0.41,"forceUN":0.16},{"input":"linear density","share":0.59,"forceUN":0.19}]}}',
    );
    expect(first.forceN).toBe(9.7);
  });

  it('meets its schema with reasons in words', () => {
    const take = takeSchema.parse(JSON.parse(text({ notes: ['channel 2 of 2 used'] })));
    expect(take.plucks[0]!.reasons[0]!.id).toBe('density-from-catalogue');
    expect(take.plucks[0]!.reasons[0]!.text).not.toBe(take.plucks[0]!.reasons[0]!.remedy);
    expect(take.notes).toEqual(['channel 2 of 2 used']);
  });

  it('writes null where there is no force, and where a bound is missing', () => {
    const noForce = takeSchema.parse(
      JSON.parse(text({ measurement: { ...measurement, outcome: { ...reading, forceN: undefined, budget: [] } } })),
    );
    expect(noForce.reading).toMatchObject({ forceN: null, forceU95N: null, forceLowN: null, forceHighN: null, frequencyHz: 113.1 });
    const openBelow = { ...reading, forceN: { value: 3, high: 5 }, grade: 'unusable' as const };
    expect(JSON.parse(text({ measurement: { ...measurement, outcome: openBelow } })).reading).toMatchObject({
      forceN: 3,
      forceU95N: null,
      forceLowN: null,
      forceHighN: 5,
    });
  });

  it('says why nothing was heard', () => {
    const nothing = text({ measurement: { ...measurement, plucks: [], outcome: { kind: 'nothing', why: 'no-onset' } } });
    const take = takeSchema.parse(JSON.parse(nothing));
    expect(nothing).toContain('"plucks":[],"reading":null,"nothing":{"id":"no-onset","text":"');
    expect(take.nothing!.text).toMatch(/\.$/);
  });

  it('never writes a number that is none', () => {
    const broken = { ...measurement, outcome: { ...reading, forceN: { value: Number.NaN } } };
    expect(() => text({ measurement: broken })).toThrow(RangeError);
  });

  it('has a fault of exactly two names', () => {
    expect(faultSchema.safeParse({ file: 'a.wav', error: 'There is no such file.' }).success).toBe(true);
    expect(z.union([takeSchema, faultSchema]).safeParse({ file: 'a.wav', error: 'x', plucks: [] }).success).toBe(false);
  });
});
