/** The plots of a machine over time: its belts' forces, and below them each pair's match on the same axis. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Outlook, PairOutlook } from '../../../core/logbook/outlook.ts';
import { formatNumber, formatPercent } from '../../../core/quantity.ts';
import { logbookEn as words } from '../../../words/logbook-en.ts';
import { Figures, pageLocale } from '../../format.ts';
import { Narrow } from '../../narrow.ts';
import '../../parts/match-line.ts';
import type { PlotTable } from '../../parts/spoken-table.ts';
import type { TimeRange } from '../../parts/time-axis.ts';
import '../../parts/time-line.ts';
import type { TimedInterval } from '../../parts/time-line.ts';
import { shared } from '../../shared-styles.ts';
import type { Book } from '../../state/logbook.ts';
import { Dates } from './dates.ts';
import { drawnReadings, flagsOf, laneOf, leavesMatch, matchCourse, matchPoints, plotRange, sharedTarget } from './plot-view.ts';

@customElement('logbook-plots')
export class LogbookPlots extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: grid;
        gap: var(--space-8);
      }
      h2 {
        margin-block-start: var(--space-8);
      }
    `,
  ];

  @property({ attribute: false }) book: Book | undefined;
  @property({ attribute: false }) outlook: Outlook | undefined;
  @property({ type: Number }) nowS = 0;

  readonly #figures = new Figures();
  readonly #dates = new Dates(pageLocale());
  readonly #narrow = new Narrow(this);

  override render() {
    const { book, outlook } = this;
    if (!book || !outlook) return nothing;
    const { logged } = book;
    const lanes = outlook.belts
      .map((belt) => ({ belt, readings: drawnReadings(logged, belt.belt.id) }))
      .filter(({ readings }) => readings.length > 0);
    const readings = lanes.flatMap((lane) => lane.readings);
    if (readings.length === 0) return nothing;
    const range = plotRange(readings, outlook, this.nowS);
    const flags = flagsOf(logged, range);
    const target = sharedTarget(outlook.belts);
    return html`<time-line
        .lanes=${lanes.map((lane) => laneOf(lane.belt, lane.readings))}
        .target=${target}
        .targetLabel=${target ? words.plot.target(this.#figures.forceRange(target)) : ''}
        .flags=${flags}
        .range=${range}
        .nowS=${this.nowS}
        .todayLabel=${words.plot.today}
        .label=${words.plot.label(
          lanes.map(({ belt }) => belt.belt.name),
          words.plot.range(this.#day(range.fromS), this.#day(this.nowS)),
        )}
        .table=${this.#forces(lanes)}
        .locale=${this.#figures.locale}
      ></time-line>
      ${outlook.pairs.map((pair) => this.#pair(pair, range, flags))}`;
  }

  #pair(pair: PairOutlook, range: TimeRange, flags: readonly { readonly atS: number }[]) {
    const points = matchPoints(pair, range);
    if (points.length === 0) return nothing;
    const nameOf = (id: string) => this.outlook?.belts.find(({ belt }) => belt.id === id)?.belt.name ?? '';
    const [one, other] = [nameOf(pair.pair.oneId), nameOf(pair.pair.otherId)];
    const percent = formatPercent(pair.pair.toleranceRelative, { format: this.#figures.format });
    const isNarrow = this.#narrow.matches;
    return html`<h2>${words.match.title(other, one)}</h2>
      <match-line
        .points=${points}
        .toleranceRelative=${pair.pair.toleranceRelative}
        .bandLabel=${isNarrow ? words.match.wantedShort(percent) : words.match.wanted(percent)}
        .course=${matchCourse(pair)}
        .leaves=${leavesMatch(pair, (from, to) =>
          isNarrow
            ? words.match.leavesShort(this.#dates.short(from), this.#dates.short(to))
            : words.match.leaves(this.#day(from), this.#day(to)),
        )}
        .flagsS=${flags.map(({ atS }) => atS)}
        .range=${range}
        .nowS=${this.nowS}
        .label=${words.match.label(other, one)}
        .table=${this.#matches(points)}
        .locale=${this.#figures.locale}
      ></match-line>`;
  }

  #day(atS: number): string {
    return this.#dates.day(atS, this.nowS);
  }

  #forces(
    lanes: readonly {
      belt: { belt: { name: string } };
      readings: readonly { atS: number; forceN?: { value: number; low?: number | undefined; high?: number | undefined } | undefined }[];
    }[],
  ): PlotTable {
    const number = (value: number | undefined) =>
      value === undefined ? '' : formatNumber(value, { significantDigits: 3, format: this.#figures.format });
    return {
      caption: words.plot.title,
      columns: words.plot.columns,
      rows: lanes.flatMap(({ belt, readings }) =>
        readings.map(({ atS, forceN }) => [
          this.#dates.moment(atS),
          belt.belt.name,
          number(forceN?.value),
          number(forceN?.low),
          number(forceN?.high),
        ]),
      ),
    };
  }

  #matches(points: readonly TimedInterval[]): PlotTable {
    const percent = (value: number | undefined) =>
      value === undefined ? '' : formatPercent(value, { decimals: 1, format: this.#figures.format });
    return {
      caption: words.match.wanted(formatPercent(this.book?.pairs[0]?.toleranceRelative ?? 0, { format: this.#figures.format })),
      columns: words.match.columns,
      rows: points.map(({ atS, value, low, high }) => [this.#dates.moment(atS), percent(value), percent(low), percent(high)]),
    };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'logbook-plots': LogbookPlots;
  }
}
