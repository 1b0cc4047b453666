/** Several belts on one force ruler, a lane each: what was found solid or hollow, the target behind, and where the next turn should bring one. */

import { css, html, LitElement, nothing, type PropertyValues, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ForceRange } from '../../core/setup.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { rulerDrawingStyles, thinInterval } from './ruler-drawing.ts';
import { bandLabelPlace, rulerMark } from './ruler-marks.ts';
import { rulerRange, type ShownForce } from './ruler-range.ts';
import { type RulerScale, rulerFigures, rulerScale, rulerTicks } from './ruler-scale.ts';
import { textWidth } from './text-width.ts';

/** One belt: its letter, what was found (95 %), where it should come. */
export interface RulerLane {
  readonly name: string;
  readonly found?: ShownForce | undefined;
  readonly aim?: (ShownForce & { readonly label: string }) | undefined;
}

const TOP_PX = 24;
const LANE_PX = 52;
const STEEL_PX = 43;
const BAR_HALF_PX = 8;
const TILE_PX = 26;
const LEFT_PX = 48;
const RIGHT_PX = 34;
const ARROW_GAP_PX = 8;
/** An aim that lies over what was found is drawn below it. */
const BELOW_PX = 18;

/**
 * @cssprop --ink, --ink-2, --paper - what was found, its letter, the inside of hollow bars
 * @cssprop --aim, --aim-wash - target, and where the next turn should bring a belt
 * @cssprop --steel - the ruler
 */
@customElement('group-ruler')
export class GroupRuler extends LitElement {
  static override styles = [
    plotStyles,
    rulerDrawingStyles,
    css`
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
      .bar {
        fill: var(--ink);
      }
      .bar.hollow {
        fill: var(--paper);
        stroke: var(--ink);
        stroke-width: 2;
      }
      .slit {
        stroke: var(--paper);
        stroke-width: 3;
      }
      .slit.hollow {
        stroke: var(--ink);
        stroke-width: 2;
      }
      .tile {
        fill: var(--ink);
      }
      .tile.hollow {
        fill: var(--paper);
        stroke: var(--ink);
        stroke-width: 2;
      }
      .letter {
        font-weight: 700;
        font-size: var(--text-size);
        fill: var(--paper);
      }
      .letter.hollow {
        fill: var(--ink);
      }
      .third {
        stroke-dasharray: 6 2;
      }
      .fourth {
        stroke-dasharray: 2 2;
      }
      .way {
        stroke: var(--aim);
        stroke-width: 2;
        fill: none;
      }
    `,
  ];

  @property({ attribute: false }) target: ForceRange | undefined;
  @property() targetLabel = '';
  @property() targetShortLabel = '';
  @property({ attribute: false }) lanes: readonly RulerLane[] = [];
  @property() label = '';
  @property() locale = 'en';
  @property({ type: Boolean }) held = false;

  readonly #width = new OwnWidth(this);
  #range: ForceRange | undefined;

  override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.has('target') && changed.get('target')?.lowN !== this.target?.lowN ? undefined : this.#range;
    this.#range = rulerRange({
      target: this.target,
      shown: this.lanes.flatMap(({ found, aim }) => [found, aim].filter((one) => one !== undefined)),
      before,
      held: this.held,
      fallback: { lowN: 0, highN: 20 },
    });
  }

  override render() {
    const widthPx = this.#width.px;
    if (widthPx === 0 || !this.#range) return nothing;
    const scale = rulerScale(this.#range, widthPx, { beforePx: LEFT_PX, afterPx: RIGHT_PX });
    const basePx = TOP_PX + LANE_PX * this.lanes.length + 4;
    const heightPx = basePx + STEEL_PX;
    return html`<svg role="img" aria-label=${this.label || nothing} width=${widthPx} height=${heightPx} viewBox=${`0 0 ${widthPx} ${heightPx}`}>
      ${this.#target(scale, basePx)} ${this.#steel(this.#range, scale, basePx)}
      ${this.lanes.map((lane, index) => this.#lane(lane, index, scale))}
    </svg>`;
  }

  #lane({ name, found, aim }: RulerLane, index: number, scale: RulerScale) {
    const yPx = TOP_PX + LANE_PX * (index + 0.5);
    const look = index === 0 ? '' : (['', 'hollow', 'hollow third', 'hollow fourth'][index] ?? 'hollow');
    const mark = found && rulerMark(found, scale);
    const aimed = aim && rulerMark(aim, scale);
    return svg`
      <rect class="tile ${look}" x="6" y=${yPx - TILE_PX / 2} width=${TILE_PX} height=${TILE_PX} />
      <text class="letter ${look}" x=${6 + TILE_PX / 2} y=${yPx + 5.5} text-anchor="middle">${name}</text>
      ${mark ? bar(mark, yPx, look) : nothing}
      ${mark && aimed ? way(mark, aimed, yPx) : nothing}
      ${aimed && aim ? this.#aim(aim.label, aimed, mark && overlap(mark, aimed) ? yPx + BELOW_PX : yPx, scale) : nothing}`;
  }

  #aim(label: string, mark: NonNullable<ReturnType<typeof rulerMark>>, yPx: number, scale: RulerScale) {
    const widthOf = textWidth(this)(label);
    const right = mark.toPx + 8 + widthOf <= scale.widthPx;
    return svg`${thinInterval(mark, yPx, 'predicted')}
      <text class="aim" x=${right ? mark.toPx + 8 : mark.toPx} y=${right ? yPx + 4.5 : yPx - 12} text-anchor=${right ? 'start' : 'end'}>${label}</text>`;
  }

  #target(scale: RulerScale, basePx: number) {
    if (!this.target) return nothing;
    const [fromPx, toPx] = [Math.max(0, scale.xOf(this.target.lowN)), Math.min(scale.widthPx, scale.xOf(this.target.highN))];
    const widthOf = textWidth(this);
    const label = [this.targetLabel, this.targetShortLabel]
      .map((text) => ({ text, place: bandLabelPlace(fromPx, toPx, widthOf(text), scale.widthPx) }))
      .find(({ place }) => place);
    return svg`
      <rect class="wash band" x=${fromPx} y="0" width=${Math.max(0, toPx - fromPx)} height=${basePx} />
      ${[fromPx, toPx].map((xPx) => svg`<line class="edge-of-aim" x1=${xPx} x2=${xPx} y1="0" y2=${basePx} />`)}
      ${label?.place ? svg`<text class="aim" x=${label.place.xPx} y="15" text-anchor=${label.place.anchor}>${label.text}</text>` : nothing}`;
  }

  #steel(range: ForceRange, scale: RulerScale, basePx: number) {
    const widthOf = textWidth(this, 15 / 13);
    const figureY = basePx + 33;
    return svg`
      <rect class="steel" x="0" y=${basePx} width=${scale.widthPx} height=${STEEL_PX} />
      ${rulerTicks(range, scale).map(({ xPx, lengthPx }) => svg`<line class="tick" x1=${xPx} x2=${xPx} y1=${basePx} y2=${basePx + lengthPx} />`)}
      <line class="baseline" x1="0" x2=${scale.widthPx} y1=${basePx} y2=${basePx} />
      ${rulerFigures(range, scale, { locale: this.locale, widthOf }).map(
        ({ xPx, text }) => svg`<text class="figure" x=${xPx} y=${figureY} text-anchor="middle">${text}</text>`,
      )}
      <text class="unit" x=${scale.widthPx - 6} y=${figureY} text-anchor="end">N</text>`;
  }
}

const overlap = (one: Mark, other: Mark): boolean => one.fromPx < other.toPx && other.fromPx < one.toPx;

type Mark = NonNullable<ReturnType<typeof rulerMark>>;

/** The heavy interval with a slit at its value. */
function bar(mark: Mark, yPx: number, look: string) {
  const widthPx = Math.max(4, mark.toPx - mark.fromPx);
  return svg`
    <rect class="bar ${look}" x=${mark.fromPx} y=${yPx - BAR_HALF_PX} width=${widthPx} height=${2 * BAR_HALF_PX} />
    ${mark.valuePx === undefined ? nothing : svg`<line class="slit ${look}" x1=${mark.valuePx} x2=${mark.valuePx} y1=${yPx - BAR_HALF_PX} y2=${yPx + BAR_HALF_PX} />`}`;
}

/** An arrow from what was found towards what is aimed at, where there is room between them. */
function way(from: Mark, to: Mark, yPx: number) {
  const rises = (to.valuePx ?? to.fromPx) > (from.valuePx ?? from.fromPx);
  const [startPx, endPx] = rises
    ? [from.toPx + ARROW_GAP_PX, to.fromPx - ARROW_GAP_PX]
    : [from.fromPx - ARROW_GAP_PX, to.toPx + ARROW_GAP_PX];
  if (rises ? endPx - startPx < 10 : startPx - endPx < 10) return nothing;
  const back = rises ? -8 : 8;
  return svg`<path class="way" d="M${startPx},${yPx} H${endPx} M${endPx + back},${yPx - 5} L${endPx},${yPx} L${endPx + back},${yPx + 5}" />`;
}

declare global {
  interface HTMLElementTagNameMap {
    'group-ruler': GroupRuler;
  }
}
