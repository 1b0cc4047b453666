/** What a bench has found, in words: the values, what the plucks cannot tell apart, and which measurement would help most. */

import { html, nothing } from 'lit';
import type { BenchFinding } from '../../../core/belt/bench-findings.ts';
import { type BeltGuess, LATER_READINGS, laterU95Relative } from '../../../core/belt/bench-linear.ts';
import type { NextChoice } from '../../../core/belt/bench-next.ts';
import type { BenchValue } from '../../../core/belt/bench-slices.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { en } from '../../../words/en.ts';
import { type Figures, together } from '../../format.ts';
import '../../parts/bench-plot.ts';
import { benchDrawing, benchTable, signed } from './bench-drawing.ts';
import type { BenchResult } from './bench-result.ts';
import { percentText, valueText } from './value-words.ts';

const words = beltsEn.bench;
/** Force at which an end's effect is told as a length. */
const EFFECT_AT_N = 8;
/** A measurement that would not better the belt's part of a later reading by this share is not worth the way. */
const WORTH_IT = 0.85;
const MOST_CHOICES = 3;

export function benchPlot(result: BenchResult, figures: Figures) {
  const { fit } = result;
  const density = valueText('linearDensityKgPerM', fit.linearDensityKgPerM, figures);
  const largest = fit.residuals.reduce((most, { relative }) => (Math.abs(relative) > Math.abs(most) ? relative : most), 0);
  return html`<bench-plot
    .drawing=${benchDrawing(result, figures)}
    .table=${benchTable(result, figures)}
    .label=${`${words.plot.name}. ${words.plot.sentence(density, fit.residuals.length)} ${words.plot.residualsSentence(signed(largest, figures))}`}
    .axes=${{ y: words.plot.axis, off: words.plot.residuals, force: words.plot.force }}
    .locale=${figures.locale}
  ></bench-plot>`;
}

export function benchValues({ fit, data }: BenchResult, figures: Figures) {
  const { result: r } = words;
  const effectM = scaled(fit.endEffect, 1 / Math.sqrt(EFFECT_AT_N));
  const effect = together(figures.measured(effectM.value * 1000, effectM.half * 1000), 'mm');
  const isKnownForce = data.loads.some(({ forceN }) => forceN !== undefined);
  return html`<table class="figures">
    <tbody>
      ${isKnownForce ? line(r.density, valueText('linearDensityKgPerM', fit.linearDensityKgPerM, figures)) : nothing}
      ${line(r.stiffness, asymmetric(fit.bendingStiffnessNm2, 1e6, 'N mm²', figures))}
      ${line(r.fixity, beltsEn.values.fixity(asymmetric(fit.fixity, 1, '', figures)))}
      ${line(r.endEffect, r.at(effect, figures.typed(EFFECT_AT_N, 'N')))}
      ${
        isKnownForce
          ? line(
              r.later,
              later(fit, figures).map((text) => html`<div>${text}</div>`),
            )
          : nothing
      }
    </tbody>
  </table>`;
}

const line = (name: string, figure: unknown) => html`<tr><th scope="row">${name}</th><td class="figure wrap">${figure}</td></tr>`;

/** '± 0.8 %' where both halves are alike, 'from to' where they are not. */
function asymmetric({ value, low, high, standardUncertainty }: BenchValue, factor: number, unit: string, figures: Figures): string {
  const halves = [value - low, high - value];
  if (Math.max(...halves) > 1.5 * Math.min(...halves)) {
    return en.range(figures.rough(low * factor), figures.rough(high * factor, unit));
  }
  const figure = figures.measured(value * factor, 2 * standardUncertainty * factor);
  return unit === '' ? `${figure.value} ± ${figure.doubt}` : together(figure, unit);
}

const scaled = ({ value, low, high }: BenchValue, factor: number) => ({ value: value * factor, half: ((high - low) / 2) * factor });

function later(fit: BenchResult['fit'], figures: Figures): string[] {
  const belt: BeltGuess = {
    linearDensityKgPerM: fit.linearDensityKgPerM.value,
    bendingStiffnessNm2: fit.bendingStiffnessNm2.value,
    fixity: fit.fixity.value,
  };
  return LATER_READINGS.map((reading) =>
    words.result.laterAt(
      percentText(laterU95Relative(belt, fit.covariance, 3, reading), figures),
      figures.whole(reading.spanLengthM * 1000, 'mm'),
      figures.typed(reading.forceN, 'N'),
    ),
  );
}

export function benchFindingList({ findings, data }: BenchResult, figures: Figures) {
  if (findings.length === 0) return html`<p>${words.apart}</p>`;
  const text = (finding: BenchFinding): string => {
    switch (finding.id) {
      case 'density-and-length':
        return words.findings[finding.id](
          percentText(finding.shareOfDensity, figures),
          spanName(data.spans[finding.span]!.lengthM.value, figures),
        );
      case 'density-and-weights':
        return words.findings[finding.id](percentText(finding.shareOfDensity, figures));
      default:
        return words.findings[finding.id];
    }
  };
  return html`<h2>${words.findings.heading}</h2>
    <ul>${findings.map((finding) => html`<li>${text(finding)}</li>`)}</ul>`;
}

const spanName = (lengthM: number, figures: Figures): string => figures.typed(Number((lengthM * 1000).toPrecision(3)), 'mm');

export function benchNext(result: BenchResult, figures: Figures) {
  const { now, next, data } = result;
  if (!now) return nothing;
  const worth = next.filter(({ laterU95 }) => laterU95 < WORTH_IT * now.laterU95).slice(0, MOST_CHOICES);
  const percent = (share: number): string => percentText(share, figures);
  const text = ({ measurement: m }: NextChoice): string => {
    switch (m.kind) {
      case 'pluck': {
        const name = spanName(m.spanLengthM, figures);
        const span = m.isNewSpan ? words.next.newSpan(name) : words.next.sameSpan(name);
        return words.next.pluck(span, figures.typed(Number(m.forceN.toPrecision(2)), 'N'));
      }
      case 'higher-partials':
        return words.next.higher(spanName(data.spans[data.takes[m.take]!.span]!.lengthM.value, figures));
      case 'weigh':
        return words.next.weigh;
      case 'measure-span':
        return words.next.length(spanName(data.spans[m.span]!.lengthM.value, figures));
    }
  };
  return html`<h2>${words.next.heading}</h2>
    ${
      worth.length === 0
        ? html`<p>${words.next.enough}</p>`
        : html`<p class="note">${words.next.lead(percent(now.laterU95))}</p>
            <ol>${worth.map((choice) => html`<li>${text(choice)} <span class="note">${words.next.gain(percent(choice.laterU95), percent(1.96 * choice.densityU))}</span></li>`)}</ol>`
    }`;
}
