/** The strip for the gauge: its reading above one line, the force below it. One drawing for the page, the print and the file. */

import { svg } from 'lit';
import type { Calibration } from '../../../core/gauge/calibration.ts';
import { decimalsOfStep, evenStep } from '../../../core/gauge/chart.ts';
import { convert } from '../../../core/gauge/convert.ts';
import { formatNumber } from '../../../core/quantity.ts';

export interface StripMark {
  readonly x: number;
  readonly text: string;
}

export interface Strip {
  readonly readings: readonly StripMark[];
  readonly forces: readonly StripMark[];
  readonly lineFrom: number;
  readonly lineTo: number;
  readonly target?: { readonly from: number; readonly to: number } | undefined;
  readonly hatchFrom: number;
}

export const STRIP = { width: 600, height: 90, left: 56, right: 80, lineY: 40 } as const;
const READINGS = 11;
const FORCES = 10;
const HATCH_PX = 52;

/** @returns undefined where nothing was verified */
export function stripOf(
  calibration: Calibration,
  target: { readonly lowN: number; readonly highN: number } | undefined,
): Strip | undefined {
  const { verified, fit } = calibration;
  if (verified.kind === 'nowhere') return undefined;
  const { readingLow, readingHigh, forceLowN, forceHighN } = verified;
  const { width, left, right } = STRIP;
  const xOf = (reading: number) => left + ((reading - readingLow) / (readingHigh - readingLow)) * (width - left - right);
  const marks = (low: number, high: number, most: number): readonly { readonly at: number; readonly text: string }[] => {
    const step = evenStep(high - low, most);
    const decimals = decimalsOfStep(step);
    const first = Math.ceil(low / step - 1e-9);
    return Array.from({ length: Math.max(0, Math.floor(high / step + 1e-9) - first + 1) }, (_, k) => {
      const at = (first + k) * step;
      return { at, text: formatNumber(at, { decimals }) };
    });
  };
  const inside = target && { lowN: Math.max(target.lowN, forceLowN), highN: Math.min(target.highN, forceHighN) };
  const ends =
    inside && inside.highN > inside.lowN ? [xOf(fit.curve.reading(inside.lowN)), xOf(fit.curve.reading(inside.highN))] : undefined;
  return {
    readings: marks(readingLow, readingHigh, READINGS)
      .filter(({ at }) => convert(calibration, at).kind === 'converted')
      .map(({ at, text }) => ({ x: xOf(at), text })),
    forces: marks(forceLowN, forceHighN, FORCES).map(({ at, text }) => ({ x: xOf(fit.curve.reading(at)), text })),
    lineFrom: xOf(readingLow),
    lineTo: xOf(readingHigh),
    target: ends && { from: Math.min(...ends), to: Math.max(...ends) },
    hatchFrom: STRIP.width - HATCH_PX - 12,
  };
}

/** @param texts.name  top left; `above`, `below`, `foot`: what the two scales are, belt and date */
export function drawnStrip(
  strip: Strip,
  texts: { readonly name: string; readonly above: string; readonly below: string; readonly foot: string },
) {
  const { width, height, lineY } = STRIP;
  const hatch = Array.from({ length: 6 }, (_, k) => `M${strip.hatchFrom + 9 * k},${lineY + 16} l${HATCH_PX / 6 + 8},-32`).join(' ');
  return svg`
    <rect x="0.75" y="0.75" width=${width - 1.5} height=${height - 1.5} fill="none" stroke="currentColor" stroke-width="1" stroke-dasharray="6 4" />
    ${strip.target ? svg`<rect class="strip-target" x=${strip.target.from} y=${lineY - 15} width=${strip.target.to - strip.target.from} height="30" fill="#dcdcdc" />` : ''}
    <path d=${hatch} stroke="currentColor" stroke-width="0.6" fill="none" />
    <path d="M${strip.lineFrom},${lineY} H${strip.lineTo}" stroke="currentColor" stroke-width="1.5" />
    ${strip.readings.map(({ x, text }) => svg`<path d="M${x},${lineY - 8} v8" stroke="currentColor" stroke-width="1" /><text x=${x} y=${lineY - 11} text-anchor="middle" font-size="11">${text}</text>`)}
    ${strip.forces.map(({ x, text }) => svg`<path d="M${x},${lineY} v8" stroke="currentColor" stroke-width="1" /><text x=${x} y=${lineY + 20} text-anchor="middle" font-size="11" font-weight="700">${text}</text>`)}
    <text x="8" y="15" font-size="11" font-weight="700">${texts.name}</text>
    <text x=${width - 8} y="15" text-anchor="end" font-size="11">${texts.above}</text>
    <text x="8" y=${height - 8} font-size="11">${texts.below}</text>
    <text x=${width - 8} y=${height - 8} text-anchor="end" font-size="11">${texts.foot}</text>`;
}
