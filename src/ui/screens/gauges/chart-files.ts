/** The chart as files: a table for spreadsheets, and the strip as a drawing of its own. */

import { render, svg } from 'lit';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { Calibration } from '../../../core/gauge/calibration.ts';
import { chartRows } from '../../../core/gauge/chart.ts';
import { writeTable } from '../../../core/table.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import type { Figures } from '../../format.ts';
import { saveFile } from '../../state/save-document.ts';
import { drawnStrip, STRIP, stripOf } from './chart-strip.ts';
import { stripTexts } from './printed-chart.ts';

const fileName = (gauge: KeptGauge, ending: string): string =>
  `${gauge.name.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-') || 'gauge'}.${ending}`;

const rounded = (value: number): number => Number(value.toPrecision(6));

export function saveChartTable(gauge: KeptGauge, calibration: Calibration): void {
  const text = writeTable({
    columns: gaugesEn.chart.csvColumns,
    rows: chartRows(calibration).map(({ reading, force: { forceN, u95N, lowN, highN } }) => [
      reading,
      rounded(forceN),
      rounded(u95N),
      rounded(lowN),
      rounded(highN),
    ]),
  });
  saveFile(new Blob([text], { type: 'text/csv' }), fileName(gauge, 'csv'));
}

/** 150 mm wide on paper. */
const WIDTH_MM = 150;

export function saveStrip(gauge: KeptGauge, calibration: Calibration, belt: string, figures: Figures): void {
  const strip = stripOf(calibration, gauge.targetForceN);
  if (!strip) return;
  const { width, height } = STRIP;
  const holder = document.createElement('div');
  render(
    svg`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${WIDTH_MM}mm" height="${(WIDTH_MM * height) / width}mm"
      font-family="sans-serif" color="black" fill="black">${drawnStrip(strip, stripTexts(gauge, calibration, belt, figures))}</svg>`,
    holder,
  );
  const text = new XMLSerializer().serializeToString(holder.firstElementChild!);
  saveFile(new Blob([text.replaceAll(/<!--.*?-->/gu, '')], { type: 'image/svg+xml' }), fileName(gauge, 'svg'));
}
