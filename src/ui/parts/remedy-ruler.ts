/** What each remedy would give: one interval for each on one scale with the target, beside it its grade and its figure. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Grade } from '../../core/outcome.ts';
import type { ForceRange } from '../../core/setup.ts';
import './grade-mark.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { rulerDrawingStyles, thinInterval } from './ruler-drawing.ts';
import { rulerMark } from './ruler-marks.ts';
import { closeRange, type ShownForce } from './ruler-range.ts';
import { type RulerScale, rulerFigures, rulerScale } from './ruler-scale.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';
import { textWidth } from './text-width.ts';

export interface RemedyRow extends ShownForce {
  readonly name: string;
  readonly grade: Grade;
  readonly gradeWord: string;
  /** Half of the interval in words, such as `± 0.4 N`. */
  readonly figure: string;
  /** As things stand: dashed and quiet. */
  readonly isNow?: boolean | undefined;
}

/** Two lines of a name. */
const ROW_PX = 36;
const NARROW_ROW_PX = 24;
const AXIS_PX = 30;
const NARROW_BELOW_PX = 420;
const MARGINS = { beforePx: 12, afterPx: 26 };

/**
 * @cssprop --ink, --ink-2, --edge - intervals and names, what is now, axis
 * @cssprop --aim, --aim-wash - target
 * @cssprop --font, --text-size, --note-size, --note-line, --space-4, --space-8, --space-12 - type and spaces
 */
@customElement('remedy-ruler')
export class RemedyRuler extends LitElement {
  static override styles = [
    plotStyles,
    rulerDrawingStyles,
    css`
      .rows {
        display: grid;
        grid-template-columns: fit-content(13rem) minmax(0, 1fr) auto auto;
        align-items: center;
        column-gap: var(--space-12);
        font-size: var(--text-size);
        line-height: var(--note-line);
      }
      .name.now {
        color: var(--ink-2);
      }
      .figure {
        white-space: nowrap;
        text-align: end;
      }
      .lane {
        min-inline-size: 0;
      }
      .axis {
        grid-column: 2;
      }
      :host([narrow]) .rows {
        grid-template-columns: minmax(0, 1fr) auto auto;
      }
      :host([narrow]) .name {
        grid-column: 1 / -1;
        padding-block: var(--space-8) var(--space-4);
      }
      :host([narrow]) .axis {
        grid-column: 1;
      }
      .axis-line {
        stroke: var(--edge);
      }
      .axis text {
        font-size: var(--note-size);
      }
      p {
        margin: var(--space-8) 0 0;
        line-height: var(--note-line);
        color: var(--ink-2);
      }
    `,
  ];

  @property({ attribute: false }) target: ForceRange | undefined;
  @property({ attribute: false }) rows: readonly RemedyRow[] = [];
  /** The same as a table, for screen readers. */
  @property({ attribute: false }) table: PlotTable | undefined;
  /** Stands below. */
  @property() note = '';
  @property() unit = 'N';
  @property() locale = 'en';
  /** Names stand above their lines. */
  @property({ type: Boolean, reflect: true }) narrow = false;

  readonly #width = new OwnWidth(this);
  /** Of the lanes; they share it with the axis, whose width is known only once it stands. */
  #lanePx = 0;

  override willUpdate(): void {
    this.narrow = this.#width.px < NARROW_BELOW_PX;
  }

  override updated(): void {
    const lane = this.renderRoot.querySelector('.axis');
    const lanePx = Math.floor(lane?.getBoundingClientRect().width ?? 0);
    if (lanePx === this.#lanePx) return;
    this.#lanePx = lanePx;
    this.requestUpdate();
  }

  override render() {
    if (this.#width.px === 0 || this.rows.length === 0) return nothing;
    const range = closeRange({ target: this.target, shown: this.rows, fallback: { lowN: 0, highN: 20 } });
    const scale = rulerScale(range, this.#lanePx, MARGINS);
    return html`
      <div class="rows" aria-hidden="true">
        ${this.rows.map(
          (row) => html`
            <span class="name ${row.isNow ? 'now' : ''}">${row.name}</span>
            <div class="lane">${this.#lane(row, scale)}</div>
            <grade-mark bare .grade=${row.grade} .word=${row.gradeWord}></grade-mark>
            <span class="figure">${row.figure}</span>
          `,
        )}
        <div class="axis">${this.#lanePx > 0 ? this.#axis(range, scale) : nothing}</div>
      </div>
      ${this.table ? spokenTable(this.table) : nothing} ${this.note ? html`<p>${this.note}</p>` : nothing}
    `;
  }

  #lane(row: RemedyRow, scale: RulerScale) {
    const heightPx = this.narrow ? NARROW_ROW_PX : ROW_PX;
    const mark = rulerMark(row, scale);
    return html`<svg width=${scale.widthPx} height=${heightPx}>
      ${this.#band(scale, heightPx)} ${mark ? thinInterval(mark, heightPx / 2, row.isNow ? 'now' : 'remedy') : nothing}
    </svg>`;
  }

  #band(scale: RulerScale, heightPx: number) {
    if (!this.target) return nothing;
    const [fromPx, toPx] = [scale.xOf(this.target.lowN), scale.xOf(this.target.highN)];
    return svg`
      <rect class="wash band" x=${fromPx} y="0" width=${toPx - fromPx} height=${heightPx} />
      ${[fromPx, toPx].map((xPx) => svg`<line class="edge-of-aim" x1=${xPx} x2=${xPx} y1="0" y2=${heightPx} />`)}`;
  }

  #axis(range: ForceRange, scale: RulerScale) {
    const figures = rulerFigures(range, scale, { locale: this.locale, widthOf: textWidth(this) });
    return html`<svg width=${scale.widthPx} height=${AXIS_PX}>
      <path class="axis-line" fill="none" d=${`M${scale.xOf(range.lowN)},4.5 H${scale.xOf(range.highN)}`} />
      ${figures.map(
        ({ xPx, text }) => svg`
          <line class="axis-line" x1=${xPx} x2=${xPx} y1="4.5" y2="9" />
          <text x=${xPx} y="23" text-anchor="middle">${text}</text>`,
      )}
      <text class="second" x=${scale.widthPx} y="23" text-anchor="end">${this.unit}</text>
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'remedy-ruler': RemedyRuler;
  }
}
