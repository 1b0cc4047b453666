/**
 * 'Will it work here?': plucks of the planned spans, synthesised and mixed into what this microphone has just heard of this room, and read by the
 * estimator that reads real ones. What comes out is counted, not computed.
 */

import { endsCells, stiffnessCells } from '../force/prior.ts';
import { createListening } from '../listening.ts';
import { createRandom, type Random } from '../math/random.ts';
import type { Recording } from '../samples/recording.ts';
import type { SpanSetup } from '../setup.ts';
import { addAt, amplitudeOf, peak } from '../synthesis/level.ts';
import { throughCorner } from '../synthesis/microphone.ts';
import { scrape } from '../synthesis/noise.ts';
import { pluckSound } from '../synthesis/pluck.ts';
import { type SimulatedSpan, spanPartialHz } from '../synthesis/span.ts';
import type { MicrophoneLimit } from './microphone-limit.ts';
import { type PlanQuestion, setupAt } from './plan.ts';
import { typicalPluck } from './typical-pluck.ts';

export interface TrialQuestion extends PlanQuestion {
  /** The room as the microphone heard it, at least `ROOM_S` long. */
  readonly room: Recording;
  readonly microphone?: MicrophoneLimit | undefined;
  /** Peak of a pluck in this microphone. */
  readonly peakDbfs: number;
  readonly spansM: readonly number[];
  readonly plucksEach: number;
  /** The same seed, the same plucks. */
  readonly seed: number;
}

export interface TrialRow {
  readonly spanLengthM: number;
  readonly plucks: number;
  /** Told within `RIGHT_WITHIN` of the frequency that they were made with. */
  readonly right: number;
  /** Told as something else. The others were not heard. */
  readonly wrong: number;
}

/** Room before the pluck, and the pluck: so long is one take. */
const LEAD_S = 0.8;
const TAKE_S = 2;
export const ROOM_S = 3;
const RIGHT_WITHIN = 0.01;
/** A light pluck a hand's width from the microphone, where none has been heard yet (our judgement). */
export const UNHEARD_PEAK_DBFS = -22;
const SCRAPE_DB = -14;
const SCRAPE_DECAY_S = 0.0025;

/**
 * One span after the other; yields the share done after each pluck and returns the counts.
 *
 * @throws RangeError where the room is too short
 */
export function* trial(question: TrialQuestion): Generator<number, readonly TrialRow[]> {
  const { room, spansM, plucksEach, seed } = question;
  if (room.samples.length < ROOM_S * room.sampleRateHz)
    throw new RangeError(`trial needs ${ROOM_S} s of room, got ${room.samples.length} samples`);
  const random = createRandom(seed, 41);
  const rows: TrialRow[] = [];
  const total = spansM.length * plucksEach;
  for (const spanLengthM of spansM) {
    const counts = { right: 0, wrong: 0 };
    for (let pluck = 0; pluck < plucksEach; pluck++) {
      const told = toldOf(question, spanLengthM, random);
      if (told === undefined) continue;
      counts[told === 'right' ? 'right' : 'wrong'] += told === 'nothing' ? 0 : 1;
      yield (rows.length * plucksEach + pluck + 1) / total;
    }
    rows.push({ spanLengthM, plucks: plucksEach, ...counts });
  }
  return rows;
}

/** One pluck in one stretch of the room; undefined where the belt was not told. */
function toldOf(question: TrialQuestion, spanLengthM: number, random: Random): 'right' | 'wrong' | 'nothing' | undefined {
  const setup = setupAt(question, spanLengthM);
  const { lowN, highN } = question.forceN;
  const typical = typicalPluck(setup, random.between(lowN, highN));
  if (typical === undefined) return undefined;
  const span = drawnSpan(typical.span, setup, random);
  const sampleRateHz = question.room.sampleRateHz;
  const sampleCount = Math.round(TAKE_S * sampleRateHz);
  const pluck = { ...typical.pluck, placeShare: random.between(0.3, 0.5), heightM: typical.pluck.heightM * random.between(0.7, 2) };
  const ring = pluckSound({
    span,
    pluck,
    listener: typical.listener,
    sampleRateHz,
    sampleCount: Math.round((TAKE_S - LEAD_S) * sampleRateHz),
  });
  const noise = scrape(random, { decayS: SCRAPE_DECAY_S, sampleRateHz });
  const noiseFactor = peak(ring) * amplitudeOf(SCRAPE_DB);
  addAt(
    ring,
    noise.map((value) => noiseFactor * value),
  );
  const { microphone } = question;
  const heard = microphone?.by === 'fall' ? throughCorner(ring, { cornerHz: microphone.lowestHz, order: 2 }, sampleRateHz) : ring;
  const factor = amplitudeOf(question.peakDbfs) / (peak(heard) || 1);
  const start = Math.floor(random.uniform() * Math.max(1, question.room.samples.length - sampleCount));
  const samples = question.room.samples.slice(start, start + sampleCount);
  const from = Math.round(LEAD_S * sampleRateHz);
  for (let index = 0; index < heard.length && from + index < samples.length; index++) samples[from + index]! += factor * heard[index]!;
  const listening = createListening({ sampleRateHz, setup });
  const found = [...listening.push(samples), ...listening.finish()].find((event) => event.kind === 'pluck');
  if (found?.kind !== 'pluck') return 'nothing';
  const off = found.sound.frequencyHz.value / spanPartialHz(span, 1) - 1;
  return Math.abs(off) <= RIGHT_WITHIN ? 'right' : 'wrong';
}

/** Stiffness and ends as they might be, not only as they are in the middle; how long it rings varies with them. */
function drawnSpan(span: SimulatedSpan, setup: SpanSetup, random: Random): SimulatedSpan {
  const ends = drawn(endsCells(setup.ends), random);
  const cell = setup.belt && drawn(stiffnessCells(setup.belt.bendingStiffnessNm2), random);
  const within = (at: number, width: number): number => Math.min(1, Math.max(0, at + width * (random.uniform() - 0.5)));
  return {
    ...span,
    fixity: [within(ends.fixity[0], ends.width[0]), within(ends.fixity[1], ends.width[1])],
    bendingStiffnessNm2: cell && cell.lnStiffness > -Infinity ? Math.exp(cell.lnStiffness) : span.bendingStiffnessNm2,
    decayS: span.decayS * Math.exp(0.4 * random.gaussian()),
  };
}

function drawn<Cell extends { readonly weight: number }>(cells: readonly Cell[], random: Random): Cell {
  let left = random.uniform();
  for (const cell of cells) {
    left -= cell.weight;
    if (left <= 0) return cell;
  }
  return cells.at(-1)!;
}
