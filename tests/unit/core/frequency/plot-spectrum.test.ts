import { describe, expect, it } from 'vitest';
import { plotSpectrum } from '../../../../src/core/frequency/plot-spectrum.ts';
import { cutSegment } from '../../../../src/core/pluck/segment.ts';
import { type Tone, tones } from '../../../support/tones.ts';

const rateHz = 8000;
const touch = 5600;
const segmentOf = (list: readonly Tone[], noise: number, end = 2 * touch) =>
  cutSegment(tones(list, { rateHz, count: end, noise }), { touch, rateHz, originS: 0 })!;
const held = [{ frequencyHz: 1000.3, amplitude: 0.1, startS: 0.7 }];

describe('plotSpectrum', () => {
  const plot = plotSpectrum(segmentOf(held, 0.01));
  const bin = Math.round(1000.3 / plot.binWidthHz);

  it('shows a tone of amplitude 0.1 at its place, 20 dB below full scale', () => {
    const top = plot.levelsDbfs.indexOf(Math.max(...plot.levelsDbfs));
    expect(Math.abs(top * plot.binWidthHz - 1000.3)).toBeLessThanOrEqual(plot.binWidthHz);
    expect(Math.abs(plot.levelsDbfs[bin]! - -20)).toBeLessThan(0.7);
  });

  it('reaches 3 kHz, room and ring on the same bins', () => {
    expect(plot.backgroundDbfs.length).toBe(plot.levelsDbfs.length);
    expect((plot.levelsDbfs.length - 1) * plot.binWidthHz).toBeGreaterThanOrEqual(3000);
  });

  it('draws the room where its noise stands in the same spectrum', () => {
    const from = Math.round(1500 / plot.binWidthHz);
    const meanPower = (levels: Float32Array) => levels.slice(from).reduce((sum, db) => sum + 10 ** (db / 10), 0) / (levels.length - from);
    expect(Math.abs(10 * Math.log10(meanPower(plot.levelsDbfs) / meanPower(plot.backgroundDbfs)))).toBeLessThan(1);
  });

  it('names the steady tones that were left out of the measurement, and still shows them', () => {
    const hum = [{ frequencyHz: 100.04, amplitude: 0.05 }];
    const { steadyHz, levelsDbfs } = plotSpectrum(segmentOf([...held, ...hum], 0.001));
    expect(steadyHz.length).toBeGreaterThan(0);
    for (const hz of steadyHz) expect(Math.abs(hz - 100.04)).toBeLessThan(1);
    expect(levelsDbfs[Math.round(100.04 / plot.binWidthHz)]!).toBeGreaterThan(-28);
  });

  it('takes a short ring too, and gives numbers for silence', () => {
    for (const { levelsDbfs, backgroundDbfs } of [plotSpectrum(segmentOf(held, 0.01, touch + 800)), plotSpectrum(segmentOf([], 0))]) {
      expect([...levelsDbfs, ...backgroundDbfs].every(Number.isFinite)).toBe(true);
    }
  });
});
