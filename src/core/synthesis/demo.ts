/** The demo take, for someone without a belt in hand: an invented pen plotter in a school workshop, one belt plucked three times. */

import type { Recording } from '../samples/recording.ts';
import { type SpanSetup, UNKNOWN_ENDS } from '../setup.ts';
import { synthesiseTake, type TakeDescription } from './take.ts';

export interface DemoTake {
  readonly recording: Recording;
  /** What the person at the plotter knows, a weighing of the belt included. */
  readonly setup: SpanSetup;
  /** The catalogue's belt of this kind. */
  readonly beltId: string;
  /** What the take was made with. */
  readonly truth: TakeDescription;
}

const DEMO_SEED = 180;

const DEMO: TakeDescription = {
  sampleRateHz: 48_000,
  durationS: 3.2,
  span: {
    forceN: 7.3,
    spanLengthM: 0.18,
    linearDensityKgPerM: 0.00786,
    bendingStiffnessNm2: 1.1e-4,
    fixity: [0.35, 0.6],
    axialStiffnessN: 6000,
    decayS: 0.17,
    dampingGrowth: 0.06,
  },
  plucks: [
    { startS: 0.9, placeShare: 0.35, heightM: 0.0005, fingerWidthM: 0.012 },
    { startS: 1.67, placeShare: 0.38, heightM: 0.0004, fingerWidthM: 0.013 },
    { startS: 2.45, placeShare: 0.33, heightM: 0.00055, fingerWidthM: 0.011 },
  ],
  listener: { placeShare: 0.3, distanceM: 0.022 },
  peakDbfs: -9,
  scrapeDb: -14,
  // A microphone close by hears some 27 dB more of the belt than of the room's tail: 0.7 m critical distance against 0.03 m.
  room: { earlyDb: -20, reverberationS: 0.3, tailDb: -27 },
  corner: { cornerHz: 60, order: 1 },
  background: { pinkDbfs: -56, whiteDbfs: -62, hum: { mainsHz: 50.02, levelDbfs: -56, harmonicsDb: [-6, -4, -14, -10] } },
};

/** Takes some tenths of a second to make; the same samples each time. */
export function demoTake(): DemoTake {
  return {
    recording: synthesiseTake(DEMO, DEMO_SEED),
    setup: {
      spanLengthM: { value: 0.18, standardUncertainty: 0.0005 },
      belt: {
        linearDensityKgPerM: { value: 0.0079, standardUncertainty: 0.0001 },
        densityFrom: 'weighed',
        bendingStiffnessNm2: { kind: 'range', low: 5e-5, high: 3e-4 },
        toothPitchM: 0.002,
        ratedForceN: 26,
      },
      ends: UNKNOWN_ENDS,
      targetForceN: { lowN: 6, highN: 9 },
    },
    beltId: 'curvilinear-2mm-6mm',
    truth: DEMO,
  };
}
