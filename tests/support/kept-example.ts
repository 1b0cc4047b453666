/** A document with something in every section, for tests of the store and of the file. Invented. */

import type { KeptDocument } from '../../shared/document.ts';
import { EMPTY_SETUP } from '../../src/ui/state/span-setup.ts';

const when = { at: '2026-03-02T08:15:00.000Z', zone: 'Europe/Lisbon' };
const item = (id: string) => ({ id, made: when, changedAt: when.at });

export const exampleDocument: KeptDocument = {
  machines: [
    {
      ...item('machine-1'),
      name: 'Dovetable',
      note: 'pen plotter',
      layout: { kind: 'crossed-gantry', sizes: { widthM: 0.4, depthM: 0.3 } },
      belts: ['a', 'b'].map((letter) => ({
        id: `belt-${letter}`,
        name: letter.toUpperCase(),
        beltId: 'roll-1',
        lengthM: 1.62,
        spans: [
          {
            id: `span-${letter}`,
            name: 'front',
            lengthM: { value: 0.18, standardUncertainty: 0.0005 },
            lengthFrom: 'measured' as const,
            carriageM: { x: 0.1, y: 0 },
            carriageNote: 'at the far stop',
            ends: ['pulley', 'clip'] as ['pulley', 'clip'],
            lie: 'edge' as const,
          },
        ],
        targets: [{ forceN: { lowN: 6, highN: 9 }, source: { kind: 'entered' as const, from: '6', to: '9', unit: 'N' }, set: when }],
        adjuster: { kind: 'screw' as const, leadM: 0.0005, pathPerTravel: 2, clockwiseTightens: true },
      })),
      groups: [{ id: 'pair', name: 'A and B', beltIds: ['belt-a', 'belt-b'], toleranceRelative: 0.05, sameRoll: true, crossed: true }],
    },
  ],
  belts: [
    {
      ...item('roll-1'),
      name: 'The roll in the drawer',
      catalogueId: 'curvilinear-2mm-6mm',
      linearDensityKgPerM: [
        { value: 0.0078, standardUncertainty: 0.0005, from: 'told', got: when },
        { value: 0.0079, standardUncertainty: 0.0001, from: 'weighed', got: when, note: 'a metre on the letter scale' },
      ],
      bendingStiffnessNm2: [],
      axialStiffnessN: [],
      ratedForceN: [],
    },
  ],
  takes: [
    {
      ...item('take-1'),
      heard: when,
      on: { machineId: 'machine-1', machineBeltId: 'belt-a', spanId: 'span-a' },
      source: 'microphone',
      processing: 'untouched',
      sampleRateHz: 48_000,
      sounds: [
        {
          startS: 0.31,
          frequencyHz: { value: 86.6, standardUncertainty: 0.02 },
          partials: [{ number: 1, frequencyHz: { value: 86.6, standardUncertainty: 0.02 }, levelDbfs: -20.5, decayS: 0.2 }],
          evidence: {
            cyclesToDecay: 17,
            levelOverBackgroundDb: 40,
            clippedShare: 0,
            glideRelative: 0.001,
            leadOverRival: 20,
            foreignHz: [],
            ownShare: 0.98,
            firstPartialHeard: true,
            bandwidthHz: 20_000,
          },
        },
      ],
      entered: { ...EMPTY_SETUP, ends: ['pulley', 'clip'], spanLength: '180' },
      now: {
        setup: {
          spanLengthM: { value: 0.18, standardUncertainty: 0.0005 },
          ends: [{ kind: 'between', low: 0, high: 0.5 }, { kind: 'unknown' }],
        },
        answer: {
          frequencyHz: { value: 86.6, standardUncertainty: 0.02, u95: 0.04 },
          forceN: { value: 7.3, low: 6.8, high: 7.9, u95: 0.6 },
          grade: 'trusted',
          soundGrade: 'trusted',
          reasonIds: [],
          pluckCount: 1,
        },
        program: '0.1.0',
        computedAt: when.at,
      },
      answeredBefore: [],
    },
  ],
  gauges: [
    {
      ...item('gauge-1'),
      name: 'Brass fork',
      note: 'three contacts',
      unit: 'divisions',
      beltId: 'roll-1',
      targetForceN: { lowN: 6, highN: 9 },
      needsSpanM: 0.09,
      baseM: 0.06,
      deflectionM: { value: 0.0012, standardUncertainty: 0.0001 },
      makerChart: [{ reading: 2, forceN: 8 }],
      rig: { kind: 'straight', scaleStepKg: 0.001, scaleRelativeU: 0.003, latitudeDeg: 38.7 },
      weights: [{ id: 'jar', name: 'jar of water', massKg: 0.75 }],
      readings: [{ id: 'read-1', weightId: 'jar', how: 'inserted', series: 'A', reading: 2.4, at: when }],
      checkPiece: { name: 'strip', atCalibration: [3.1, 3.2, 3.1], later: [{ at: when, reading: 3.15 }] },
      study: [{ person: 'Alda', weightId: 'jar', reading: 2.4 }],
    },
  ],
  entries: [{ ...item('entry-1'), happened: when, kind: 'note', text: 'Moved to the window', machineId: 'machine-1', machineBeltIds: [] }],
  rivals: [{ id: 'gauge-1.x7', section: 'gauges', item: { ...item('gauge-1'), name: 'Brass fork, the old one' } }],
};
