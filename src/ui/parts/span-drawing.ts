/** The span itself: two pulleys, the free belt between its tangent points, what its length means, where to pluck, and whether it rings. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { type SpanGeometry, spanGeometry } from './span-geometry.ts';
import { inTwoLines, textWidth } from './text-width.ts';

/** From a label to the next line of the drawing. */
const CLEAR_OF_LINE_PX = 6;
const LINE_PX = 16;

/**
 * @cssprop --ink, --ink-2, --ink-3 - the span and its dimension, labels, belt beyond the span and axes
 * @cssprop --aim - the dimension while its field is at work
 * @cssprop --steel, --edge - pulleys
 * @cssprop --font, --note-size, --text-size - type
 */
@customElement('span-drawing')
export class SpanDrawing extends LitElement {
  static override styles = [
    plotStyles,
    css`
      .pulley {
        fill: var(--steel);
        stroke: var(--edge);
      }
      .axis {
        stroke: var(--ink-3);
        stroke-dasharray: 8 3 2 3;
      }
      .beyond {
        fill: none;
        stroke: var(--ink-3);
        stroke-width: 4;
      }
      .span {
        stroke: var(--ink);
        stroke-width: 4;
      }
      .teeth {
        stroke: var(--ink);
        stroke-width: 4;
        stroke-dasharray: 4.5 4.5;
      }
      .dimension {
        stroke: var(--ink);
      }
      .head {
        fill: var(--ink);
      }
      .length {
        font-size: var(--text-size);
        font-weight: 600;
      }
      :host([marked]) .dimension {
        stroke: var(--aim);
      }
      :host([marked]) .head,
      :host([marked]) .length {
        fill: var(--aim);
      }
      .pluck {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .leader,
      .swing {
        fill: none;
        stroke: var(--ink-3);
      }
      .swing {
        transform-box: fill-box;
        transform-origin: center;
      }
      @media (prefers-reduced-motion: no-preference) {
        .swing {
          animation: swing 0.16s ease-in-out infinite alternate;
        }
      }
      @keyframes swing {
        from {
          transform: scaleY(1);
        }
        to {
          transform: scaleY(0.35);
        }
      }
    `,
  ];

  @property({ attribute: false }) spanLengthM: number | undefined;
  /** Figure at the dimension line. */
  @property() length = '';
  @property() variant: 'big' | 'small' = 'small';
  @property() pluckLabel = '';
  @property() tangentLabel = '';
  /** Place of the pluck along the span, 0 to 1. */
  @property({ type: Number }) pluckAtRelative = 0.5;
  @property({ type: Boolean }) ringing = false;
  /** The length is being typed. */
  @property({ type: Boolean, reflect: true }) marked = false;
  /** The drawing in words. */
  @property() label = '';

  readonly #width = new OwnWidth(this);

  override render() {
    if (this.#width.px === 0) return nothing;
    const at = spanGeometry(this.variant, this.#width.px, this.spanLengthM);
    return html`
      <svg role="img" aria-label=${this.label || nothing} width=${at.widthPx} height=${at.heightPx} viewBox=${`0 0 ${at.widthPx} ${at.heightPx}`}>
        ${pulley(at, at.leftPx)} ${pulley(at, at.rightPx)} ${beltBeyond(at)} ${freeSpan(at)} ${this.ringing ? swing(at) : nothing}
        ${this.#dimension(at)} ${this.variant === 'big' ? this.#guides(at) : nothing}
      </svg>
    `;
  }

  #dimension({ leftPx, rightPx, beltPx, dimensionPx: y }: SpanGeometry) {
    const middle = (leftPx + rightPx) / 2;
    const gap = this.length ? textWidth(this, 15 / 13, 600)(this.length) / 2 + 8 : 0;
    return svg`
      <path class="dimension" fill="none" d=${`M${leftPx},${y - 6} V${beltPx - 4} M${rightPx},${y - 6} V${beltPx - 4}`} />
      ${rightPx - leftPx > 2 * gap + 24 ? svg`<path class="dimension" d=${`M${leftPx},${y} H${middle - gap} M${middle + gap},${y} H${rightPx}`} />` : nothing}
      <path class="head" d=${`M${leftPx},${y} l9,-3 v6 Z M${rightPx},${y} l-9,-3 v6 Z`} />
      <text class="length" x=${middle} y=${y + 5} text-anchor="middle">${this.length}</text>`;
  }

  #guides(at: SpanGeometry) {
    const x = at.leftPx + (at.rightPx - at.leftPx) * this.pluckAtRelative;
    const [down, up] = [at.beltPx - 8, at.beltPx + 14];
    const widthOf = textWidth(this);
    const pluck = at.beltPx - at.dimensionPx > 56 ? pluckLabelPlace(this.pluckLabel, at, x, widthOf) : undefined;
    const tangentPx = widthOf(this.tangentLabel);
    const tangentFits = at.rightPx - at.leftPx > 2 * (at.radiusPx + 24 + tangentPx) + 16;
    return svg`
      <path class="pluck" d=${`M${x},${down - 14} V${down} m-4.5,-5.5 L${x},${down} l4.5,-5.5 M${x},${up + 14} V${up} m-4.5,5.5 L${x},${up} l4.5,5.5`} />
      ${pluck?.lines.map((line, index) => svg`<text class="second" x=${pluck.xPx} y=${pluck.lastPx - (pluck.lines.length - 1 - index) * LINE_PX} text-anchor=${pluck.anchor}>${line}</text>`)}
      ${
        this.tangentLabel && tangentFits
          ? [1, -1].map((inward) => {
              const from = inward === 1 ? at.leftPx : at.rightPx;
              const end = from + inward * (at.radiusPx + 16);
              const y = at.axisPx - 4;
              return svg`
                <path class="leader" d=${`M${from},${at.beltPx + 8} Q${from + inward * 6},${y} ${end},${y}`} />
                <text class="second" x=${end + inward * 6} y=${y + 4.5} text-anchor=${inward === 1 ? 'start' : 'end'}>${this.tangentLabel}</text>`;
            })
          : nothing
      }`;
  }
}

/** Beside the arrow, in two lines beside it, or above it, clear of the lines that carry the dimension; undefined where there is no room. */
function pluckLabelPlace(label: string, { leftPx, rightPx, beltPx }: SpanGeometry, xPx: number, widthOf: (text: string) => number) {
  const besidePx = xPx + 14;
  const beside = { xPx: besidePx, anchor: 'start', lastPx: beltPx - 11, roomPx: rightPx - besidePx - CLEAR_OF_LINE_PX };
  const above = { xPx, anchor: 'middle', lastPx: beltPx - 26, roomPx: 2 * (Math.min(xPx - leftPx, rightPx - xPx) - CLEAR_OF_LINE_PX) };
  const twoLines = inTwoLines(label, widthOf);
  const ways = [
    { ...beside, lines: [label] },
    { ...beside, lines: twoLines },
    { ...above, lines: twoLines },
  ];
  return ways.find(({ lines, roomPx }) => Math.max(...lines.map(widthOf)) <= roomPx);
}

const pulley = ({ radiusPx, axisPx }: SpanGeometry, x: number) => {
  const reach = radiusPx + 8;
  return svg`
    <circle class="pulley" cx=${x} cy=${axisPx} r=${radiusPx} />
    <circle class="pulley" cx=${x} cy=${axisPx} r=${radiusPx / 5} />
    <path class="axis" d=${`M${x - reach},${axisPx} H${x + reach} M${x},${axisPx - radiusPx} V${axisPx + reach}`} />`;
};

/** The belt as it goes on round the pulleys and down, quieter than the span. */
const beltBeyond = ({ leftPx, rightPx, beltPx, axisPx, heightPx }: SpanGeometry) => {
  const radius = axisPx - beltPx;
  return svg`<path class="beyond" d=${`M${leftPx - radius},${heightPx} V${axisPx} A${radius},${radius} 0 0 1 ${leftPx},${beltPx}
    M${rightPx + radius},${heightPx} V${axisPx} A${radius},${radius} 0 0 0 ${rightPx},${beltPx}`} />`;
};

const freeSpan = ({ leftPx, rightPx, beltPx }: SpanGeometry) => svg`
  <line class="span" x1=${leftPx + 1.5} x2=${rightPx - 1.5} y1=${beltPx} y2=${beltPx} />
  <line class="teeth" x1=${leftPx + 3} x2=${rightPx - 3} y1=${beltPx + 4} y2=${beltPx + 4} />`;

/** Both ends of the swing; the animation lets it die and come again. */
const swing = ({ leftPx, rightPx, beltPx, radiusPx }: SpanGeometry) => {
  const middle = (leftPx + rightPx) / 2;
  const bend = 10 + radiusPx / 3;
  return svg`<path class="swing" d=${`M${leftPx},${beltPx + 1} Q${middle},${beltPx + 1 - bend} ${rightPx},${beltPx + 1}
    Q${middle},${beltPx + 1 + bend} ${leftPx},${beltPx + 1}`} />`;
};

declare global {
  interface HTMLElementTagNameMap {
    'span-drawing': SpanDrawing;
  }
}
