/** Gauges: how well intervals, slips, stops and answers of a calibration hold on synthetic gauges whose truth is known. */

import { GAUGE_KINDS } from '../support/gauges/gauge.ts';
import { type Trial, trialOf } from '../support/gauges/trial.ts';
import type { Run } from './run.ts';
import { share } from './statistics.ts';
import { digits, percent, percentWithin, table } from './table.ts';

const GAUGES = 200;

const sum = (trials: readonly Trial[], of: (trial: Trial) => number): number => trials.reduce((total, trial) => total + of(trial), 0);

function line(name: string, trials: readonly Trial[]): readonly (string | number)[] {
  const part = (some: (trial: Trial) => number, all: (trial: Trial) => number) => share(sum(trials, some), sum(trials, all));
  const counts = new Map<string, number>();
  for (const { fit } of trials) counts.set(fit, (counts.get(fit) ?? 0) + 1);
  const told = trials.filter(({ answered }) => answered > 0);
  return [
    name,
    trials.length,
    percentWithin(
      part(
        ({ held }) => held,
        ({ answered }) => answered,
      ),
    ),
    percent(
      part(
        ({ answered }) => answered,
        ({ asked }) => asked,
      ),
    ),
    `${sum(trials, ({ named }) => named)} of ${sum(trials, ({ planted }) => planted)}`,
    percent(
      part(
        ({ wronglyNamed }) => wronglyNamed,
        ({ sound }) => sound,
      ),
      2,
    ),
    `${sum(trials, ({ answeredAboveStop }) => answeredAboveStop)} of ${sum(trials, ({ aboveStop }) => aboveStop)}`,
    digits((100 * sum(told, ({ meanRelativeU }) => meanRelativeU)) / told.length, 1),
    [...counts].map(([fit, count]) => `${fit} ${count}`).join(', '),
  ];
}

export function gaugeSection({ options }: Run): string {
  const trials = Array.from({ length: GAUGES }, (_, k) =>
    trialOf(options.seed, GAUGE_KINDS[k % GAUGE_KINDS.length]!, Math.floor(k / GAUGE_KINDS.length)),
  );
  const head = [
    'gauges',
    'count',
    'interval holds, %',
    'answered, %',
    'slips named',
    'sound rows named, %',
    'numbers above a stop',
    'mean U, %',
    'curves',
  ];
  const rows = GAUGE_KINDS.map((kind) =>
    line(
      kind,
      trials.filter((trial) => trial.kind === kind),
    ),
  );
  const all = line('all', trials);
  const said = `gauges: interval holds ${all[2]} %, answered ${all[3]} %, slips named ${all[4]}, sound rows named ${all[5]} %, numbers above a stop ${all[6]}`;
  return `### Gauges under hung weights\n\n${table(head, [...rows, all])}\n\n${said}`;
}
