/** The words of checking a pair's match, in English. */

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const counted = (count: number): string => `${NUMBERS[count] ?? count} ${count === 1 ? 'pluck' : 'plucks'}`;

export const matchEn = {
  page: (names: string) => `Check the match, ${names}`,
  title: (machine: string) => `Match, ${machine}`,
  inTurn: 'In turn, until it is certain whether they match.',
  matched: (a: string, b: string) => [`${a} and ${b}`, ' match.'],
  notMatched: (a: string, b: string) => [`${a} and ${b}`, ' do not match.'],
  cannotTell: ['It stays', ' open.'],
  cannotTellWhy: 'What the belts do not share leaves it open, however often they are plucked.',
  move: (name: string) => `Move ${name}: it is the further from the middle of the target.`,
  moveBoth: 'Both have to be moved: neither is inside the target.',
  after: (count: number) => `Certain after ${counted(count)}.`,
  adjust: 'Adjust them',
  ratio: 'The ratio',
  ratioIs: (a: string, b: string, value: string, low: string, high: string) => `${a} over ${b}: ${value}, between ${low} and ${high}.`,
  lengths: (now: string, equal: string) =>
    `Their spans differ in length. That is reckoned with and costs certainty: ± ${now} now, ± ${equal} on equal spans.`,
};
