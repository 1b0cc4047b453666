import { describe, expect, it } from 'vitest';
import { microphoneLimit } from '../../../../src/core/machine/microphone-limit.ts';
import { ROOM_S, type TrialQuestion, trial } from '../../../../src/core/machine/trial.ts';
import type { SpanSetup } from '../../../../src/core/setup.ts';
import { UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { backgroundSound } from '../../../../src/core/synthesis/background.ts';
import { throughCorner } from '../../../../src/core/synthesis/microphone.ts';

const RATE_HZ = 16_000;
const SETUP: SpanSetup = {
  belt: {
    linearDensityKgPerM: { value: 0.0079, standardUncertainty: 0.0001 },
    densityFrom: 'weighed',
    bendingStiffnessNm2: { kind: 'range', low: 5e-5, high: 3e-4 },
    toothPitchM: 0.002,
  },
  ends: UNKNOWN_ENDS,
};

function room(levelDbfs: number, cornerHz?: number) {
  const sampleCount = Math.round((ROOM_S + 1) * RATE_HZ);
  const sound = backgroundSound({ pinkDbfs: levelDbfs, whiteDbfs: levelDbfs - 12 }, { seed: 5, sampleRateHz: RATE_HZ, sampleCount });
  const heard = cornerHz === undefined ? sound : throughCorner(sound, { cornerHz, order: 4 }, RATE_HZ);
  return { samples: Float32Array.from(heard), sampleRateHz: RATE_HZ };
}

const question = (change: Partial<TrialQuestion> = {}): TrialQuestion => ({
  setup: SETUP,
  forceN: { lowN: 6, highN: 9 },
  lowestHz: 20,
  room: room(-60),
  peakDbfs: -15,
  spansM: [0.12, 0.18],
  plucksEach: 5,
  seed: 3,
  ...change,
});

function run(asked: TrialQuestion) {
  const shares: number[] = [];
  const running = trial(asked);
  for (;;) {
    const { value, done } = running.next();
    if (done) return { shares, rows: value };
    shares.push(value as number);
  }
}

describe('trial', { timeout: 60_000 }, () => {
  it('finds nearly every pluck in a quiet room, and tells how far it has come', () => {
    const { rows, shares } = run(question());
    expect(rows.map(({ spanLengthM, plucks }) => [spanLengthM, plucks])).toEqual([
      [0.12, 5],
      [0.18, 5],
    ]);
    expect(rows.reduce((sum, { right }) => sum + right, 0)).toBeGreaterThanOrEqual(9);
    expect(shares).toHaveLength(10);
    expect(shares.at(-1)).toBe(1);
    expect(shares.toSorted((a, b) => a - b)).toEqual(shares);
  });

  it('finds few in a room as loud as the plucks, and takes none of them for another', () => {
    const { rows } = run(question({ room: room(-16), peakDbfs: -24, spansM: [0.18] }));
    expect(rows[0]!.right).toBeLessThanOrEqual(2);
    expect(rows[0]!.wrong).toBeLessThanOrEqual(1);
  });

  it('draws the same plucks from the same seed, others from another', () => {
    const asked = question({ spansM: [0.15], plucksEach: 3, room: room(-30), peakDbfs: -22 });
    expect(run(asked).rows).toEqual(run(asked).rows);
  });

  it('needs some seconds of the room', () => {
    const short = { samples: new Float32Array(RATE_HZ), sampleRateHz: RATE_HZ };
    expect(() => run(question({ room: short }))).toThrow(/3 s of room/u);
  });
});

describe('microphoneLimit', () => {
  const spectrum = (levelAt: (hz: number) => number) => ({
    binWidthHz: 1.25,
    backgroundDbfs: Float32Array.from({ length: 2400 }, (_, k) => levelAt(Math.max(1, k * 1.25))),
  });
  const pink = (hz: number) => -80 - 10 * Math.log10(hz / 200);

  it('finds no limit in a room that grows louder downwards', () => {
    expect(microphoneLimit(spectrum(pink))).toEqual({ lowestHz: 20, by: 'none' });
  });

  it('finds the corner of a microphone within an octave', () => {
    const through = (cornerHz: number, order: number) => (hz: number) => pink(hz) - 10 * order * Math.log10(1 + (cornerHz / hz) ** 2);
    const { lowestHz, by } = microphoneLimit(spectrum(through(100, 2)))!;
    expect(by).toBe('fall');
    expect(lowestHz).toBeGreaterThan(35);
    expect(lowestHz).toBeLessThan(110);
    expect(microphoneLimit(spectrum(through(100, 4)))!.lowestHz).toBeGreaterThan(lowestHz);
  });

  it('does not mind mains hum, and says nothing of a silent input', () => {
    const humming = (hz: number) => (Math.abs(hz - 50) < 1.5 ? -40 : pink(hz));
    expect(microphoneLimit(spectrum(humming))).toEqual({ lowestHz: 20, by: 'none' });
    expect(microphoneLimit(spectrum(() => -Infinity))).toBeUndefined();
  });
});
