/** Options of the gauge command, read and checked. */

import type { CurveKind } from '../core/gauge/curve.ts';
import type { Place } from '../core/gauge/gravity.ts';
import { parseQuantity, readDecimal } from '../core/quantity.ts';
import { DEFAULT_TOLERANCE_RELATIVE } from '../core/setup.ts';
import type { GaugeFault, Wanted } from '../words/gauge-cli-en.ts';
import { type OptionNames, splitArguments } from './arguments.ts';
import type { GaugeFaults } from './gauge-readings.ts';
import type { Usage } from './usage.ts';
import { toldShare } from './values.ts';

export interface GaugeOptions {
  readonly kind: 'options';
  /** Path of the table, as typed. */
  readonly readings: string;
  readonly fit: CurveKind | 'auto';
  readonly throughOrigin: boolean;
  readonly toleranceRelative: number;
  readonly drop: readonly number[];
  readonly convert: readonly number[];
  readonly place?: Place | undefined;
  readonly json: boolean;
  readonly help: boolean;
}

const NAMES: OptionNames = {
  '--readings': 'value',
  '--fit': 'value',
  '--through-origin': 'flag',
  '--tolerance': 'value',
  '--drop': 'values',
  '--convert': 'values',
  '--latitude': 'value',
  '--height': 'value',
  '--json': 'flag',
  '--help': 'flag',
  '-h': 'flag',
};

const KINDS: readonly (CurveKind | 'auto')[] = ['auto', 'line', 'quadratic', 'saturating', 'spline'];

export function gaugeOptions(words: readonly string[]): GaugeOptions | Usage | GaugeFaults {
  const split = splitArguments(words, NAMES);
  if (split.kind === 'usage') return split;
  const { options, lists, files } = split;
  const faults: GaugeFault[] = files.map((file) => ({ what: 'stray-file', file }));
  const bad = (option: string, text: string, wanted: Wanted): void => {
    faults.push({ what: 'bad-option', option, text, wanted });
  };
  const fit = options.get('--fit') ?? 'auto';
  if (!(KINDS as readonly string[]).includes(fit)) bad('--fit', fit, 'fit');
  const toleranceText = options.get('--tolerance');
  const tolerance = toleranceText === undefined ? undefined : toldShare(toleranceText);
  if (tolerance && !tolerance.ok) bad('--tolerance', toleranceText!, 'share');
  const numbers = (option: string, wanted: Wanted): readonly number[] =>
    (lists.get(option) ?? []).flatMap((text) => {
      const decimal = readDecimal(text);
      const isFine = decimal.kind === 'decimal' && (wanted !== 'row' || (Number.isInteger(decimal.value) && decimal.value >= 1));
      if (!isFine) bad(option, text, decimal.kind === 'no-decimal' && decimal.why === 'ambiguous' ? 'unambiguous' : wanted);
      return isFine ? [decimal.value] : [];
    });
  const drop = numbers('--drop', 'row');
  const convert = numbers('--convert', 'number');
  const place = placeOf(options, faults, bad);
  const help = options.has('--help') || options.has('-h');
  const readings = options.get('--readings');
  if (readings === undefined) faults.push({ what: 'no-readings' });
  if (faults.length > 0 && !help) return { kind: 'faults', faults };
  return {
    kind: 'options',
    readings: readings ?? '',
    fit: fit as CurveKind | 'auto',
    throughOrigin: options.has('--through-origin'),
    toleranceRelative: tolerance?.ok ? tolerance.value : DEFAULT_TOLERANCE_RELATIVE,
    drop,
    convert,
    place,
    json: options.has('--json'),
    help,
  };
}

function placeOf(
  options: ReadonlyMap<string, string>,
  faults: GaugeFault[],
  bad: (option: string, text: string, wanted: Wanted) => void,
): Place | undefined {
  const [latitudeText, heightText] = [options.get('--latitude'), options.get('--height')];
  if (latitudeText === undefined) {
    if (heightText !== undefined) faults.push({ what: 'height-without-latitude' });
    return undefined;
  }
  const latitude = readDecimal(latitudeText.replace(/\s*(?:°|deg)$/u, ''));
  if (latitude.kind !== 'decimal' || Math.abs(latitude.value) > 90) {
    bad('--latitude', latitudeText, 'latitude');
    return undefined;
  }
  if (heightText === undefined) return { latitudeDeg: latitude.value };
  const height = parseQuantity(heightText, { kind: 'length', defaultUnit: 'm', zeroAllowed: true });
  if (!height.ok) bad('--height', heightText, 'height');
  return { latitudeDeg: latitude.value, heightM: height.ok ? height.value : 0 };
}
