/** What a calibration makes of a synthetic gauge, counted against the truth. */

import { type Calibration, calibrate } from '../../../src/core/gauge/calibration.ts';
import { convert } from '../../../src/core/gauge/convert.ts';
import { type GaugeKind, plantedRun, readingOf, type SyntheticGauge, syntheticGauge } from './gauge.ts';

export interface Trial {
  readonly kind: GaugeKind;
  readonly index: number;
  readonly calibration: Calibration | undefined;
  readonly fit: string;
  /** Conversions of new readings at forces between the loads and below a stop. */
  readonly asked: number;
  readonly answered: number;
  readonly held: number;
  readonly planted: number;
  readonly named: number;
  readonly sound: number;
  readonly wronglyNamed: number;
  /** Readings at forces above the stop, and how many of them were given a number. */
  readonly aboveStop: number;
  readonly answeredAboveStop: number;
  /** Mean of U over force of what was answered. */
  readonly meanRelativeU: number;
}

const ASKED = 60;
const ABOVE_STOP = 10;

export function trialOf(seed: number, kind: GaugeKind, index: number): Trial {
  const gauge = syntheticGauge(seed, kind, index);
  const planted = plantedRun(gauge);
  const found = calibrate({ rows: planted, toleranceRelative: 0.2 });
  const calibration = found.kind === 'calibration' ? found : undefined;
  const slipped = new Set(planted.filter((row) => row.slipped).map(({ row }) => row));
  const named = new Set(calibration?.slips.map(({ row }) => row) ?? []);
  const inside = asked(gauge, planted, calibration);
  const above = gauge.stopN === undefined ? [] : Array.from({ length: ABOVE_STOP }, () => gauge.stopN! * gauge.random.between(1.02, 1.5));
  const answeredAbove = above.filter((forceN) => calibration && convert(calibration, readingOf(gauge, forceN, 0)).kind === 'converted');
  return {
    kind,
    index,
    calibration,
    fit: calibration?.fit.curve.kind ?? 'none',
    ...inside,
    planted: slipped.size,
    named: [...slipped].filter((row) => named.has(row)).length,
    sound: planted.length - slipped.size,
    wronglyNamed: [...named].filter((row) => !slipped.has(row)).length,
    aboveStop: above.length,
    answeredAboveStop: answeredAbove.length,
  };
}

function asked(gauge: SyntheticGauge, planted: ReturnType<typeof plantedRun>, calibration: Calibration | undefined) {
  const forces = planted.map(({ forceN }) => forceN);
  const [low, high] = [Math.min(...forces), Math.min(Math.max(...forces), gauge.stopN ?? Infinity)];
  const isDirected = planted.some(({ direction }) => direction !== undefined);
  let [answered, held, relativeU] = [0, 0, 0];
  for (let k = 0; k < ASKED; k++) {
    const forceN = gauge.random.between(low, high);
    const way = isDirected ? (k % 2 === 0 ? 1 : -1) : 0;
    const reading = readingOf(gauge, forceN, way);
    const converted = calibration && convert(calibration, reading);
    if (converted?.kind !== 'converted') continue;
    answered += 1;
    relativeU += converted.force.u95N / forceN;
    if (converted.force.lowN <= forceN && forceN <= converted.force.highN) held += 1;
  }
  return { asked: ASKED, answered, held, meanRelativeU: answered > 0 ? relativeU / answered : Number.NaN };
}
