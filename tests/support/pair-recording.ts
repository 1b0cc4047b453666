/** A recording of two belts plucked in turn, as a microphone would hear somebody at the machine: written to a file that a browser takes as its microphone. */

import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PLAIN, plainTake } from './plain-take.ts';
import { formatContent, int16Data, wavBytes } from './wav-bytes.ts';

export interface PluckedBelt {
  readonly forceN: number;
  readonly spanLengthM: number;
  readonly times: number;
}

const SAMPLE_RATE_HZ = 48_000;
const LEAD_S = 2.2;
const APART_S = 1.5;

/** @returns path of the file, and how long it plays */
export function pairRecording(belts: readonly PluckedBelt[]): { readonly path: string; readonly durationS: number } {
  const pieces = belts.map(({ forceN, spanLengthM, times }, index) => {
    const leadS = index === 0 ? LEAD_S : 0.8;
    const plucks = Array.from({ length: times }, (_, k) => ({ ...PLAIN.plucks[0]!, startS: leadS + k * APART_S }));
    const durationS = leadS + times * APART_S;
    return plainTake({ sampleRateHz: SAMPLE_RATE_HZ, durationS, span: { forceN, spanLengthM }, plucks }, 11 + index).recording.samples;
  });
  const samples = new Float32Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    samples.set(piece, at);
    at += piece.length;
  }
  const path = join(mkdtempSync(join(tmpdir(), 'plucks-')), 'plucks.wav');
  const format = formatContent({ tag: 1, frameBytes: 2, sampleRateHz: SAMPLE_RATE_HZ });
  writeFileSync(path, wavBytes({ format, data: int16Data(samples) }));
  return { path, durationS: samples.length / SAMPLE_RATE_HZ };
}
