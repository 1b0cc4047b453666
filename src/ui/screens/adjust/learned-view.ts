/** What is known of the match and of the adjusters, in sentences. */

import { RESPONSE_SPREAD } from '../../../core/machine/adjust/adjusters.ts';
import { believedResponseN } from '../../../core/machine/adjust/belief.ts';
import { movesIn } from '../../../core/machine/adjust/steps.ts';
import type { Measured } from '../../../core/math/measured.ts';
import { formatPercent, formatQuantity } from '../../../core/quantity.ts';
import { adjustEn as words } from '../../../words/adjust-en.ts';
import { type Figures, together } from '../../format.ts';
import type { Adjusting } from '../../state/adjusting.ts';

/** 95 % of a normal distribution, half width in standard deviations. */
const HALF_SD = 1.959964;
/** From this doubt on a response is a guess. */
const KNOWN_RELATIVE = 0.35;
/** An effect on another belt smaller than this share of the own is not worth a word. */
const WORTH_SAYING = 0.03;

export interface MatchView {
  readonly headline: string;
  readonly lines: readonly string[];
}

export function matchView({ group, session }: Adjusting, figures: Figures): MatchView | undefined {
  const { matchRelative, likeness } = group.plan;
  if (matchRelative === undefined) return undefined;
  const wanted = words.match.wanted(formatPercent(matchRelative, { format: figures.format }));
  const match = session.standing?.match;
  if (match === undefined) return { headline: words.match.open, lines: [wanted, words.match.why[likeness]] };
  const { ask } = session;
  if (ask.kind === 'pluck' && ask.why !== 'open') {
    const name = group.members[ask.belt]?.belt.name ?? '';
    return { headline: words.match.again, lines: [words.match.againWhy(name), wanted] };
  }
  const [a, b] = match.pair.map((belt) => group.members[belt]!.belt.name) as [string, string];
  const headline = differenceText({ a, b, ...match.difference }, figures);
  return { headline, lines: [`${wanted} ${words.match.verdict[match.verdict]}`, words.match.why[likeness]] };
}

/** 'B is 18 % ± 1 % below A'. @param pair.value  force of the first over that of the second, less one */
export function differenceText(
  { a, b, value, standardUncertainty }: { readonly a: string; readonly b: string } & Measured,
  figures: Figures,
): string {
  const [low, high, below] = value < 0 ? [a, b, -value] : [b, a, value / (1 + value)];
  const u95 = HALF_SD * standardUncertainty;
  if (below < u95 / 2) return words.match.equal(a, b, formatPercent(Math.ceil(100 * (below + u95)) / 100, { format: figures.format }));
  const percents = figures.measured(100 * below, Math.max(0.1, 100 * u95));
  return words.match.apart(low, high, `${percents.value}\u00a0%`, `${percents.doubt}\u00a0%`);
}

export function screwTitle({ group }: Adjusting): string {
  const kinds = [...new Set(group.plan.belts.map(({ adjuster }) => adjuster.kind))];
  const [kind] = kinds;
  if (kind === undefined || kinds.length > 1) return words.screw.titleMixed;
  return group.members.length > 1 ? words.screw.titleMany[kind] : words.screw.titles[kind];
}

/** One sentence for each adjuster, and the limit. */
export function screwLines({ group, session, steps }: Adjusting, figures: Figures): readonly string[] {
  const { belief } = session;
  if (belief === undefined) return [];
  const { plan, members } = group;
  const learned = words.screw.learned(movesIn(steps));
  const sentences = members.map(({ belt }, i) => {
    const { kind, modelResponseN = 0 } = plan.belts[i]!.adjuster;
    if (kind === 'spring') return words.screw.spring(belt.name);
    const own = believedResponseN(belief, i, i);
    if (own.standardUncertainty > KNOWN_RELATIVE * own.value) {
      const range = figures.bounds({
        value: own.value,
        low: RESPONSE_SPREAD.low * modelResponseN,
        high: RESPONSE_SPREAD.high * modelResponseN,
      });
      return `${(kind === 'slide' ? words.screw.guessedMillimetre : words.screw.guessed)(belt.name)}${words.screw.guess(`${range}\u00a0N`)}`;
    }
    const figure = figures.measured(own.value, HALF_SD * own.standardUncertainty);
    const others = members.flatMap((other, k) => {
      const { value } = believedResponseN(belief, i, k);
      return k !== i && Math.abs(value) > WORTH_SAYING * own.value
        ? [words.screw.other(other.belt.name, formatQuantity(value, 'N', { significantDigits: 1, format: figures.format }))]
        : [];
    });
    const lead = (kind === 'slide' ? words.screw.millimetre : words.screw.turn)(belt.name, together(figure, 'N'));
    return `${lead}${others.join('')}${learned}`;
  });
  const limits = [...new Set(plan.belts.map(({ limitN }) => limitN))];
  const [limitN] = limits;
  return [...sentences, limitN === undefined ? words.screw.noLimit : words.screw.limit(figures.rough(limitN, 'N'))];
}
