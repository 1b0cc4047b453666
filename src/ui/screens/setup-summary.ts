/** The setup at rest in the side strip: the span drawn, and what the force rests on in a few lines. */

import { css, html, nothing } from 'lit';
import { formatPercent } from '../../core/quantity.ts';
import type { EnteredSetup } from '../../ports.ts';
import { en } from '../../words/en.ts';
import type { Figures } from '../format.ts';
import type { UnderstoodSetup } from '../state/span-setup.ts';
import { beltName, densityText, expectedText, measuredSpanText } from './setup-words.ts';
import { spanDrawing } from './span-view.ts';

const words = en.setup;

export function setupSummary(entered: EnteredSetup, understood: UnderstoodSetup, figures: Figures) {
  const { setup } = understood;
  const stiffness = setup.belt?.bendingStiffnessNm2;
  const target = setup.targetForceN;
  const expected = expectedText(understood, figures);
  return html`<div class="summary">
    ${spanDrawing(understood, figures, { variant: 'small' })}
    <dl>
      ${line(words.belt, beltName(entered, understood), densityText(understood, figures))}
      ${line(words.short.span, measuredSpanText(understood, figures))}
      ${target ? line(words.target, figures.forceRange(target), expected && words.short.expect(expected)) : nothing}
      ${line(words.short.ends, endsText(entered), entered.ends.includes('unknown') ? words.short.endsAssumed : '')}
      ${entered.lie === 'flat' ? line(words.short.lie, words.lies.flat) : nothing}
      ${stiffness?.kind === 'known' ? line(words.short.stiffness, figures.rough(stiffness.value.value, 'N m²')) : nothing}
      ${
        setup.toleranceRelative === undefined
          ? nothing
          : line(words.short.tolerance, `±\u00a0${formatPercent(setup.toleranceRelative, { format: figures.format })}`)
      }
    </dl>
  </div>`;
}

const line = (name: string, value: string, note = '') => html`<div>
  <dt>${name}</dt>
  <dd>${value}${note ? html`<small>${note}</small>` : nothing}</dd>
</div>`;

function endsText({ ends: [first, second] }: EnteredSetup): string {
  return first === second ? words.short.bothEnds[first] : words.short.eachEnd(words.short.end[first], words.short.end[second]);
}

export const setupSummaryStyles = css`
  .summary span-drawing {
    padding-block-end: var(--space-12);
    border-block-end: var(--stroke-line) solid var(--line);
  }
  .summary dl {
    display: grid;
    gap: var(--space-12);
    margin-block-start: var(--space-16);
  }
  .summary dl div {
    display: grid;
    grid-template-columns: 4.5rem minmax(0, 1fr);
    gap: var(--space-8);
  }
  .summary dt {
    color: var(--ink-2);
  }
  .summary dd {
    font-weight: var(--weight-strong);
    overflow-wrap: anywhere;
  }
  .summary small {
    display: block;
    font-size: var(--note-size);
    line-height: var(--note-line);
    font-weight: var(--weight-text);
    color: var(--ink-2);
  }
`;
