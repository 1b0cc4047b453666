/** Gauges to begin with: an empty one, and those of the demo scenario with readings that a simulated law and scatter gave. */

import type { KeptGauge, KeptGaugeReading, KeptWeight } from '../../../shared/document/gauge.ts';
import { guidedSteps } from '../../core/gauge/guided-run.ts';
import { createRandom } from '../../core/math/random.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../../core/quantity.ts';
import { newId, newItem, nowWhen } from './new-item.ts';
import { DEFAULT_BELT_ID } from './span-setup.ts';

export const newGauge = (name: string, unit: string): KeptGauge => ({ ...newItem(), name, unit, beltId: DEFAULT_BELT_ID });

/** A seed for the order of a gauge's loads, the same as long as the gauge lives. */
export function orderSeed(id: string): number {
  let word = 0x811c9dc5;
  for (let k = 0; k < id.length; k++) word = Math.imul(word ^ id.charCodeAt(k), 0x01000193);
  return word | 0;
}

interface DemoLaw {
  readonly law: (forceN: number) => number;
  readonly scatter: number;
  readonly gap: number;
  /** Reading at which its stop holds it. */
  readonly stop?: number | undefined;
  readonly more: Partial<KeptGauge>;
}

/** Invented: a good one that bends a little, a rough one with a stiff slide, one that meets its stop inside the target. */
const DEMO_LAWS: readonly DemoLaw[] = [
  {
    law: (F) => 0.05 + 0.42 * F - 0.0065 * F * F,
    scatter: 0.02,
    gap: 0.04,
    more: {
      needsSpanM: 0.09,
      baseM: 0.06,
      deflectionM: { value: 0.0012, standardUncertainty: 0.0001 },
    },
  },
  {
    law: (F) => 0.3 + 0.31 * F,
    scatter: 0.1,
    gap: 0.2,
    more: { needsSpanM: 0.12, baseM: 0.08, deflectionM: { value: 0.002, standardUncertainty: 0.0002 } },
  },
  {
    law: (F) => 0.1 + 0.5 * F,
    scatter: 0.03,
    gap: 0.05,
    stop: 4.1,
    more: { needsSpanM: 0.05, makerChart: [2, 3, 4, 5, 6].map((reading) => ({ reading, forceN: 2 * reading - 0.2 })) },
  },
];
const DEMO_MASSES_KG = [0.35, 0.55, 0.75, 0.95, 1.15, 1.35];
const DEMO_STEP = 0.05;

export interface DemoWords {
  readonly name: string;
  readonly unit: string;
  readonly weight: (grams: string) => string;
}

export function demoGauges(words: readonly DemoWords[]): readonly KeptGauge[] {
  return words.flatMap((named, index) => {
    const made = DEMO_LAWS[index];
    return made ? [demoGauge(named, made, index)] : [];
  });
}

function demoGauge({ name, unit, weight }: DemoWords, { law, scatter, gap, stop, more }: DemoLaw, index: number): KeptGauge {
  const weights: KeptWeight[] = DEMO_MASSES_KG.map((massKg) => ({ id: newId(), name: weight(`${Math.round(massKg * 1000)} g`), massKg }));
  const random = createRandom(20_31 + index);
  const at = nowWhen();
  const readings = guidedSteps({ weights, rig: 'straight', seed: index }).map((step): KeptGaugeReading => {
    const forceN = (weights.find(({ id }) => id === step.weightId)?.massKg ?? 0) * STANDARD_GRAVITY_M_PER_S2;
    const way = step.direction === 'up' ? 0.5 : step.direction === 'down' ? -0.5 : 0;
    const free = law(forceN) + way * gap + scatter * random.gaussian();
    const held = Math.min(free, stop ?? free);
    const reading = Number((Math.round(held / DEMO_STEP) * DEMO_STEP).toFixed(2));
    return { id: newId(), weightId: step.weightId, how: step.how, series: step.series, direction: step.direction, reading, at };
  });
  return {
    ...newGauge(name, unit),
    demo: true,
    targetForceN: { lowN: 6, highN: 9 },
    rig: { kind: 'straight', scaleStepKg: 0.001, scaleRelativeU: 0.001, latitudeDeg: 50 },
    weights,
    readings,
    ...more,
  };
}
