/** The layouts that a machine can start from, each with its drawing. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { LayoutKind } from '../../../../shared/document/machine.ts';
import { layoutOf, usualSection } from '../../../core/machine/layouts.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import '../../parts/plan-view.ts';
import { shared } from '../../shared-styles.ts';
import { LAYOUT_KINDS } from '../../state/machine-new.ts';

/** A person has chosen what to start from. */
export class LayoutChosen extends Event {
  readonly layout: LayoutKind;

  constructor(layout: LayoutKind) {
    super('layout-chosen', { bubbles: true, composed: true });
    this.layout = layout;
  }
}

@customElement('new-machine')
export class NewMachine extends LitElement {
  static override styles = [
    shared,
    css`
      ul {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(15rem, 100%), 1fr));
        gap: var(--space-24) var(--space-32);
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-rows: auto 1fr;
        gap: var(--space-8);
        padding-block-start: var(--space-12);
        border-block-start: var(--stroke-line) solid var(--line);
      }
      plan-view {
        --plan-size: 9rem;
        block-size: 9rem;
        align-self: center;
      }
      button {
        inline-size: 100%;
      }
      .note {
        margin-block-start: var(--space-8);
      }
    `,
  ];

  override render() {
    return html`<ul>
      ${LAYOUT_KINDS.map((kind) => {
        const layout = layoutOf(kind);
        const name = words.layouts[kind];
        return html`<li>
          <div>
            <button @click=${() => this.dispatchEvent(new LayoutChosen(kind))}>${name}</button>
            <p class="note">${words.layoutNotes[kind]}</p>
          </div>
          ${layout ? html`<plan-view .layout=${layout.lay({})} .section=${usualSection(0.002)} .label=${words.planLabel(name, '')}></plan-view>` : nothing}
        </li>`;
      })}
    </ul>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'new-machine': NewMachine;
  }
  interface HTMLElementEventMap {
    'layout-chosen': LayoutChosen;
  }
}
