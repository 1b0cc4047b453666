/** Small drawings that stand above the names of the places on a phone. Never alone: the word is always with them. */

import { html, svg, type TemplateResult } from 'lit';
import type { PlaceName } from '../words/places-en.ts';

const icon = (paths: TemplateResult) => html`<svg viewBox="0 0 24 20" width="24" height="20" aria-hidden="true">
  <g fill="none" stroke="currentColor" stroke-width="1.6" stroke-linejoin="round" stroke-linecap="round">${paths}</g>
</svg>`;

/** A ringing span · a frame with its gantry · a toothed belt · a gauge on its three contacts · a book · two sliders. */
export const PLACE_ICONS: Readonly<Record<PlaceName, TemplateResult>> = {
  listen: icon(svg`<path d="M2.5,4 V16 M21.5,4 V16 M2.5,10 Q12,2 21.5,10 Q12,18 2.5,10 Z" />`),
  machines: icon(svg`<path d="M3.5,2.5 H20.5 V17.5 H3.5 Z M3.5,8 H20.5 M9.5,5.8 H14.5 V10.5 H9.5 Z" />`),
  belts: icon(svg`<path d="M2,6.5 H22 M3,6.5 V12 H6.5 V6.5 M10.2,6.5 V12 H13.7 V6.5 M17.5,6.5 V12 H21 V6.5" />`),
  gauges: icon(svg`<path d="M12,2.5 V12 M2.5,13.5 Q12,9 21.5,13.5 M4,13 V17.5 M20,13 V17.5 M9.5,2.5 H14.5" />`),
  logbook: icon(svg`<path d="M5,2 H19 V18 H5 Z M9,2 V18 M12,6.5 H16 M12,10 H16" />`),
  settings: icon(svg`<path d="M3,6 H13 M17,6 H21 M3,14 H7 M11,14 H21 M15,4 V8 M9,12 V16" />`),
};
