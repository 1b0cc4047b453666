import { describe, expect, it, vi } from 'vitest';
import { soundOfPluck } from '../../../../src/core/frequency/pluck-sound.ts';
import { searchBounds } from '../../../../src/core/frequency/search-bounds.ts';
import { cutSegment } from '../../../../src/core/pluck/segment.ts';
import { UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { spanOf } from '../../../support/heard.ts';
import { stiffPartials, type Tone, tones } from '../../../support/tones.ts';

/** Many draws; a busy machine takes its time. */
vi.setConfig({ testTimeout: 30_000 });

const rateHz = 8000;
const touchS = 0.7;
const TOLD = searchBounds(spanOf(0.15));
const UNTOLD = searchBounds({ ends: UNKNOWN_ENDS });

const ring = (options: Partial<Parameters<typeof stiffPartials>[0]> = {}) =>
  stiffPartials({
    firstHz: 121,
    inharmonicity: 0.006,
    numbers: [1, 2, 3, 4, 5],
    amplitude: 0.3,
    decayS: 0.18,
    startS: touchS,
    ...options,
  });
const undampedHz = (tone: Tone) => Math.hypot(tone.frequencyHz, 1 / (2 * Math.PI * tone.decayS!));

function answer(list: readonly Tone[], { noise = 0.001, seed = 1, bounds = TOLD, clippedShare = 0 } = {}) {
  const samples = tones(list, { rateHz, count: 11_200, noise, seed });
  const segment = cutSegment(samples, { touch: touchS * rateHz, rateHz, originS: 3 })!;
  return soundOfPluck(segment, { bounds, clippedShare, bandwidthHz: 24_000 });
}

function sound(...given: Parameters<typeof answer>) {
  const found = answer(...given);
  if (!('sound' in found)) throw new Error(`no pluck: ${found.why}`);
  return found.sound;
}

describe('a plain ring', () => {
  const list = ring();
  const heard = sound(list);

  it('has its first partial, undamped, within the uncertainty', () => {
    const { value, standardUncertainty } = heard.frequencyHz;
    expect(Math.abs(value - undampedHz(list[0]!))).toBeLessThan(3 * standardUncertainty);
    expect(standardUncertainty / value).toBeLessThan(0.001);
  });

  it('has its partials by number, with frequency, level at the onset and decay', () => {
    expect(heard.partials.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5]);
    heard.partials.forEach((partial, i) => {
      const tone = list[i]!;
      expect(Math.abs(partial.frequencyHz.value / undampedHz(tone) - 1)).toBeLessThan(0.002);
      expect(Math.abs(partial.levelDbfs - 20 * Math.log10(tone.amplitude))).toBeLessThan(0.5);
      expect(Math.abs(partial.decayS / tone.decayS! - 1)).toBeLessThan(0.05);
    });
  });

  it('has its inharmonicity', () => {
    const { value, standardUncertainty } = heard.inharmonicity!;
    expect(Math.abs(value - 0.006)).toBeLessThan(4 * standardUncertainty);
  });

  it('has the figures that its sound is judged by', () => {
    const { evidence } = heard;
    expect(Math.abs(evidence.cyclesToDecay / (121 * 0.18) - 1)).toBeLessThan(0.03);
    expect(Math.abs(evidence.glideRelative)).toBeLessThan(0.001);
    expect(evidence.leadOverRival).toBeGreaterThan(1);
    expect(evidence.ownShare).toBeGreaterThan(0.95);
    expect(evidence.firstPartialHeard).toBe(true);
    expect(evidence.bandwidthHz).toBe(24_000);
    expect(evidence.foreignHz).toEqual([]);
    expect(evidence.humOn).toBeUndefined();
    expect(evidence.toneOn).toBeUndefined();
    expect(heard.startS).toBeCloseTo(3 + touchS, 9);
  });

  // Energy of the decay over the noise in its band: a² τ rate / (8 σ²).
  it('stands over its background by what its decay gathers', () => {
    const expectedDb = 10 * Math.log10((0.3 ** 2 * 0.18 * rateHz) / (8 * 0.05 ** 2));
    expect(Math.abs(sound(list, { noise: 0.05 }).evidence.levelOverBackgroundDb - expectedDb)).toBeLessThan(3);
  });
});

describe('what else sounds is told', () => {
  it('a first partial that was not heard', () => {
    const list = ring({ numbers: [2, 3, 4, 5] });
    const { frequencyHz, evidence, partials } = sound(list);
    expect(evidence.firstPartialHeard).toBe(false);
    expect(partials[0]!.number).toBe(2);
    expect(Math.abs(frequencyHz.value / 121 - 1)).toBeLessThan(0.005);
    expect(Math.abs(frequencyHz.value - 121)).toBeLessThan(3 * frequencyHz.standardUncertainty);
  });

  it('hum on a partial, and a tone on another', () => {
    const hum = sound([...ring({ firstHz: 100.5 }), { frequencyHz: 100.02, amplitude: 0.1 }]).evidence;
    expect(hum.humOn!.partialNumber).toBe(1);
    expect(Math.abs(hum.humOn!.humHz - 100.02)).toBeLessThan(0.2);
    const list = ring();
    const tone = sound([...list, { frequencyHz: list[1]!.frequencyHz + 0.7, amplitude: 0.03 }]).evidence;
    expect(tone.toneOn!.partialNumber).toBe(2);
    expect(tone.humOn).toBeUndefined();
  });

  it('hum that lies elsewhere is no matter', () => {
    const hum = [50.02, 150.06, 250.1].map((frequencyHz) => ({ frequencyHz, amplitude: 0.1 }));
    const { evidence, frequencyHz } = sound([...ring(), ...hum]);
    expect([evidence.humOn, evidence.toneOn]).toEqual([undefined, undefined]);
    expect(Math.abs(frequencyHz.value / 121 - 1)).toBeLessThan(0.002);
  });

  it('strangers that ring along', () => {
    const { evidence } = sound([...ring(), { frequencyHz: 190, amplitude: 0.1, decayS: 0.15, startS: touchS }]);
    expect(evidence.foreignHz.some((hz) => Math.abs(hz - 190) < 1)).toBe(true);
    expect(evidence.ownShare).toBeLessThan(0.95);
  });

  it('the share at the rails', () => {
    expect(sound(ring(), { clippedShare: 0.07 }).evidence.clippedShare).toBe(0.07);
  });
});

/** Partials that all glide: f (1 + g exp(−2t/τ)), phase 2π f (t + (g τ/2)(1 − exp(−2t/τ))). */
function gliding(glide: number, firstHz: number): Float64Array {
  const decayS = 0.18;
  const samples = tones([], { rateHz, count: 11_200, noise: 5e-4 });
  for (let i = Math.ceil(touchS * rateHz); i < samples.length; i++) {
    const t = i / rateHz - touchS;
    const theta = t + ((glide * decayS) / 2) * (1 - Math.exp((-2 * t) / decayS));
    for (const { frequencyHz, amplitude, phase } of ring({ firstHz, inharmonicity: 0.003, numbers: [1, 2, 3] }))
      samples[i]! += amplitude * Math.exp(-t / decayS) * Math.cos(2 * Math.PI * frequencyHz * theta + phase!);
  }
  return samples;
}

it.each([
  [0.01, 121.4],
  [0.03, 90.2],
  [0.06, 121],
  [0.06, 121.4],
  [0.1, 204.3],
])('a hard pluck whose frequency starts %d high is taken to small amplitude, at %d Hz', (glide, firstHz) => {
  const segment = cutSegment(gliding(glide, firstHz), { touch: touchS * rateHz, rateHz, originS: 0 })!;
  const found = soundOfPluck(segment, { bounds: TOLD, clippedShare: 0, bandwidthHz: 24_000 });
  if (!('sound' in found)) throw new Error(found.why);
  const { frequencyHz, evidence } = found.sound;
  expect(Math.abs(frequencyHz.value / firstHz - 1)).toBeLessThan(0.1 * glide);
  expect(Math.abs(frequencyHz.value - firstHz)).toBeLessThan(3 * frequencyHz.standardUncertainty);
  expect(evidence.glideRelative).toBeGreaterThan(0);
  expect(evidence.glideRelative).toBeLessThan(2.5 * glide);
});

describe('what is no plucked span', () => {
  it('noise alone', () => {
    for (let seed = 1; seed <= 8; seed++) expect(answer([], { noise: 0.1, seed })).not.toHaveProperty('sound');
  });

  it('a ring that the noise covers', () => {
    for (let seed = 1; seed <= 5; seed++) expect(answer(ring({ amplitude: 0.003 }), { noise: 0.1, seed })).not.toHaveProperty('sound');
  });

  it('tones that begin and are held', () => {
    const held = [121, 243, 367].map((frequencyHz) => ({ frequencyHz, amplitude: 0.1, startS: touchS }));
    expect(answer(held)).not.toHaveProperty('sound');
    expect(answer(held, { bounds: UNTOLD })).not.toHaveProperty('sound');
  });

  it('a knock', () => {
    const knock = [180, 330, 547, 910].map((frequencyHz) => ({ frequencyHz, amplitude: 0.3, decayS: 0.006, startS: touchS }));
    expect(answer(knock)).not.toHaveProperty('sound');
  });

  it('silence', () => {
    expect(answer([], { noise: 0 })).not.toHaveProperty('sound');
  });
});

it('states an uncertainty that holds: in noise at least nine of ten 95 % intervals hold the truth', () => {
  const list = ring({ amplitude: 0.2 });
  const truth = undampedHz(list[0]!);
  const held = Array.from({ length: 60 }, (_, seed) => {
    const { value, standardUncertainty } = sound(list, { noise: 0.03, seed: seed + 1 }).frequencyHz;
    return Math.abs(value - truth) < 1.96 * standardUncertainty;
  });
  expect(held.filter(Boolean).length).toBeGreaterThanOrEqual(54);
});
