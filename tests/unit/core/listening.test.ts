import { describe, expect, it, vi } from 'vitest';
import { createListening, type ListeningEvent } from '../../../src/core/listening.ts';
import type { Recording } from '../../../src/core/samples/recording.ts';
import { type SpanSetup, UNKNOWN_ENDS } from '../../../src/core/setup.ts';
import { spanOf } from '../../support/heard.ts';
import { PLAIN, plainTake } from '../../support/plain-take.ts';
import { recordingOf, tones } from '../../support/tones.ts';

/** Many draws; a busy machine takes its time. */
vi.setConfig({ testTimeout: 30_000 });

const setup = spanOf(0.15);

interface Timed {
  readonly event: ListeningEvent;
  /** What had been pushed by then, s. */
  readonly knownS: number;
}

function listen({ samples, sampleRateHz }: Recording, blockSize = samples.length, given: SpanSetup = setup): Timed[] {
  const listening = createListening({ sampleRateHz, setup: given });
  const events: Timed[] = [];
  for (let from = 0; from < samples.length; from += blockSize) {
    const block = samples.slice(from, from + blockSize);
    const knownS = Math.min(samples.length, from + blockSize) / sampleRateHz;
    events.push(...listening.push(block).map((event) => ({ event, knownS })));
    block.fill(Number.NaN); // whoever pushed it may use it again
  }
  events.push(...listening.finish().map((event) => ({ event, knownS: samples.length / sampleRateHz })));
  return events;
}

const kinds = (events: readonly Timed[]) => events.map(({ event }) => event.kind);
const plucks = (events: readonly Timed[]) => events.flatMap(({ event }) => (event.kind === 'pluck' ? [event] : []));
const whys = (events: readonly Timed[]) => events.flatMap(({ event }) => (event.kind === 'no-pluck' ? [event.why] : []));

const one = PLAIN.plucks[0]!;
const startsS = [0.9, 1.7, 2.6];
const three = plainTake({ durationS: 3.6, plucks: startsS.map((startS) => ({ ...one, startS })) });

describe('a take of three plucks', () => {
  const whole = listen(three.recording);

  it('is told in order: ready, then each onset and its pluck', () => {
    expect(kinds(whole)).toEqual(expect.arrayContaining(['ready', 'onset', 'pluck']));
    expect(kinds(whole).filter((kind) => kind === 'ready').length).toBe(1);
    expect(kinds(whole)[0]).toBe('ready');
    expect(kinds(whole).filter((kind) => kind === 'onset').length).toBe(3);
    expect(plucks(whole).length).toBe(3);
    expect(whys(whole)).toEqual([]);
  });

  it('has each pluck at its time with its frequency', () => {
    plucks(whole).forEach(({ sound }, i) => {
      expect(Math.abs(sound.startS - startsS[i]!)).toBeLessThan(0.015);
      expect(Math.abs(sound.frequencyHz.value - three.firstHz)).toBeLessThan(3 * sound.frequencyHz.standardUncertainty);
      expect(sound.frequencyHz.standardUncertainty / three.firstHz).toBeLessThan(0.003);
    });
  });

  it('brings a spectrum of each, with its peak at a partial', () => {
    for (const { sound, spectrum } of plucks(whole)) {
      const topHz = spectrum.levelsDbfs.indexOf(Math.max(...spectrum.levelsDbfs)) * spectrum.binWidthHz;
      expect(sound.partials.some(({ frequencyHz }) => Math.abs(frequencyHz.value - topHz) < 3)).toBe(true);
    }
  });

  it.each([128, 333, 1024, 16_000])('is the same in blocks of %d', (blockSize) => {
    // Only when it is ready depends on when it is asked, and an onset is told before its pluck, together or apart.
    const of = (events: readonly Timed[], kind: ListeningEvent['kind']) =>
      events.flatMap(({ event }) => (event.kind === kind ? [event] : []));
    const found = listen(three.recording, blockSize);
    for (const kind of ['onset', 'pluck', 'no-pluck'] as const) expect(of(found, kind)).toEqual(of(whole, kind));
  });

  it('is told while it goes on, each pluck well before the one after next', () => {
    const live = listen(three.recording, 160);
    const knownS = live.filter(({ event }) => event.kind === 'pluck').map(({ knownS }) => knownS);
    knownS.forEach((s, i) => {
      expect(s - startsS[i]!).toBeLessThan(1.3);
    });
    live.forEach(({ event, knownS: s }) => {
      if (event.kind === 'ready' || event.kind === 'onset') expect(event.atS).toBeLessThanOrEqual(s);
    });
  });
});

describe('where there is no pluck it says why', () => {
  const rateHz = 16_000;
  const of = (samples: Float64Array) => whys(listen(recordingOf(samples, rateHz)));

  it.each([0, 1, 500, 1600])('%d samples are too short', (count) => {
    expect(of(new Float64Array(count))).toEqual(['too-short']);
  });

  it('digital silence', () => {
    expect(of(new Float64Array(2 * rateHz))).toEqual(['silence']);
  });

  it('noise, hum, a constant: nothing begins in them', () => {
    expect(of(tones([], { rateHz, count: 2 * rateHz, noise: 0.01 }))).toEqual(['no-onset']);
    expect(of(tones([{ frequencyHz: 50.02, amplitude: 0.2 }], { rateHz, count: 2 * rateHz, noise: 0.001 }))).toEqual(['no-onset']);
    expect(of(tones([], { rateHz, count: 2 * rateHz, noise: 1e-4 }).map((x) => x + 0.3))).toEqual(['no-onset']);
  });

  it('a clap: something begins, but it does not ring', () => {
    const clap = tones([], { rateHz, count: 2 * rateHz, noise: 1 }).map((x, t) => {
      const s = t / rateHz - 0.8;
      return 0.001 * x + (s > 0 ? 0.3 * x * Math.exp(-s / 0.006) : 0);
    });
    const found = listen(recordingOf(clap, rateHz));
    expect(plucks(found)).toEqual([]);
    expect(whys(found).some((why) => why === 'not-a-span' || why === 'too-quiet')).toBe(true);
  });
});

it('hears a pluck at the very end as far as it goes', () => {
  const { samples, sampleRateHz } = three.recording;
  const cut = listen({ samples: samples.slice(0, Math.round(2.75 * sampleRateHz)), sampleRateHz });
  expect(plucks(cut).length).toBeGreaterThanOrEqual(2);
  for (const { sound } of plucks(cut)) expect(Math.abs(sound.frequencyHz.value / three.firstHz - 1)).toBeLessThan(0.01);
});

it('forgets what is long past: a pluck after a minute is as good as at once', () => {
  const { samples, sampleRateHz } = plainTake().recording;
  const listening = createListening({ sampleRateHz, setup: { ends: UNKNOWN_ENDS } });
  const random = tones([], { rateHz: sampleRateHz, count: sampleRateHz, noise: 0.0008 });
  const second = Float32Array.from(random);
  const events: ListeningEvent[] = [];
  for (let s = 0; s < 60; s++) events.push(...listening.push(second));
  events.push(...listening.push(samples), ...listening.finish());
  const found = events.filter((event) => event.kind === 'pluck');
  expect(found.length).toBe(1);
  expect(Math.abs(found[0]!.sound.startS - 60.5)).toBeLessThan(0.02);
});

it('refuses a rate that is none', () => {
  expect(() => createListening({ sampleRateHz: 0, setup })).toThrow(RangeError);
});
