/** How the pages of a gauge change it: each change is a pure function of the gauge as it stands in the store. */

import type { KeptGauge, KeptGaugeReading, KeptWeight } from '../../../../shared/document/gauge.ts';
import type { Step } from '../../../core/gauge/guided-run.ts';
import type { QuantityFault } from '../../../core/quantity.ts';
import { readDecimal } from '../../../core/quantity.ts';
import { gaugesEn as words } from '../../../words/gauges-en.ts';
import { newId, nowWhen } from '../../state/new-item.ts';

export type GaugeEdit = (gauge: KeptGauge) => KeptGauge;
export type EditGauge = (edit: GaugeEdit) => void;

export const faultText = ({ why }: QuantityFault): string => words.faults[why];

/** A plain number as a person types a reading; undefined where it is none. */
export function typedReading(text: string): number | undefined {
  const decimal = readDecimal(text);
  return decimal.kind === 'decimal' ? decimal.value : undefined;
}

export const newReading = ({ weightId, how, series, direction }: Step, reading: number): KeptGaugeReading => ({
  id: newId(),
  weightId,
  how,
  series,
  direction,
  reading,
  at: nowWhen(),
});

export const editReading =
  (id: string, edit: (reading: KeptGaugeReading) => KeptGaugeReading): GaugeEdit =>
  (gauge) => ({ ...gauge, readings: gauge.readings?.map((one) => (one.id === id ? edit(one) : one)) });

export const editWeight =
  (id: string, edit: (weight: KeptWeight) => KeptWeight): GaugeEdit =>
  (gauge) => ({ ...gauge, weights: gauge.weights?.map((one) => (one.id === id ? edit(one) : one)) });

/** A weight that readings hang on stays. */
export const withoutWeight =
  (id: string): GaugeEdit =>
  (gauge) =>
    gauge.readings?.some(({ weightId }) => weightId === id) ? gauge : { ...gauge, weights: gauge.weights?.filter((one) => one.id !== id) };
