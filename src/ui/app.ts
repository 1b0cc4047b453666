/** The root: the frame with its places, keys, dropped files, and the workbench that every screen shares. */

import { provide } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { en } from '../words/en.ts';
import './screens/caution-dialog.ts';
import type { CautionDialog } from './screens/caution-dialog.ts';
import './screens/listen-screen.ts';
import { appStyles } from './app-styles.ts';
import { shared } from './shared-styles.ts';
import { type Workbench, workbenchContext } from './state/context.ts';

@customElement('spanwright-app')
export class SpanwrightApp extends LitElement {
  static override styles = [shared, appStyles];

  @provide({ context: workbenchContext }) workbench!: Workbench;
  @query('caution-dialog') cautionDialog!: CautionDialog;
  @state() dropping = false;

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.#key);
    window.addEventListener('dragover', this.#dragOver);
    window.addEventListener('dragleave', this.#dragLeave);
    window.addEventListener('drop', this.#drop);
    window.addEventListener('pointerup', this.#tap);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('keydown', this.#key);
    window.removeEventListener('dragover', this.#dragOver);
    window.removeEventListener('dragleave', this.#dragLeave);
    window.removeEventListener('drop', this.#drop);
    window.removeEventListener('pointerup', this.#tap);
  }

  override render() {
    return html`
      <header>
        <span class="brand">${mark} ${en.productName}</span>
        <h1>${en.placeListen}</h1>
        <button class="cautions" @click=${this.#cautions}>${en.cautionsLink}</button>
      </header>
      <listen-screen @cautions-wanted=${this.#cautions}></listen-screen>
      <caution-dialog></caution-dialog>
      ${this.dropping ? html`<div class="drop">${en.sources.drop}</div>` : nothing}
    `;
  }

  readonly #cautions = () => this.cautionDialog.show();

  /** L listens or stops, U takes the last pluck back, Esc leaves: never while someone types or chooses. */
  readonly #key = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.repeat || isTyping(event)) return;
    const { store, effects } = this.workbench;
    const { activity, notice } = store.state;
    switch (event.key.toLowerCase()) {
      case 'l':
        void (activity.kind === 'idle' ? effects.listen() : effects.stop());
        break;
      case 'u':
        store.dispatch({ kind: 'pluck-undone' });
        break;
      case 'escape':
        if (activity.kind !== 'idle') void effects.stop();
        else if (notice) store.dispatch({ kind: 'notice-dismissed' });
        break;
    }
  };

  /** Where the browser paused the sound, a person's gesture brings it back. */
  readonly #tap = () => {
    const { activity } = this.workbench.store.state;
    if (activity.kind === 'listening' && activity.obstacle === 'paused') void this.workbench.effects.resume();
  };

  readonly #dragOver = (event: DragEvent) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    this.dropping = true;
  };

  readonly #dragLeave = (event: DragEvent) => {
    if (event.relatedTarget === null) this.dropping = false;
  };

  readonly #drop = (event: DragEvent) => {
    this.dropping = false;
    const [file] = event.dataTransfer?.files ?? [];
    if (!file) return;
    event.preventDefault();
    void this.workbench.effects.openRecording(file);
  };
}

const mark = html`<svg viewBox="0 0 24 16" width="24" height="16" aria-hidden="true">
  <path d="M1.5,1 V15 M22.5,1 V15 M4,8 H20 M8,4 L4,8 L8,12 M16,4 L20,8 L16,12" fill="none" stroke="currentColor" stroke-width="2" />
</svg>`;

/** Fields, choices and open dialogs keep their keys. */
function isTyping(event: KeyboardEvent): boolean {
  return event
    .composedPath()
    .some((target) => target instanceof Element && target.matches('input, select, textarea, dialog, [contenteditable]'));
}

declare global {
  interface HTMLElementTagNameMap {
    'spanwright-app': SpanwrightApp;
  }
}
