/** Section `peers`: the same takes given to general pitch methods. */

import { UNKNOWN_ENDS } from '../../src/core/setup.ts';
import { corpus, nonBelts } from '../support/corpus/corpus.ts';
import { type Answered, cents, isOctaveType, isRight, isWithin, NEAR } from './judge.ts';
import { beltResult } from './ours.ts';
import { broughtDown, loudestOnsetS, PEERS, type Peer, peerAnswer } from './peers.ts';
import type { Run } from './run.ts';
import { grouped, median, share, shareOf } from './statistics.ts';
import { digits, percent, percentWithin, table } from './table.ts';

interface Trial extends Answered {
  readonly kind: string;
  readonly ms: number;
}

/** Answers of one method, one list for each frame length. */
interface Entrant {
  readonly peer: Peer;
  readonly trials: Trial[][];
  readonly falseReadings: number[];
}

export function peerSection(run: Run): string {
  const { options } = run;
  const entrants: readonly Entrant[] = PEERS.map((peer) => ({
    peer,
    trials: peer.framesS.map(() => []),
    falseReadings: peer.framesS.map(() => 0),
  }));
  const unhinted: Trial[] = [];
  for (const take of corpus(options.seed, options)) {
    const { kind, recording, truth } = take;
    const answered = { kind, truthHz: truth.frequencyHz, partialsHz: truth.beamPartialsHz };
    eachTrial(entrants, { ...broughtDown(recording), onsetS: Math.max(0, truth.pluckStartsS[0]!) }, ({ trials }, frame, hertz, ms) => {
      trials[frame]!.push({ ...answered, hertz, ms });
    });
    unhinted.push(beltResult(take, { ends: UNKNOWN_ENDS }));
  }
  let otherCount = 0;
  for (const { recording } of nonBelts(options.seed, options)) {
    otherCount++;
    eachTrial(entrants, { ...broughtDown(recording), onsetS: loudestOnsetS(recording) }, ({ falseReadings }, frame, hertz) => {
      if (hertz !== undefined) falseReadings[frame]!++;
    });
  }
  const ours = run.belts();
  const oursFalse = run.nonBelts().filter(({ hertz }) => hertz !== undefined).length;
  const best = entrants.map((entrant) => {
    const frame = bestFrame(entrant.trials);
    const name = `${entrant.peer.name}, ${1000 * entrant.peer.framesS[frame]!} ms`;
    return { name, trials: entrant.trials[frame]!, falseReadings: String(entrant.falseReadings[frame]!) };
  });
  const all: readonly { name: string; trials: readonly Trial[]; falseReadings: string }[] = [
    { name: '**this estimator**', trials: ours, falseReadings: String(oursFalse) },
    { name: '**this estimator, told nothing of the span**', trials: unhinted, falseReadings: '-' },
    ...best,
  ];
  const rows = all.map(({ name, trials, falseReadings }) => [
    name,
    percentWithin(shareOf(trials, isRight)),
    percent(shareOf(trials, (trial) => isWithin(trial, NEAR))),
    percent(shareOf(trials, isOctaveType)),
    percent(shareOf(trials, ({ hertz }) => hertz === undefined)),
    digits(median(trials.flatMap((trial) => cents(trial) ?? [])), 2),
    worstKind(trials),
    falseReadings,
    digits(median(trials.map(({ ms }) => ms)), 1),
  ]);
  const kinds = [...new Set(ours.map(({ kind }) => kind))];
  const byKind = kinds.map((kind) => [
    kind,
    ...all.map(({ trials }) =>
      percent(
        shareOf(
          trials.filter((trial) => trial.kind === kind),
          isRight,
        ),
        0,
      ),
    ),
  ]);
  return [
    `### Against general pitch methods (${ours.length} takes of belts, ${otherCount} of other sounds; shares in %)`,
    table(
      [
        'method, frame',
        'within 1 %',
        'within 3 %',
        'octave-type',
        'no answer',
        'median cents',
        'worst kind, within 1 %',
        `readings of ${otherCount} other sounds`,
        'median ms',
      ],
      rows,
    ),
    'Within 1 %, by kind:',
    table(['kind', ...all.map(({ name }) => name.replaceAll('*', ''))], byKind),
  ].join('\n\n');
}

function eachTrial(
  entrants: readonly Entrant[],
  take: { readonly samples: Float32Array; readonly sampleRateHz: number; readonly onsetS: number },
  note: (entrant: Entrant, frame: number, hertz: number | undefined, ms: number) => void,
): void {
  for (const entrant of entrants) {
    entrant.peer.framesS.forEach((frameS, frame) => {
      const from = performance.now();
      const hertz = peerAnswer(entrant.peer, { ...take, frameS });
      note(entrant, frame, hertz, performance.now() - from);
    });
  }
}

/** The frame length that is most often right on every other take. */
function bestFrame(trials: readonly (readonly Trial[])[]): number {
  const right = trials.map((of) => of.filter((trial, index) => index % 2 === 0 && isRight(trial)).length);
  return right.indexOf(Math.max(...right));
}

function worstKind(trials: readonly Trial[]): string {
  const kinds = [...grouped(trials, ({ kind }) => kind)].map(([kind, of]) => ({ kind, part: share(of.filter(isRight).length, of.length) }));
  kinds.sort((a, b) => a.part.count / a.part.of - b.part.count / b.part.of);
  return `${percent(kinds[0]!.part, 0)} (${kinds[0]!.kind})`;
}
