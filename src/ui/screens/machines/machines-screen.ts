/** Machines: the list in the strip, and on the sheet one machine, or what a new one can start from. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { isAlive } from '../../../../shared/document/common.ts';
import type { Machine } from '../../../../shared/document/machine.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import '../../parts/answer-line.ts';
import '../../parts/place-layout.ts';
import '../../parts/place-list.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { demoMachines, newMachine } from '../../state/machine-new.ts';
import { nowAt } from '../../state/new-item.ts';
import { withMachine } from './machine-editing.ts';
import './machine-sheet.ts';
import './new-machine.ts';
import type { LayoutChosen } from './new-machine.ts';

/** In the place of a machine's id: the sheet that starts a new one. */
export const NEW_MACHINE = 'new';

@customElement('machines-screen')
export class MachinesScreen extends LitElement {
  static override styles = [
    shared,
    css`
      .head {
        padding: 0 var(--space-24) var(--space-12);
      }
      h2 {
        font-size: var(--lead-size);
        line-height: var(--lead-line);
      }
      .acts {
        display: grid;
        gap: var(--space-12);
        margin-block-start: auto;
        padding: var(--space-16) var(--space-24) var(--space-8);
      }
      .demo {
        margin-block-start: var(--space-32);
      }
      .undo {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-8) var(--space-16);
        margin-block-end: var(--space-16);
        padding-block-end: var(--space-12);
        border-block-end: var(--stroke-line) solid var(--line);
      }
      @media (max-width: 59.99rem) {
        .head {
          display: none;
        }
        .acts {
          padding-inline: var(--sheet-margin);
        }
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  /** Id of the machine that is shown. */
  @property() machineId = '';
  @state() removed: Machine | undefined;
  readonly #document = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document }) => document,
  );

  override render() {
    const machines = this.#machines;
    const shown = machines.find(({ id }) => id === this.machineId);
    const entries = machines.map(({ id, name, note, demo, layout, belts }) => {
      const what = words.listNote(note ?? words.layouts[layout.kind], belts.length);
      return { id, name, note: demo ? words.demoNote(what) : what, href: hrefOf('machines', id) };
    });
    return html`<place-layout .label=${words.list} .fold=${shown?.name ?? words.title}>
      <div slot="rail" class="head"><h2>${words.title}</h2></div>
      <place-list slot="rail" .label=${words.list} .entries=${entries} .current=${shown?.id ?? ''}></place-list>
      <div slot="rail" class="acts">
        ${machines.length > 0 ? html`<a class="button" href=${hrefOf('machines', NEW_MACHINE)}>${words.add}</a>` : nothing}
        ${machines.length === 0 || machines.some(({ demo }) => demo) ? nothing : html`<button class="quiet" @click=${this.#bringDemo}>${words.addDemo}</button>`}
      </div>
      ${this.removed ? this.#undo(this.removed) : nothing}
      ${shown ? html`<machine-sheet .document=${this.#document.value} .machine=${shown} @machine-removed=${() => this.#remove(shown)}></machine-sheet>` : this.#start()}
    </place-layout>`;
  }

  #start() {
    const machines = this.#machines;
    if (this.machineId && this.machineId !== NEW_MACHINE && this.workbench.kept.keeping.isOpen && !this.removed) {
      return html`<answer-line><b>${words.gone[0]}</b><span slot="under">${words.gone[1]}</span>
        <a slot="actions" class="button" href=${hrefOf('machines')}>${words.backToAll}</a></answer-line>`;
    }
    const head = machines.length === 0 ? words.empty : words.choose;
    return html`<answer-line>
        <span slot="over">${head.over}</span>${head.answer[0]}<b>${head.answer[1]}</b><span slot="under">${head.under}</span>
      </answer-line>
      <new-machine @layout-chosen=${this.#begin}></new-machine>
      ${machines.length === 0 ? html`<p class="demo"><button class="quiet" @click=${this.#bringDemo}>${words.addDemo}</button></p>` : nothing}`;
  }

  #undo(machine: Machine) {
    return html`<div class="undo" role="status"><span>${words.removed(machine.name)}</span>
      <button @click=${() => this.#bringBack(machine)}>${words.undo}</button></div>`;
  }

  get #machines(): readonly Machine[] {
    return this.#document.value.machines.filter(isAlive);
  }

  readonly #begin = ({ layout }: LayoutChosen) => {
    const machine = newMachine(layout, { name: words.newName[layout], spanNames: words.spanNames });
    this.#add([machine]);
    location.hash = hrefOf('machines', machine.id);
  };

  readonly #bringDemo = () => {
    const machines = demoMachines({ ...words.demo, spanNames: words.spanNames });
    this.#add(machines);
    location.hash = hrefOf('machines', machines[0]?.id ?? '');
  };

  #add(added: readonly Machine[]): void {
    this.removed = undefined;
    void this.workbench.kept.change((document) => ({ ...document, machines: [...document.machines, ...added] }));
  }

  #remove(machine: Machine): void {
    this.removed = machine;
    const deletedAt = nowAt();
    void this.workbench.kept.change((document) => withMachine(document, machine.id, (one) => ({ ...one, deletedAt })));
    location.hash = hrefOf('machines');
  }

  #bringBack(machine: Machine): void {
    this.removed = undefined;
    void this.workbench.kept.change((document) => withMachine(document, machine.id, ({ deletedAt: _, ...one }) => one));
    location.hash = hrefOf('machines', machine.id);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'machines-screen': MachinesScreen;
  }
}
