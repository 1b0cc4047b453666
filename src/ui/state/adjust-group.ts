/** From a machine's group of belts, as it is kept, to what a session of adjusting goes by; or what is still missing for one. */

import { beltById } from '../../../shared/belts.ts';
import type { KeptBelt } from '../../../shared/document/belt.ts';
import { currentOf } from '../../../shared/document/common.ts';
import type { BeltGroup, KeptSpan, Machine, MachineBelt } from '../../../shared/document/machine.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import type { Adjuster } from '../../core/machine/adjust/adjusters.ts';
import type { AdjustPlan, PlannedBelt } from '../../core/machine/adjust/plan.ts';
import type { Likeness } from '../../core/machine/alike-belts.ts';
import { ASSUMED_LOOP_LENGTH_M, assumedAxialStiffnessN, modelResponseN } from '../../core/machine/response.ts';
import { forceOfTarget } from '../../core/machine/target.ts';
import type { ForceRange, FrequencyTarget } from '../../core/setup.ts';
import type { SoundSource } from '../../core/verdict/reasons.ts';
import type { EnteredSetup } from '../../ports.ts';
import { enteredForSpan } from './span-of-machine.ts';
import { understood } from './span-setup.ts';

export interface GroupMember {
  readonly belt: MachineBelt;
  readonly span: KeptSpan;
  readonly entered: EnteredSetup;
}

export interface ReadyGroup {
  readonly kind: 'ready';
  readonly machine: Machine;
  /** Its own id, or that of the only belt. */
  readonly id: string;
  readonly group?: BeltGroup | undefined;
  readonly members: readonly GroupMember[];
  readonly plan: AdjustPlan;
}

export type Lack = { readonly belt: string; readonly what: 'span' | 'length' | 'target' | 'density' };

export type AdjustGroupState =
  | ReadyGroup
  | { readonly kind: 'lacking'; readonly machine: Machine; readonly lacks: readonly Lack[] }
  /** Each belt has a target, but no force lies in all of them. */
  | { readonly kind: 'targets-apart'; readonly machine: Machine }
  | { readonly kind: 'gone'; readonly machine?: Machine | undefined };

const DEFAULT_SOURCE: SoundSource = { sampleRateHz: 48_000 };
/** Travel that a slide's advice counts in. */
const MILLIMETRE_M = 0.001;

/** @param groupId  of a group of the machine, or of one of its belts, which is then adjusted by itself */
export function adjustGroup(
  document: KeptDocument,
  machineId: string,
  groupId: string,
  source: SoundSource = DEFAULT_SOURCE,
): AdjustGroupState {
  const machine = document.machines.find(({ id, deletedAt }) => id === machineId && deletedAt === undefined);
  if (!machine) return { kind: 'gone' };
  const group = machine.groups.find(({ id }) => id === groupId);
  const ids = group?.beltIds ?? [groupId];
  const members = ids.flatMap((id) => machine.belts.filter((belt) => belt.id === id)).map((belt) => memberOf(machine, belt));
  if (members.length === 0) return { kind: 'gone', machine };
  const lacks = members.flatMap((member) => lackOf(member, document.belts));
  if (lacks.length > 0) return { kind: 'lacking', machine, lacks };
  const whole = members as readonly GroupMember[];
  const targetForceN = commonTarget(whole, document.belts);
  if (targetForceN === undefined) return { kind: 'targets-apart', machine };
  const plan: AdjustPlan = {
    belts: whole.map((member) => plannedBelt(member, document.belts)),
    targetForceN,
    targetHz: commonFrequency(whole),
    matchRelative: group?.toleranceRelative,
    crossed: group?.crossed ?? false,
    likeness: likenessOf(group, whole, document.belts),
    source,
  };
  return { kind: 'ready', machine, id: groupId, group, members: whole, plan };
}

interface PossibleMember {
  readonly belt: MachineBelt;
  readonly span?: KeptSpan | undefined;
  readonly entered: EnteredSetup;
}

/** The first span whose length is known, else the first. */
function memberOf(machine: Machine, belt: MachineBelt): PossibleMember {
  const span = belt.spans.find(({ lengthM }) => lengthM !== undefined) ?? belt.spans[0];
  return { belt, span, entered: enteredForSpan({ machine, belt, span }) };
}

function lackOf({ belt, span, entered }: PossibleMember, kept: readonly KeptBelt[]): Lack[] {
  const lack = (what: Lack['what']): Lack => ({ belt: belt.name, what });
  const { setup } = understood(entered, kept);
  return [
    ...(span === undefined ? [lack('span')] : setup.spanLengthM === undefined ? [lack('length')] : []),
    ...(setup.belt === undefined ? [lack('density')] : []),
    ...(currentOf(belt.targets) === undefined ? [lack('target')] : []),
  ];
}

function commonTarget(members: readonly GroupMember[], kept: readonly KeptBelt[]): ForceRange | undefined {
  const targets = members.map((member) => targetOf(member, kept));
  const lowN = Math.max(...targets.map((target) => target.lowN));
  const highN = Math.min(...targets.map((target) => target.highN));
  return lowN < highN ? { lowN, highN } : undefined;
}

/** A target that was told as a frequency means the force that the belt's density gives it by now. */
function targetOf({ belt, entered }: GroupMember, kept: readonly KeptBelt[]): ForceRange {
  const { forceN, source } = currentOf(belt.targets)!;
  return source.kind === 'frequency' ? (forceOfTarget(source, understood(entered, kept).setup) ?? forceN) : forceN;
}

/** The one frequency target of all belts; undefined where they differ, or were told as forces. */
function commonFrequency(members: readonly GroupMember[]): FrequencyTarget | undefined {
  const sources = members.map(({ belt }) => currentOf(belt.targets)!.source);
  const [first] = sources;
  if (first?.kind !== 'frequency') return undefined;
  const { lowHz, highHz, spanLengthM } = first;
  const same = sources.every(
    (one) => one.kind === 'frequency' && one.lowHz === lowHz && one.highHz === highHz && one.spanLengthM === spanLengthM,
  );
  return same ? { lowHz, highHz, spanLengthM } : undefined;
}

function plannedBelt({ belt, entered }: GroupMember, kept: readonly KeptBelt[]): PlannedBelt {
  const { setup } = understood(entered, kept);
  return { setup, limitN: setup.belt?.ratedForceN, adjuster: adjusterOf(belt, kept) };
}

/** Where nobody told how it is tightened, only the way can be told. */
function adjusterOf(belt: MachineBelt, kept: readonly KeptBelt[]): Adjuster {
  const { adjuster, lengthM: loopLengthM = ASSUMED_LOOP_LENGTH_M } = belt;
  if (adjuster === undefined || adjuster.kind === 'spring') return { kind: 'spring' };
  const travelM = adjuster.kind === 'screw' ? adjuster.leadM : MILLIMETRE_M;
  const { pathPerTravel } = adjuster;
  return {
    kind: adjuster.kind,
    modelResponseN: modelResponseN({ travelM, pathPerTravel, loopLengthM, axialStiffnessN: axialStiffness(belt, kept) }),
  };
}

/** A commonest belt, where not even the catalogue knows this one. */
const USUAL_SECTION = { toothPitchM: 0.002, widthM: 0.006 } as const;

function axialStiffness({ beltId }: MachineBelt, kept: readonly KeptBelt[]): number {
  const own = kept.find(({ id }) => id === beltId);
  const measured = own && currentOf(own.axialStiffnessN);
  if (measured) return measured.value;
  const row = beltById(own?.catalogueId ?? beltId);
  const { toothPitchM = USUAL_SECTION.toothPitchM, widthM = USUAL_SECTION.widthM } = own ?? {};
  return assumedAxialStiffnessN({
    toothPitchM: row?.toothPitchM ?? toothPitchM,
    widthM: row?.widthM ?? widthM,
    steelCord: row?.material === 'polyurethane, steel cord',
  });
}

/** A belt that is kept under its own name is one roll. */
function likenessOf(group: BeltGroup | undefined, members: readonly GroupMember[], kept: readonly KeptBelt[]): Likeness {
  const [first] = members;
  const oneKind = members.every(({ belt }) => belt.beltId === first?.belt.beltId);
  const isKept = kept.some(({ id }) => id === first?.belt.beltId);
  if (!oneKind) return 'two-kinds';
  return (group?.sameRoll ?? isKept) ? 'same-roll' : 'two-rolls';
}
