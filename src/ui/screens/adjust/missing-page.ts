/** Stands in the place of adjusting while something is missing for it, and says what. */

import { html } from 'lit';
import { adjustEn } from '../../../words/adjust-en.ts';
import { hrefOf } from '../../route.ts';
import type { AdjustGroupState } from '../../state/adjust-group.ts';

const words = adjustEn.lacking;

/** @param found  none: the document is still being opened */
export function missingPage(found: AdjustGroupState | undefined) {
  if (found === undefined) return html`<main aria-busy="true"></main>`;
  const { machine } = found;
  return html`<main class="missing">
    <p class="over">${words.over}</p>
    <h1>${words.answer}</h1>
    <ul>${reasonsOf(found).map((reason) => html`<li>${reason}</li>`)}</ul>
    <a class="button solid" href=${machine ? hrefOf('machines', machine.id) : hrefOf('machines')}>${machine ? words.back : words.all}</a>
  </main>`;
}

function reasonsOf(found: AdjustGroupState): readonly string[] {
  if (found.kind === 'lacking') return found.lacks.map(({ belt, what }) => words[what](belt));
  return [found.kind === 'targets-apart' ? words.targetsApart : words.gone];
}
