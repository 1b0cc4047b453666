/** What the screen says large, and what comes after it; the same sentence is spoken. */

import type { Advice } from '../../../core/machine/adjust/next-turn.ts';
import type { Ask } from '../../../core/machine/adjust/session.ts';
import { standingOf } from '../../../core/machine/adjust/standing.ts';
import { formatPercent, type NumberFormat } from '../../../core/quantity.ts';
import { adjustEn as words } from '../../../words/adjust-en.ts';
import type { ReadyGroup } from '../../state/adjust-group.ts';
import type { Adjusting } from '../../state/adjusting.ts';
import { degreesText, millimetresText, spokenTurns, turnsText } from '../../turn-text.ts';

export interface NextStepView {
  /** Heavy, then light. */
  readonly say: readonly [string, string];
  readonly after: string;
  readonly spoken: string;
  /** The belt that is listened for. */
  readonly belt?: number | undefined;
  readonly count?: string | undefined;
  readonly done?: boolean | undefined;
}

const nameOf = (group: ReadyGroup, belt: number): string => group.members[belt]?.belt.name ?? '';

export function nextStepView(adjusting: Adjusting, { listening, format }: { listening: boolean; format: NumberFormat }): NextStepView {
  const { group, session } = adjusting;
  const { ask } = session;
  if (ask.kind === 'done') return doneView(adjusting, format);
  if (ask.kind === 'stuck') return stuckView(ask, group.plan.likeness === 'two-rolls');
  if (!listening && adjusting.steps.length === 0) return plain([words.say.ready, ''], words.after.ready);
  return ask.kind === 'move' ? moveView(group, ask, format) : pluckView(group, ask, adjusting);
}

const plain = (say: readonly [string, string], after: string): NextStepView => ({ say, after, spoken: `${say.join('')}. ${after}` });

function pluckView(group: ReadyGroup, ask: Extract<Ask, { kind: 'pluck' }>, { session }: Adjusting): NextStepView {
  const name = nameOf(group, ask.belt);
  const more = Math.max(1, ask.need - ask.have);
  const say =
    ask.have === 0 && more === 1
      ? words.say.pluckOne(name)
      : ask.have > 0 && more === 1
        ? words.say.pluckMore(name)
        : words.say.pluck(name, more);
  const moved = session.path.at(-1)?.move;
  const after =
    ask.why === 'neighbour' && moved
      ? words.after.neighbour(nameOf(group, moved.belt))
      : ask.why === 'open'
        ? words.after.open
        : ask.why === 'moved' && ask.have > 0
          ? words.after.unexpected
          : words.after.first;
  return { ...plain([say[0]!, say[1]!], after), belt: ask.belt, count: words.plucks(ask.have, ask.need) };
}

function moveView(group: ReadyGroup, { advice, need }: Extract<Ask, { kind: 'move' }>, format: NumberFormat): NextStepView {
  const name = nameOf(group, advice.belt);
  const tightens = advice.kind === 'turn' ? advice.turns > 0 : advice.way > 0;
  const say =
    advice.kind === 'way'
      ? tightens
        ? words.say.tightenSome(name)
        : words.say.loosenSome(name)
      : (tightens ? words.say.tighten : words.say.loosen)(name, amountText(group, advice, format));
  const after = words.after.move(`${wayText(group, advice, tightens)}${fineText(group, advice)}`, name, need);
  const spoken = `${say[0]} ${spokenAmount(group, advice, format)}. ${after}`;
  return { say: [say[0]!, say[1]!], after, spoken, belt: advice.belt, count: words.plucks(0, need) };
}

/** '3/8 turn', '0.5 mm'; of a spring nothing. */
export function amountText(group: ReadyGroup, advice: Advice, format: NumberFormat): string {
  if (advice.kind === 'way') return '';
  const { kind } = group.plan.belts[advice.belt]!.adjuster;
  return kind === 'slide' ? millimetresText(advice.turns, format) : turnsText(advice.turns);
}

function spokenAmount(group: ReadyGroup, advice: Advice, format: NumberFormat): string {
  const isScrew = group.plan.belts[advice.belt]!.adjuster.kind === 'screw';
  return advice.kind === 'turn' && isScrew ? spokenTurns(advice.turns) : amountText(group, advice, format);
}

function wayText({ members }: ReadyGroup, { belt }: Advice, tightens: boolean): string {
  const { adjuster } = members[belt]!.belt;
  if (adjuster?.kind !== 'screw') return '';
  return adjuster.clockwiseTightens === tightens ? words.clockwise : words.counterclockwise;
}

function fineText({ plan }: ReadyGroup, advice: Advice): string {
  const isScrew = plan.belts[advice.belt]!.adjuster.kind === 'screw';
  const degrees = advice.kind === 'turn' && isScrew ? degreesText(advice.turns) : undefined;
  return degrees === undefined ? '' : words.degrees(degrees);
}

function doneView({ group, session }: Adjusting, format: NumberFormat): NextStepView {
  const names = group.members.map(({ belt }) => belt.name);
  const within = matchWithin(session.standing ?? (session.belief && standingOf(session.belief)));
  const result =
    within === undefined ? words.say.doneOne(words.list(names)) : words.say.doneMatch(names, formatPercent(within, { format }));
  return { say: [words.say.done, ` ${result}`], after: words.after.done, spoken: `${words.say.done} ${result}`, done: true };
}

/** Smallest whole percent that the largest difference and its doubt stay within at 95 %. */
function matchWithin(standing: Adjusting['session']['standing']): number | undefined {
  const match = standing?.match;
  if (match === undefined) return undefined;
  const { value, standardUncertainty } = match.difference;
  return Math.ceil(100 * (Math.abs(value) + ONE_SIDED_95 * standardUncertainty) - 1e-9) / 100;
}
/** 95 % point of the normal distribution on one side: a difference lies beyond one end or the other, hardly ever either. */
const ONE_SIDED_95 = 1.644854;

function stuckView({ why }: Extract<Ask, { kind: 'stuck' }>, twoRolls: boolean): NextStepView {
  switch (why) {
    case 'no-force':
      return plain([words.say.stuckForce, ''], words.after.stuckForce);
    case 'no-move':
      return plain([words.say.stuckMove, ''], words.after.stuckMove);
    case 'inputs':
      return plain([words.say.stuckInputs, ''], words.after.stuckInputs);
    case 'cannot-tell':
      return plain([words.say.stuckTell, ''], twoRolls ? words.after.stuckRolls : words.after.stuckTell);
  }
}
