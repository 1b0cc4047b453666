/** Figures along an axis of seconds. */

import { axisFigure } from './axis-figure.ts';
import type { AxisFigureAt } from './spectrum-axis.ts';

const STEPS_S = [0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 5];
const MIN_SPACING_PX = 52;

/** Round figures from one end to the other, as many as can be read; the unit stands at the last. */
export function timeFigures(fromS: number, toS: number, widthPx: number, locale: string): AxisFigureAt[] {
  const most = Math.max(1, Math.floor(widthPx / MIN_SPACING_PX));
  const step = STEPS_S.find((one) => (toS - fromS) / one <= most) ?? STEPS_S.at(-1)!;
  const first = Math.ceil(fromS / step - 1e-9);
  const count = Math.max(0, Math.floor(toS / step + 1e-9) - first + 1);
  return Array.from({ length: count }, (_, i) => {
    const at = (first + i) * step;
    return { at, text: `${axisFigure(at, step, locale)}${i === count - 1 ? '\u00a0s' : ''}` };
  });
}
