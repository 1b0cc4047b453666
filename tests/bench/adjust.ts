/** How many of 500 simulated machines are brought into target and match within four adjustments. */

import { COUPLING } from '../../src/core/machine/adjust/adjusters.ts';
import { type Belief, beliefBefore } from '../../src/core/machine/adjust/belief.ts';
import { read, turned } from '../../src/core/machine/adjust/learning.ts';
import { nextTurn } from '../../src/core/machine/adjust/next-turn.ts';
import { standingOf } from '../../src/core/machine/adjust/standing.ts';
import { MATCH, READING_U, SimulatedMachine, WINDOW } from '../support/simulated-machine.ts';
import type { Run } from './run.ts';
import { table } from './table.ts';

const MACHINES = 500;
export const MOST_ADJUSTMENTS = 4;
/** What looks right but is not certain is read again so often before anything is moved. */
const MOST_MORE = 3;

export interface AdjustResult {
  /** One is each screw turned once; both belts are read after each turn. */
  readonly adjustments: number;
  /** The true forces in window and match. */
  readonly right: boolean;
  /** The adviser said that all is done. */
  readonly saidDone: boolean;
  readonly limitPassed: boolean;
}

export function adjustSection({ options }: Run): string {
  const results = Array.from({ length: MACHINES }, (_, i) => adjusted(new SimulatedMachine(options.seed, i)));
  const count = (holds: (result: AdjustResult) => boolean): number => results.filter(holds).length;
  const within = (most: number): number => count((r) => r.right && !r.limitPassed && r.adjustments <= most);
  return [
    `adjust: ${within(MOST_ADJUSTMENTS)} of ${MACHINES} within ${MOST_ADJUSTMENTS}`,
    '',
    table(['within', '0', '1', '2', '3', '4'], [['machines', ...[0, 1, 2, 3, 4].map((most) => String(within(most)))]]),
    '',
    table(
      ['', 'right', 'not right'],
      [
        ['said done', String(count((r) => r.saidDone && r.right)), String(count((r) => r.saidDone && !r.right))],
        ['not said', String(count((r) => !r.saidDone && r.right)), String(count((r) => !r.saidDone && !r.right))],
      ],
    ),
    '',
    `limit passed: ${count((r) => r.limitPassed)}`,
  ].join('\n');
}

/** One machine from its start until the adviser says done, or four adjustments are used up. */
export function adjusted(machine: SimulatedMachine): AdjustResult {
  const { targetN, limitN } = machine;
  const readBoth = (before: Belief): Belief =>
    ([0, 1] as const).reduce((b, belt) => read(b, { belt, forceN: machine.read(belt), ownRelativeU: READING_U.own }), before);
  let belief = readBoth(
    beliefBefore({
      targetForceN: { lowN: targetN * (1 - WINDOW), highN: targetN * (1 + WINDOW) },
      matchRelative: MATCH,
      belts: machine.modelResponseN.map((modelResponseN) => ({ limitN, adjuster: { kind: 'screw', modelResponseN } })),
      coupling: COUPLING.crossed,
      commonRelativeU: READING_U.common,
    }),
  );
  let adjustments = 0;
  let left: readonly number[] = [];
  let more = 0;
  const result = (saidDone: boolean): AdjustResult => ({
    adjustments,
    right: machine.isRight,
    saidDone,
    limitPassed: machine.limitPassed,
  });
  for (;;) {
    const standing = standingOf(belief);
    if (standing.done) return result(true);
    if (standing.looksRight && more < MOST_MORE) {
      more += 1;
      belief = readBoth(belief);
      continue;
    }
    let advice = nextTurn(belief, left);
    if (advice === undefined && adjustments < MOST_ADJUSTMENTS) {
      left = [0, 1];
      advice = nextTurn(belief, left);
      if (advice !== undefined) adjustments += 1;
    }
    if (advice?.kind !== 'turn') return result(false);
    const { belt } = advice;
    left = left.filter((screw) => screw !== belt);
    machine.turn(belt as 0 | 1, advice.turns);
    belief = readBoth(turned(belief, advice));
    more = 0;
  }
}
