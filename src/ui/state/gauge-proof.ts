/** A kept gauge as the reckoning takes it: readings under the forces of its rig, and what was proved by them. */

import { belts } from '../../../shared/belts.ts';
import type { KeptBelt } from '../../../shared/document/belt.ts';
import { currentOf } from '../../../shared/document/common.ts';
import type { KeptGauge, KeptGaugeReading } from '../../../shared/document/gauge.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { type Calibration, calibrate, type NoCalibration } from '../../core/gauge/calibration.ts';
import { localGravity } from '../../core/gauge/gravity.ts';
import { pathLengthening } from '../../core/gauge/insertion-rise.ts';
import type { LoadedReading, SharedForceDoubt } from '../../core/gauge/loaded-reading.ts';
import { bracketedFriction, loadedReadings, type Rig } from '../../core/gauge/rig.ts';
import { type Suspicion, suspicionsOf } from '../../core/gauge/suspicions.ts';
import type { Grade } from '../../core/outcome.ts';
import { DEFAULT_TOLERANCE_RELATIVE, type ForceRange } from '../../core/setup.ts';
import { ceilingFrom } from './gauge-build.ts';

export const DEFAULT_RIG: NonNullable<KeptGauge['rig']> = { kind: 'straight', scaleStepKg: 0.001, scaleRelativeU: 0.003 };

export interface GaugeProof {
  readonly calibration: Calibration | NoCalibration;
  /** Also those at a stop; row numbers count the kept readings from 1, dropped ones included. */
  readonly rows: readonly LoadedReading[];
  readonly shared: SharedForceDoubt;
  readonly suspicions: readonly Suspicion[];
  /** Of the roller, as a share of the force, where it was bracketed. */
  readonly friction?: number | undefined;
}

/** Half the width of the target, else the usual share. */
export const toleranceOf = ({ toleranceRelative, targetForceN }: KeptGauge): number =>
  toleranceRelative ??
  (targetForceN ? (targetForceN.highN - targetForceN.lowN) / (targetForceN.highN + targetForceN.lowN) : DEFAULT_TOLERANCE_RELATIVE);

const proofs = new WeakMap<KeptGauge, { readonly kept: readonly KeptBelt[]; readonly proof: GaugeProof }>();
const NO_BELTS: readonly KeptBelt[] = [];

/** Computed once for each state of a gauge and of the belts. */
export function proofOf(gauge: KeptGauge, kept: readonly KeptBelt[] = NO_BELTS): GaugeProof {
  const before = proofs.get(gauge);
  if (before?.kept === kept) return before.proof;
  const proof = computedProof(gauge, kept);
  proofs.set(gauge, { kept, proof });
  return proof;
}

const known = (value: number, standardUncertainty = 0) => ({ value, standardUncertainty });
/** A ruler held to a rig. */
const RULER_U_M = 0.0005;

export function rigOf({ rig = DEFAULT_RIG, beltId, baseM, deflectionM }: KeptGauge, kept: readonly KeptBelt[]): Rig {
  const { kind, scaleStepKg, scaleRelativeU, latitudeDeg, heightM, hangerKg, beltBelowM, halfDistanceM } = rig;
  return {
    kind,
    scale: { stepKg: scaleStepKg, relativeU: scaleRelativeU, offsetKg: scaleStepKg / Math.sqrt(12) },
    place: latitudeDeg === undefined ? undefined : { latitudeDeg, heightM },
    hangerKg: hangerKg === undefined ? undefined : known(hangerKg, scaleStepKg / Math.sqrt(12)),
    beltBelowM,
    linearDensityKgPerM: densityOf(beltId, kept),
    halfDistanceM: halfDistanceM === undefined ? undefined : known(halfDistanceM, RULER_U_M),
    gaugeTakesM: baseM !== undefined && deflectionM ? pathLengthening(deflectionM.value, baseM) : undefined,
  };
}

function densityOf(id: string | undefined, kept: readonly KeptBelt[]): number | undefined {
  const own = kept.find((belt) => belt.id === id);
  const catalogueId = own?.catalogueId ?? id;
  return (own && currentOf(own.linearDensityKgPerM)?.value) ?? belts.find((belt) => belt.id === catalogueId)?.linearDensityKgPerM.value;
}

function computedProof(gauge: KeptGauge, kept: readonly KeptBelt[]): GaugeProof {
  const rig = rigOf(gauge, kept);
  const weights = new Map((gauge.weights ?? []).map((weight) => [weight.id, weight]));
  const numbered = (gauge.readings ?? []).map((one, index) => ({ ...one, row: index + 1 }));
  const hung = (reading: KeptGaugeReading) => {
    const weight = weights.get(reading.weightId);
    if (weight?.knownN) return { massKg: 0, knownN: weight.knownN };
    if (!weight || (rig.kind === 'mid-span' && !(rig.halfDistanceM && weight.sagM))) return undefined;
    return { massKg: weight.massKg, sagM: weight.sagM === undefined ? undefined : known(weight.sagM, RULER_U_M) };
  };
  const readingsOf = (isWanted: (one: KeptGaugeReading) => boolean) =>
    numbered.flatMap((one) => {
      const load = isWanted(one) && !one.dropped ? hung(one) : undefined;
      return load ? [{ row: one.row, reading: one.reading, direction: one.direction, series: one.series, ...load }] : [];
    });
  const first = proved(
    gauge,
    rig,
    readingsOf(({ how }) => how !== 'eased'),
  );
  const eased = loadedReadings(
    rig,
    readingsOf(({ how }) => how === 'eased'),
  ).rows;
  const friction =
    first.calibration.kind === 'calibration' && eased[0]
      ? bracketedFriction({
          eased: eased.flatMap(({ reading, direction }) => (direction ? [{ reading, from: direction }] : [])),
          slopePerN: first.calibration.fit.curve.slope(eased[0].forceN),
          forceN: eased[0].forceN,
        })
      : undefined;
  if (friction === undefined) return first;
  const widened = proved(
    gauge,
    { ...rig, rollerFrictionShare: friction },
    readingsOf(({ how }) => how !== 'eased'),
  );
  return { ...widened, friction };
}

function proved(gauge: KeptGauge, rig: Rig, readings: Parameters<typeof loadedReadings>[1]): GaugeProof {
  const { rows, shared } = loadedReadings(rig, readings);
  const calibration = calibrate({
    rows,
    kind: gauge.fit ?? 'auto',
    toleranceRelative: toleranceOf(gauge),
    shared,
    ceilingReading: ceilingFrom(gauge)?.reading,
  });
  return { calibration, rows, shared, suspicions: calibration.kind === 'calibration' ? suspicionsOf(calibration, rows) : [] };
}

/** How far a gauge can be believed where it is wanted. */
export function gradeOf(gauge: KeptGauge, { calibration }: GaugeProof): Grade | 'nothing' {
  if (calibration.kind === 'no-calibration') return 'nothing';
  const { verified } = calibration;
  if (verified.kind === 'nowhere') return 'unusable';
  const target = gauge.targetForceN;
  if (!target) return 'trusted';
  const inside = (forceN: number): boolean => forceN >= verified.forceLowN * (1 - 1e-9) && forceN <= verified.forceHighN * (1 + 1e-9);
  if (inside(target.lowN) && inside(target.highN)) return 'trusted';
  return target.lowN < verified.forceHighN && target.highN > verified.forceLowN ? 'doubtful' : 'unusable';
}

/** Largest U of one reading inside the target, N; over the whole verified range where there is no target. */
export function worstInTarget(calibration: Calibration, target: ForceRange | undefined): number | undefined {
  const { verified, prediction, fit } = calibration;
  if (verified.kind === 'nowhere') return undefined;
  const lowN = Math.max(verified.forceLowN, target?.lowN ?? 0);
  const highN = Math.min(verified.forceHighN, target?.highN ?? Infinity);
  if (!(highN > lowN)) return undefined;
  const found = Array.from({ length: 11 }, (_, k) => prediction.forceOf(fit.curve.reading(lowN + ((highN - lowN) * k) / 10))?.u95N ?? 0);
  return Math.max(...found);
}

export const gravityOf = ({ rig }: KeptGauge): number =>
  localGravity(rig?.latitudeDeg === undefined ? undefined : { latitudeDeg: rig.latitudeDeg, heightM: rig.heightM }).value;

/** A gauge of the document changed; one that is gone by now stays gone. */
export const withGauge = (document: KeptDocument, id: string, edit: (gauge: KeptGauge) => KeptGauge): KeptDocument => ({
  ...document,
  gauges: document.gauges.map((gauge) => (gauge.id === id ? edit(gauge) : gauge)),
});

/** A short name of this state of the gauge's readings and rig, so that a printed chart can be told from another. */
export function chartName(gauge: KeptGauge): string {
  const text = JSON.stringify([gauge.id, gauge.rig, gauge.weights, gauge.readings, gauge.fit, gauge.targetForceN]);
  let word = 0x811c9dc5;
  for (let k = 0; k < text.length; k++) word = Math.imul(word ^ text.charCodeAt(k), 0x01000193);
  return (word >>> 0).toString(16).padStart(8, '0').slice(0, 4);
}
