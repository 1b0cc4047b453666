/** The sound laid open agrees with what was made of it, though the amplitudes come from another sum: least squares in time. */

import { describe, expect, test } from 'vitest';
import { clipAt } from '../../../../src/analysis/sound-memory.ts';
import { inspected } from '../../../../src/core/inspection/inspect.ts';
import { createListening } from '../../../../src/core/listening.ts';
import { UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { soundOf, storedFixtures } from '../../../support/read-fixtures.ts';

function opened(name: string) {
  const recording = soundOf(storedFixtures.find((fixture) => fixture.name === name)!);
  const listening = createListening({ sampleRateHz: recording.sampleRateHz, setup: { ends: UNKNOWN_ENDS } });
  const plucks = [...listening.push(recording.samples), ...listening.finish()].filter((event) => event.kind === 'pluck');
  const { sound, spectrum } = plucks[0]!;
  const clip = clipAt({ ...recording, fromS: 0 }, sound.startS);
  const asked = { samples: clip.samples, sampleRateHz: clip.sampleRateHz, touchS: sound.startS - clip.startS, steadyHz: spectrum.steadyHz };
  return { sound, asked, inspection: inspected({ ...asked, sound }) };
}

describe.each(['plain-150mm', 'hard-pluck-glide', 'missing-first-partial', 'rate-44k1', 'rate-8k'])('%s', (name) => {
  const { sound, inspection } = opened(name);
  const fit = inspection.fit!;

  test('its partials make up nearly all of it, and stand as loud as was told', () => {
    expect(fit.explainedShare).toBeGreaterThan(0.93);
    for (const { number, atTouchDbfs } of fit.partials) {
      const told = sound.partials.find((partial) => partial.number === number)!.levelDbfs;
      if (told > -40) expect(Math.abs(atTouchDbfs - told), `partial ${number}`).toBeLessThan(1.5);
    }
  });

  test('its strongest partial is heard along its fitted line', () => {
    const strongest = fit.partials.reduce((a, b) => (b.atTouchDbfs > a.atTouchDbfs ? b : a));
    const early = strongest.heard.filter(({ atS }) => atS > 0.06 && atS < 0.25);
    expect(early.length).toBeGreaterThan(8);
    for (const { atS, levelDbfs } of early) {
      expect(Math.abs(levelDbfs - (strongest.atTouchDbfs - (20 * Math.LOG10E * atS) / strongest.decayS))).toBeLessThan(2.5);
    }
  });

  test('the picture is loudest where a strongest partial is, after the touch', () => {
    const { spectrogram: picture } = inspection;
    const top = Math.max(...fit.partials.map(({ atTouchDbfs }) => atTouchDbfs));
    const loud = fit.partials.filter(({ atTouchDbfs }) => atTouchDbfs > top - 4);
    const loudest = picture.levelsDbfs.reduce((best, level, i) => (level > picture.levelsDbfs[best]! ? i : best), 0);
    const atS = picture.fromS + Math.floor(loudest / picture.binCount) * picture.stepS;
    const loudestHz = (loudest % picture.binCount) * picture.binWidthHz;
    expect(Math.min(...loud.map(({ frequencyHz }) => Math.abs(loudestHz - frequencyHz)))).toBeLessThan(15);
    expect(atS).toBeGreaterThan(0);
    expect(atS).toBeLessThan(0.12);
  });
});

test('a wrong frequency is seen: it explains little, and much is left over', () => {
  const { sound, asked, inspection } = opened('plain-150mm');
  const off = sound.partials.map((partial) => ({
    ...partial,
    frequencyHz: { ...partial.frequencyHz, value: 1.04 * partial.frequencyHz.value },
  }));
  const wrong = inspected({ ...asked, sound: { ...sound, partials: off } });
  expect(wrong.fit!.explainedShare).toBeLessThan(0.5);
  expect(inspection.fit!.explainedShare).toBeGreaterThan(0.95);
});

test('what was no pluck has a picture and no fit', () => {
  const { asked } = opened('plain-150mm');
  const inspection = inspected(asked);
  expect(inspection.fit).toBeUndefined();
  expect(inspection.spectrogram.columnCount).toBeGreaterThan(50);
  expect(inspection.whole.length).toBeGreaterThan(50);
});

test('too little sound for a picture is no fault', () => {
  const { spectrogram, whole } = inspected({ samples: new Float32Array(100), sampleRateHz: 48_000, touchS: 0, steadyHz: [] });
  expect([spectrogram.columnCount, whole.length]).toEqual([0, 0]);
});
