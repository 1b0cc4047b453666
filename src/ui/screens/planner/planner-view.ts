/** What the planner shows, as data and words: headline, plot, and why each zone is what it is. */

import type { AskedPlan, PlanAnswer } from '../../../core/machine/ask-plan.ts';
import type { PlannedSpan } from '../../../core/machine/plan.ts';
import type { Zone } from '../../../core/machine/zones.ts';
import { formatNumber, formatPercent } from '../../../core/quantity.ts';
import { toleranceOf } from '../../../core/verdict/grade.ts';
import { betweenText, zoneSentence } from '../../../words/plan-en.ts';
import { plannerEn as words } from '../../../words/planner-en.ts';
import { reasonName } from '../../../words/reasons-en.ts';
import type { Figures } from '../../format.ts';
import type { PlanMark, PlanZone } from '../../parts/span-plan.ts';
import type { PlanPoint } from '../../parts/span-plan-scale.ts';
import type { PlotTable } from '../../parts/spoken-table.ts';

export interface ZoneNote {
  readonly zone: Zone;
  readonly where: string;
  readonly why: readonly string[];
}

export interface PlannerView {
  readonly reach: { readonly fromM: number; readonly toM: number };
  readonly most: number;
  readonly points: readonly PlanPoint[];
  readonly zones: readonly PlanZone[];
  readonly notes: readonly ZoneNote[];
  readonly now?: PlanMark | undefined;
  readonly park?: PlanMark | undefined;
  readonly curveLabels: readonly [string, string];
  readonly tolerance: number;
  readonly label: string;
  readonly table: PlotTable;
}

/** The plot shows so many times what is looked for; the rest of the reach lies beyond it. */
const SHOWN_BEYOND = 2.4;
const LEAST_SHOWN_M = 0.12;
const SHOWN_ON_M = 0.02;

export const spanText = (metres: number, figures: Figures): string => figures.typed(Math.round(metres * 1e4) / 10, 'mm');
export const shareText = (share: number, figures: Figures): string =>
  formatPercent(share, { decimals: share < 0.0995 ? 1 : 0, format: figures.format });

export function plannerView(asked: AskedPlan, { plan, park, now }: PlanAnswer, figures: Figures): PlannerView {
  const { question } = asked;
  const tolerance = toleranceOf(question.setup);
  const looked = Math.max(
    plan.shortestTrustedM ?? asked.reach.toM,
    park?.spanLengthM ?? 0,
    now?.spanLengthM ?? 0,
    LEAST_SHOWN_M / SHOWN_BEYOND,
  );
  const toM = Math.min(asked.reach.toM, Math.max(LEAST_SHOWN_M, Math.ceil((SHOWN_BEYOND * looked) / SHOWN_ON_M) * SHOWN_ON_M));
  const reach = { fromM: asked.reach.fromM, toM };
  const { lowN, highN } = question.forceN;
  const zones = plan.zones.map(({ fromM, toM, grade }): PlanZone => ({ fromM, toM, grade, word: words.grades[grade] }));
  const zoneTexts = plan.zones.map(({ fromM, toM, grade }) =>
    words.plot.zone(spanText(fromM, figures), spanText(toM, figures), words.grades[grade]),
  );
  return {
    reach,
    most: Math.min(1, Math.max(0.3, 2.6 * tolerance)),
    points: plan.spans.map(pointOf),
    zones,
    notes: plan.zones.filter(({ because }) => because.length > 0).map((zone) => noteOf(zone, asked, figures)),
    now: now && { ...pointOf(now), label: words.plot.now(spanText(now.spanLengthM, figures)) },
    park: park && { ...pointOf(park), label: spanText(park.spanLengthM, figures) },
    curveLabels: [words.plot.at(figures.typed(lowN, 'N')), words.plot.at(figures.typed(highN, 'N'))],
    tolerance,
    label: words.plot.label(zoneTexts.join(' ')),
    table: tableOf(plan.spans, figures),
  };
}

const pointOf = ({ spanLengthM, atLow, atHigh }: PlannedSpan): PlanPoint => ({
  spanM: spanLengthM,
  atLow: atLow.forceU95Relative,
  atHigh: atHigh.forceU95Relative,
});

function noteOf(zone: Zone, { question, reach }: AskedPlan, figures: Figures): ZoneNote {
  const [from, to] = [spanText(zone.fromM, figures), spanText(zone.toM, figures)];
  const [isFirst, isLast] = [zone.fromM <= reach.fromM, zone.toM >= reach.toM];
  const inside = isLast ? words.plot.from(from) : words.plot.between(from, to);
  const where = isFirst ? (isLast ? words.plot.everywhere : words.plot.below(to)) : inside;
  const why = zone.because.map((reason) => `${capital(reasonName(reason))}: ${zoneSentence(reason, question.lowestHz, figures.format)}`);
  return { zone, where, why };
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** From which length on partial 1 of the low force sinks below what the microphone hears; undefined where it does not within reach. */
export function sinksFromM({ question }: AskedPlan, spans: readonly PlannedSpan[]): number | undefined {
  return spans.find(({ atLow }) => atLow.frequencyHz < question.lowestHz)?.spanLengthM;
}

/** Figure at any length, between the two nearest that were planned. */
export function between(spans: readonly PlannedSpan[], spanM: number, of: (span: PlannedSpan) => number): number {
  const after = spans.findIndex(({ spanLengthM }) => spanLengthM >= spanM);
  if (after <= 0) return of(spans[after < 0 ? spans.length - 1 : 0]!);
  const [one, other] = [spans[after - 1]!, spans[after]!];
  const share = Math.log(spanM / one.spanLengthM) / Math.log(other.spanLengthM / one.spanLengthM);
  return of(one) * (of(other) / of(one)) ** share;
}

export const hertzAt = (spans: readonly PlannedSpan[], spanM: number, figures: Figures): string =>
  rangeText(
    between(spans, spanM, ({ atLow }) => atLow.frequencyHz),
    between(spans, spanM, ({ atHigh }) => atHigh.frequencyHz),
    figures,
  );

/** The fewer of the two forces: so many there are at least. */
export const cyclesAt = (spans: readonly PlannedSpan[], spanM: number, figures: Figures): string =>
  formatNumber(
    between(spans, spanM, ({ atLow, atHigh }) => Math.min(atLow.cycles, atHigh.cycles)),
    { decimals: 0, format: figures.format },
  );

/** '77–98', as tables have it. */
function rangeText(low: number, high: number, { format }: Figures): string {
  const [one, other] = [low, high].map((value) => formatNumber(value, { decimals: 0, format }));
  return one === other ? one! : `${one}–${other}`;
}

/** A dozen rows are enough to be read out. */
const ROWS = 12;

function tableOf(spans: readonly PlannedSpan[], figures: Figures): PlotTable {
  const step = Math.max(1, Math.floor(spans.length / ROWS));
  const doubt = (share: number | undefined) => (share === undefined ? words.plot.unbounded : words.doubt(shareText(share, figures)));
  return {
    caption: words.plot.caption,
    columns: words.plot.columns,
    rows: spans
      .filter((_, i) => i % step === 0)
      .map(({ spanLengthM, atLow, atHigh, worst }) => [
        spanText(spanLengthM, figures),
        betweenText(atLow.frequencyHz, atHigh.frequencyHz, 'Hz', figures.format),
        betweenText(atLow.cycles, atHigh.cycles, '', figures.format),
        doubt(atLow.forceU95Relative),
        doubt(atHigh.forceU95Relative),
        words.grades[worst.grade],
      ]),
  };
}
