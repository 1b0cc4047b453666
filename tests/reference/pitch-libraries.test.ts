/**
 * Frequencies beside those of other libraries on plain plucks: pitchy 4 (McLeod's normalised square difference) and pitchfinder 2 (YIN).
 * They take a period for granted, which a stiff span has not quite: on spans of little stiffness all agree within 0.5 %.
 */

import pitchfinder from 'pitchfinder';
import { PitchDetector } from 'pitchy';
import { describe, expect, it } from 'vitest';
import { measure } from '../../src/core/measure.ts';
import { UNKNOWN_ENDS } from '../../src/core/setup.ts';
import { PLAIN, plainTake } from '../support/plain-take.ts';

const sampleRateHz = 44_100;
const WINDOW = 4096;

describe.each([
  ['300 mm at 13 N', { spanLengthM: 0.3, forceN: 13 }],
  ['250 mm at 6 N', { spanLengthM: 0.25, forceN: 6 }],
  ['150 mm at 25 N, thin', { spanLengthM: 0.15, forceN: 25, bendingStiffnessNm2: 5e-5 }],
  ['400 mm at 30 N', { spanLengthM: 0.4, forceN: 30 }],
])('%s', (_, span) => {
  const take = plainTake({ sampleRateHz, span: { axialStiffnessN: 0, ...span }, background: { whiteDbfs: -75 } });
  const { outcome } = measure(take.recording, { ends: UNKNOWN_ENDS });
  const oursHz = outcome.kind === 'reading' ? outcome.frequencyHz.value : 0;
  /** When the finger's noise and the highest partials have died. */
  const from = Math.round((PLAIN.plucks[0]!.startS + 0.15) * sampleRateHz);
  const window = take.recording.samples.slice(from, from + WINDOW);

  it('is near the beam that was simulated', () => {
    expect(Math.abs(oursHz / take.firstHz - 1)).toBeLessThan(0.001);
  });

  it('agrees with McLeod’s method', () => {
    const [hz, clarity] = PitchDetector.forFloat32Array(WINDOW).findPitch(window, sampleRateHz);
    expect(clarity).toBeGreaterThan(0.9);
    expect(Math.abs(oursHz / hz - 1)).toBeLessThan(0.005);
  });

  it('agrees with YIN', () => {
    // Turned up: that implementation takes the difference at a lag of one sample for 1, whatever it is.
    const hz = pitchfinder.YIN({ sampleRate: sampleRateHz })(window.map((x) => 1000 * x));
    expect(Math.abs(oursHz / (hz ?? 0) - 1)).toBeLessThan(0.005);
  });
});
