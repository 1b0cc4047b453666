/** The values of a belt in words: figure with unit and doubt, where it comes from, and when it was got. */

import type { KeptBelt } from '../../../../shared/document/belt.ts';
import { currentOf, type KnownValue } from '../../../../shared/document/common.ts';
import { formatPercent } from '../../../core/quantity.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { en } from '../../../words/en.ts';
import { type Figures, together } from '../../format.ts';
import type { ValueName } from '../../state/belt-changes.ts';

export const VALUE_NAMES = Object.keys(beltsEn.values.names) as readonly ValueName[];

interface Told {
  readonly value: number;
  readonly standardUncertainty: number;
}

/** How a quantity is shown: its unit, and by how much it is multiplied for it. */
const SHOWN: Readonly<Record<ValueName, { readonly unit: string; readonly factor: number }>> = {
  linearDensityKgPerM: { unit: 'g/m', factor: 1000 },
  bendingStiffnessNm2: { unit: 'N mm²', factor: 1e6 },
  endFixity: { unit: '', factor: 1 },
  axialStiffnessN: { unit: 'kN', factor: 1e-3 },
  ratedForceN: { unit: 'N', factor: 1 },
};

/** '8.08 g/m ± 0.08 g/m'; a value without a doubt stands alone. */
export function valueText(name: ValueName, { value, standardUncertainty }: Told, figures: Figures): string {
  const { unit, factor } = SHOWN[name];
  if (standardUncertainty === 0) return figures.typed(value * factor, unit);
  const figure = figures.measured(value * factor, 2 * standardUncertainty * factor);
  return name === 'endFixity' ? beltsEn.values.fixity(`${figure.value} ± ${figure.doubt}`) : together(figure, unit);
}

export function rangeText(name: ValueName, { low, high }: { low: number; high: number }, figures: Figures): string {
  const { unit, factor } = SHOWN[name];
  return en.range(figures.typed(low * factor), figures.typed(high * factor, unit));
}

export const percentText = (share: number, figures: Figures): string =>
  formatPercent(share, { decimals: share < 0.05 ? 1 : 0, format: figures.format });

export const dateText = ({ at }: KnownValue['got'], figures: Figures): string =>
  new Intl.DateTimeFormat(figures.locale, { day: 'numeric', month: 'short', year: 'numeric' }).format(new Date(at));

/** How well a belt's density is known, in four steps. */
export type Standing = 'proved' | 'measured' | 'told' | 'catalogue';

export function standingOf(belt: KeptBelt): Standing {
  const density = currentOf(belt.linearDensityKgPerM);
  if (!density) return 'catalogue';
  if (currentOf(belt.bendingStiffnessNm2)?.from === 'bench') return 'proved';
  return density.from === 'told' ? 'told' : 'measured';
}
