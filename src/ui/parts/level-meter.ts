/** How loud it is right now: a straight bar with the room's level marked and the end where the sound would be cut off. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { axisFigure } from './axis-figure.ts';
import { plotStyles } from './plot-styles.ts';

const LOWEST_DBFS = -72;
const FIGURES_DBFS = [-60, -40, -20];
/** Above this the next pluck is likely to be cut off. */
const CLIP_END_DBFS = -3;

/** Place along the bar, 0 to 100. */
const percent = (levelDbfs: number): number => 100 * Math.min(1, Math.max(0, 1 - levelDbfs / LOWEST_DBFS));

const shownDbfs = (levelDbfs: number): number => Math.round(Math.min(0, Math.max(LOWEST_DBFS, levelDbfs)));

/**
 * @cssprop --ink, --field, --edge - the level, the empty bar, its border and scale
 * @cssprop --aim - the room's level
 * @cssprop --unusable - the end when the sound was cut off
 * @cssprop --font, --small-size - type
 */
@customElement('level-meter')
export class LevelMeter extends LitElement {
  static override styles = [
    plotStyles,
    css`
      svg {
        inline-size: 100%;
        block-size: 36px;
      }
      :host([compact]) svg {
        block-size: 18px;
      }
      .frame {
        fill: none;
        stroke: var(--edge);
      }
      .empty {
        fill: var(--field);
      }
      .level {
        fill: var(--ink);
      }
      .room {
        stroke: var(--aim);
        stroke-width: 2;
      }
      .clip-end {
        stroke: var(--edge);
      }
      .cut-off {
        fill: var(--unusable);
      }
      .tick {
        stroke: var(--edge);
      }
      text {
        font-size: var(--small-size);
        fill: var(--ink-2);
      }
    `,
  ];

  @property({ type: Number }) peakDbfs = Number.NEGATIVE_INFINITY;
  @property({ attribute: false }) roomDbfs: number | undefined;
  @property({ type: Boolean }) clipped = false;
  @property() label = '';
  /** The level in words. */
  @property() valueText = '';
  @property() clipsLabel = '';
  /** Without figures and words. */
  @property({ type: Boolean, reflect: true }) compact = false;
  @property() locale = 'en';

  /** The three moving properties at once. */
  showLevel(peakDbfs: number, roomDbfs: number | undefined, clipped: boolean): void {
    this.peakDbfs = peakDbfs;
    this.roomDbfs = roomDbfs;
    this.clipped = clipped;
  }

  override render() {
    const roomAt = this.roomDbfs === undefined ? undefined : `${percent(this.roomDbfs)}%`;
    const clipAt = percent(CLIP_END_DBFS);
    return html`
      <div
        role="meter"
        aria-label=${this.label || nothing}
        aria-valuemin=${LOWEST_DBFS}
        aria-valuemax="0"
        aria-valuenow=${shownDbfs(this.peakDbfs)}
        aria-valuetext=${this.valueText || nothing}
      >
        <svg aria-hidden="true">
          <rect class="empty" x="0" y="1" width="100%" height="12" />
          <rect class="level" x="0" y="1" width="${percent(this.peakDbfs)}%" height="12" />
          ${this.clipped ? svg`<rect class="cut-off" x="${clipAt}%" y="1" width="${100 - clipAt}%" height="12" />` : nothing}
          <rect class="frame" x="0" y="1" width="100%" height="12" />
          <line class="clip-end" x1="${clipAt}%" x2="${clipAt}%" y1="1" y2="13" />
          ${roomAt === undefined ? nothing : svg`<line class="room" x1=${roomAt} x2=${roomAt} y1="-1" y2="15" />`}
          ${FIGURES_DBFS.map((dbfs) => this.#figure(dbfs))}
          ${this.compact ? nothing : svg`<text x="100%" y="30" text-anchor="end">${this.clipsLabel}</text>`}
        </svg>
      </div>
    `;
  }

  #figure(dbfs: number) {
    const at = `${percent(dbfs)}%`;
    return svg`
      <line class="tick" x1=${at} x2=${at} y1="13" y2="17" />
      ${this.compact ? nothing : svg`<text x=${at} y="30" text-anchor="middle">${axisFigure(dbfs, 20, this.locale)}</text>`}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'level-meter': LevelMeter;
  }
}
