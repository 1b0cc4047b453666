/** Laws of the whole chain: what changes nothing about the span changes nothing about its frequency beyond the stated doubt. */
import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import { measure } from '../../src/core/measure.ts';
import type { Measurement } from '../../src/core/outcome.ts';
import type { Recording } from '../../src/core/samples/recording.ts';
import { UNKNOWN_ENDS } from '../../src/core/setup.ts';
import { createRandom } from '../../src/core/synthesis/random.ts';
import { spanOf } from '../support/heard.ts';
import { PLAIN, plainTake } from '../support/plain-take.ts';

/** Many whole takes in each test; a busy machine takes its time. */
vi.setConfig({ testTimeout: 60_000 });

const setup = spanOf(0.15);
const runs = (numRuns: number, seed: number) => ({ numRuns, seed, endOnFailure: true });
const one = PLAIN.plucks[0]!;

function frequencyOf(recording: Recording) {
  const { outcome } = measure(recording, setup);
  if (outcome.kind !== 'reading') throw new Error(`nothing heard: ${outcome.why}`);
  return outcome.frequencyHz;
}

const plain = plainTake();
const reading = frequencyOf(plain.recording);
const changed = ({ samples, sampleRateHz }: Recording, change: (x: number, t: number) => number): Recording => ({
  samples: samples.map(change),
  sampleRateHz,
});

/** Two answers to the same sound: apart by no more than either says of itself. */
function expectSame(found: ReturnType<typeof frequencyOf>, other = reading) {
  expect(Math.abs(found.value - other.value)).toBeLessThan(Math.max(found.u95, other.u95));
}

it('any gain, from full scale down to where 16 bits end, gives the same frequency', () => {
  fc.assert(
    fc.property(fc.double({ min: -60, max: 7, noNaN: true }), (gainDb) => {
      const found = frequencyOf(changed(plain.recording, (x) => x * 10 ** (gainDb / 20)));
      expectSame(found);
      expect(found.u95).toBeLessThan(3 * reading.u95);
    }),
    runs(15, 1),
  );
});

it('any offset of the microphone, up to half of the ring itself, gives the same frequency', () => {
  fc.assert(
    fc.property(fc.double({ min: -0.2, max: 0.2, noNaN: true }), (offset) => {
      expectSame(frequencyOf(changed(plain.recording, (x) => x + offset)));
    }),
    runs(10, 2),
  );
});

it('upside down it is the same', () => {
  expectSame(frequencyOf(changed(plain.recording, (x) => -x)));
});

it('any moment of the pluck gives the frequency that was simulated, and that moment', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.15, max: 3, noNaN: true }), fc.integer({ min: 1, max: 1000 }), (startS, seed) => {
      const { recording, firstHz } = plainTake({ durationS: startS + 0.8, plucks: [{ ...one, startS }] }, seed);
      const { outcome, plucks } = measure(recording, setup);
      if (outcome.kind !== 'reading') throw new Error(outcome.why);
      expect(Math.abs(outcome.frequencyHz.value / firstHz - 1)).toBeLessThan(0.003);
      expect(Math.abs(outcome.frequencyHz.value - firstHz)).toBeLessThan(1.5 * outcome.frequencyHz.u95);
      expect(Math.abs(plucks[0]!.sound.startS - startS)).toBeLessThan(0.02);
    }),
    runs(15, 3),
  );
});

it('any sample rate of 8 to 96 kHz gives the frequency that was simulated', () => {
  fc.assert(
    fc.property(fc.integer({ min: 8000, max: 96_000 }), (sampleRateHz) => {
      const { recording, firstHz } = plainTake({ sampleRateHz, durationS: 1.2 });
      const found = frequencyOf(recording);
      expect(Math.abs(found.value / firstHz - 1)).toBeLessThan(0.003);
      expect(Math.abs(found.value - firstHz)).toBeLessThan(1.5 * found.u95);
    }),
    runs(15, 4),
  );
});

it('a recording that is played faster rings as much higher', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.8, max: 1.25, noNaN: true }), (factor) => {
      const { samples, sampleRateHz } = plain.recording;
      const { outcome } = measure({ samples, sampleRateHz: sampleRateHz * factor }, { ends: UNKNOWN_ENDS });
      if (outcome.kind !== 'reading') throw new Error(outcome.why);
      expect(Math.abs(outcome.frequencyHz.value / factor - reading.value)).toBeLessThan(reading.u95 + outcome.frequencyHz.u95 / factor);
    }),
    runs(10, 5),
  );
});

it('belts of any kind in any room give their frequency within 1 %, as often as the interval promises', () => {
  let [held, count] = [0, 0];
  fc.assert(
    fc.property(
      fc.record({
        forceN: fc.double({ min: 4, max: 25, noNaN: true }),
        spanLengthM: fc.double({ min: 0.1, max: 0.3, noNaN: true }),
        decayS: fc.double({ min: 0.12, max: 0.28, noNaN: true }),
        placeShare: fc.double({ min: 0.15, max: 0.45, noNaN: true }),
        seed: fc.integer({ min: 1, max: 10_000 }),
      }),
      ({ forceN, spanLengthM, decayS, placeShare, seed }) => {
        const take = plainTake({ span: { forceN, spanLengthM, decayS, axialStiffnessN: 1500 }, plucks: [{ ...one, placeShare }] }, seed);
        const { outcome } = measure(take.recording, spanOf(spanLengthM));
        if (outcome.kind !== 'reading') throw new Error(outcome.why);
        expect(Math.abs(outcome.frequencyHz.value / take.firstHz - 1)).toBeLessThan(0.01);
        count++;
        if (Math.abs(outcome.frequencyHz.value - take.firstHz) <= outcome.frequencyHz.u95) held++;
      },
    ),
    runs(30, 6),
  );
  expect(held / count).toBeGreaterThan(0.85); // of 30 draws; 95 % are meant
});

/** Every number in an answer, however deep. */
function* numbersIn(value: unknown): Generator<number> {
  if (typeof value === 'number') yield value;
  else if (value && typeof value === 'object') for (const inner of Object.values(value)) yield* numbersIn(inner);
}

function expectSound(measured: Measurement) {
  for (const number of numbersIn(measured)) expect(Number.isNaN(number)).toBe(false);
  expect(['reading', 'nothing']).toContain(measured.outcome.kind);
  for (const { frequencyHz } of measured.plucks) {
    expect(frequencyHz.value).toBeGreaterThan(0);
    expect(Number.isFinite(frequencyHz.value)).toBe(true);
    expect(frequencyHz.u95).toBeGreaterThan(0);
  }
}

const SETUPS = [setup, { ends: UNKNOWN_ENDS }, spanOf(0.02), spanOf(2)];

/** Pieces of sound of many kinds, one after another. */
const even = (min: number, max: number) => fc.noBias(fc.integer({ min: 0, max: 10_000 })).map((n) => min + ((max - min) * n) / 10_000);
const piece = fc.record({
  kind: fc.constantFrom('silence', 'constant', 'noise', 'spikes', 'square', 'ramp', 'tone', 'ring', 'rails', 'steps'),
  size: even(-5, 0.3).map((power) => 10 ** power),
  seconds: even(0.02, 0.7),
  hz: even(0, 3.6).map((power) => 10 ** power),
});
type Piece = typeof piece extends fc.Arbitrary<infer T> ? T : never;

function samplesOf({ kind, size, seconds, hz }: Piece, rateHz: number, seed: number): number[] {
  const random = createRandom(seed);
  const turn = (t: number) => Math.sin((2 * Math.PI * hz * t) / rateHz);
  const at: Record<Piece['kind'], (t: number) => number> = {
    silence: () => 0,
    constant: () => size,
    noise: () => size * random.gaussian(),
    spikes: () => (random.uniform() < 0.002 ? size : 0),
    square: (t) => size * Math.sign(turn(t)),
    ramp: (t) => (size * t) / rateHz,
    tone: (t) => size * turn(t),
    ring: (t) => size * turn(t) * Math.exp(-t / (0.15 * rateHz)),
    rails: (t) => Math.max(-1, Math.min(1, 20 * turn(t))),
    steps: (t) => size * Math.floor(random.uniform() + t / 3000),
  };
  return Array.from({ length: Math.round(seconds * rateHz) }, (_, t) => at[kind](t));
}

it('measures anything without a fault: no exception, no NaN', () => {
  fc.assert(
    fc.property(
      fc.noBias(fc.array(piece, { minLength: 2, maxLength: 6, size: 'max' })),
      fc.constantFrom(8000, 11_025, 16_000, 44_100),
      fc.constantFrom(...SETUPS),
      (pieces, sampleRateHz, given) => {
        const samples = Float32Array.from(pieces.flatMap((one, i) => samplesOf(one, sampleRateHz, i + 1)));
        expectSound(measure({ samples, sampleRateHz }, given));
      },
    ),
    runs(25, 7),
  );
});

it('measures the shortest and the strangest samples without a fault', () => {
  fc.assert(
    fc.property(
      fc.array(fc.float({ min: -4, max: 4, noNaN: true }), { maxLength: 400, size: 'max' }),
      fc.noBias(fc.integer({ min: 1, max: 60 })),
      fc.constantFrom(...SETUPS),
      (values, repeat, given) => {
        const samples = Float32Array.from({ length: values.length * repeat }, (_, t) => values[t % values.length]!);
        expectSound(measure({ samples, sampleRateHz: 8000 }, given));
      },
    ),
    runs(40, 8),
  );
});
