/** One belt beside its letter: its force, its grade, and where it stands against the target. */

import { html, nothing } from 'lit';
import type { BeltRow } from './belt-rows.ts';

const NO_BREAK = '\u00a0';

/** @param look  place of the belt in its group, from 0 */
export function beltItem(
  { name, figure, bounds, grade, says }: BeltRow,
  { look, asked }: { readonly look: number; readonly asked: boolean },
) {
  const force = figure
    ? html`<p class="force"><span><b>${figure.value}</b><small>${NO_BREAK}N</small></span><small>±${NO_BREAK}${figure.doubt}${NO_BREAK}N</small></p>`
    : bounds
      ? html`<p class="force"><span>${bounds}<small>${NO_BREAK}N</small></span></p>`
      : html`<p class="force none">${says}</p>`;
  const shown = figure !== undefined || bounds !== undefined;
  return html`<li class="belt" ?data-asked=${asked}>
    <letter-tile .name=${name} .look=${look}></letter-tile>
    ${force}
    ${shown ? html`<p class="standing">${grade ? html`<grade-mark .grade=${grade.grade} .word=${grade.word}></grade-mark>` : nothing}<span>${says}</span></p>` : nothing}
  </li>`;
}
