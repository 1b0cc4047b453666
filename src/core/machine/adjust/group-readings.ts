/** Readings of a group's belts, each by itself and all on one scale, so that their ratios are those of the belts and not of what was assumed of each. */

import { answerOf, type ForceBasis, forceBasis } from '../../answer.ts';
import { type CentralSpan, centralOfCells } from '../../force/known-span.ts';
import type { PluckSound, Reading } from '../../outcome.ts';
import type { FrequencyTarget, SpanSetup } from '../../setup.ts';
import { forceFromPartial } from '../../vibration/beam.ts';
import { forceSlopes } from '../../vibration/beam-sensitivity.ts';
import { pairRatio } from '../pair-ratio.ts';
import { type HeardBelt, sharedCells } from '../shared-cells.ts';
import { targetAsHeard } from '../target.ts';
import type { AdjustPlan } from './plan.ts';

/** The plucks of one belt in one state of the machine, under its setup. */
export interface BeltReading {
  readonly reading: Reading;
  readonly basis?: ForceBasis | undefined;
}

const answered = new WeakMap<readonly PluckSound[], BeltReading & { readonly setup: SpanSetup }>();

/** The same plucks under the same setup are reckoned once. @param sounds  at least one */
export function beltReading(plan: AdjustPlan, belt: number, sounds: readonly PluckSound[]): BeltReading {
  const { setup } = plan.belts[belt]!;
  const known = answered.get(sounds);
  if (known?.setup === setup) return known;
  const take = { sounds, setup, ...plan.source };
  const { reading } = answerOf(take);
  if (reading === undefined) throw new RangeError('beltReading needs at least one pluck, got 0');
  const made = { reading, basis: forceBasis(take), setup };
  answered.set(sounds, made);
  return made;
}

/** What makes forces of frequencies for all belts of a group alike. */
export interface GroupScale {
  readonly commonRelativeU: number;
  readonly unlikeRelativeU: number;
  /** Force of a belt from its plucks, with the relative standard uncertainty of these plucks alone; undefined where they leave no room for a force. */
  readonly read: (belt: number, sounds: readonly PluckSound[]) => { readonly forceN: number; readonly ownRelativeU: number } | undefined;
}

/** No reading is better than this: beyond it plucks of a span do not repeat (our judgement). */
const LEAST_OWN_RELATIVE_U = 0.003;
/** Half of a 95 % interval in standard deviations. */
const HALF_SD = 1.959964;

/**
 * One scale for the group, from the first plucks of each belt: stiffness and ends as all of them together leave them, set so that on the whole it tells what each tells by itself.
 *
 * @param first  for each belt, at least one pluck
 * @returns undefined where one of them tells no force
 */
export function groupScale(plan: AdjustPlan, first: readonly (readonly PluckSound[])[]): GroupScale | undefined {
  const readings = plan.belts.map((_, i) => beltReading(plan, i, first[i]!));
  const heard = readings.flatMap(({ reading, basis }) => (basis ? [heardBelt(reading, basis)] : []));
  const forces = readings.flatMap(({ reading: { forceN } }) => (forceN ? [forceN] : []));
  if (heard.length < plan.belts.length || forces.length < plan.belts.length) return undefined;
  const cells = sharedCells(heard);
  const centrals = heard.map(({ span }) => centralOfCells(span, cells));
  const plain = heard.map(({ frequencyHz }, i) => forceAt(centrals[i]!, frequencyHz));
  if (plain.some((forceN) => forceN === undefined)) return undefined;
  const factor = Math.exp(mean(forces.map(({ value }, i) => Math.log(value / plain[i]!))));
  const own = readings.map(({ basis }, i) => ownRelativeU(basis!, centrals[i]!, plain[i]!));
  const whole = forces.map(({ value, low = 0, high = 2 * value }) => (high - low) / (2 * HALF_SD) / value);
  return {
    commonRelativeU: plan.targetHz
      ? Math.max(...heard.map((belt) => toTargetRelativeU(belt, plan.targetHz!)))
      : Math.max(...whole.map((u, i) => Math.sqrt(Math.max(0, u * u - own[i]! ** 2)))),
    unlikeRelativeU: largestUnlike(heard, plan),
    read: (belt, sounds) => {
      const { reading, basis } = beltReading(plan, belt, sounds);
      const central = centrals[belt]!;
      const forceN = basis && forceAt(central, reading.frequencyHz.value);
      return forceN === undefined ? undefined : { forceN: factor * forceN, ownRelativeU: ownRelativeU(basis!, central, forceN) };
    },
  };
}

export const heardBelt = ({ frequencyHz }: Reading, { span, partials, sharedRelativeU }: ForceBasis): HeardBelt => ({
  span,
  frequencyHz: frequencyHz.value,
  partials,
  sharedRelativeU,
});

function forceAt(central: CentralSpan, frequencyHz: number): number | undefined {
  const forceN = forceFromPartial({ ...central, number: 1, partialHz: frequencyHz });
  return forceN !== undefined && forceN > 0 ? forceN : undefined;
}

function ownRelativeU({ doubt }: ForceBasis, central: CentralSpan, forceN: number): number {
  const { perLnFrequency } = forceSlopes({ ...central, number: 1, forceN });
  const sound = Math.hypot(doubt.withinRelative, doubt.repeatabilityRelative, doubt.amplitudeRelative);
  return Math.max(LEAST_OWN_RELATIVE_U, perLnFrequency * sound);
}

/** Of a force over that of a frequency target: density has cancelled, the span's own length and the ends have not. */
function toTargetRelativeU(belt: HeardBelt, { lowHz, highHz, spanLengthM }: FrequencyTarget): number {
  const wanted = targetAsHeard(belt.span, Math.sqrt(lowHz * highHz), spanLengthM);
  return pairRatio({ belts: [belt, wanted], likeness: 'one-belt', soundRelativeU: 0 })?.unlikeRelativeU ?? 1;
}

function largestUnlike(heard: readonly HeardBelt[], { likeness }: AdjustPlan): number {
  const pairs = heard.flatMap((one, i) =>
    heard.slice(i + 1).map((other) => pairRatio({ belts: [one, other], likeness, soundRelativeU: 0 })),
  );
  return Math.max(0, ...pairs.map((ratio) => ratio?.unlikeRelativeU ?? 1));
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
