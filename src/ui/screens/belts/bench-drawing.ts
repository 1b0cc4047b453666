/** A fitted bench as a drawing: what the string's law alone would make of each partial, the fit as curves through them, and what is left over. */

import type { BenchFit } from '../../../core/belt/bench-fit.ts';
import { partialHz } from '../../../core/vibration/beam.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import type { Figures } from '../../format.ts';
import type { BenchCurve, BenchDrawing, BenchPoint } from '../../parts/bench-places.ts';
import type { PlotTable } from '../../parts/spoken-table.ts';
import type { BenchResult } from './bench-result.ts';
import { percentText } from './value-words.ts';

const words = beltsEn.bench.plot;
const COVERAGE_FACTOR = 2;
/** Points of a curve. */
const CURVE_POINTS = 30;
/** Curves run on beyond the forces of the bench by this factor. */
const BEYOND = 1.25;

/** g/m: T/(4 L² (f/n)²). */
const byString = (forceN: number, lengthM: number, hz: number, number: number): number =>
  (1000 * forceN) / (2 * lengthM * (hz / number)) ** 2;

const forceOf = ({ fit, data }: BenchResult, take: number): number => fit.model.forceN(data.takes[take]!.load, fit.best.parameters);

export function benchDrawing(result: BenchResult, figures: Figures): BenchDrawing {
  const { fit, data } = result;
  const { low, value, high } = fit.linearDensityKgPerM;
  const points = fit.residuals.map(({ take, number, relative, relativeU }): BenchPoint => {
    const { span, partials } = data.takes[take]!;
    const hz = partials.find((partial) => partial.number === number)!.frequencyHz.value;
    const y = byString(forceOf(result, take), data.spans[span]!.lengthM.value, hz, number);
    const doubt = COVERAGE_FACTOR * relativeU;
    return { forceN: forceOf(result, take), y, yDoubt: 2 * doubt * y, mark: span, off: 100 * relative, offDoubt: 100 * doubt };
  });
  const level = {
    low: 1000 * low,
    value: 1000 * value,
    high: 1000 * high,
    name: words.fitted(figures.typed(Number((1000 * value).toPrecision(3)), 'g/m')),
  };
  return { points, curves: curvesOf(result, points, figures), level };
}

function curvesOf(result: BenchResult, points: readonly BenchPoint[], figures: Figures): BenchCurve[] {
  const { fit, data } = result;
  const forces = points.map(({ forceN }) => forceN);
  const [from, to] = [Math.min(...forces) / BEYOND, Math.max(...forces) * BEYOND];
  return data.spans.flatMap(({ lengthM }, span) => {
    const numbers = [
      ...new Set(data.takes.filter((take) => take.span === span).flatMap(({ partials }) => partials.map(({ number }) => number))),
    ];
    return numbers
      .sort((a, b) => b - a)
      .map((number, place) => ({
        // The span is named once, at the partial that lies farthest from the others' spans.
        name: place === 0 ? words.curve(figures.typed(Number((lengthM.value * 1000).toPrecision(3)), 'mm'), number) : words.partial(number),
        points: Array.from({ length: CURVE_POINTS }, (_, i) => {
          const forceN = from * (to / from) ** (i / (CURVE_POINTS - 1));
          const hz = partialHz({ ...beltOf(fit), spanLengthM: lengthM.value, number, forceN });
          return { forceN, y: byString(forceN, lengthM.value, hz, number) };
        }),
      }));
  });
}

function beltOf({ linearDensityKgPerM, bendingStiffnessNm2, fixity }: BenchFit) {
  return {
    linearDensityKgPerM: linearDensityKgPerM.value,
    bendingStiffnessNm2: bendingStiffnessNm2.value,
    fixity: [fixity.value, fixity.value] as const,
  };
}

export function benchTable(result: BenchResult, figures: Figures): PlotTable {
  const { fit, data } = result;
  const rows = fit.residuals.map(({ take, number, relative }) => {
    const { span, partials } = data.takes[take]!;
    const hz = partials.find((partial) => partial.number === number)!.frequencyHz.value;
    return [
      figures.typed(Number((data.spans[span]!.lengthM.value * 1000).toPrecision(3)), 'mm'),
      figures.typed(Number(forceOf(result, take).toPrecision(3)), 'N'),
      String(number),
      figures.typed(hz, 'Hz'),
      signed(relative, figures),
    ];
  });
  return { caption: words.name, columns: words.columns, rows };
}

export const signed = (share: number, figures: Figures): string => `${share < 0 ? '−' : '+'}${percentText(Math.abs(share), figures)}`;
