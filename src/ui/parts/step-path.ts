/** The way of several belts toward their target, step by step: each belt its own kind of mark and line, the target as a band, the next step predicted in blue. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ForceRange } from '../../core/setup.ts';
import { axisFigure } from './axis-figure.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { closeRange, roundStep } from './ruler-range.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';
import { textWidth } from './text-width.ts';

/** A force with its 95 % interval. */
export interface PathForce {
  readonly valueN: number;
  readonly lowN: number;
  readonly highN: number;
}

export interface PathStep {
  /** Below the axis: 'start', 'A +1/4'. */
  readonly label: string;
  /** One for each belt, in their order. */
  readonly forces: readonly PathForce[];
}

const LEFT_PX = 48;
const RIGHT_PX = 56;
const TOP_PX = 26;
const BOTTOM_PX = 30;
const HEIGHT_PX = 190;
const MARK_HALF_PX = 5;
/** Belts of one step stand side by side. */
const APART_PX = 13;
/** Width of the drawing with one step. */
const LEAST_PX = 160;
/** Least room for a step; earlier ones are left out where there are more. */
const STEP_PX = 62;

/**
 * @cssprop --ink, --ink-2, --paper - belts, labels, inside of hollow marks
 * @cssprop --aim, --aim-wash - target, next step
 * @cssprop --edge - axis
 */
@customElement('step-path')
export class StepPath extends LitElement {
  static override styles = [
    plotStyles,
    css`
      :host {
        min-block-size: ${HEIGHT_PX}px;
      }
      .axis {
        stroke: var(--edge);
        fill: none;
      }
      .line {
        stroke: var(--ink);
        stroke-width: 2;
        fill: none;
      }
      .line.b,
      .line.c,
      .line.d {
        stroke-dasharray: 2 4;
      }
      .line.c {
        stroke-dasharray: 8 4;
      }
      .line.d {
        stroke-dasharray: 8 4 2 4;
      }
      .next {
        stroke: var(--aim);
        stroke-width: 2;
        fill: none;
      }
      .next.way {
        stroke-dasharray: 5 4;
      }
      .mark {
        fill: var(--ink);
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .mark.b,
      .mark.c,
      .mark.d {
        fill: var(--paper);
      }
      .slit {
        stroke: var(--paper);
        stroke-width: 2;
      }
      .slit.b,
      .slit.c,
      .slit.d {
        stroke: var(--ink);
      }
      .tile {
        fill: var(--ink);
        stroke: var(--ink);
      }
      .tile.b,
      .tile.c,
      .tile.d {
        fill: var(--paper);
      }
      .letter {
        font-weight: 700;
        fill: var(--paper);
      }
      .letter.b,
      .letter.c,
      .letter.d {
        fill: var(--ink);
      }
      .next-label {
        fill: var(--aim);
        font-weight: 600;
      }
    `,
  ];

  @property({ attribute: false }) names: readonly string[] = [];
  @property({ attribute: false }) steps: readonly PathStep[] = [];
  @property({ attribute: false }) next: PathStep | undefined;
  @property() nextLabel = '';
  @property({ attribute: false }) target: ForceRange | undefined;
  @property() targetLabel = '';
  @property() label = '';
  @property({ attribute: false }) table: PlotTable | undefined;
  @property() locale = 'en';

  readonly #width = new OwnWidth(this);

  override render() {
    const widthPx = this.#width.px;
    if (widthPx === 0 || this.steps.length === 0) return nothing;
    const most = Math.max(2, Math.floor((widthPx - LEFT_PX - RIGHT_PX) / STEP_PX) + (this.next ? 0 : 1));
    const steps = this.steps.slice(-most);
    const columns = steps.length + (this.next ? 1 : 0);
    const all = [...steps, ...(this.next ? [this.next] : [])].flatMap(({ forces }) => forces);
    const range = closeRange({ target: this.target, shown: [...all, roomBelow(all)], fallback: { lowN: 0, highN: 20 } });
    const yOf = (forceN: number): number =>
      TOP_PX +
      ((range.highN - Math.min(range.highN, Math.max(range.lowN, forceN))) / (range.highN - range.lowN)) * (HEIGHT_PX - TOP_PX - BOTTOM_PX);
    const columnPx = Math.min(150, (widthPx - LEFT_PX - RIGHT_PX - 52) / Math.max(1, columns - 1));
    const xOf = (column: number, belt: number): number =>
      LEFT_PX + 20 + column * columnPx + (belt - (this.names.length - 1) / 2) * APART_PX;
    const rightPx = Math.min(widthPx - RIGHT_PX, LEFT_PX + Math.max(LEAST_PX, 52 + (columns - 1) * columnPx));
    return html`<svg role="img" aria-label=${this.label || nothing} width=${widthPx} height=${HEIGHT_PX} viewBox=${`0 0 ${widthPx} ${HEIGHT_PX}`}>
        ${this.#ground(range, yOf, rightPx)}
        ${this.names.map((_, belt) => this.#belt(belt, steps, { xOf, yOf }))}
        ${this.#labels(steps, { xOf, columnPx })}
      </svg>
      ${this.table ? spokenTable(this.table) : nothing}`;
  }

  #ground(range: ForceRange, yOf: (forceN: number) => number, rightPx: number) {
    const stepN = roundStep((range.highN - range.lowN) / 3);
    const first = Math.ceil(range.lowN / stepN - 1e-9);
    const figures = Array.from({ length: Math.floor(range.highN / stepN + 1e-9) - first + 1 }, (_, i) => (first + i) * stepN);
    const basePx = HEIGHT_PX - BOTTOM_PX;
    return svg`
      ${
        this.target
          ? svg`<rect class="wash" x=${LEFT_PX} y=${yOf(this.target.highN)} width=${rightPx - LEFT_PX} height=${yOf(this.target.lowN) - yOf(this.target.highN)} />
            ${[this.target.lowN, this.target.highN].map((n) => svg`<line class="edge-of-aim" x1=${LEFT_PX} x2=${rightPx} y1=${yOf(n)} y2=${yOf(n)} />`)}
            <text class="aim" x=${rightPx + 6} y=${(yOf(this.target.lowN) + yOf(this.target.highN)) / 2 + 4.5}>${this.targetLabel}</text>`
          : nothing
      }
      <path class="axis" d="M${LEFT_PX},${TOP_PX - 6} V${basePx} H${rightPx}" />
      ${figures.map(
        (n, i) => svg`<line class="axis" x1=${LEFT_PX - 5} x2=${LEFT_PX} y1=${yOf(n)} y2=${yOf(n)} />
          <text class="second" x=${LEFT_PX - 9} y=${yOf(n) + 4.5} text-anchor="end">${axisFigure(n, stepN, this.locale)}${i === figures.length - 1 ? '\u00a0N' : ''}</text>`,
      )}`;
  }

  #belt(
    belt: number,
    steps: readonly PathStep[],
    { xOf, yOf }: { xOf: (column: number, belt: number) => number; yOf: (n: number) => number },
  ) {
    const look = ['a', 'b', 'c', 'd'][belt] ?? 'd';
    const points = steps.map(({ forces }, column) => ({ x: xOf(column, belt), force: forces[belt]! }));
    const d = points.map(({ x, force }, i) => `${i === 0 ? 'M' : 'L'}${x},${yOf(force.valueN)}`).join(' ');
    const last = points.at(-1)!;
    const next = this.next?.forces[belt];
    const above = this.names.every((_, other) => (steps.at(-1)!.forces[other]?.valueN ?? 0) <= last.force.valueN || other === belt);
    const tileY = above ? yOf(last.force.highN) - 22 : yOf(last.force.lowN) + 5;
    return svg`
      <path class="line ${look}" d=${d} />
      ${next ? nextMark(last, { x: xOf(steps.length, belt), force: next }, yOf) : nothing}
      ${points.map(({ x, force }) => markOf(x, force, yOf, look))}
      <rect class="tile ${look}" x=${last.x - 8.5} y=${tileY} width="17" height="17" />
      <text class="letter ${look}" x=${last.x} y=${tileY + 13} text-anchor="middle">${this.names[belt]}</text>`;
  }

  #labels(steps: readonly PathStep[], { xOf, columnPx }: { xOf: (column: number, belt: number) => number; columnPx: number }) {
    const middle = (this.names.length - 1) / 2;
    const yPx = HEIGHT_PX - 10;
    const widthOf = textWidth(this, 1, 600);
    const fits = (text: string): boolean => widthOf(text) <= columnPx - 4;
    return svg`
      ${steps.map(({ label }, column) => (fits(label) || column === 0 ? svg`<text class="second" x=${xOf(column, middle)} y=${yPx} text-anchor="middle">${label}</text>` : nothing))}
      ${this.next ? svg`<text class="next-label" x=${xOf(steps.length, middle)} y=${yPx} text-anchor="middle">${this.next.label}</text>` : nothing}`;
  }
}

/** A seventh of the drawing below the lowest force, for the letter that stands there. */
function roomBelow(forces: readonly PathForce[]): PathForce {
  const lowN = Math.min(...forces.map((force) => force.lowN));
  const highN = Math.max(...forces.map((force) => force.highN));
  const valueN = Math.max(0, lowN - (highN - lowN) / 6);
  return { lowN: valueN, valueN, highN: valueN };
}

interface Point {
  readonly x: number;
  readonly force: PathForce;
}

function markOf(x: number, force: PathForce, yOf: (n: number) => number, look: string) {
  const [top, bottom] = [yOf(force.highN), yOf(force.lowN)];
  const heightPx = Math.max(6, bottom - top);
  const y = yOf(force.valueN);
  return svg`<rect class="mark ${look}" x=${x - MARK_HALF_PX} y=${(top + bottom) / 2 - heightPx / 2} width=${2 * MARK_HALF_PX} height=${heightPx} />
    <line class="slit ${look}" x1=${x - MARK_HALF_PX} x2=${x + MARK_HALF_PX} y1=${y} y2=${y} />`;
}

function nextMark(from: Point, to: Point, yOf: (n: number) => number) {
  const [top, bottom] = [yOf(to.force.highN), yOf(to.force.lowN)];
  return svg`<path class="next way" d="M${from.x},${yOf(from.force.valueN)} L${to.x},${yOf(to.force.valueN)}" />
    <path class="next" d="M${to.x},${top} V${bottom} M${to.x - 5},${top} H${to.x + 5} M${to.x - 5},${bottom} H${to.x + 5}" />`;
}

declare global {
  interface HTMLElementTagNameMap {
    'step-path': StepPath;
  }
}
