import { describe, expect, it } from 'vitest';
import { joinedClips } from '../../../../src/ui/state/joined-clips.ts';

const RATE_HZ = 1000;
const clip = (startS: number, value: number, length = 500) => ({
  samples: new Float32Array(length).fill(value),
  sampleRateHz: RATE_HZ,
  startS,
});

describe('kept sounds as one recording', () => {
  it('have each pluck where it was, with silence between', () => {
    const { samples, sampleRateHz } = joinedClips([clip(2, 0.2), clip(0.5, 0.1)])!;
    expect(sampleRateHz).toBe(RATE_HZ);
    expect(samples.length).toBe(2000);
    expect([samples[0], samples[600], samples[1600]].map((value) => Number(value!.toFixed(3)))).toEqual([0.1, 0, 0.2]);
  });

  it('cut a gap that holds nothing, and let clips overlap', () => {
    expect(joinedClips([clip(0, 0.1), clip(60, 0.2)])!.samples.length).toBe(500 + 3000 + 500);
    const { samples } = joinedClips([clip(0, 0.1), clip(0.4, 0.2)])!;
    expect(samples.length).toBe(900);
    expect(Number(samples[450]!.toFixed(3))).toBe(0.2);
  });

  it('are none where there is no clip, or they are of different rates', () => {
    expect(joinedClips([])).toBeUndefined();
    expect(joinedClips([clip(0, 0.1), { ...clip(1, 0.1), sampleRateHz: 44_100 }])).toBeUndefined();
  });
});
