/** Machines to begin with: one from each ready layout, an empty one, and the two of the demo scenario. */

import { beltById, belts } from '../../../shared/belts.ts';
import type { BeltGroup, KeptSpan, LayoutKind, Machine, MachineBelt } from '../../../shared/document/machine.ts';
import { beltPath, withUsualSense } from '../../core/machine/belt-path.ts';
import { LAYOUTS, type LaidBelt, type LaidLayout, type LayoutSizes, layoutOf, usualSection } from '../../core/machine/layouts.ts';
import { newId, newItem, nowWhen } from './new-item.ts';
import { DEFAULT_BELT_ID } from './span-setup.ts';

/** Two belts that differ by no more are as well matched as the trade asks for (common practice, no source). */
export const USUAL_MATCH_RELATIVE = 0.05;
/** Of a length read off a drawing: what assembly and rulers leave open, ± 2 mm at 95 % (our judgement). */
export const LAYOUT_SPAN_U_M = 0.001;

/** Names of the spans in the person's language. */
export type SpanNames = Readonly<Record<string, string>>;

export function newMachine(kind: LayoutKind, { name, spanNames }: { readonly name: string; readonly spanNames: SpanNames }): Machine {
  const layout = layoutOf(kind);
  if (!layout) return { ...newItem(), name, layout: { kind: 'own', sizes: {} }, belts: [emptyBelt('A')], groups: [] };
  const sizes = Object.fromEntries(layout.sizes.map((size) => [size.name, size.usual]));
  const laid = layout.lay(sizes);
  const machineBelts = laid.belts.map((belt) => ({
    ...emptyBelt(belt.name),
    spans: belt.plucked.map((_, index) => laidSpan(belt, index, sizes, spanNames)),
  }));
  const { group } = layout;
  const groups: BeltGroup[] = group
    ? [
        newGroup(
          machineBelts.filter((belt) => group.belts.includes(belt.name)),
          { crossed: group.crossed },
        ),
      ]
    : [];
  return { ...newItem(), name, layout: { kind, sizes }, belts: machineBelts, groups };
}

export const emptyBelt = (name: string): MachineBelt => ({ id: newId(), name, beltId: DEFAULT_BELT_ID, spans: [], targets: [] });

export const emptySpan = (name: string): KeptSpan => ({ id: newId(), name, lengthFrom: 'measured', ends: ['unknown', 'unknown'] });

export const newGroup = (members: readonly MachineBelt[], { crossed }: { readonly crossed: boolean }): BeltGroup => ({
  id: newId(),
  name: members.map(({ name }) => name).join(', '),
  beltIds: members.map(({ id }) => id),
  toleranceRelative: USUAL_MATCH_RELATIVE,
  crossed,
});

/** A span as the layout has it; its length holds for the carriage where it stands in the drawing. */
function laidSpan(belt: LaidBelt, index: number, sizes: LayoutSizes, names: SpanNames): KeptSpan {
  const plucked = belt.plucked[index]!;
  const [from, to] = [belt.wheels[plucked.from], belt.wheels[plucked.from + 1]];
  const end = (wheel: typeof from) => (wheel?.kind === 'clamp' ? 'clip' : (wheel?.kind ?? 'unknown'));
  return {
    id: newId(),
    name: names[plucked.name] ?? plucked.name,
    place: { belt: belt.name, from: plucked.from },
    lengthM: laidLength(belt, plucked.from),
    lengthFrom: 'layout',
    carriageM: carriageIn(sizes),
    ends: [end(from), end(to)],
  };
}

/** Length of a span as the layout's sizes have it; undefined where its wheels overlap. */
export function laidLength(belt: LaidBelt, from: number, toothPitchM = belts[0]?.toothPitchM ?? 0.002): KeptSpan['lengthM'] {
  const path = beltPath(belt, usualSection(toothPitchM));
  const span = path.kind === 'path' ? path.spans.find((one) => one.from === from) : undefined;
  return span && { value: Math.round(span.lengthM * 1000) / 1000, standardUncertainty: LAYOUT_SPAN_U_M };
}

/** Length of a whole belt as the layout has it, to the millimetre. */
export function laidBeltLength(machine: Machine, belt: MachineBelt): number | undefined {
  const laid = laidBelt(machine, belt.spans[0]?.place?.belt ?? belt.name);
  const path = laid && beltPath(laid, usualSection(toothPitchOf(belt)));
  return path?.kind === 'path' ? Math.round(path.lengthM * 1000) / 1000 : undefined;
}

export const carriageIn = ({ carriageXM, carriageYM }: LayoutSizes): { x: number; y: number } => ({
  x: carriageXM ?? 0,
  y: carriageYM ?? 0,
});

/** Spans whose length comes from the layout follow it; what was measured stays. */
export function relaid(machine: Machine, sizes: LayoutSizes = machine.layout.sizes): Machine {
  const next = { ...machine, layout: { ...machine.layout, sizes: { ...sizes } } };
  const followed = (belt: MachineBelt): MachineBelt => ({
    ...belt,
    spans: belt.spans.map((span) => (span.lengthFrom === 'layout' && span.place ? asLaid(next, belt, span) : span)),
  });
  return { ...next, belts: next.belts.map(followed) };
}

/** The span with the length that the drawing gives it; as it is where it is in no drawing. */
export function asLaid(machine: Machine, belt: MachineBelt, span: KeptSpan): KeptSpan {
  const { place } = span;
  const laid = place && laidBelt(machine, place.belt);
  if (!laid) return span;
  const carriageM = machine.layout.kind === 'own' ? undefined : carriageIn(machine.layout.sizes);
  return { ...span, lengthM: laidLength(laid, place.from, toothPitchOf(belt)), lengthFrom: 'layout', carriageM };
}

/** Of the catalogue; an own belt's wheels are placed as for the commonest one, which moves its spans by next to nothing. */
const toothPitchOf = ({ beltId }: MachineBelt): number => beltById(beltId)?.toothPitchM ?? belts[0]?.toothPitchM ?? 0.002;

const laidBelt = (machine: Machine, name: string): LaidBelt | undefined => laidMachine(machine)?.belts.find((belt) => belt.name === name);

/** A machine in plan: its ready layout, or the wheels that its belts were given; belts go by their ids there. */
export function laidMachine({ layout, belts: own }: Machine): LaidLayout | undefined {
  const ready = layoutOf(layout.kind);
  if (ready) return ready.lay(layout.sizes);
  const laid = own.flatMap((belt): LaidBelt[] => {
    const { path } = belt;
    if (!path || path.wheels.length < 2) return [];
    return [withUsualSense({ name: belt.id, wheels: path.wheels, closed: path.closed, plucked: [] }, usualSection(toothPitchOf(belt)))];
  });
  return laid.length > 0 ? { belts: laid, parts: [] } : undefined;
}

/** The span between a wheel of an own path and the next. */
export function spanAfterWheel(machine: Machine, belt: MachineBelt, from: number, name: string): KeptSpan {
  const wheels = belt.path?.wheels ?? [];
  const end = (wheel: (typeof wheels)[number] | undefined) => (wheel?.kind === 'clamp' ? 'clip' : (wheel?.kind ?? 'unknown'));
  const ends: KeptSpan['ends'] = [end(wheels[from]), end(wheels[(from + 1) % wheels.length])];
  return asLaid(machine, belt, { ...emptySpan(name), place: { belt: belt.id, from }, ends });
}

export const LAYOUT_KINDS: readonly LayoutKind[] = [...LAYOUTS.map(({ kind }) => kind), 'own'];

/** A school workshop's pen plotter with two crossed belts, and its small engraver. Invented, forces and lengths included. */
export function demoMachines(words: {
  readonly plotter: string;
  readonly plotterNote: string;
  readonly engraver: string;
  readonly engraverNote: string;
  readonly spanNames: SpanNames;
}): readonly Machine[] {
  const { spanNames } = words;
  const set = nowWhen();
  const target = (from: number, to: number): MachineBelt['targets'] => [
    { forceN: { lowN: from, highN: to }, source: { kind: 'entered', from: String(from), to: String(to), unit: 'N' }, set },
  ];
  const screw = { kind: 'screw', leadM: 0.0005, pathPerTravel: 2, clockwiseTightens: true } as const;
  const plotter = newMachine('crossed-gantry', { name: words.plotter, spanNames });
  const engraver = newMachine('single-loop', { name: words.engraver, spanNames });
  return [
    {
      ...plotter,
      demo: true,
      note: words.plotterNote,
      groups: plotter.groups.map((group) => ({ ...group, sameRoll: true })),
      belts: plotter.belts.map((belt) => ({ ...belt, lengthM: laidBeltLength(plotter, belt), targets: target(6, 9), adjuster: screw })),
    },
    {
      ...engraver,
      demo: true,
      note: words.engraverNote,
      belts: engraver.belts.map((belt) => ({
        ...belt,
        lengthM: laidBeltLength(engraver, belt),
        targets: target(5, 8),
        adjuster: { kind: 'slide', pathPerTravel: 2 },
      })),
    },
  ];
}
