/** The plan command: a belt and a range of force in, the worth of each span length out. */

import type { CatalogueBelt } from '../core/belt/catalogue.ts';
import { LOWEST_HEARD_HZ, type PlannedSpan, type PlanQuestion, plannedSpan } from '../core/machine/plan.ts';
import { type SpanPlan, spanPlan } from '../core/machine/zones.ts';
import type { Reason } from '../core/outcome.ts';
import { usageFaultText } from '../words/cli-en.ts';
import { betweenText, millimetresText, planCliEn, planHelp, plannedRemedy, plannedSentence, zoneSentence } from '../words/plan-en.ts';
import { reasonName } from '../words/reasons-en.ts';
import { type JsonReason, orNull, rounded } from './json.ts';
import type { ExitCode, Terminal } from './measure-command.ts';
import { type PlanOptions, planOptions } from './plan-options.ts';
import { printable } from './printable.ts';
import { setupTold } from './told.ts';

/** Lengths that people park at; the one asked for and the shortest trusted one stand among them. */
const LENGTHS_MM = [40, 45, 50, 60, 70, 80, 90, 100, 120, 140, 160, 180, 200, 250, 300, 350, 400, 500, 600];

export function planCommand(
  words: readonly string[],
  { terminal, catalogue }: { readonly terminal: Terminal; readonly catalogue: readonly CatalogueBelt[] },
): ExitCode {
  const options = planOptions(words, catalogue);
  if (options.kind === 'usage') {
    for (const fault of options.faults) terminal.complain(`${printable(usageFaultText(fault))}\n`);
    return 2;
  }
  if (options.kind === 'help') {
    terminal.answer(planHelp(catalogue));
    return 0;
  }
  const question = questionOf(options, catalogue);
  const plan = spanPlan(question)!; // without a belt there were a usage fault
  const spans = spansOf(question, [options.told.spanLengthM?.value, plan.shortestTrustedM]);
  terminal.answer(options.json ? `${JSON.stringify(jsonPlan(question, plan, spans))}\n` : planTable(question, plan, spans));
  return 0;
}

function questionOf({ told, forceN, lowestHz = LOWEST_HEARD_HZ }: PlanOptions, catalogue: readonly CatalogueBelt[]): PlanQuestion {
  return { setup: setupTold(told, catalogue), forceN, lowestHz };
}

function spansOf(question: PlanQuestion, askedM: readonly (number | undefined)[]): readonly PlannedSpan[] {
  const lengths = [...LENGTHS_MM.map((mm) => mm / 1000), ...askedM.filter((length) => length !== undefined)];
  return [...new Set(lengths)].toSorted((a, b) => a - b).map((length) => plannedSpan(question, length)!);
}

function jsonPlan({ lowestHz }: PlanQuestion, { shortestTrustedM }: SpanPlan, spans: readonly PlannedSpan[]) {
  const reasonOf = (reason: Reason): JsonReason => ({
    id: reason.id,
    text: plannedSentence(reason, lowestHz),
    remedy: plannedRemedy(reason),
  });
  return {
    shortestTrustedSpanM: orNull(shortestTrustedM),
    spans: spans.map(({ spanLengthM, atLow, atHigh, worst }) => ({
      spanM: rounded(spanLengthM),
      frequencyHz: [rounded(atLow.frequencyHz), rounded(atHigh.frequencyHz)],
      forceU95Relative: orNull(worst.forceU95Relative),
      grade: worst.grade,
      reasons: worst.reasons.map(reasonOf),
    })),
  };
}

const WIDTHS = { span: 10, frequency: 16, cycles: 10, doubt: 10 };

function planTable({ lowestHz }: PlanQuestion, plan: SpanPlan, spans: readonly PlannedSpan[]): string {
  const line = (cells: Readonly<Record<'span' | 'frequency' | 'cycles' | 'doubt' | 'grade', string>>): string =>
    `${cells.span.padEnd(WIDTHS.span)}${cells.frequency.padEnd(WIDTHS.frequency)}${cells.cycles.padEnd(WIDTHS.cycles)}${cells.doubt.padEnd(WIDTHS.doubt)}${cells.grade}\n`;
  const rows = spans.map(({ spanLengthM, atLow, atHigh, worst }) =>
    line({
      span: millimetresText(spanLengthM),
      frequency: betweenText(atLow.frequencyHz, atHigh.frequencyHz, 'Hz'),
      cycles: betweenText(atLow.cycles, atHigh.cycles, ''),
      doubt: worst.forceU95Relative === undefined ? planCliEn.unbounded : planCliEn.doubt(worst.forceU95Relative),
      grade: worst.grade,
    }),
  );
  const zones = plan.zones.flatMap(({ fromM, toM, grade, because }) => [
    `${planCliEn.zone(millimetresText(fromM), millimetresText(toM), grade)}\n`,
    ...because.map((reason) => `    ${reasonName(reason)}: ${zoneSentence(reason, lowestHz)} ${plannedRemedy(reason)}\n`),
  ]);
  const answer = plan.shortestTrustedM === undefined ? planCliEn.none : planCliEn.shortest(millimetresText(plan.shortestTrustedM));
  return [line(planCliEn.columns), ...rows, '\n', ...zones, '\n', `${answer}\n`].join('');
}
