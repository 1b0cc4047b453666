/**
 * Harmonics without their fundamental have its period all the same, and are heard at it: Seebeck (1841), Schouten (1938), and by
 * autocorrelation Licklider, A duplex theory of pitch perception, Experientia 7 (1951) 128. So a method that looks for periods (pitchy 4,
 * McLeod's normalised square difference) has to name the same fundamental as ours, which numbers partials.
 */
import { PitchDetector } from 'pitchy';
import { describe, expect, it, vi } from 'vitest';
import { measure } from '../../src/core/measure.ts';
import type { Recording } from '../../src/core/samples/recording.ts';
import { type SpanSetup, UNKNOWN_ENDS } from '../../src/core/setup.ts';
import { createRandom } from '../../src/core/synthesis/random.ts';
import { spanOf } from '../support/heard.ts';
import { plainTake } from '../support/plain-take.ts';
import { recordingOf, stiffPartials, tones } from '../support/tones.ts';

/** Many draws; a busy machine takes its time. */
vi.setConfig({ testTimeout: 30_000 });

const rateHz = 16_000;
const startS = 0.5;

function ours(recording: Recording, setup: SpanSetup) {
  const { outcome, plucks } = measure(recording, setup);
  if (outcome.kind !== 'reading') throw new Error(outcome.why);
  return { hz: outcome.frequencyHz.value, firstHeard: plucks[0]!.sound.evidence.firstPartialHeard };
}

function periodHz({ samples, sampleRateHz }: Recording): number {
  const from = Math.round((startS + 0.03) * sampleRateHz);
  return PitchDetector.forFloat32Array(2048).findPitch(samples.slice(from, from + 2048), sampleRateHz)[0];
}

const UNTOLD: SpanSetup = { ends: UNKNOWN_ENDS };

describe.each([
  ['2, 3, 4, 5', [2, 3, 4, 5], 'nothing', UNTOLD, 0.0003],
  ['2 to 6', [2, 3, 4, 5, 6], 'nothing', UNTOLD, 0.0003],
  ['1 to 4, for comparison', [1, 2, 3, 4], 'nothing', UNTOLD, 0.0003],
  ['2, 3, 4, 5', [2, 3, 4, 5], '200 mm', spanOf(0.2), 0.003],
  ['2 to 6', [2, 3, 4, 5, 6], '200 mm', spanOf(0.2), 0.003],
] as const)('partials %s', (_, numbers, told, setup, inharmonicity) => {
  it(`both name the fundamental, wherever it lies; told ${told}`, () => {
    const random = createRandom(numbers.length);
    for (let draw = 0; draw < 5; draw++) {
      const firstHz = random.between(70, 220);
      const list = stiffPartials({ firstHz, inharmonicity, numbers, amplitude: 0.3, decayS: 0.2, startS });
      const recording = recordingOf(tones(list, { rateHz, count: 1.4 * rateHz, noise: 0.0005, seed: draw + 1 }), rateHz);
      // A period is only nearly one where partials are stretched: they lie up to ½ B m² higher.
      expect(Math.abs(periodHz(recording) / firstHz - 1)).toBeLessThan(0.005 + 8 * inharmonicity);
      const found = ours(recording, setup);
      expect(found.firstHeard).toBe((numbers as readonly number[]).includes(1));
      expect(Math.abs(found.hz / firstHz - 1)).toBeLessThan(0.005);
    }
  });
});

it('a simulated belt behind a microphone that takes its first partial away', () => {
  const { recording, firstHz } = plainTake({
    span: { spanLengthM: 0.25, forceN: 9, axialStiffnessN: 0, bendingStiffnessNm2: 5e-5, dampingGrowth: 0.01 },
    plucks: [{ startS, placeShare: 0.21, heightM: 0.0003, fingerWidthM: 0.004 }],
    listener: { placeShare: 0.27, distanceM: 0.008 },
    corner: { cornerHz: 250, order: 4 },
    background: { whiteDbfs: -60 },
  });
  expect(Math.abs(periodHz(recording) / firstHz - 1)).toBeLessThan(0.02);
  expect(Math.abs(ours(recording, spanOf(0.25)).hz / firstHz - 1)).toBeLessThan(0.005);
});
