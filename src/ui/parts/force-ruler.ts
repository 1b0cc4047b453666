/** The straight ruler of forces: what is wanted in blue, each pluck thin, the reading heavy, all on one scale that does not jump. */

import { css, html, LitElement, nothing, type PropertyValues, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ForceRange } from '../../core/setup.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { heavyBar, hollowBar, rulerDrawingStyles, thinInterval } from './ruler-drawing.ts';
import { bandLabelPlace, type LabelPlace, labelPlace, rulerMark } from './ruler-marks.ts';
import { rulerRange, type ShownForce } from './ruler-range.ts';
import { type RulerScale, rulerFigures, rulerScale, rulerTicks } from './ruler-scale.ts';
import { textWidth, wrapped } from './text-width.ts';

/** One interval on the ruler (95 %) with its words. A missing bound is drawn to the ruler's edge with an arrow. */
export interface RulerInterval extends ShownForce {
  readonly label: string;
  /** Stands for `label` on a narrow ruler. */
  readonly shortLabel?: string | undefined;
  /** Heard, but not part of the reading. */
  readonly leftOut?: boolean | undefined;
}

const BAND_PX = 135;
const STEEL_PX = 43;
const FIRST_LANE_PX = 34;
const LANE_PX = 22;
const ROOMY_LANES = 3;
const MAX_LANES = 5;
const READING_PX = 107;
const PREDICTED_PX = 125;
const NARROW_BELOW_PX = 560;
/** The hint is left out where the band is too narrow for it: the reading's own sentence says the same. */
const HINT_MIN_PX = 110;
const HINT_MAX_PX = 240;

/**
 * @cssprop --ink, --ink-2, --ink-3 - what was found, its labels, what was left out
 * @cssprop --aim, --aim-wash - target and prediction
 * @cssprop --steel, --paper - the ruler, the inside of a hollow bar
 * @cssprop --font, --note-size, --text-size - type
 */
@customElement('force-ruler')
export class ForceRuler extends LitElement {
  static override styles = [
    plotStyles,
    rulerDrawingStyles,
    css`
      :host {
        block-size: ${BAND_PX + STEEL_PX}px;
      }
      .steel {
        fill: var(--steel);
      }
      .baseline {
        stroke: var(--ink);
        stroke-width: 2;
      }
      .tick {
        stroke: var(--ink);
      }
      .figure,
      .unit {
        font-size: var(--text-size);
      }
      .unit {
        fill: var(--ink-2);
      }
    `,
  ];

  @property({ attribute: false }) target: ForceRange | undefined;
  @property() targetLabel = '';
  /** Stands for `targetLabel` where that finds no room. */
  @property() targetShortLabel = '';
  /** One lane each; the last five where there are more. */
  @property({ attribute: false }) plucks: readonly RulerInterval[] = [];
  @property({ attribute: false }) reading: RulerInterval | undefined;
  /** The reading gives bounds, but no value to rely on. */
  @property({ type: Boolean }) boundsOnly = false;
  /** A second reading that fits the sound as well. */
  @property({ attribute: false }) rival: RulerInterval | undefined;
  @property({ attribute: false }) predicted: RulerInterval | undefined;
  /** Stands in the room of the plucks until there is one. */
  @property() hint = '';
  /** A pluck rings: the scale stays as it is. */
  @property({ type: Boolean }) held = false;
  @property({ attribute: false }) fallback: ForceRange = { lowN: 0, highN: 20 };
  /** All that the ruler shows, in words. */
  @property() label = '';
  @property() unit = 'N';
  @property() locale = 'en';

  readonly #width = new OwnWidth(this);
  #range: ForceRange | undefined;

  override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('target');
    const newTarget = changed.has('target') && (before?.lowN !== this.target?.lowN || before?.highN !== this.target?.highN);
    const nothingFound = this.plucks.length === 0 && !this.reading;
    this.#range = rulerRange({
      target: this.target,
      shown: [...this.plucks, this.reading, this.rival, this.predicted].filter((interval) => interval !== undefined),
      before: newTarget || (nothingFound && !this.held) ? undefined : this.#range,
      held: this.held,
      fallback: this.fallback,
    });
  }

  override render() {
    const widthPx = this.#width.px;
    if (widthPx === 0 || !this.#range) return nothing;
    const scale = rulerScale(this.#range, widthPx);
    return html`
      <svg role="img" aria-label=${this.label || nothing} width=${widthPx} height=${BAND_PX + STEEL_PX} viewBox=${`0 0 ${widthPx} ${BAND_PX + STEEL_PX}`}>
        ${this.#target(scale)} ${this.#steel(this.#range, scale)} ${this.#hint(scale)} ${this.#plucks(scale)}
        ${this.#labelled(this.predicted, PREDICTED_PX, scale, 'aim', (mark) => thinInterval(mark, PREDICTED_PX, 'predicted'))}
        ${[this.rival, this.reading].map((interval, index) =>
          this.#labelled(interval, READING_PX, scale, 'strong', (mark) =>
            this.boundsOnly || index === 0 ? hollowBar(mark, READING_PX) : heavyBar(mark, READING_PX, BAND_PX),
          ),
        )}
      </svg>
    `;
  }

  #steel(range: ForceRange, scale: RulerScale) {
    const widthOf = textWidth(this, 15 / 13);
    const figureY = BAND_PX + 33;
    return svg`
      <rect class="steel" x="0" y=${BAND_PX} width=${scale.widthPx} height=${STEEL_PX} />
      ${rulerTicks(range, scale).map(
        ({ xPx, lengthPx }) => svg`<line class="tick" x1=${xPx} x2=${xPx} y1=${BAND_PX} y2=${BAND_PX + lengthPx} />`,
      )}
      <line class="baseline" x1="0" x2=${scale.widthPx} y1=${BAND_PX} y2=${BAND_PX} />
      ${rulerFigures(range, scale, { locale: this.locale, widthOf }).map(
        ({ xPx, text }) => svg`<text class="figure" x=${xPx} y=${figureY} text-anchor="middle">${text}</text>`,
      )}
      <text class="unit" x=${scale.widthPx - 6} y=${figureY} text-anchor="end">${this.unit}</text>`;
  }

  #target(scale: RulerScale) {
    if (!this.target) return nothing;
    const [fromPx, toPx] = [Math.max(0, scale.xOf(this.target.lowN)), Math.min(scale.widthPx, scale.xOf(this.target.highN))];
    const widthOf = textWidth(this);
    const places = [this.targetLabel, this.targetShortLabel].map((text) => ({
      text,
      place: bandLabelPlace(fromPx, toPx, widthOf(text), scale.widthPx),
    }));
    const label = places.find(({ place }) => place);
    return svg`
      <rect class="wash band" x=${fromPx} y="0" width=${Math.max(0, toPx - fromPx)} height=${BAND_PX} />
      ${[fromPx, toPx].map((xPx) => svg`<line class="edge-of-aim" x1=${xPx} x2=${xPx} y1="0" y2=${BAND_PX} />`)}
      ${label?.place ? svg`<text class="aim" x=${label.place.xPx} y="15" text-anchor=${label.place.anchor}>${label.text}</text>` : nothing}`;
  }

  #hint(scale: RulerScale) {
    if (!this.hint || this.plucks.length > 0 || this.reading) return nothing;
    const [fromPx, toPx] = this.target ? [scale.xOf(this.target.lowN), scale.xOf(this.target.highN)] : [0, scale.widthPx];
    const roomPx = Math.min(HINT_MAX_PX, toPx - fromPx - 24);
    if (roomPx < HINT_MIN_PX) return nothing;
    const lines = wrapped(this.hint, roomPx, textWidth(this));
    return lines.map(
      (line, index) =>
        svg`<text class=${this.target ? 'aim' : 'second'} x=${(fromPx + toPx) / 2} y=${76 + (index - (lines.length - 1) / 2) * 19} text-anchor="middle">${line}</text>`,
    );
  }

  #plucks(scale: RulerScale) {
    const shown = this.plucks.slice(-MAX_LANES);
    const lanePx = (LANE_PX * ROOMY_LANES) / Math.max(ROOMY_LANES, shown.length);
    return shown.map((pluck, index) => {
      const yPx = FIRST_LANE_PX + index * lanePx;
      return this.#labelled(pluck, yPx, scale, 'second', (mark) => thinInterval(mark, yPx, pluck.leftOut ? 'left-out' : 'pluck'));
    });
  }

  /** An interval with its label beside it; without any figure the label alone, at the left edge. */
  #labelled(
    interval: RulerInterval | undefined,
    yPx: number,
    scale: RulerScale,
    tone: 'second' | 'strong' | 'aim',
    draw: (mark: NonNullable<ReturnType<typeof rulerMark>>) => unknown,
  ) {
    if (!interval) return nothing;
    const mark = rulerMark(interval, scale);
    const text = mark && scale.widthPx < NARROW_BELOW_PX ? (interval.shortLabel ?? interval.label) : interval.label;
    const alone: LabelPlace = { xPx: 0, anchor: 'start', above: false };
    const place = mark ? labelPlace(mark, textWidth(this, 1, tone === 'strong' ? 600 : 400)(text), scale.widthPx) : alone;
    return svg`
      ${mark ? draw(mark) : nothing}
      <text class=${tone} x=${place.xPx} y=${yPx + (place.above ? -9 : 4.5)} text-anchor=${place.anchor}>${text}</text>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'force-ruler': ForceRuler;
  }
}
