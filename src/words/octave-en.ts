/** Words around a numbering that is open, and the pluck that settles it. */

export const octaveEn = {
  title: 'Two numberings fit',
  lead: 'The sound cannot tell which partial was heard. One pluck can.',
  how: 'Lay a fingertip lightly on the middle of the span and pluck halfway between it and one end: then only the even partials ring.',
  settle: 'Settle it with one pluck',
  unsettled: 'The pluck with a finger on the middle did not settle it. Lay the fingertip on the very middle, as lightly as it goes.',
  columns: ['Force', 'First partial', 'Probability'],
  noForce: 'not known',
  caption: 'Both readings with their probabilities',
  deciding: [
    'Touch the middle, pluck at a quarter',
    'A fingertip lightly on the middle of the span. Pluck halfway between it and one end.',
  ],
  decidingIdle: 'Press Listen first. A recording of that pluck works too.',
  leave: 'Leave it open',
  settled: 'Numbered by the pluck with a finger on the middle.',
} as const;
