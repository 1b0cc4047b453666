/** The headline of a machine's logbook: what has to be done first and by when, and what stands behind it. */

import type { BeltOutlook, Outlook, PairOutlook } from '../../../core/logbook/outlook.ts';
import { MONTH_S } from '../../../core/logbook/report.ts';
import { FEWEST_READINGS } from '../../../core/logbook/trend.ts';
import type { TrendModel } from '../../../core/logbook/trend-models.ts';
import { formatPercent } from '../../../core/quantity.ts';
import { againstTarget } from '../../../core/verdict/against-target.ts';
import { logbookEn as words } from '../../../words/logbook-en.ts';
import { type Figures, together } from '../../format.ts';
import type { Dates } from './dates.ts';

export interface AnswerView {
  /** Plain, then heavy. */
  readonly answer: readonly [string, string];
  readonly under: string;
}

export function answerView(outlook: Outlook, { nowS, dates, figures }: { nowS: number; dates: Dates; figures: Figures }): AnswerView {
  const nameOf = (beltId: string): string => outlook.belts.find(({ belt }) => belt.id === beltId)?.belt.name ?? '';
  const targets = targetSentences(outlook.belts);
  const courses = courseSentences(outlook, nameOf, figures);
  const { first } = outlook;
  if (!first) {
    const most = Math.max(0, ...outlook.belts.map(({ readings }) => readings.length));
    if (most === 0) return { answer: [...words.answer.empty], under: words.under.empty };
    const isTrend = outlook.belts.some(({ trend }) => trend);
    const answer = isTrend ? [...words.answer.nothingDue] : words.answer.noTrend(Math.max(1, FEWEST_READINGS - most));
    return { answer: answer as [string, string], under: [...targets, ...courses].join(' ') };
  }
  const { forecast, beltId } = first;
  const day = (atS: number) => dates.day(atS, nowS);
  switch (forecast.kind) {
    case 'by-about':
      return {
        answer: words.answer.byAbout(nameOf(beltId), day(forecast.atS)) as [string, string],
        under: [...targets, ...courses].join(' '),
      };
    case 'passed': {
      const answer = forecast.isCertain ? words.answer.now(nameOf(beltId)) : words.answer.soon(nameOf(beltId));
      const under = forecast.isCertain ? targets : [words.under.passedPerhaps, ...targets];
      return { answer: answer as [string, string], under: [...under, ...courses].join(' ') };
    }
    case 'not-before':
      return {
        answer: words.answer.notBefore(day(forecast.earliestS)) as [string, string],
        under: [...targets, ...courses, words.under.cannotSay].join(' '),
      };
    default:
      return { answer: words.answer.holds(day(forecast.untilS)) as [string, string], under: [...targets, ...courses].join(' ') };
  }
}

/** Belts by how their last reading stands against the target. */
function targetSentences(belts: readonly BeltOutlook[]): readonly string[] {
  const by = { inside: [] as string[], low: [] as string[], high: [] as string[], open: [] as string[] };
  for (const { belt, last } of belts) {
    if (!belt.targetForceN || !last?.forceN) continue;
    const { kind } = againstTarget(last.forceN, belt.targetForceN);
    by[kind === 'inside' || kind === 'probably-inside' ? 'inside' : kind === 'low' || kind === 'high' ? kind : 'open'].push(belt.name);
  }
  return [
    ...(by.inside.length > 0 ? [words.under.inside(by.inside)] : []),
    ...(by.low.length > 0 ? [words.under.outside(by.low, 'low')] : []),
    ...(by.high.length > 0 ? [words.under.outside(by.high, 'high')] : []),
    ...(by.open.length > 0 ? [words.under.openTarget(by.open)] : []),
  ];
}

/** What changes, as far as it can be told from nothing; the match before the single belts. */
function courseSentences(outlook: Outlook, nameOf: (beltId: string) => string, figures: Figures): readonly string[] {
  return [...changeSentences(outlook, nameOf, figures), ...outlook.belts.flatMap((belt) => warmthSentence(belt, figures))];
}

/** What a degree does, where the readings tell it from nothing. */
function warmthSentence({ belt, trend }: BeltOutlook, figures: Figures): readonly string[] {
  const perKelvin = trend?.best.perKelvin;
  if (!perKelvin || Math.abs(perKelvin.value) < 2 * perKelvin.standardUncertainty) return [];
  return [words.under.perKelvin(belt.name, together(figures.measured(perKelvin.value, 2 * perKelvin.standardUncertainty), 'N'))];
}

function changeSentences(outlook: Outlook, nameOf: (beltId: string) => string, figures: Figures): readonly string[] {
  const slips = outlook.pairs.flatMap((pair) => slipSentence(pair, nameOf, figures));
  if (slips.length > 0) return slips;
  const falls = outlook.belts.flatMap((belt) => fallSentence(belt, figures));
  if (falls.length > 0) return falls;
  return outlook.belts.some(({ trend }) => trend) ? [words.under.steady] : [];
}

const isSeen = (model: TrendModel, atS: number): boolean => {
  const slope = model.slopeAt(atS);
  return model.course !== 'steady' && Math.abs(slope.value) > 2 * slope.standardUncertainty;
};

function slipSentence({ pair, trend }: PairOutlook, nameOf: (beltId: string) => string, { format }: Figures): readonly string[] {
  if (!trend || !isSeen(trend.best, trend.untilS)) return [];
  const monthly = trend.best.slopeAt(trend.untilS).value * MONTH_S;
  const [one, other] = monthly < 0 ? [pair.otherId, pair.oneId] : [pair.oneId, pair.otherId];
  return [words.under.slips(nameOf(one), nameOf(other), formatPercent(Math.abs(monthly), { decimals: 1, format }))];
}

function fallSentence({ belt, trend }: BeltOutlook, figures: Figures): readonly string[] {
  if (!trend || !isSeen(trend.best, trend.untilS)) return [];
  const slope = trend.best.slopeAt(trend.untilS);
  const force = together(figures.measured(Math.abs(slope.value) * MONTH_S, 2 * slope.standardUncertainty * MONTH_S), 'N');
  return [slope.value < 0 ? words.under.falls(belt.name, force) : words.under.rises(belt.name, force)];
}
