/** A native choice in the page's dress. Renders into the root of its user, so that a `label` there can point at it by id. */

import { css, html, nothing } from 'lit';

export interface Choice {
  readonly value: string;
  readonly text: string;
}

export interface SelectField {
  readonly id: string;
  readonly value: string;
  readonly choices: readonly Choice[];
  /** Name, where no `label` element points at the field. */
  readonly name?: string | undefined;
  readonly describedBy?: string | undefined;
  readonly onChosen: (value: string) => void;
}

export const selectField = ({ id, value, choices, name, describedBy, onChosen }: SelectField) => html`
  <span class="select">
    <select
      id=${id}
      aria-label=${name ?? nothing}
      aria-describedby=${describedBy || nothing}
      @change=${(event: Event) => onChosen((event.currentTarget as HTMLSelectElement).value)}
    >
      ${choices.map((choice) => html`<option value=${choice.value} .selected=${choice.value === value}>${choice.text}</option>`)}
    </select>
    <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      <path d="M2,4 L6,8 L10,4" fill="none" stroke="currentColor" stroke-width="1.5" />
    </svg>
  </span>
`;

export const selectFieldStyles = css`
  .select {
    display: block;
    position: relative;
    min-inline-size: 0;
  }
  .select select {
    appearance: none;
    inline-size: 100%;
    min-block-size: var(--target-size);
    padding: 0 var(--space-32) 0 var(--space-12);
    border: var(--stroke-line) solid var(--edge);
    border-radius: var(--radius);
    background: var(--field);
    color: var(--ink);
    text-overflow: ellipsis;
  }
  .select svg {
    position: absolute;
    inset-block-start: calc(50% - 6px);
    inset-inline-end: var(--space-12);
    pointer-events: none;
  }
`;
