/** Section `beam`: the program's solver against another method, and the corpus's own physics against the laws that it must meet. */

import { createRandom } from '../../src/core/synthesis/random.ts';
import { partialHz } from '../../src/core/vibration/beam.ts';
import { drawBelt } from '../support/corpus/belt.ts';
import { normalModes } from '../support/corpus/normal-modes.ts';
import { pickupOf, releasedSpan } from '../support/corpus/pluck-shape.ts';
import { rung } from '../support/corpus/ring.ts';
import { toneHz } from '../support/heterodyne.ts';
import type { Run } from './run.ts';
import { solverTable } from './solver.ts';
import { quantile } from './statistics.ts';
import { digits, table } from './table.ts';

const PARTIALS = 5;
const MODES = 8;
const SAMPLE_RATE_HZ = 48_000;

export function beamSection({ options }: Run): string {
  const random = createRandom(options.seed, 99);
  const energy: number[] = [];
  const motion: number[] = [];
  for (let count = 0; count < options.takesPerKind; count++) {
    const belt = drawBelt(random, { fundamentalHz: [60, 650] });
    const even = { ripple: { toothPitchM: belt.toothPitchM, massShare: 0, stiffnessShare: 0, slowShares: [], phase: 0 } };
    const byEnergy = normalModes({ ...belt, fixity: [Math.min(0.95, belt.fixity[0]), Math.min(0.95, belt.fixity[1])] }, MODES, even);
    const soft = { ...belt, fixity: [Math.min(0.95, belt.fixity[0]), Math.min(0.95, belt.fixity[1])] as const };
    const modes = normalModes(belt, MODES);
    const released = releasedSpan(modes, { placeShare: 0.21, heightM: 1e-6, fingerWidthM: 0.003, letGoS: 0.0002 });
    const { pressure } = rung(
      {
        modes,
        dampingPerS: new Float64Array(MODES).fill(3),
        released,
        axialStiffnessN: 5000,
        sampleRateHz: SAMPLE_RATE_HZ,
        sampleCount: 30_000,
      },
      pickupOf(modes, { placeShare: 0.31, distanceM: 0.01, twistShare: 0 }),
    );
    for (let number = 1; number <= PARTIALS; number++) {
      energy.push(Math.abs(byEnergy.angularRadPerS[number - 1]! / (2 * Math.PI) / partialHz({ ...soft, number }) - 1));
      const nearHz = partialHz({ ...belt, number });
      motion.push(
        Math.abs(toneHz(pressure, { nearHz, firstS: 0.05, secondS: 0.2, lengthS: 0.4, sampleRateHz: SAMPLE_RATE_HZ }) / nearHz - 1),
      );
    }
  }
  const row = (name: string, values: readonly number[]) => [
    name,
    values.length,
    digits(1e6 * quantile(values, 0.5)!, 2),
    digits(1e6 * Math.max(...values), 2),
  ];
  return [
    solverTable(),
    '### The simulated spans against the frequency equation (relative difference in millionths)',
    table(
      ['partials 1 to 5 by', 'n', 'median', 'largest'],
      [row('energy integrals of the shapes', energy), row('the motion in time, small amplitude', motion)],
    ),
  ].join('\n\n');
}
