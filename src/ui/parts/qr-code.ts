/** A text as a code for a phone's camera: dark on light in every scheme, with the quiet zone that cameras need. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { encode } from 'uqr';

/** Modules of white around the code (ISO/IEC 18004: four). */
const QUIET_ZONE = 4;

/** Drawing of the dark modules, one unit each, rows joined where they touch. */
function modulesPath(text: string): { readonly size: number; readonly path: string } {
  const { data, size } = encode(text, { ecc: 'M', border: QUIET_ZONE });
  const rows = data.map((row, y) => {
    const runs: string[] = [];
    for (let x = 0; x < size; x++) {
      if (!row[x] || (x > 0 && row[x - 1])) continue;
      let end = x;
      while (end < size && row[end]) end++;
      runs.push(`M${x},${y}h${end - x}v1h${x - end}z`);
    }
    return runs.join('');
  });
  return { size, path: rows.join('') };
}

/** @cssprop --code-ground, --code-ink - the same in every scheme */
@customElement('qr-code')
export class QrCode extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    svg {
      display: block;
      inline-size: 100%;
      block-size: auto;
      forced-color-adjust: none;
    }
    rect {
      fill: var(--code-ground);
    }
    path {
      fill: var(--code-ink);
    }
  `;

  @property() text = '';
  /** What the code is for, for whoever does not see it. */
  @property() label = '';

  override render() {
    if (this.text === '') return nothing;
    const { size, path } = modulesPath(this.text);
    return html`<svg viewBox="0 0 ${size} ${size}" role="img" aria-label=${this.label} shape-rendering="crispEdges">
      <rect width=${size} height=${size} />
      <path d=${path} />
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'qr-code': QrCode;
  }
}
