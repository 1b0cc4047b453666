/** What was proved, as its plot shows it. Pure: a proof and words in, a view out. */

import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { Calibration } from '../../../core/gauge/calibration.ts';
import { checkedChart } from '../../../core/gauge/maker-chart.ts';
import { verifiedText } from '../../../words/gauge-en.ts';
import { gaugesEn as words } from '../../../words/gauges-en.ts';
import type { Figures } from '../../format.ts';
import type { CalibrationView, CalibrationWords } from '../../parts/calibration-plot.ts';
import type { PlotTable } from '../../parts/spoken-table.ts';
import { ceilingFrom } from '../../state/gauge-build.ts';
import type { GaugeProof } from '../../state/gauge-proof.ts';

const STEPS = 60;

export function calibrationView(gauge: KeptGauge, { rows, calibration }: GaugeProof, figures: Figures): CalibrationView | undefined {
  if (calibration.kind === 'no-calibration') return undefined;
  const { fit, prediction, verified, stop, slips } = calibration;
  const loads = calibration.rows.map(({ forceN }) => forceN);
  const [low, high] = [Math.min(...loads), Math.max(...loads)];
  const slope = (forceN: number) => fit.curve.slope(forceN) || Number.NaN;
  return {
    points: rows.map(({ row, reading, forceN, direction }) => ({
      row,
      reading,
      forceN,
      way: direction ?? 'plain',
      offN: stop?.rows.includes(row) ? undefined : (fit.curve.reading(forceN) - reading) / slope(forceN),
      odd: slips.some((slip) => slip.row === row) ? words.plot.slip(row) : undefined,
    })),
    curve: Array.from({ length: STEPS + 1 }, (_, k) => low + ((high - low) * k) / STEPS).map((forceN) => ({
      forceN,
      reading: fit.curve.reading(forceN),
      halfN: prediction.halfWidthAt(forceN) / Math.abs(slope(forceN)),
    })),
    verified: verified.kind === 'verified' ? verified : undefined,
    target: gauge.targetForceN && { ...gauge.targetForceN, text: words.plot.target(figures.forceRange(gauge.targetForceN)) },
    refused: refusedFrom(calibration, ceilingFrom(gauge)?.reading),
    maker: checkedChart(calibration, gauge.makerChart ?? [], ceilingFrom(gauge)?.reading)
      .map(({ kind, point }) => ({ ...point, refused: kind === 'refused' }))
      .sort((a, b) => a.reading - b.reading),
  };
}

function refusedFrom({ stop, direction }: Calibration, ceilingReading: number | undefined) {
  const side = direction > 0 ? ('above' as const) : ('below' as const);
  if (stop) return { reading: stop.reading, text: words.plot.stop, side };
  return ceilingReading === undefined ? undefined : { reading: ceilingReading, text: words.plot.ceiling, side };
}

export function calibrationWords(gauge: KeptGauge, calibration: Calibration, figures: Figures): CalibrationWords {
  const { plot } = words;
  const offs = calibration.rows.map(({ forceN, reading }) =>
    Math.abs((calibration.fit.curve.reading(forceN) - reading) / calibration.fit.curve.slope(forceN)),
  );
  return {
    title: plot.title,
    residuals: plot.residuals,
    up: plot.up,
    down: plot.down,
    plain: plot.plain,
    forceHung: plot.forceHung,
    axis: plot.axis(gauge.unit ?? words.about.usualUnit),
    verified: plot.verified,
    maker: plot.maker,
    fit: plot.fit,
    label: plot.label(calibration.rows.length, verifiedText(calibration.verified, calibration.toleranceRelative)),
    residualLabel: plot.residualLabel(figures.rough(Math.max(...offs), 'N')),
  };
}

export function calibrationTable(view: CalibrationView, figures: Figures): PlotTable {
  return {
    caption: words.plot.caption,
    columns: words.plot.columns,
    rows: view.points.map(({ row, reading, forceN, offN }) => [
      String(row),
      figures.typed(reading),
      figures.typed(forceN, 'N'),
      offN === undefined ? words.plot.stop : figures.rough(offN, 'N'),
    ]),
  };
}
