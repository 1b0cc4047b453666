/** What the doubt is made of: one bar in newtons for each input, a table to read and to hear. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { plotStyles } from './plot-styles.ts';

export interface DoubtLine {
  readonly name: string;
  /** Length of the bar, N, >= 0; expanded like the figure beside it. */
  readonly valueN: number;
  /** The same in words, such as `± 0.29 N`. */
  readonly figure: string;
}

export interface DoubtGroup {
  readonly name: string;
  readonly lines: readonly DoubtLine[];
}

const INKED_BARS = 2;

/**
 * @cssprop --ink, --ink-2, --ink-3 - the two longest bars and all text, headings of the groups, other bars
 * @cssprop --font, --text-size, --note-size, --note-line, --space-8, --space-12 - type and spaces
 */
@customElement('doubt-bars')
export class DoubtBars extends LitElement {
  static override styles = [
    plotStyles,
    css`
      table {
        inline-size: 100%;
        border-collapse: collapse;
        font-size: var(--text-size);
        line-height: 1.375rem;
      }
      th {
        padding: 0;
        font-weight: 400;
        text-align: start;
      }
      th[scope='rowgroup'] {
        padding-block-start: var(--space-8);
        font-size: var(--note-size);
        font-weight: 600;
        color: var(--ink-2);
      }
      tbody:first-of-type th[scope='rowgroup'] {
        padding-block-start: 0;
      }
      th[scope='row'] {
        inline-size: 1%;
        white-space: nowrap;
      }
      td {
        padding: 0;
      }
      .bar {
        padding-inline: var(--space-12);
      }
      .figure {
        inline-size: 1%;
        white-space: nowrap;
        text-align: end;
        color: var(--ink-2);
      }
      .long .figure {
        color: var(--ink);
      }
      svg {
        inline-size: 100%;
        block-size: 16px;
      }
      :host(:dir(rtl)) svg {
        transform: scaleX(-1);
      }
      rect {
        fill: var(--ink-3);
      }
      .long rect {
        fill: var(--ink);
      }
      line {
        stroke: var(--ink-2);
      }
      p {
        margin: var(--space-8) 0 0;
        line-height: var(--note-line);
        color: var(--ink-2);
      }
    `,
  ];

  @property({ attribute: false }) groups: readonly DoubtGroup[] = [];
  /** Caption of the table, for screen readers. */
  @property() label = '';
  /** Says below which kind of uncertainty the bars are. */
  @property() note = '';
  @property() nameHeading = '';
  @property() figureHeading = '';

  override render() {
    const lines = this.groups.flatMap((group) => group.lines);
    const longest = [...lines].sort((a, b) => b.valueN - a.valueN).slice(0, INKED_BARS);
    const longestN = longest[0]?.valueN ?? 0;
    const share = (line: DoubtLine) => (longestN > 0 ? (100 * line.valueN) / longestN : 0);
    return html`
      <table>
        <caption><span class="spoken">${this.label}</span></caption>
        <thead>
          <tr>
            <th scope="col"><span class="spoken">${this.nameHeading}</span></th>
            <td></td>
            <th scope="col"><span class="spoken">${this.figureHeading}</span></th>
          </tr>
        </thead>
        ${this.groups.map(
          (group) => html`
            <tbody>
              <tr>
                <th scope="rowgroup" colspan="3">${group.name}</th>
              </tr>
              ${group.lines.map(
                (line) => html`
                  <tr class=${longest.includes(line) ? 'long' : 'short'}>
                    <th scope="row">${line.name}</th>
                    <td class="bar">
                      <svg aria-hidden="true">
                        <rect x="0" y="2" width="${share(line)}%" height="12" />
                        <line x1="0.5" x2="0.5" y1="0" y2="16" />
                      </svg>
                    </td>
                    <td class="figure">${line.figure}</td>
                  </tr>
                `,
              )}
            </tbody>
          `,
        )}
      </table>
      ${this.note ? html`<p>${this.note}</p>` : nothing}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'doubt-bars': DoubtBars;
  }
}
