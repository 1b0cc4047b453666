/** Cross-checks of a gauge as they stand now: its readings and the kept takes may have been corrected since. */

import type { KeptGauge } from '../../../shared/document/gauge.ts';
import type { KeptTake } from '../../../shared/document/take.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { convert } from '../../core/gauge/convert.ts';
import { type CrossCheck, crossCheck, type Interval, type RankedCause, rankedCauses } from '../../core/gauge/cross-check.ts';
import { checkedChart } from '../../core/gauge/maker-chart.ts';
import type { EndFixity, SpanSetup } from '../../core/setup.ts';
import type { Figures } from '../format.ts';
import { together } from '../format.ts';
import { ceilingFrom } from './gauge-build.ts';
import { DEFAULT_RIG, type GaugeProof } from './gauge-proof.ts';
import { riseIn, usualStiffnessN } from './gauge-rise.ts';

export interface CrossLine {
  readonly id: string;
  readonly belt: string;
  readonly gauge?: Interval | undefined;
  readonly sound?: Interval | undefined;
  readonly check?: CrossCheck | undefined;
  /** What is missing where there is no comparison. */
  readonly why?: 'take' | 'gauge' | undefined;
  readonly causes: readonly RankedCause[];
}

export function crossLines(gauge: KeptGauge, { calibration }: GaugeProof, document: KeptDocument): readonly CrossLine[] {
  return (gauge.crossChecks ?? []).map(({ id, reading, takeId, riseN }): CrossLine => {
    const take = document.takes.find((one) => one.id === takeId);
    const belt = take ? takeName(take, document) : '';
    const found = calibration.kind === 'calibration' ? convert(calibration, reading) : undefined;
    const force = found?.kind === 'converted' ? found.force : undefined;
    const rise = riseN?.value ?? 0;
    const riseU95 = 2 * (riseN?.standardUncertainty ?? 0);
    const shown: Interval | undefined = force && {
      valueN: force.forceN - rise,
      lowN: force.forceN - rise - Math.hypot(force.forceN - force.lowN, riseU95),
      highN: force.forceN - rise + Math.hypot(force.highN - force.forceN, riseU95),
    };
    const sound = take && soundOf(take);
    if (!shown || !sound) return { id, belt, gauge: shown, sound, why: sound ? 'gauge' : 'take', causes: [] };
    const check = crossCheck(shown, sound, sharedU95(gauge, take));
    return {
      id,
      belt,
      gauge: shown,
      sound,
      check,
      causes: causesOf(gauge, calibration, document, take, reading, riseN !== undefined, check),
    };
  });
}

/** A belt that was proved on weights had them from the same scale and the same gravity as the gauge: that doubt is common to both. */
function sharedU95({ rig = DEFAULT_RIG }: KeptGauge, { now }: KeptTake): number {
  return now.setup.belt?.provedOnWeights ? 2 * rig.scaleRelativeU * (now.answer.forceN?.value ?? 0) : 0;
}

function soundOf({ now }: KeptTake): Interval | undefined {
  const { forceN } = now.answer;
  if (!forceN) return undefined;
  const { value, low, high } = forceN;
  return { valueN: value, lowN: low ?? 0, highN: high ?? Infinity };
}

function causesOf(
  gauge: KeptGauge,
  calibration: GaugeProof['calibration'],
  document: KeptDocument,
  take: KeptTake,
  reading: number,
  riseCorrected: boolean,
  { differenceN }: CrossCheck,
): readonly RankedCause[] {
  const { belt, spanLengthM, ends } = take.now.setup;
  const forceN = take.now.answer.forceN?.value;
  if (!belt || !spanLengthM || forceN === undefined || calibration.kind === 'no-calibration') return [];
  const stiffness = belt.bendingStiffnessNm2;
  const chart = checkedChart(calibration, gauge.makerChart ?? [], ceilingFrom(gauge)?.reading);
  const near = chart
    .filter(({ kind }) => kind === 'off')
    .sort((a, b) => Math.abs(a.point.reading - reading) - Math.abs(b.point.reading - reading))[0];
  const { components, fit } = calibration;
  return rankedCauses(
    {
      forceN,
      rise: riseIn(gauge, { axialStiffnessN: usualStiffnessN(gauge, document), givingLengthM: spanLengthM.value }),
      riseCorrected,
      densityRelativeU: belt.linearDensityKgPerM.standardUncertainty / belt.linearDensityKgPerM.value,
      spanLengthM,
      bendingStiffnessNm2: stiffness.kind === 'known' ? stiffness.value.value : Math.sqrt(stiffness.low * stiffness.high),
      fixityU: meanFixityU(ends as SpanSetup['ends']),
      chartOffN: near?.kind === 'off' ? near.offN : undefined,
      repeatN: Math.sqrt(components.scatter.variance) / Math.abs(fit.curve.slope(forceN)),
    },
    differenceN,
  );
}

/** Standard uncertainty of the mean of the two ends' fixities; unknown ones lie anywhere from hinged to clamped. */
function meanFixityU(ends: readonly EndFixity[]): number {
  const us = ends.map((end) =>
    end.kind === 'known' ? end.value.standardUncertainty : end.kind === 'between' ? (end.high - end.low) / Math.sqrt(12) : 0.4,
  );
  return Math.hypot(...us) / 2;
}

export function takeName(take: KeptTake, document: KeptDocument): string {
  if (!take.on) return take.name ?? '';
  const machine = document.machines.find(({ id }) => id === take.on?.machineId);
  const belt = machine?.belts.find(({ id }) => id === take.on?.machineBeltId);
  return [machine?.name, belt?.name].filter((part) => part).join(' ') || (take.name ?? '');
}

/** 'Dovetable A, 7.4 N ± 0.3 N, 25 Nov' */
export function takeLabel(take: KeptTake, document: KeptDocument, figures: Figures): string {
  const { forceN } = take.now.answer;
  const force = forceN?.u95 === undefined ? '' : together(figures.measured(forceN.value, forceN.u95), 'N');
  const date = new Intl.DateTimeFormat(figures.locale, { day: 'numeric', month: 'short', hour: 'numeric', minute: '2-digit' }).format(
    new Date(take.heard.at),
  );
  return [takeName(take, document), force, date].filter((part) => part !== '').join(', ');
}
