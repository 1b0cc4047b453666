/** Sound over time and frequency: a picture in ink, with the stretch that was read, the partials that were followed and the tones that were left out. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { timeFigures } from './seconds-axis.ts';
import { frequencyFigures } from './spectrum-axis.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';

export interface SpectrogramPicture {
  /** Middle of the first column, s from the moment the span was let go. */
  readonly fromS: number;
  readonly stepS: number;
  readonly columnCount: number;
  readonly binWidthHz: number;
  readonly binCount: number;
  /** Float32Array [columnCount · binCount], column after column, dB. */
  readonly levelsDbfs: Float32Array<ArrayBuffer>;
}

export interface MarkedFrequency {
  readonly frequencyHz: number;
  readonly label: string;
}

const HEIGHT = 260;
const TOP = 22;
const BOTTOM = 46;
const LEFT = 56;
/** Room for the names of partials and tones. */
const RIGHT = 116;
/** Below the loudest by this much nothing is drawn. */
const SHOWN_DB = 62;
const LABEL_STEP = 15;

/**
 * @cssprop --ink, --ink-2, --edge - picture and partials, second text, frame
 * @cssprop --font, --note-size - type
 */
@customElement('spectrogram-plot')
export class SpectrogramPlot extends LitElement {
  static override styles = [
    plotStyles,
    css`
      .plot {
        position: relative;
        direction: ltr;
      }
      canvas {
        position: absolute;
        forced-color-adjust: none;
      }
      svg {
        position: relative;
      }
      .frame {
        fill: none;
        stroke: var(--edge);
      }
      .tick {
        stroke: var(--ink);
        fill: none;
      }
      .window {
        stroke: var(--ink);
        stroke-width: 3;
        fill: none;
      }
      .let-go,
      .steady {
        stroke: var(--ink-2);
        stroke-dasharray: 3 3;
        fill: none;
      }
      .found {
        fill: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) picture: SpectrogramPicture | undefined;
  /** Stretch that the partials were read in, s. */
  @property({ attribute: false }) window: { readonly fromS: number; readonly toS: number } | undefined;
  @property({ attribute: false }) partials: readonly MarkedFrequency[] = [];
  @property({ attribute: false }) leftOut: readonly MarkedFrequency[] = [];
  @property() windowLabel = '';
  @property() letGoLabel = '';
  /** Name and sentence, for whoever does not see the drawing. */
  @property() label = '';
  @property({ attribute: false }) table: PlotTable | undefined;
  @property() locale = 'en';

  @query('canvas') canvas!: HTMLCanvasElement | null;

  readonly #width = new OwnWidth(this);
  readonly #dark = globalThis.matchMedia?.('(prefers-color-scheme: dark)');

  override connectedCallback(): void {
    super.connectedCallback();
    this.#dark?.addEventListener('change', this.#colours);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#dark?.removeEventListener('change', this.#colours);
  }

  override render() {
    const { picture } = this;
    const width = this.#width.px;
    if (!picture || picture.columnCount === 0 || width === 0) return nothing;
    const at = placesOf(picture, width);
    return html`<div class="plot">
        <canvas></canvas>
        <svg width=${width} height=${HEIGHT} role="img" aria-label=${this.label}>
          <rect class="frame" x=${at.left} y=${TOP} width=${at.right - at.left} height=${at.bottom - TOP} />
          ${this.#axes(at)} ${this.#letGo(at)} ${this.#window(at)} ${this.#marks(at)}
        </svg>
      </div>
      ${this.table ? spokenTable(this.table) : nothing}`;
  }

  override updated(): void {
    const { canvas, picture } = this;
    if (!canvas || !picture || picture.columnCount === 0) return;
    const { left, right, bottom } = placesOf(picture, this.#width.px);
    // By hand: the page's policy allows no style in the markup.
    Object.assign(canvas.style, { left: `${left}px`, top: `${TOP}px`, width: `${right - left}px`, height: `${bottom - TOP}px` });
    draw(canvas, picture, getComputedStyle(this).color);
  }

  readonly #colours = () => this.requestUpdate();

  #axes({ xOf, yOf, left, right, bottom, fromS, toS, highestHz }: Places) {
    const seconds = timeFigures(fromS, toS, right - left, this.locale);
    const hertz = frequencyFigures(highestHz, 5 * 56, this.locale, 'Hz');
    return svg`${seconds.map(
      ({ at, text }) =>
        svg`<path class="tick" d="M${xOf(at)},${bottom} v5" /><text x=${xOf(at)} y=${bottom + 19} text-anchor="middle">${text}</text>`,
    )}${hertz.map(
      ({ at, text }) =>
        svg`<path class="tick" d="M${left},${yOf(at)} h-5" /><text x=${left - 8} y=${yOf(at) + 4} text-anchor="end">${text}</text>`,
    )}`;
  }

  #letGo({ xOf, bottom }: Places) {
    return svg`<path class="let-go" d="M${xOf(0)},${TOP} V${bottom}" /><text class="second" x=${xOf(0)} y=${TOP - 7} text-anchor="middle">${this.letGoLabel}</text>`;
  }

  #window({ xOf, bottom, right, toS }: Places) {
    if (!this.window) return nothing;
    const [from, to] = [xOf(this.window.fromS), Math.min(right, xOf(Math.min(toS, this.window.toS)))];
    const y = bottom + 27;
    return svg`<path class="window" d="M${from},${y} H${to}" /><text class="second" x=${from} y=${y + 16}>${this.windowLabel}</text>`;
  }

  /** Names stand at the right, pushed apart where they would meet; what has no room is on the table. */
  #marks({ yOf, left, right, bottom, highestHz }: Places) {
    const marks = [
      ...this.partials.map((mark) => ({ ...mark, found: true })),
      ...this.leftOut.map((mark) => ({ ...mark, found: false })),
    ].filter(({ frequencyHz }) => frequencyHz <= highestHz);
    const names = apart(
      marks
        .filter((mark, i) => mark.found || i === marks.findIndex(({ label }) => label === mark.label))
        .map((mark) => ({ ...mark, y: yOf(mark.frequencyHz) })),
      bottom,
    );
    return svg`${marks.map(({ frequencyHz, found }) => {
      const y = yOf(frequencyHz);
      return found
        ? svg`<circle class="found" cx=${right + 8} cy=${y} r="3.5" /><path class="tick" d="M${left - 3},${y} h6" />`
        : svg`<path class="steady" d="M${left},${y} H${right}" />`;
    })}${names.map(({ label, found, labelY }) => svg`<text class=${found ? '' : 'second'} x=${right + 18} y=${labelY + 4}>${label}</text>`)}`;
  }
}

interface Places {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly fromS: number;
  readonly toS: number;
  readonly highestHz: number;
  xOf(seconds: number): number;
  yOf(hertz: number): number;
}

function placesOf({ fromS, stepS, columnCount, binWidthHz, binCount }: SpectrogramPicture, width: number): Places {
  const [left, right, bottom] = [LEFT, width - RIGHT, HEIGHT - BOTTOM];
  const from = fromS - stepS / 2;
  const to = from + columnCount * stepS;
  const highestHz = (binCount - 1) * binWidthHz;
  return {
    left,
    right,
    bottom,
    fromS: from,
    toS: to,
    highestHz,
    xOf: (seconds) => left + ((seconds - from) / (to - from)) * (right - left),
    yOf: (hertz) => bottom - (hertz / highestHz) * (bottom - TOP),
  };
}

/** From the bottom up, none nearer to the one below than a line. */
function apart<Mark extends { readonly y: number; readonly found: boolean }>(
  marks: readonly Mark[],
  bottom: number,
): readonly (Mark & { readonly labelY: number })[] {
  let free = bottom + LABEL_STEP;
  const placed: (Mark & { labelY: number })[] = [];
  for (const mark of marks.toSorted((a, b) => b.y - a.y)) {
    const labelY = Math.min(mark.y, free - LABEL_STEP);
    if (mark.y - labelY > LABEL_STEP) continue; // too far from what it names
    placed.push({ ...mark, labelY });
    free = labelY;
  }
  return placed;
}

/** The picture in one colour, deeper where it is louder; its bins as they are, stretched by the browser. */
function draw(canvas: HTMLCanvasElement, { columnCount, binCount, levelsDbfs }: SpectrogramPicture, colour: string): void {
  const [red = 0, green = 0, blue = 0] = (colour.match(/[\d.]+/gu) ?? []).map(Number);
  canvas.width = columnCount;
  canvas.height = binCount;
  const context = canvas.getContext('2d');
  if (!context) return;
  const image = context.createImageData(columnCount, binCount);
  const loudest = levelsDbfs.reduce((top, level) => Math.max(top, level), Number.NEGATIVE_INFINITY);
  for (let column = 0; column < columnCount; column++) {
    for (let bin = 0; bin < binCount; bin++) {
      const at = 4 * ((binCount - 1 - bin) * columnCount + column);
      const shown = Math.max(0, 1 + (levelsDbfs[column * binCount + bin]! - loudest) / SHOWN_DB);
      image.data.set([red, green, blue, 255 * shown ** 1.4], at);
    }
  }
  context.putImageData(image, 0, 0);
}

declare global {
  interface HTMLElementTagNameMap {
    'spectrogram-plot': SpectrogramPlot;
  }
}
