/** Each belt of a group as the screen tells it: its force with grade, where it stands against the target, its lane on the ruler. */

import { believedForceN } from '../../../core/machine/adjust/belief.ts';
import { beltReading } from '../../../core/machine/adjust/group-readings.ts';
import { turned } from '../../../core/machine/adjust/learning.ts';
import { standingOf } from '../../../core/machine/adjust/standing.ts';
import type { ForceN, Grade, Reading } from '../../../core/outcome.ts';
import type { ForceRange } from '../../../core/setup.ts';
import { forceConformance } from '../../../core/verdict/against-target.ts';
import { verdictOf } from '../../../core/verdict/conformance.ts';
import { adjustEn as words } from '../../../words/adjust-en.ts';
import type { Figure, Figures } from '../../format.ts';
import type { RulerLane } from '../../parts/group-ruler.ts';
import type { PlotTable } from '../../parts/spoken-table.ts';
import type { PathForce, PathStep } from '../../parts/step-path.ts';
import type { Adjusting } from '../../state/adjusting.ts';
import { amountText } from './next-step-view.ts';

export interface BeltRow {
  readonly name: string;
  readonly figure?: Figure | undefined;
  /** Where there are bounds only. */
  readonly bounds?: string | undefined;
  readonly grade?: { readonly grade: Grade; readonly word: string } | undefined;
  readonly says: string;
}

/** 95 % of a normal distribution, half width in standard deviations. */
const HALF_SD = 1.959964;

export function beltRows({ group, session }: Adjusting, figures: Figures): readonly BeltRow[] {
  const { plan } = group;
  return group.members.map(({ belt }, i): BeltRow => {
    const latest = session.latest[i];
    if (latest === undefined) return { name: belt.name, says: session.belief ? words.reading.wait : words.reading.none };
    return beltRow(belt.name, beltReading(plan, i, latest.sounds).reading, { target: plan.targetForceN, figures });
  });
}

export function beltRow(
  name: string,
  { forceN, grade: is }: Reading,
  { target, figures }: { readonly target: ForceRange; readonly figures: Figures },
): BeltRow {
  const grade = { grade: is, word: words.reading.grades[is] };
  if (forceN === undefined) return { name, grade, says: words.reading.noForce };
  const figure = figures.force(forceN);
  const says = targetText(forceN, target, figures);
  return figure ? { name, figure, grade, says } : { name, bounds: figures.bounds(forceN), grade, says };
}

function targetText(forceN: ForceN, target: { lowN: number; highN: number }, figures: Figures): string {
  switch (verdictOf(forceConformance(forceN, target))) {
    case 'met':
      return words.reading.inside;
    case 'low':
      return words.reading.low(figures.rough(target.lowN - forceN.value, 'N'));
    case 'high':
      return words.reading.high(figures.rough(forceN.value - target.highN, 'N'));
    case 'undecided': {
      const inside = forceN.value >= target.lowN && forceN.value <= target.highN;
      return inside ? words.reading.probablyInside : words.reading.cannotTell;
    }
  }
}

/** Lanes of the ruler; the belt that is to be moved with where it should come. */
export function rulerLanes({ group, session }: Adjusting): readonly RulerLane[] {
  const { ask, belief } = session;
  const advice = ask.kind === 'move' ? ask.advice : undefined;
  const after = belief && advice?.kind === 'turn' ? turned(belief, advice) : undefined;
  return group.members.map(({ belt }, i): RulerLane => {
    const latest = session.latest[i];
    const forceN = latest && beltReading(group.plan, i, latest.sounds).reading.forceN;
    const found = forceN && { valueN: forceN.value, lowN: forceN.low, highN: forceN.high };
    if (!after || advice?.belt !== i) return { name: belt.name, found };
    const { value, standardUncertainty } = believedForceN(after, i);
    const half = HALF_SD * standardUncertainty;
    return { name: belt.name, found, aim: { valueN: value, lowN: value - half, highN: value + half, label: words.ruler.aim(belt.name) } };
  });
}

export interface PathView {
  readonly steps: readonly PathStep[];
  readonly next?: PathStep | undefined;
  readonly table: PlotTable;
}

export function pathView(adjusting: Adjusting, figures: Figures): PathView | undefined {
  const { group, session } = adjusting;
  const { ask, belief } = session;
  if (session.path.length === 0 || belief === undefined) return undefined;
  const label = (move: (typeof session.path)[number]['move']): string =>
    move ? moveLabel(group.members[move.belt]!.belt.name, move, amountText(group, move, figures.format)) : words.path.start;
  const forcesOf = (standing: ReturnType<typeof standingOf>): readonly PathForce[] =>
    standing.belts.map(({ forceN: { value, standardUncertainty: u } }) => ({
      valueN: value,
      lowN: Math.max(0, value - HALF_SD * u),
      highN: value + HALF_SD * u,
    }));
  const steps = session.path.map(({ move, standing }) => ({ label: label(move), forces: forcesOf(standing) }));
  const next =
    ask.kind === 'move' && ask.advice.kind === 'turn'
      ? { label: label(ask.advice), forces: forcesOf(standingOf(turned(belief, ask.advice))) }
      : undefined;
  const force = ({ valueN, highN }: PathForce): string => {
    const { value, doubt } = figures.measured(valueN, Math.max(1e-6, highN - valueN));
    return `${value} N ± ${doubt} N`;
  };
  const table: PlotTable = {
    caption: words.path.table,
    columns: [words.path.step, ...group.members.map(({ belt }) => belt.name)],
    rows: [...steps, ...(next ? [{ ...next, label: `${words.path.next}: ${next.label}` }] : [])].map(({ label: text, forces }) => [
      text,
      ...forces.map(force),
    ]),
  };
  return { steps, next, table };
}

const moveLabel = (
  name: string,
  move: { readonly kind: 'turn'; readonly turns: number } | { readonly kind: 'way'; readonly way: number },
  amount: string,
): string => {
  const sign = (move.kind === 'turn' ? move.turns : move.way) > 0 ? '+' : '\u2212';
  return words.path.move(name, `${sign}${amount.replace(/\u00a0turns?$/u, '')}`);
};
