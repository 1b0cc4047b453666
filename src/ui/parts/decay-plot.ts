/** Levels over time: each partial as it was heard beside the line that was fitted, the room before, and what the fit leaves over. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { timeFigures } from './seconds-axis.ts';
import { levelFigures } from './spectrum-axis.ts';

export interface LevelAt {
  readonly atS: number;
  readonly levelDbfs: number;
}

export interface DecayLine {
  readonly label: string;
  readonly heard: readonly LevelAt[];
  /** Ends of the fitted line. */
  readonly fitted: readonly [LevelAt, LevelAt];
}

const HEIGHT = 240;
const TOP = 10;
const BOTTOM = 30;
const LEFT = 56;
const RIGHT = 84;
const LABEL_STEP = 15;
const NAMES = 64;
const SPAN_DB = 70;
/** Dots closer than this run into one another. */
const DOT_EVERY_PX = 9;

/**
 * @cssprop --ink, --ink-2, --floor - lines and dots, what is left over, the room
 * @cssprop --font, --note-size - type
 */
@customElement('decay-plot')
export class DecayPlot extends LitElement {
  static override styles = [
    plotStyles,
    css`
      .axis {
        stroke: var(--ink);
        fill: none;
      }
      .fitted {
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .heard {
        fill: var(--paper);
        stroke: var(--ink);
        stroke-width: 1.25;
      }
      .residual {
        stroke: var(--ink-2);
        stroke-width: 2;
        stroke-dasharray: 5 3;
        fill: none;
      }
      .room {
        fill: var(--floor);
      }
      .room-top {
        stroke: var(--ink-3);
      }
    `,
  ];

  @property({ attribute: false }) lines: readonly DecayLine[] = [];
  @property({ attribute: false }) residual: readonly LevelAt[] = [];
  /** Level of the room before, dB; none where it is not known. */
  @property({ attribute: false }) roomDbfs: number | undefined;
  @property({ attribute: false }) untilS = 1;
  @property() residualLabel = '';
  @property() roomLabel = '';
  /** Name and sentence, for whoever does not see the drawing. */
  @property() label = '';
  @property() locale = 'en';

  readonly #width = new OwnWidth(this);

  override render() {
    const width = this.#width.px;
    if (this.lines.length === 0 || width === 0) return nothing;
    const high = Math.ceil((Math.max(...this.lines.map(({ fitted }) => fitted[0].levelDbfs)) + 3) / 10) * 10;
    const range = { lowDbfs: high - SPAN_DB, highDbfs: high };
    const [left, right, bottom] = [LEFT, width - RIGHT, HEIGHT - BOTTOM];
    // Room before the first moment for the names of the lines.
    const start = left + NAMES;
    const xOf = (seconds: number) => start + (seconds / this.untilS) * (right - start);
    const yOf = (level: number) => TOP + ((high - Math.max(range.lowDbfs, Math.min(high, level))) / SPAN_DB) * (bottom - TOP);
    const roomY = this.roomDbfs === undefined ? undefined : yOf(this.roomDbfs);
    return html`<svg width=${width} height=${HEIGHT} role="img" aria-label=${this.label}>
      ${roomY === undefined ? nothing : svg`<rect class="room" x=${left} y=${roomY} width=${right - left} height=${bottom - roomY} /><path class="room-top" d="M${left},${roomY} H${right}" />`}
      <path class="axis" d="M${left},${TOP} V${bottom} H${right}" />
      ${timeFigures(0, this.untilS, right - start, this.locale).map(
        ({ at, text }) =>
          svg`<path class="axis" d="M${xOf(at)},${bottom} v5" /><text x=${xOf(at)} y=${bottom + 19} text-anchor="middle">${text}</text>`,
      )}
      ${levelFigures(range, this.locale, 'dB').map(
        ({ at, text }) =>
          svg`<path class="axis" d="M${left},${yOf(at)} h-5" /><text x=${left - 8} y=${yOf(at) + 4} text-anchor="end">${text}</text>`,
      )}
      ${this.lines.map((line) => this.#line(line, { xOf, yOf, low: range.lowDbfs }))}
      ${this.residual.length > 1 ? svg`<path class="residual" d=${pathOf(this.residual, xOf, yOf)} />` : nothing}
      ${this.#names(xOf(0), right, { yOf, roomY })}
    </svg>`;
  }

  #line({ heard, fitted }: DecayLine, { xOf, yOf, low }: Scale) {
    const end = endAbove(fitted, low);
    let last = Number.NEGATIVE_INFINITY;
    const dots = heard.filter(({ atS, levelDbfs }) => {
      if (levelDbfs <= low || xOf(atS) - last < DOT_EVERY_PX) return false;
      last = xOf(atS);
      return true;
    });
    return svg`<path class="fitted" d="M${xOf(fitted[0].atS)},${yOf(fitted[0].levelDbfs)} L${xOf(end.atS)},${yOf(end.levelDbfs)}" />
      ${dots.map(({ atS, levelDbfs }) => svg`<circle class="heard" cx=${xOf(atS)} cy=${yOf(levelDbfs)} r="2.5" />`)}`;
  }

  /** Names of the partials where their lines begin, the others at the right; pushed apart where they would meet. */
  #names(left: number, right: number, { yOf, roomY }: Pick<Scale, 'yOf'> & { readonly roomY: number | undefined }) {
    const partials = this.lines.map(({ label, fitted }) => ({ label, y: yOf(fitted[0].levelDbfs) }));
    const others = [
      ...(this.residual.length > 1 ? [{ label: this.residualLabel, y: yOf(this.residual[this.residual.length >> 1]!.levelDbfs) }] : []),
      ...(roomY === undefined ? [] : [{ label: this.roomLabel, y: roomY }]),
    ];
    return svg`${apart(partials).map(({ label, y }) => svg`<text x=${left - 8} y=${y + 4} text-anchor="end">${label}</text>`)}
      ${apart(others).map(({ label, y }) => svg`<text class="second" x=${right + 6} y=${y + 4}>${label}</text>`)}`;
  }
}

/** From the top down, none nearer to the one above than a line. */
function apart(
  names: readonly { readonly label: string; readonly y: number }[],
): readonly { readonly label: string; readonly y: number }[] {
  let free = Number.NEGATIVE_INFINITY;
  return names
    .toSorted((a, b) => a.y - b.y)
    .map(({ label, y }) => {
      free = Math.max(y, free + LABEL_STEP);
      return { label, y: free };
    });
}

interface Scale {
  xOf(seconds: number): number;
  yOf(level: number): number;
  readonly low: number;
}

/** Where a fitted line leaves the picture at its foot, or its own end. */
function endAbove([start, end]: readonly [LevelAt, LevelAt], low: number): LevelAt {
  if (end.levelDbfs >= low || start.levelDbfs <= low) return end;
  const share = (start.levelDbfs - low) / (start.levelDbfs - end.levelDbfs);
  return { atS: start.atS + share * (end.atS - start.atS), levelDbfs: low };
}

const pathOf = (trace: readonly LevelAt[], xOf: (seconds: number) => number, yOf: (level: number) => number): string =>
  trace.map(({ atS, levelDbfs }, i) => `${i === 0 ? 'M' : 'L'}${xOf(atS)},${yOf(levelDbfs)}`).join(' ');

declare global {
  interface HTMLElementTagNameMap {
    'decay-plot': DecayPlot;
  }
}
