/**
 * A machine with two belts and a screw for each, for the benchmark of adjusting: shares nothing with what adjusts it. A screw has play, belts stick
 * on their pulleys, each screw also moves the other belt, and readings share one error.
 */

import { createRandom, type Random } from '../../src/core/math/random.ts';

/** Ranges from which a machine is drawn. */
const DRAWN = {
  targetN: [4, 40],
  /** Start over target. */
  start: [0.3, 2.5],
  /** True response over the model's, each screw by itself. */
  response: [0.3, 3],
  /** Model's response to a turn over the target. */
  modelShare: [0.2, 0.8],
  /** Share of a screw's own effect that the other belt feels. */
  coupling: [0, 0.6],
  backlashTurns: [0, 1 / 8],
  /** Limit over target, and never below what the belts start with. */
  limit: [1.5, 3],
} as const;
const STICTION = 0.03;
export const READING_U = { common: 0.025, own: 0.008 } as const;
export const WINDOW = 0.1;
export const MATCH = 0.05;

type Both<T> = [T, T];

export class SimulatedMachine {
  readonly targetN: number;
  readonly limitN: number;
  readonly modelResponseN: Both<number>;
  readonly responseShare: Both<number>;
  /** Whether any force ever rose past the limit. */
  limitPassed = false;
  readonly #random: Random;
  readonly #responseN: Both<number>;
  readonly #coupling: Both<number>;
  readonly #backlash: Both<number>;
  /** Where each screw's thread stands in its play, 0 to its backlash: at 0 it pulls when tightened no further, at the end when loosened. */
  readonly #play: Both<number>;
  /** Forces as they would be without sticking. */
  readonly #pulled: Both<number>;
  readonly #forces: Both<number>;
  readonly #commonFactor: number;

  constructor(seed: number, number: number) {
    const random = createRandom(seed, number);
    const even = ([low, high]: readonly [number, number]) => random.between(low, high);
    const logEven = ([low, high]: readonly [number, number]) => low * (high / low) ** random.uniform();
    const both = <T>(draw: () => T): Both<T> => [draw(), draw()];
    this.#random = random;
    this.targetN = logEven(DRAWN.targetN);
    const model = this.targetN * logEven(DRAWN.modelShare);
    this.modelResponseN = [model, model];
    this.responseShare = both(() => logEven(DRAWN.response));
    this.#responseN = [model * this.responseShare[0], model * this.responseShare[1]];
    this.#coupling = both(() => even(DRAWN.coupling));
    this.#backlash = both(() => even(DRAWN.backlashTurns));
    this.#play = [random.uniform() * this.#backlash[0], random.uniform() * this.#backlash[1]];
    this.#forces = both(() => this.targetN * even(DRAWN.start));
    // What the belts hold back already is part of where they start.
    this.#pulled = [this.#forces[0] * (1 + STICTION * random.between(-1, 1)), this.#forces[1] * (1 + STICTION * random.between(-1, 1))];
    this.limitN = Math.max(this.targetN * even(DRAWN.limit), ...this.#forces);
    this.#commonFactor = 1 + READING_U.common * random.gaussian();
  }

  /** One reading of a belt, as three plucks give it. */
  read(belt: 0 | 1): number {
    return this.#forces[belt] * this.#commonFactor * (1 + READING_U.own * this.#random.gaussian());
  }

  /** Turns one screw, > 0 tightens, and runs the carriage from end to end. */
  turn(belt: 0 | 1, turns: number): void {
    const other = belt === 0 ? 1 : 0;
    const moved = this.#threadMove(belt, turns);
    this.#pulled[belt] += this.#responseN[belt] * moved;
    this.#pulled[other] += this.#coupling[belt] * this.#responseN[belt] * moved;
    for (const i of [belt, other]) {
      const before = this.#forces[i]!;
      const after = this.#settled(before, Math.max(0, this.#pulled[i]!));
      if (after > before && after > this.limitN) this.limitPassed = true;
      this.#forces[i] = after;
    }
  }

  /** Both forces inside the window about the target, and their ratio inside the match: the true ones. */
  get isRight(): boolean {
    const [a, b] = this.#forces;
    const inWindow = [a, b].every((force) => Math.abs(force / this.targetN - 1) <= WINDOW);
    return inWindow && Math.abs(a / b - 1) <= MATCH;
  }

  get forcesN(): readonly number[] {
    return this.#forces;
  }

  /** What is left of a turn after the thread has crossed its play. */
  #threadMove(belt: 0 | 1, turns: number): number {
    const backlash = this.#backlash[belt];
    const at = this.#play[belt] + turns;
    this.#play[belt] = Math.min(Math.max(at, 0), backlash);
    return at > backlash ? at - backlash : Math.min(at, 0);
  }

  /** A force holds until what pulls at it differs by the share that sticks; then it follows, and a part of that share stays behind. */
  #settled(force: number, pulled: number): number {
    const held = STICTION * force;
    const pull = pulled - force;
    if (Math.abs(pull) <= held) return force;
    return pulled - Math.sign(pull) * held * this.#random.uniform();
  }
}
