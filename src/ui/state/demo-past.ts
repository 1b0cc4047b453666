/** Some weeks of the demo's plotter, invented: both belts fitted and read, one of them slipping away, so that a time line can be looked at. */

import { beltById } from '../../../shared/belts.ts';
import { currentOf } from '../../../shared/document/common.ts';
import type { KeptEntry } from '../../../shared/document/entry.ts';
import type { Machine, MachineBelt } from '../../../shared/document/machine.ts';
import type { KeptTake } from '../../../shared/document/take.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { answerOf } from '../../core/answer.ts';
import { createRandom } from '../../core/math/random.ts';
import type { PluckSound } from '../../core/outcome.ts';
import { partialHz } from '../../core/vibration/beam.ts';
import { PROGRAM_VERSION } from '../../words/program.ts';
import { keptAnswer } from './keep-take.ts';
import { newId } from './new-item.ts';
import { enteredForSpan } from './span-of-machine.ts';
import { understood } from './span-setup.ts';

const DAY_MS = 86_400_000;
/** Days before today on which both belts were read. */
const READ_DAYS = [82, 74, 73, 70, 65, 57, 43, 29, 15, 1];
const FITTED_DAY = 75;
const MOVED_DAY = 21;
const SEED = 11;
const STIFFNESS_NM2 = 1.1e-4;
const FIXITY = [0.35, 0.5] as const;
const PLUCKS = 3;

/** Force of each belt, N: the second one is changed, runs in, and goes on slipping. */
function forceN(beltIndex: number, daysAgo: number): number {
  if (beltIndex === 0) return 7.7 - 0.0012 * (82 - daysAgo);
  if (daysAgo > FITTED_DAY) return 6.9;
  const since = FITTED_DAY - daysAgo;
  return 7.66 - 0.05 * (1 - Math.exp(-since / 5)) - 0.0041 * since;
}

/** Takes and entries of the past; the same for the same machine but for their ids. */
export function demoPast(
  machine: Machine,
  words: { readonly newBelt: string; readonly moved: string },
  nowMs: number,
): Pick<KeptDocument, 'takes' | 'entries'> {
  const random = createRandom(SEED);
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC';
  const whenAgo = (days: number, minutes = 0) => ({ at: new Date(nowMs - days * DAY_MS + minutes * 60_000).toISOString(), zone });
  const belts = machine.belts.slice(0, 2);
  const takes = READ_DAYS.flatMap((daysAgo) => {
    const temperatureK = 273.15 + 18 + Math.round(2 * random.gaussian());
    return belts.flatMap((belt, index) => {
      const scatter = 1 + 0.002 * random.gaussian();
      const take = takeOf(machine, belt, forceN(index, daysAgo) * scatter, () => random.gaussian());
      const when = whenAgo(daysAgo, 4 * index);
      return take ? [{ ...take, id: newId(), made: when, changedAt: when.at, heard: when, temperatureK }] : [];
    });
  });
  const entry = (kind: KeptEntry['kind'], daysAgo: number, text: string, machineBeltIds: string[]): KeptEntry => {
    const when = whenAgo(daysAgo, -60);
    return { id: newId(), made: when, changedAt: when.at, happened: when, kind, text, machineId: machine.id, machineBeltIds };
  };
  const second = belts[1];
  return {
    takes,
    entries: [
      ...(second ? [entry('belt-changed', FITTED_DAY, words.newBelt, [second.id])] : []),
      entry('note', MOVED_DAY, words.moved, []),
    ],
  };
}

type Undated = Omit<KeptTake, 'id' | 'made' | 'changedAt' | 'heard'>;

/** Undefined where the belt has no span with a length, or is none of the catalogue. */
function takeOf(machine: Machine, belt: MachineBelt, force: number, gaussian: () => number): Undated | undefined {
  const span = belt.spans.find(({ lengthM }) => lengthM);
  const row = beltById(belt.beltId);
  if (!span?.lengthM || !row) return undefined;
  const { on, ...entered } = enteredForSpan({ machine, belt, span });
  const density = row.linearDensityKgPerM.value;
  // Somebody has weighed this belt, or every reading would be doubtful.
  const text = `${(density * 1000).toFixed(2)} g/m ± 0.08 g/m`;
  const weighed = {
    ...entered,
    weighing: { beltId: belt.beltId, kind: 'piece' as const, length: '500', mass: '', scaleStep: '', density: text },
  };
  const { setup } = understood(weighed);
  const beam = {
    spanLengthM: span.lengthM.value,
    linearDensityKgPerM: density,
    bendingStiffnessNm2: STIFFNESS_NM2,
    fixity: FIXITY,
    forceN: force,
  };
  const sounds = Array.from({ length: PLUCKS }, (_, pluck) => soundOf(beam, pluck, gaussian));
  const { reading } = answerOf({ sounds, setup, processing: 'untouched', sampleRateHz: 48_000 });
  if (!reading) return undefined;
  const take: Undated = {
    on,
    source: 'recording',
    processing: 'untouched',
    sampleRateHz: 48_000,
    sounds: sounds as unknown as KeptTake['sounds'],
    entered: { ...weighed, ends: [...weighed.ends] },
    now: {
      setup: setup as KeptTake['now']['setup'],
      answer: keptAnswer(reading),
      program: PROGRAM_VERSION,
      computedAt: new Date().toISOString(),
    },
    answeredBefore: [],
  };
  return JSON.parse(JSON.stringify(take)) as Undated;
}

function soundOf(beam: Omit<Parameters<typeof partialHz>[0], 'number'>, pluck: number, gaussian: () => number): PluckSound {
  const own = 1 + 0.0004 * gaussian();
  const partials = [1, 2, 3].map((number) => {
    const value = partialHz({ ...beam, number }) * own;
    return {
      number,
      frequencyHz: { value, standardUncertainty: 0.0003 * value },
      levelDbfs: -14 - 8 * number,
      decayS: 0.2 / Math.sqrt(number),
    };
  });
  const first = partials[0]!.frequencyHz;
  return {
    startS: 0.6 + 0.8 * pluck,
    frequencyHz: first,
    partials,
    evidence: {
      cyclesToDecay: 0.2 * first.value,
      levelOverBackgroundDb: 44,
      clippedShare: 0,
      glideRelative: 0.0008,
      leadOverRival: 30,
      foreignHz: [],
      ownShare: 0.98,
      firstPartialHeard: true,
      bandwidthHz: 20_000,
    },
  };
}

/** Whether a past can be brought to a machine: the demo's own, of which nothing is kept yet. */
export const canHavePast = ({ takes }: KeptDocument, machine: Machine | undefined): boolean =>
  machine?.demo === true &&
  machine.belts.length > 1 &&
  currentOf(machine.belts[0]!.targets) !== undefined &&
  !takes.some(({ on }) => on?.machineId === machine.id);
