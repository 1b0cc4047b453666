/** Kept readings of one belt: what each says now, and what it said with the values that counted before. */

import { html, nothing } from 'lit';
import type { KeptAnswer, KeptTake } from '../../../../shared/document/take.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { en } from '../../../words/en.ts';
import { type Figures, together } from '../../format.ts';
import { dateText } from './value-words.ts';

const words = beltsEn.readings;
/** More are in the logbook. */
const MOST = 12;

export function beltReadings(takes: readonly KeptTake[], figures: Figures) {
  if (takes.length === 0) return nothing;
  const latest = takes.toSorted((a, b) => (a.heard.at < b.heard.at ? 1 : -1)).slice(0, MOST);
  return html`<section>
    <h2>${words.heading(takes.length)}</h2>
    <ul class="values">${latest.map((take) => reading(take, figures))}</ul>
  </section>`;
}

function reading({ name, heard, now, answeredBefore }: KeptTake, figures: Figures) {
  const before = answeredBefore.toReversed();
  return html`<li>
    <span>${name ?? words.onMachine}</span>
    <strong>${answerText(now.answer, figures)}</strong>
    <div>
      ${dateText(heard, figures)}
      ${before.map(({ answer, computedAt }) => {
        const when = dateText({ at: computedAt, zone: heard.zone }, figures);
        return html`<p class="note">${words.before(answerText(answer, figures), when)}</p>`;
      })}
    </div>
  </li>`;
}

function answerText({ forceN, frequencyHz, grade }: KeptAnswer, figures: Figures): string {
  if (!forceN) return `${figures.typed(Number(frequencyHz.value.toPrecision(4)), 'Hz')}, ${words.noForce}`;
  const force = forceN.u95 === undefined ? `${figures.bounds(forceN)}\u00a0N` : together(figures.measured(forceN.value, forceN.u95), 'N');
  return `${force}, ${en.reading.grades[grade]}`;
}
