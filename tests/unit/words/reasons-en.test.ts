import { describe, expect, test } from 'vitest';
import type { BudgetInput, NothingWhy, ReasonFigures, ReasonId } from '../../../src/core/outcome.ts';
import { numberFormatOf } from '../../../src/core/quantity.ts';
import { nothingText, reasonName, reasonRemedy, reasonSentence } from '../../../src/words/reasons-en.ts';

/** One of each, so that the compiler asks for a new one here too. */
const ONE_OF_EACH: { readonly [Id in ReasonId]: Extract<ReasonFigures, { id: Id }> } = {
  'span-too-short': { id: 'span-too-short', spanLengthM: 0.045, trustedFromM: 0.1184, onceWeighed: false },
  'belt-too-slack': { id: 'belt-too-slack', forceHighN: 5.73 },
  'too-few-cycles': { id: 'too-few-cycles', cycles: 3.6 },
  'touch-not-heard': { id: 'touch-not-heard' },
  'first-partial-not-heard': { id: 'first-partial-not-heard', frequencyHz: 58.2 },
  noisy: { id: 'noisy', levelOverBackgroundDb: 11.4 },
  clipped: { id: 'clipped', clippedShare: 0.04 },
  'hum-on-partial': { id: 'hum-on-partial', partialNumber: 2, humHz: 100 },
  'tone-on-partial': { id: 'tone-on-partial', partialNumber: 1, toneHz: 117.6 },
  'octave-not-certain': { id: 'octave-not-certain', frequencyHz: 118.4, rivalHz: 59.2 },
  'not-one-span': { id: 'not-one-span', ownShare: 0.4 },
  'rings-too-long': { id: 'rings-too-long', cycles: 180 },
  'span-sags': { id: 'span-sags', riseRelative: 0.12 },
  'not-heard-here': { id: 'not-heard-here' },
  'partials-do-not-fit': { id: 'partials-do-not-fit', partialNumbers: [3] },
  'other-span-rings': { id: 'other-span-rings', otherHz: 131.3 },
  'plucked-too-hard': { id: 'plucked-too-hard', glideRelative: 0.041 },
  'plucks-disagree': { id: 'plucks-disagree', pluckNumber: 3, differenceRelative: 0.061, leftOut: true },
  'pluck-left-out': { id: 'pluck-left-out', pluckNumber: 2, because: 'clipped' },
  'frequency-not-sharp': { id: 'frequency-not-sharp', relativeU95: 0.12 },
  'over-rated-force': { id: 'over-rated-force', forceN: 31.2, ratedForceN: 26.2 },
  'density-from-catalogue': { id: 'density-from-catalogue', relativeUncertainty: 0.1 },
  'ends-and-stiffness-unknown': { id: 'ends-and-stiffness-unknown', share: 0.93 },
  'input-decides': { id: 'input-decides', input: 'span length', share: 0.62 },
  'sound-altered': { id: 'sound-altered', certain: true },
  'sample-rate-too-low': { id: 'sample-rate-too-low', sampleRateHz: 8000 },
  'outside-expected': { id: 'outside-expected', forceN: 12.3 },
};
const ALL = Object.values(ONE_OF_EACH);

describe('every doubt has a name, a sentence and a remedy in plain words', () => {
  test.each(ALL)('$id', (reason) => {
    const texts = [reasonSentence(reason), reasonRemedy(reason)];
    expect(reasonName(reason)).toMatch(/^[a-z][a-z ]+$/u);
    for (const text of texts) {
      expect(text).toMatch(/^[A-Z0-9].*\.$/u);
      expect(text).not.toMatch(/!|please|simply|just|error|invalid|undefined|NaN/iu);
    }
  });
});

test('sentences state the figures of this case, with no-break spaces before units', () => {
  const plain = (id: ReasonId) => reasonSentence(ONE_OF_EACH[id]).replaceAll('\u00a0', ' ');
  expect(plain('span-too-short')).toBe('On 45 mm the ends and the stiffness of the belt count too much beside the force.');
  expect(plain('octave-not-certain')).toBe('118 Hz and 59 Hz both fit.');
  expect(plain('plucks-disagree')).toBe('Pluck 3 lies 6 % above the others and was left out.');
  expect(plain('plucked-too-hard')).toBe('The frequency fell by 4 % as it died.');
  expect(plain('too-few-cycles')).toBe('It died after 4 swings.');
  expect(plain('over-rated-force')).toBe('31 N is above the 26 N this belt is made for.');
  expect(plain('hum-on-partial')).toBe('Mains hum at 100 Hz lies on partial 2.');
  expect(plain('sample-rate-too-low')).toBe('At 8 kHz the higher partials are missing.');
  expect(plain('pluck-left-out')).toBe('Pluck 2 was left out: clipped.');
  expect(reasonSentence(ONE_OF_EACH['over-rated-force'])).toContain('31\u00a0N');
});

test('a remedy that was reckoned says how far to move, rounded up to 5 mm', () => {
  const remedy = (more: object) => reasonRemedy({ ...ONE_OF_EACH['span-too-short'], ...more }).replaceAll('\u00a0', ' ');
  expect(remedy({})).toBe('Move the carriage. From 120 mm on, this belt can be trusted.');
  expect(remedy({ trustedFromM: 0.06 })).toContain('From 60 mm on');
  expect(remedy({ onceWeighed: true })).toContain('once it is weighed');
  expect(remedy({ trustedFromM: undefined })).not.toMatch(/\d/u);
});

test('numbers follow the language', () => {
  const short = { id: 'too-few-cycles', cycles: 1.3 } as const;
  expect(reasonSentence(short, numberFormatOf('de'))).toContain('1,3');
  expect(reasonSentence(short)).toContain('1.3');
});

test('other sides of the same doubts', () => {
  expect(reasonSentence({ ...ONE_OF_EACH['plucks-disagree'], differenceRelative: -0.05, leftOut: false })).toMatch(
    /below the others, too/u,
  );
  expect(reasonSentence({ id: 'belt-too-slack' })).toBe('So little force leaves the stiffness in charge.');
  expect(reasonSentence({ id: 'sound-altered', certain: false })).toMatch(/does not say/u);
});

test('each input that may decide has a remedy of its own kind', () => {
  const inputs: BudgetInput[] = [
    'span length',
    'linear density',
    'end fixity',
    'bending stiffness',
    'frequency',
    'repeatability',
    'amplitude',
  ];
  const remedies = inputs.map((input) => reasonRemedy({ id: 'input-decides', input, share: 0.5 }));
  expect(new Set(remedies).size).toBe(inputs.length);
});

test('where nothing was heard it says what to do', () => {
  const whys: NothingWhy[] = ['silence', 'no-onset', 'not-a-span', 'too-quiet', 'too-short'];
  const texts = whys.map(nothingText);
  expect(new Set(texts).size).toBe(whys.length);
  for (const text of texts) expect(text).toMatch(/^[A-Z].*\.$/u);
});
