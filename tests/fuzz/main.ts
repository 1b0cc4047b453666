/**
 * Hostile input with fixed seeds: `npm run fuzz -- --cases 100000 --seed 1`, one kind by `--kind wav`, one case by `--number` beside it. The cases run in a
 * thread of their own; this one watches, so that a case that never ends is named too. Ends with 1 where a case broke something.
 */

import { parseArgs } from 'node:util';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { countsOf, faultOf, KIND_NAMES, type KindName } from './run.ts';

interface Asked {
  readonly seed: number;
  /** Kind, first number, count. */
  readonly rounds: readonly (readonly [KindName, number, number])[];
}

/** Place of the case that runs, in memory that both threads see: index of its round, number. */
type Place = Int32Array<SharedArrayBuffer>;

/** A case takes milliseconds; a busy machine may stretch that a hundredfold. */
const HANGS_AFTER_MS = 60_000;
const LOOKS_EVERY_MS = 1000;
/** More of one kind says nothing new. */
const MOST_TOLD = 5;
/** A case that hoards memory ends the thread, and is named by its place. */
const MOST_HEAP_MB = 1024;

if (isMainThread) watch();
else runAll(workerData as Asked & { readonly place: Place });

function runAll({ seed, rounds, place }: Asked & { readonly place: Place }): void {
  for (const [round, [name, first, count]] of rounds.entries()) {
    const faults: string[] = [];
    let broken = 0;
    for (let number = first; number < first + count; number++) {
      Atomics.store(place, 0, round);
      Atomics.store(place, 1, number);
      const fault = faultOf(name, seed, number);
      if (fault === undefined) continue;
      broken += 1;
      if (faults.length < MOST_TOLD) faults.push(`  --kind ${name} --number ${number}: ${fault}`);
    }
    parentPort?.postMessage({ name, count, broken, faults });
  }
}

function asked(): Asked | string {
  const { values } = parseArgs({
    args: process.argv.slice(3),
    options: {
      cases: { type: 'string', default: '100000' },
      seed: { type: 'string', default: '1' },
      kind: { type: 'string' },
      number: { type: 'string' },
    },
  });
  const [cases, seed, number] = [Number(values.cases), Number(values.seed), Number(values.number ?? 0)];
  if (![cases, seed, number].every(Number.isInteger) || cases < 1) return 'Cases, seed and number are whole numbers; at least one case.';
  const kind = KIND_NAMES.find((name) => name === values.kind);
  if (values.kind !== undefined && !kind) return `There is no kind ${values.kind}. There are: ${KIND_NAMES.join(', ')}.`;
  if (kind) return { seed, rounds: [values.number === undefined ? [kind, 0, cases] : [kind, number, 1]] };
  const counts = countsOf(cases);
  return { seed, rounds: KIND_NAMES.map((name) => [name, 0, counts[name]] as const) };
}

function watch(): void {
  const told = asked();
  if (typeof told === 'string') {
    process.stderr.write(`${told}\n`);
    process.exitCode = 2;
    return;
  }
  const place: Place = new Int32Array(new SharedArrayBuffer(8));
  const worker = new Worker(new URL(import.meta.url), {
    workerData: { ...told, place },
    resourceLimits: { maxOldGenerationSizeMb: MOST_HEAP_MB },
  });
  let [cases, broken] = [0, 0];
  const here = () => `--seed ${told.seed} --kind ${told.rounds[Atomics.load(place, 0)]?.[0]} --number ${Atomics.load(place, 1)}`;
  const fail = (what: string) => {
    process.stdout.write(`${what} at ${here()}\n`);
    process.exit(1);
  };
  let seen = '';
  let since = Date.now();
  const looks = setInterval(() => {
    if (here() !== seen) [seen, since] = [here(), Date.now()];
    else if (Date.now() - since > HANGS_AFTER_MS) fail('hangs');
  }, LOOKS_EVERY_MS);
  worker.on('message', (round: { name: string; count: number; broken: number; faults: readonly string[] }) => {
    cases += round.count;
    broken += round.broken;
    process.stdout.write(`${round.name.padEnd(12)} ${String(round.count).padStart(7)} cases, ${round.broken} broken\n`);
    for (const fault of round.faults) process.stdout.write(`${fault}\n`);
  });
  worker.on('error', (error) => fail(`the thread ended (${error.message})`));
  worker.on('exit', () => {
    clearInterval(looks);
    process.stdout.write(`${cases} cases, seed ${told.seed}: ${broken} broken, none hung\n`);
    process.exitCode = broken > 0 ? 1 : 0;
  });
}
