/** How the weights of a belt's bench hang, from its texts: hook, belt below the span, and where on Earth. */

import type { KeptBench } from '../../../shared/document/belt.ts';
import type { BenchHang } from '../../core/belt/hung-load.ts';
import type { Place } from '../../core/gauge/gravity.ts';
import { readDecimal } from '../../core/quantity/decimal.ts';
import { parseQuantity, type QuantityFault } from '../../core/quantity.ts';

export type RigField = 'hanger' | 'beltBelow' | 'latitude' | 'height';

export interface UnderstoodRig {
  readonly faults: Partial<Record<RigField, QuantityFault>>;
  readonly hang: BenchHang;
}

const COVERAGE_FACTOR = 2;
/** Of a hook whose ± is not told: a kitchen scale's gram, even within it. */
const HANGER_U_KG = 0.0005 / Math.sqrt(3);
const POLE_DEG = 90;

export function understoodRig(bench: KeptBench, toothPitchM: number | undefined, linearDensityKgPerM: number): UnderstoodRig {
  const faults: Partial<Record<RigField, QuantityFault>> = {};
  const read = (field: RigField, kind: 'mass' | 'length', defaultUnit: string) => {
    const parsed = parseQuantity(bench[field] ?? '', { kind, defaultUnit, toothPitchM, zeroAllowed: true });
    if (parsed.ok) return parsed;
    if (parsed.why !== 'empty') faults[field] = parsed;
    return undefined;
  };
  const hanger = read('hanger', 'mass', 'g');
  const hangerU = hanger?.standardUncertainty;
  const below = read('beltBelow', 'length', 'mm');
  const heightM = read('height', 'length', 'm')?.value;
  const latitudeDeg = latitude(bench.latitude ?? '');
  if (latitudeDeg === 'unreadable') faults.latitude = { ok: false, why: 'not-a-number' };
  const place: Place | undefined = typeof latitudeDeg === 'number' ? { latitudeDeg, heightM } : undefined;
  return {
    faults,
    hang: {
      rig: bench.rig,
      place,
      hangerKg: hanger && { value: hanger.value, standardUncertainty: hangerU === undefined ? HANGER_U_KG : hangerU / COVERAGE_FACTOR },
      beltBelowM: below?.value,
      linearDensityKgPerM,
    },
  };
}

/** Degrees; the sign may be left away, since gravity is alike on both halves of the Earth. */
function latitude(text: string): number | 'unreadable' | undefined {
  if (text.trim() === '') return undefined;
  const read = readDecimal(text.replace(/°\s*$/u, ''), { decimalSign: 'any' });
  return read.kind === 'decimal' && Math.abs(read.value) <= POLE_DEG ? read.value : 'unreadable';
}
