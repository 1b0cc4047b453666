/** One machine: what must be tight and how much, its plan view, its belts, and which of them must match. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { currentOf } from '../../../../shared/document/common.ts';
import type { KeptSpan, Machine, MachineBelt } from '../../../../shared/document/machine.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import { formatPercent } from '../../../core/quantity.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/answer-line.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { emptyBelt } from '../../state/machine-new.ts';
import { enteredForSpan } from '../../state/span-of-machine.ts';
import { editorStyles } from './editor-styles.ts';
import './machine-belt.ts';
import { type EditMachine, nextBeltName, typedText, withMachine } from './machine-editing.ts';
import './machine-groups.ts';
import './machine-layout.ts';
import { machinePages } from './machine-pages.ts';
import type { SpanChosen } from './machine-span.ts';

@customElement('machine-sheet')
export class MachineSheet extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    css`
      .block {
        margin-block-start: var(--space-24);
        padding-block-start: var(--space-24);
        border-block-start: var(--stroke-line) solid var(--line);
      }
      .foot {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-12);
      }
      .named {
        margin-block-start: var(--space-24);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property({ attribute: false }) document!: KeptDocument;
  @property({ attribute: false }) machine!: Machine;
  @state() marked = '';
  readonly #figures = new Figures();

  override willUpdate(changed: PropertyValues<this>): void {
    const spans = this.machine.belts.flatMap((belt) => belt.spans);
    if (changed.has('machine') && !spans.some(({ id }) => id === this.marked)) this.marked = spans.find(({ place }) => place)?.id ?? '';
  }

  override render() {
    const { machine, document } = this;
    const layoutName = words.layouts[machine.layout.kind];
    return html`<answer-line>
        <span slot="over">${words.over(layoutName, machine.note ?? '')}</span>
        <b>${machine.name}</b>
        <span slot="under">${this.#under()}</span>
        <div slot="actions" class="foot">${this.#actions()}</div>
      </answer-line>
      <machine-layout .machine=${machine} .marked=${this.marked} .edit=${this.#edit}></machine-layout>
      ${machine.belts.map(
        (belt) => html`<machine-belt
          class="block"
          .document=${document}
          .machine=${machine}
          .belt=${belt}
          .marked=${this.marked}
          .edit=${this.#edit}
          @span-shown=${({ spanId }: SpanChosen) => {
            this.marked = spanId;
          }}
          @span-listened=${({ spanId }: SpanChosen) =>
            this.#listen(
              belt,
              belt.spans.find(({ id }) => id === spanId),
            )}
        ></machine-belt>`,
      )}
      <machine-groups class="block" .machine=${machine} .edit=${this.#edit}></machine-groups>
      <div class="block">
        <div class="fields">
          <div>
            <label class="over" for="name">${words.name}</label>
            <input id="name" type="text" .value=${machine.name} maxlength="120" @change=${this.#renamed} />
          </div>
          <div>
            <label class="over" for="note">${words.note}</label>
            <input id="note" type="text" .value=${machine.note ?? ''} maxlength="200" @change=${this.#noted} />
          </div>
        </div>
        <div class="foot named">
          <button @click=${this.#addBelt}>${words.addBelt}</button>
          <button class="quiet" @click=${() => this.dispatchEvent(new Event('machine-removed', { bubbles: true, composed: true }))}>${words.remove}</button>
        </div>
      </div>`;
  }

  /** One solid button: adjusting where belts must match and can be adjusted, else listening on the first span. */
  #actions() {
    const { machine } = this;
    const first = machine.belts[0];
    const pages = machinePages(machine);
    return html`${pages.map(({ href, text }, index) => html`<a class=${index === 0 ? 'button solid' : 'button'} href=${href}>${text}</a>`)}
      ${first ? html`<button class=${pages.length > 0 ? '' : 'solid'} @click=${() => this.#listen(first, first.spans[0])}>${words.listenSolid(first.name)}</button>` : nothing}`;
  }

  #under(): string {
    const { belts, groups } = this.machine;
    const byTarget = new Map<string, string[]>();
    for (const belt of belts) {
      const target = currentOf(belt.targets);
      const range = target ? this.#figures.forceRange(target.forceN) : '';
      byTarget.set(range, [...(byTarget.get(range) ?? []), belt.name]);
    }
    const targets = [...byTarget].map(([range, names]) => {
      const list = names.join(', ');
      return range ? words.underTargets(list, range) : words.underNoTarget(list);
    });
    const matches = groups.map(({ beltIds, toleranceRelative }) => {
      const names = belts.filter(({ id }) => beltIds.includes(id)).map(({ name }) => name);
      return words.underMatch(names.join(', '), formatPercent(toleranceRelative, { format: this.#figures.format }));
    });
    return [...targets, ...matches].join(' ');
  }

  readonly #edit: EditMachine = (edit) => {
    const { id } = this.machine;
    void this.workbench.kept.change((document) => withMachine(document, id, edit));
  };

  #listen(belt: MachineBelt, span: KeptSpan | undefined): void {
    const entered = enteredForSpan({ machine: this.machine, belt, span });
    this.workbench.store.dispatch({ kind: 'setup-entered', change: entered });
    location.hash = hrefOf('listen');
  }

  readonly #renamed = (event: Event) => {
    const name = typedText(event);
    if (name) this.#edit((machine) => ({ ...machine, name }));
  };

  readonly #noted = (event: Event) => {
    const note = typedText(event) || undefined;
    this.#edit((machine) => ({ ...machine, note }));
  };

  readonly #addBelt = () => {
    const belt = emptyBelt(nextBeltName(this.machine));
    this.#edit((machine) => ({ ...machine, belts: [...machine.belts, belt] }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'machine-sheet': MachineSheet;
  }
}
