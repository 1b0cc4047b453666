import { describe, expect, test } from 'vitest';
import { knownSpan } from '../../../../src/core/force/known-span.ts';
import type { BudgetInput, BudgetLine, ForceN } from '../../../../src/core/outcome.ts';
import type { BeltKnowledge, SpanSetup } from '../../../../src/core/setup.ts';
import { inputReasons } from '../../../../src/core/verdict/input-reasons.ts';
import { CATALOGUE_BELT, spanOf, WEIGHED_BELT } from '../../../support/heard.ts';

/** Forces by how wide their interval is against the usual tolerance of a fifth. */
const within: ForceN = { value: 10, low: 9, high: 11, u95: 1 };
const missed: ForceN = { value: 10, low: 7, high: 13, u95: 3 };
const hopeless: ForceN = { value: 10, low: 4, high: 16, u95: 6 };
const open: ForceN = { value: 1, high: 3 };

const sharesOf = (shares: Partial<Record<BudgetInput, number>>): BudgetLine[] =>
  Object.entries(shares).map(([input, share]) => ({ input: input as BudgetInput, share, forceUN: Math.sqrt(share) }));

const BENDING = sharesOf({ 'span length': 0.2, 'linear density': 0.3, 'end fixity': 0.28, 'bending stiffness': 0.22 });
const LENGTH = sharesOf({ 'span length': 0.6, 'linear density': 0.1, 'end fixity': 0.2, 'bending stiffness': 0.1 });
const DENSITY = sharesOf({ 'span length': 0.2, 'linear density': 0.6, 'end fixity': 0.1, 'bending stiffness': 0.1 });

interface Given {
  readonly setup?: SpanSetup;
  readonly forceN?: ForceN;
  readonly budget?: BudgetLine[];
}

const judged = ({ setup = spanOf(0.15), forceN, budget = LENGTH }: Given) =>
  inputReasons({
    setup,
    span: knownSpan(setup)!,
    partials: [{ number: 1, relativeU: 0.001 }],
    sharedRelativeU: 0.002,
    forceN,
    budget: forceN ? budget : [],
  });
const brief = (given: Given) => judged(given).map(({ id, holdsAt }) => `${id} ${holdsAt}`);
const known = (value: number) => ({ kind: 'known', value: { value, standardUncertainty: 0.02 } }) as const;
const KNOWN_STIFFNESS: BeltKnowledge = {
  ...WEIGHED_BELT,
  bendingStiffnessNm2: { kind: 'known', value: { value: 1.2e-4, standardUncertainty: 2e-6 } },
};

describe('an interval within the tolerance', () => {
  test('on a long span of a weighed belt gives nothing to say', () => {
    expect(judged({ forceN: within })).toEqual([]);
  });

  test.each([
    ['2 mm', 0.002, 0.0399, 0.0401],
    ['3 mm', 0.003, 0.0599, 0.0601],
    ['unknown, read as 2 mm', undefined, 0.0399, 0.0401],
  ])('is still doubted on less than 20 tooth pitches: %s', (_, toothPitchM, shortM, longM) => {
    const setup = (spanLengthM: number) => spanOf(spanLengthM, { ...WEIGHED_BELT, toothPitchM });
    expect(brief({ setup: setup(shortM), forceN: within })).toEqual(['span-too-short doubtful']);
    expect(judged({ setup: setup(longM), forceN: within })).toEqual([]);
  });

  test('is doubted for a density that nobody weighed, which tells its uncertainty', () => {
    const setup = spanOf(0.15, CATALOGUE_BELT);
    expect(judged({ setup, forceN: within })).toEqual([
      { about: 'inputs', holdsAt: 'doubtful', id: 'density-from-catalogue', relativeUncertainty: expect.closeTo(0.1, 12) },
    ]);
  });

  test('follows the tolerance that was told', () => {
    expect(judged({ setup: spanOf(0.15, WEIGHED_BELT, { toleranceRelative: 0.05 }), forceN: within })).not.toEqual([]);
    expect(judged({ setup: spanOf(0.15, WEIGHED_BELT, { toleranceRelative: 0.4 }), forceN: missed })).toEqual([]);
  });
});

describe('an interval that misses the tolerance', () => {
  test('names the input with the largest share, as bad as the interval is', () => {
    const figures = { about: 'inputs', id: 'input-decides', input: 'span length', share: 0.6 };
    expect(judged({ forceN: missed })).toEqual([{ ...figures, holdsAt: 'doubtful' }]);
    expect(judged({ forceN: hopeless })).toEqual([{ ...figures, holdsAt: 'unusable' }]);
  });

  test('weighs ends and stiffness as one cause, even where neither alone leads', () => {
    expect(judged({ forceN: missed, budget: BENDING })).toMatchObject([
      { id: 'span-too-short', spanLengthM: 0.15, holdsAt: 'doubtful' },
      { id: 'ends-and-stiffness-unknown', share: 0.5, holdsAt: 'doubtful' },
    ]);
  });

  test('asks for no better knowledge of ends and stiffness that are known', () => {
    const ends = [known(0.5), known(0.5)] as const;
    expect(brief({ setup: spanOf(0.15, KNOWN_STIFFNESS, { ends }), forceN: missed, budget: BENDING })).toEqual(['span-too-short doubtful']);
    for (const setup of [spanOf(0.15, WEIGHED_BELT, { ends }), spanOf(0.15, KNOWN_STIFFNESS)]) {
      expect(brief({ setup, forceN: missed, budget: BENDING })).toContain('ends-and-stiffness-unknown doubtful');
    }
  });

  test('of a span too short for the beam says so besides the input that decides', () => {
    expect(brief({ setup: spanOf(0.038), forceN: missed })).toEqual(['span-too-short doubtful', 'input-decides doubtful']);
  });

  test('sends to the scale, not to the budget, where the catalogue’s density decides', () => {
    const catalogue = spanOf(0.15, CATALOGUE_BELT);
    expect(brief({ setup: catalogue, forceN: hopeless, budget: DENSITY })).toEqual(['density-from-catalogue unusable']);
    expect(brief({ forceN: hopeless, budget: DENSITY })).toEqual(['input-decides unusable']);
    // Something else decides: the density is then a doubt beside it, no worse than ever.
    expect(brief({ setup: catalogue, forceN: hopeless })).toEqual(['input-decides unusable', 'density-from-catalogue doubtful']);
  });
});

describe('a slack belt', () => {
  // sqrt(EI/(T L²)) of EI = 1.2e-4 N m² on 50 mm is 0.1 at T = 4.8 N.
  const setup = spanOf(0.05, KNOWN_STIFFNESS);
  const at = (value: number): ForceN => ({ value, low: 0.5 * value, high: 1.5 * value, u95: 0.5 * value });

  test('is one that its stiffness holds as much as the force does', () => {
    expect(brief({ setup, forceN: at(4.6), budget: BENDING })[0]).toBe('belt-too-slack unusable');
    expect(brief({ setup, forceN: at(5), budget: BENDING })[0]).toBe('span-too-short unusable');
  });

  test('is one whose force may be none at all; how high it may be is told', () => {
    expect(judged({ forceN: open, budget: LENGTH })).toMatchObject([
      { id: 'belt-too-slack', forceHighN: 3, holdsAt: 'unusable' },
      { id: 'span-too-short' },
      { id: 'ends-and-stiffness-unknown' },
    ]);
  });

  test('is one that rings too low for any force, and then nothing is said of rated and expected forces', () => {
    const reasons = judged({ setup: spanOf(0.15, CATALOGUE_BELT, { expectedForceN: { lowN: 5, highN: 10 } }) });
    expect(reasons.map(({ id }) => id)).toEqual(['belt-too-slack', 'span-too-short', 'density-from-catalogue']);
    expect(reasons[0]).toEqual({ about: 'inputs', holdsAt: 'unusable', id: 'belt-too-slack', forceHighN: undefined });
    expect(reasons[1]).toMatchObject({ trustedFromM: undefined });
  });
});

describe('the length from which a span could be trusted', () => {
  const shortSpan = (setup: SpanSetup, forceN: ForceN) => {
    const reason = judged({ setup, forceN, budget: BENDING }).find(({ id }) => id === 'span-too-short');
    if (reason?.id !== 'span-too-short') throw new Error('no such reason');
    return reason;
  };

  test('is longer than the span in hand, and never below 20 pitches', () => {
    const { trustedFromM, onceWeighed } = shortSpan(spanOf(0.05), missed);
    expect(trustedFromM).toBeGreaterThan(0.05);
    expect(onceWeighed).toBe(false);
    expect(shortSpan(spanOf(0.03, { ...KNOWN_STIFFNESS, toothPitchM: 0.005 }), missed).trustedFromM).toBeGreaterThanOrEqual(0.1);
  });

  test('of a belt from the catalogue is told on condition that it is weighed', () => {
    const weighed = shortSpan(spanOf(0.05), missed);
    const { trustedFromM, onceWeighed } = shortSpan(spanOf(0.05, CATALOGUE_BELT), missed);
    expect(onceWeighed).toBe(true);
    expect(trustedFromM).toBeCloseTo(weighed.trustedFromM!, 9); // weighed to the usual 2 %, as the other belt was
  });

  test('of a belt that its owner stated too vaguely does not exist', () => {
    const vague = { ...CATALOGUE_BELT, densityFrom: 'stated' } as const;
    expect(shortSpan(spanOf(0.05, vague), missed)).toMatchObject({ trustedFromM: undefined, onceWeighed: false });
  });
});

describe('forces that belt or owner object to', () => {
  const rated = (ratedForceN?: number) => spanOf(0.15, { ...WEIGHED_BELT, ratedForceN });
  const expected = (lowN: number, highN: number) => spanOf(0.15, WEIGHED_BELT, { expectedForceN: { lowN, highN } });

  test('above the rated force, by the value alone', () => {
    expect(judged({ setup: rated(9.9), forceN: within })).toEqual([
      { about: 'inputs', holdsAt: 'doubtful', id: 'over-rated-force', forceN: 10, ratedForceN: 9.9 },
    ]);
    expect(judged({ setup: rated(10), forceN: within })).toEqual([]);
    expect(judged({ setup: rated(), forceN: within })).toEqual([]);
  });

  test.each([
    ['above all of it', 11.5, 15, true],
    ['below all of it', 2, 8.5, true],
    ['overlapping its low end', 5, 9.5, false],
    ['overlapping its high end', 10.5, 20, false],
    ['inside it', 9.8, 10.2, false],
    ['touching it', 11, 20, false],
  ])('expected %s', (_, lowN, highN, objects) => {
    const reasons = judged({ setup: expected(lowN, highN), forceN: within });
    expect(reasons).toEqual(objects ? [{ about: 'inputs', holdsAt: 'doubtful', id: 'outside-expected', forceN: 10 }] : []);
  });

  test('an interval without a lower end reaches down to nothing', () => {
    const ids = (setup: SpanSetup) => judged({ setup, forceN: open }).map(({ id }) => id);
    expect(ids(expected(0.01, 0.1))).not.toContain('outside-expected');
    expect(ids(expected(3.1, 5))).toContain('outside-expected');
  });
});
