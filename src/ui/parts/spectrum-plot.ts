/** What sounded: the spectrum in ink over the room's floor, with the places where the partials are expected in blue. */

import { css, html, LitElement, nothing, type PropertyValues, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { type LabelChoice, labelPlaces } from './label-places.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { frequencyFigures, highestHzOf, levelFigures, levelRangeOf } from './spectrum-axis.ts';
import { discBox, floorChoices, peakChoices, TEXT_PX, toneChoices } from './spectrum-labels.ts';
import { type BinnedLevels, floorPath, levelNear, lineBoxes, linePath, type PlotFrame, xOfHz, yOfDbfs } from './spectrum-path.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';
import { textWidth } from './text-width.ts';

/** Levels of one pluck and of the room before it, on the same bins. */
export interface SpectrumLevels {
  readonly binWidthHz: number;
  readonly levelsDbfs: Float32Array;
  readonly backgroundDbfs?: Float32Array | undefined;
}

export interface ExpectedPlace {
  readonly number: number;
  readonly lowHz: number;
  readonly highHz: number;
  readonly label: string;
}

export interface FoundPeak {
  readonly frequencyHz: number;
  readonly levelDbfs: number;
  readonly label: string;
  /** Its label is heavier. */
  readonly main?: boolean | undefined;
}

export interface LeftOut {
  readonly frequencyHz: number;
  readonly label: string;
}

const HEIGHT_PX = 240;
const LEFT_PX = 46;
const RIGHT_PX = 14;
const TOP_PX = 26;
const BOTTOM_PX = 28;
const DISC_PX = 4;
/** A disc sits on the strongest level within this reach. */
const NEAR_PX = 3;

/**
 * @cssprop --ink, --ink-2, --ink-3 - line and discs, labels, the sound of the moment
 * @cssprop --aim, --aim-wash - expected places
 * @cssprop --edge, --floor - axes, room noise
 * @cssprop --font, --note-size - type
 */
@customElement('spectrum-plot')
export class SpectrumPlot extends LitElement {
  static override styles = [
    plotStyles,
    css`
      :host {
        block-size: ${HEIGHT_PX}px;
      }
      .axis {
        stroke: var(--edge);
      }
      .expected-top {
        fill: var(--aim);
      }
      .floor {
        fill: var(--floor);
      }
      .line {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
        stroke-linejoin: round;
      }
      .live {
        fill: none;
        stroke: var(--ink-3);
      }
      .disc {
        fill: var(--ink);
      }
      .pointer {
        stroke: var(--ink-2);
      }
    `,
  ];

  @property({ attribute: false }) spectrum: SpectrumLevels | undefined;
  @property({ attribute: false }) expected: readonly ExpectedPlace[] = [];
  @property({ attribute: false }) peaks: readonly FoundPeak[] = [];
  @property({ attribute: false }) leftOut: readonly LeftOut[] = [];
  @property() floorLabel = '';
  /** End of the axis, Hz; not set: the first few partials. */
  @property({ attribute: false }) highestHz: number | undefined;
  /** Name of the plot and what it shows, in one sentence. */
  @property() label = '';
  @property({ attribute: false }) table: PlotTable | undefined;
  @property() levelUnit = 'dB';
  @property() frequencyUnit = 'Hz';
  @property() locale = 'en';

  readonly #width = new OwnWidth(this);
  #frame: PlotFrame | undefined;
  #live: BinnedLevels | undefined;

  /** Draws the sound of the moment as a thin line, without rendering the rest anew; undefined takes it away. */
  showLive(moment: BinnedLevels | undefined): void {
    this.#live = moment;
    this.#drawLive();
  }

  override willUpdate(changed: PropertyValues<this>): void {
    const widthPx = Math.max(1, this.#width.px - LEFT_PX - RIGHT_PX);
    const places = this.expected.length > 0 ? this.expected : this.peaks.map(({ frequencyHz: hz }) => ({ lowHz: hz, highHz: hz }));
    const before = changed.has('expected') ? undefined : this.#frame?.highestHz;
    const highestHz = this.highestHz ?? highestHzOf(places, widthPx, before);
    const { spectrum } = this;
    const binCount = spectrum ? Math.ceil(highestHz / spectrum.binWidthHz) : 0;
    const levels = levelRangeOf(spectrum?.levelsDbfs ?? [], binCount, spectrum?.backgroundDbfs);
    this.#frame = { leftPx: LEFT_PX, topPx: TOP_PX, widthPx, heightPx: HEIGHT_PX - TOP_PX - BOTTOM_PX, highestHz, ...levels };
  }

  override updated(): void {
    this.#drawLive();
  }

  override render() {
    const frame = this.#frame;
    if (this.#width.px === 0 || !frame) return nothing;
    const background = this.spectrum?.backgroundDbfs;
    return html`
      <svg role="img" aria-label=${this.label || nothing} width=${this.#width.px} height=${HEIGHT_PX} viewBox=${`0 0 ${this.#width.px} ${HEIGHT_PX}`}>
        ${this.#expected(frame)}
        ${
          this.spectrum && background
            ? svg`<path class="floor" d=${floorPath(frame, { binWidthHz: this.spectrum.binWidthHz, levelsDbfs: background })} />`
            : nothing
        }
        ${this.#axes(frame)}
        <path class="live" />
        ${this.spectrum ? svg`<path class="line" d=${linePath(frame, this.spectrum)} />` : nothing} ${this.#found(frame)}
      </svg>
      ${this.table ? spokenTable(this.table) : nothing}
    `;
  }

  #drawLive(): void {
    const path = this.renderRoot?.querySelector('.live');
    if (!path || !this.#frame) return;
    path.setAttribute('d', this.#live ? linePath(this.#frame, this.#live) : '');
  }

  #expected(frame: PlotFrame) {
    const right = frame.leftPx + frame.widthPx;
    const bands = this.expected
      .map((place) => ({ ...place, fromPx: xOfHz(frame, place.lowHz), toPx: Math.min(right, xOfHz(frame, place.highHz)) }))
      .filter(({ fromPx, lowHz, highHz }) => fromPx < right && (lowHz + highHz) / 2 <= frame.highestHz);
    const widthOf = textWidth(this);
    const labels = labelPlaces(
      bands.map(({ fromPx, toPx, label, number }) =>
        [label, String(number)].map((text) => {
          const widthPx = widthOf(text) + 8;
          const xPx = Math.min((fromPx + toPx - widthPx) / 2, this.#width.px - widthPx);
          return { text, xPx, yPx: 0, widthPx, heightPx: TEXT_PX };
        }),
      ),
      { xPx: 0, yPx: 0, widthPx: this.#width.px, heightPx: TOP_PX },
    );
    return svg`
      ${bands.map(
        ({ fromPx, toPx }) => svg`
          <rect class="wash expected" x=${fromPx} y=${frame.topPx} width=${toPx - fromPx} height=${frame.heightPx} />
          <rect class="expected-top" x=${fromPx} y=${frame.topPx - 4} width=${toPx - fromPx} height="4" />`,
      )}
      ${labels.map((place) => labelText(place, 'aim'))}`;
  }

  #axes(frame: PlotFrame) {
    const bottom = frame.topPx + frame.heightPx;
    const right = frame.leftPx + frame.widthPx;
    const lastWidthPx = textWidth(this);
    return svg`
      <path class="axis" fill="none" d=${`M${frame.leftPx},${frame.topPx} V${bottom} H${right}`} />
      ${levelFigures(frame, this.locale, this.levelUnit).map(({ at, text }) => {
        const y = yOfDbfs(frame, at);
        return svg`
          <line class="axis" x1=${frame.leftPx - 5} x2=${frame.leftPx} y1=${y} y2=${y} />
          <text class="second" x=${frame.leftPx - 9} y=${y + 4.5} text-anchor="end">${text}</text>`;
      })}
      ${frequencyFigures(frame.highestHz, frame.widthPx, this.locale, this.frequencyUnit).map(({ at, text }) => {
        const x = xOfHz(frame, at);
        const overhangPx = Math.max(0, x + lastWidthPx(text) / 2 - this.#width.px);
        return svg`
          <line class="axis" x1=${x} x2=${x} y1=${bottom} y2=${bottom + 5} />
          <text class="second" x=${x - overhangPx} y=${bottom + 20} text-anchor="middle">${text}</text>`;
      })}`;
  }

  #found(frame: PlotFrame) {
    const right = frame.leftPx + frame.widthPx;
    const levelAt = (hz: number, reachPx = NEAR_PX) => (this.spectrum ? levelNear(frame, this.spectrum, hz, reachPx) : undefined);
    const peaks = this.peaks
      .map((peak) => ({ ...peak, x: xOfHz(frame, peak.frequencyHz), y: yOfDbfs(frame, levelAt(peak.frequencyHz) ?? peak.levelDbfs) }))
      .filter(({ x }) => x <= right);
    const tones = this.leftOut
      .map((tone) => ({ ...tone, x: xOfHz(frame, tone.frequencyHz), y: yOfDbfs(frame, levelAt(tone.frequencyHz) ?? frame.lowDbfs) }))
      .filter(({ x }) => x <= right);
    const widthOf = textWidth(this);
    const strongWidthOf = textWidth(this, 1, 600);
    const topOf = (hz: number, reachPx: number) => yOfDbfs(frame, levelAt(hz, reachPx) ?? frame.lowDbfs);
    const room = { xPx: frame.leftPx + 2, yPx: frame.topPx + 2, widthPx: this.#width.px - frame.leftPx - 2, heightPx: frame.heightPx - 4 };
    const discs = peaks.map(discBox);
    const ofPeaks = labelPlaces(
      peaks.map((peak) => peakChoices(peak, peak.main ? strongWidthOf : widthOf)),
      room,
      discs,
    );
    const bands = this.expected.map(({ lowHz, highHz }) => {
      const xPx = xOfHz(frame, lowHz);
      return { xPx, yPx: frame.topPx, widthPx: xOfHz(frame, highHz) - xPx, heightPx: frame.heightPx };
    });
    const hzOf = (px: number) => ((px - frame.leftPx) / frame.widthPx) * frame.highestHz;
    const [ofFloor, ...ofTones] = labelPlaces(
      [
        this.spectrum?.backgroundDbfs ? floorChoices(this.floorLabel, frame, (x, reachPx) => topOf(hzOf(x), reachPx), widthOf) : [],
        ...tones.map((tone) => toneChoices(tone, frame, topOf, widthOf, bands)),
      ],
      room,
      [...discs, ...ofPeaks.filter((place) => place !== undefined), ...(this.spectrum ? lineBoxes(frame, this.spectrum) : [])],
    );
    return svg`
      ${peaks.map(({ x, y, main }, index) => svg`<circle class="disc" cx=${x} cy=${y} r=${DISC_PX} />${labelText(ofPeaks[index], main ? 'strong' : '')}`)}
      ${tones.map(({ x, y, label }, index) => {
        const place = ofTones[index];
        const top = place ? place.yPx + place.heightPx + 2 : y - 14;
        return svg`
          <g class="left-out">
            <title>${label}</title>
            ${y - top > 3 ? svg`<line class="pointer" x1=${x} x2=${x} y1=${top} y2=${y - 2} />` : nothing}
            ${labelText(place, 'second')}
          </g>`;
      })}
      ${labelText(ofFloor, 'second')}`;
  }
}

/** A label in its box, line by line, centred; nothing where it found no room. */
const labelText = (place: LabelChoice | undefined, tone: string) =>
  place?.text
    ? place.text
        .split('\n')
        .map(
          (line, index) =>
            svg`<text class=${tone} x=${place.xPx + place.widthPx / 2} y=${place.yPx + 12.5 + index * TEXT_PX} text-anchor="middle">${line}</text>`,
        )
    : nothing;

declare global {
  interface HTMLElementTagNameMap {
    'spectrum-plot': SpectrumPlot;
  }
}
