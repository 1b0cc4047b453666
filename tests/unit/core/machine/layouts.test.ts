import { describe, expect, it } from 'vitest';
import { type BeltPath, beltPath, withUsualSense } from '../../../../src/core/machine/belt-path.ts';
import { LAYOUTS, type LaidBelt, type Layout, type LayoutSizes, usualSection } from '../../../../src/core/machine/layouts.ts';

const SECTION = usualSection(0.002);
const pathOf = (belt: LaidBelt): BeltPath => {
  const path = beltPath(belt, SECTION);
  if (path.kind !== 'path') throw new Error(`wheels ${path.from} and ${path.to} overlap`);
  return path;
};
const usual = ({ sizes }: Layout): LayoutSizes => Object.fromEntries(sizes.map(({ name, usual: value }) => [name, value]));
const layout = (kind: string): Layout => LAYOUTS.find((one) => one.kind === kind)!;
const spanLength = (belt: LaidBelt, name: string): number =>
  pathOf(belt).spans[belt.plucked.find((span) => span.name === name)!.from]!.lengthM;

describe.each(LAYOUTS.map((one) => [one.kind, one] as const))('%s', (_, one) => {
  const { belts } = one.lay(usual(one));

  it('has belts that go round their wheels without crossing through them', () => {
    for (const belt of belts) {
      const { arcs, lengthM } = pathOf(belt);
      // A quarter to a half of a turn, each: a belt wound the wrong way would lie on a wheel for more.
      for (const { wrapRad } of arcs) {
        expect(wrapRad).toBeGreaterThan(Math.PI / 2 - 0.2);
        expect(wrapRad).toBeLessThan(Math.PI + 0.2);
      }
      expect(lengthM).toBeGreaterThan(0.3);
      expect(lengthM).toBeLessThan(3);
    }
  });

  it('leads onto a wheel and off it in the direction of the belt', () => {
    for (const belt of belts) {
      const { spans, arcs } = pathOf(belt);
      for (const { wheel, from, counterclockwise } of arcs) {
        const { xM, yM } = belt.wheels[wheel]!;
        const into = spans.find(({ to }) => to === wheel)!;
        const radial = { x: from.xM - xM, y: from.yM - yM };
        const moving = { x: into.end.xM - into.start.xM, y: into.end.yM - into.start.yM };
        expect(Math.sign(radial.x * moving.y - radial.y * moving.x)).toBe(counterclockwise ? 1 : -1);
      }
    }
  });

  it('has spans that a finger reaches, each there once', () => {
    for (const { plucked, wheels } of belts) {
      expect(new Set(plucked.map(({ from }) => from)).size).toBe(plucked.length);
      for (const { from } of plucked) expect(from).toBeLessThan(wheels.length - 1);
    }
  });
});

describe('a crossed gantry', () => {
  const one = layout('crossed-gantry');
  const sizes = usual(one);
  const [a, b] = one.lay(sizes).belts as [LaidBelt, LaidBelt];

  it('has two belts of one length wherever the carriage stands', () => {
    const lengths = [0.06, 0.18, 0.3].flatMap((carriageXM) =>
      [0.06, 0.2].flatMap((carriageYM) => one.lay({ ...sizes, carriageXM, carriageYM }).belts.map((belt) => pathOf(belt).lengthM)),
    );
    for (const length of lengths) expect(length).toBeCloseTo(lengths[0]!, 3);
  });

  it('lengthens the side spans of both belts with the gantry, and the gantry’s spans with the carriage, one up and one down', () => {
    const [movedA, movedB] = one.lay({ ...sizes, carriageYM: sizes.carriageYM! + 0.05 }).belts as [LaidBelt, LaidBelt];
    for (const [before, after] of [
      [a, movedA],
      [b, movedB],
    ] as const)
      expect(spanLength(after, 'side') - spanLength(before, 'side')).toBeCloseTo(0.05, 4);
    const [rightA, rightB] = one.lay({ ...sizes, carriageXM: sizes.carriageXM! + 0.05 }).belts as [LaidBelt, LaidBelt];
    expect(spanLength(rightA, 'gantry') - spanLength(a, 'gantry')).toBeCloseTo(0.05, 4);
    expect(spanLength(rightB, 'gantry') - spanLength(b, 'gantry')).toBeCloseTo(-0.05, 4);
  });
});

describe('a single loop', () => {
  it('has one length wherever the carriage stands, and spans that make up for each other', () => {
    const one = layout('single-loop');
    const sizes = usual(one);
    const belts = [0.08, 0.2, 0.3].map((carriageXM) => one.lay({ ...sizes, carriageXM }).belts[0]!);
    for (const belt of belts) {
      // The pulley's pitch circle is not quite as large as the idler's: the belt runs a little askew.
      expect(pathOf(belt).lengthM).toBeCloseTo(pathOf(belts[0]!).lengthM, 4);
      expect(spanLength(belt, 'before carriage') + spanLength(belt, 'behind carriage')).toBeCloseTo(0.36 - 0.05, 3);
    }
  });
});

describe('a belt told in the other order', () => {
  const { belts } = layout('crossed-gantry').lay(usual(layout('crossed-gantry')));

  it.each(belts.map((belt) => [belt.name, belt] as const))('is the same belt: %s', (_, belt) => {
    const told = { ...belt, wheels: belt.wheels.toReversed() };
    const back = withUsualSense(told, SECTION);
    expect(back.clockwise).toBe(true);
    expect(withUsualSense(belt, SECTION).clockwise).toBe(false);
    const [one, other] = [pathOf(belt), pathOf(back)];
    expect(other.lengthM).toBeCloseTo(one.lengthM, 12);
    const last = belt.wheels.length - 1;
    for (const span of one.spans) {
      const same = other.spans.find(({ from }) => from === last - span.to)!;
      expect(same.to).toBe(last - span.from);
      expect(same.lengthM).toBeCloseTo(span.lengthM, 12);
      expect([same.start, same.end]).toEqual([span.end, span.start]);
    }
  });
});
