/** The benchmark: `npm run bench -- coverage beam --seed 7 --takes 20`, sections by name, all where none is named. Prints tables; asserts nothing. */

import { adjustSection } from './adjust.ts';
import { benchArguments } from './arguments.ts';
import { beamSection } from './beam.ts';
import { beltSection } from './belt.ts';
import { boundSection } from './bound.ts';
import { peerSection } from './compare.ts';
import { coverageSection } from './coverage.ts';
import { frequencySection } from './frequency.ts';
import { gaugeSection } from './gauges.ts';
import { nonBeltSection } from './non-belts.ts';
import { rejectionSection } from './rejection.ts';
import { createRun, type Run } from './run.ts';
import { timeSection } from './time.ts';
import { trendSection } from './trend.ts';
import { twoPositionsSection } from './two-positions.ts';

const SECTIONS: Readonly<Record<string, (run: Run) => string>> = {
  frequency: frequencySection,
  'non-belts': nonBeltSection,
  coverage: coverageSection,
  bound: boundSection,
  time: timeSection,
  rejection: rejectionSection,
  beam: beamSection,
  belt: beltSection,
  peers: peerSection,
  adjust: adjustSection,
  gauges: gaugeSection,
  'two-positions': twoPositionsSection,
  trend: trendSection,
};

const options = benchArguments(process.argv.slice(3), Object.keys(SECTIONS));
if ('fault' in options) {
  process.stderr.write(`${options.fault}\n`);
  process.exitCode = 2;
} else {
  const run = createRun(options);
  process.stdout.write(
    `## Benchmark, seed ${options.seed}, ${options.takesPerKind} takes of each kind, ${new Date().toISOString().slice(0, 10)}\n`,
  );
  for (const section of options.sections) process.stdout.write(`\n${SECTIONS[section]!(run)}\n`);
}
