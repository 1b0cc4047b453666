/** Invented readings that the parts' tests and their gallery draw. */

import type { DoubtGroup } from '../../../src/ui/parts/doubt-bars.ts';
import type { RulerInterval } from '../../../src/ui/parts/force-ruler.ts';
import type { WordedReason } from '../../../src/ui/parts/reasons-list.ts';
import type { RemedyRow } from '../../../src/ui/parts/remedy-ruler.ts';
import type { ExpectedPlace, FoundPeak, SpectrumLevels } from '../../../src/ui/parts/spectrum-plot.ts';

export const target = { lowN: 6, highN: 9 };

export const pluck = (number: number, valueN: number, halfN: number): RulerInterval => ({
  lowN: valueN - halfN,
  highN: valueN + halfN,
  valueN,
  label: `pluck ${number}`,
  shortLabel: String(number),
});

export const threePlucks = [pluck(1, 7.1, 0.5), pluck(2, 7.25, 0.52), pluck(3, 7.18, 0.5)];

export const reading: RulerInterval = { lowN: 6.7, highN: 7.7, valueN: 7.2, label: 'reading', shortLabel: '' };

const fundamentalHz = 81.4;

export const peaks: readonly FoundPeak[] = [1, 2, 3, 4].map((number) => ({
  frequencyHz: number * fundamentalHz * Math.sqrt(1 + 0.0015 * number * number),
  levelDbfs: -6 - 9 * number,
  label: number === 1 ? '81.5 Hz' : (number * fundamentalHz * Math.sqrt(1 + 0.0015 * number * number)).toFixed(1),
  main: number === 1,
}));

export const expected: readonly ExpectedPlace[] = [1, 2, 3, 4].map((number) => ({
  number,
  lowHz: number * 74,
  highHz: number * 91 * Math.sqrt(1 + 0.003 * number * number),
  label: `partial ${number}`,
}));

export const humHz = 50;

/** Lines over a floor, with a little hum; the ripple is fixed, so that each drawing is the same. */
export const spectrum = (): SpectrumLevels => {
  const binWidthHz = 1.35;
  const binCount = 2200;
  const power = (dB: number) => 10 ** (dB / 10);
  const ripple = (bin: number) => 2.5 * Math.sin(bin * 1.7) * Math.sin(bin * 0.63 + 1) * Math.sin(bin * 0.11);
  const line = (hz: number, atHz: number, levelDbfs: number, halfWidthHz: number) =>
    power(levelDbfs) / (1 + ((hz - atHz) / halfWidthHz) ** 2);
  const levelsDbfs = Float32Array.from({ length: binCount }, (_, bin) => {
    const hz = bin * binWidthHz;
    const sum =
      power(-62 - hz / 80 + ripple(bin)) +
      line(hz, humHz, -45, 0.8) +
      peaks.reduce((total, peak) => total + line(hz, peak.frequencyHz, peak.levelDbfs, 2), 0);
    return 10 * Math.log10(sum);
  });
  const backgroundDbfs = Float32Array.from(
    { length: binCount },
    (_, bin) => -66 - 6 * Math.log10(1 + (bin * binWidthHz) / 60) + 0.5 * ripple(bin),
  );
  return { binWidthHz, levelsDbfs, backgroundDbfs };
};

export const budget: readonly DoubtGroup[] = [
  {
    name: 'Inputs',
    lines: [
      { name: 'end fixity', valueN: 0.29, figure: '± 0.29 N' },
      { name: 'span length', valueN: 0.27, figure: '± 0.27 N' },
      { name: 'bending stiffness', valueN: 0.24, figure: '± 0.24 N' },
      { name: 'linear density', valueN: 0.1, figure: '± 0.10 N' },
    ],
  },
  {
    name: 'Sound',
    lines: [
      { name: 'between plucks', valueN: 0.05, figure: '± 0.05 N' },
      { name: 'within a pluck', valueN: 0.03, figure: '± 0.03 N' },
    ],
  },
];

export const reasons: readonly WordedReason[] = [
  {
    id: 'span-too-short',
    grade: 'unusable',
    gradeWord: 'unusable',
    name: 'Span too short',
    sentence: 'On 45 mm the ends and the stiffness of the belt change the sound as much as the force does.',
    remedy: 'Move the carriage. From 120 mm on, this belt can be trusted.',
  },
  {
    id: 'density-from-catalogue',
    grade: 'doubtful',
    gradeWord: 'doubtful',
    name: 'Density from the catalogue',
    sentence: 'Nobody has weighed this belt; tables differ by a fifth.',
    remedy: 'Weigh a metre of it.',
    href: '#/belts',
  },
];

const remedy = (name: string, halfN: number, grade: RemedyRow['grade'], isNow = false): RemedyRow => ({
  name,
  lowN: 4 - halfN,
  highN: 4 + halfN,
  valueN: grade === 'unusable' ? undefined : 4,
  grade,
  gradeWord: grade,
  figure: `± ${halfN.toFixed(1)} N`,
  isNow,
});

export const remedies: readonly RemedyRow[] = [
  remedy('45 mm, as it is now', 1.7, 'unusable', true),
  remedy('A span of 130 mm', 0.4, 'trusted'),
  remedy('Ends and stiffness known', 0.6, 'doubtful'),
  remedy('Belt weighed', 1.2, 'doubtful'),
];
