/** Ways to a reading without a microphone: the demo take, and a recording from a file. */

import { consume } from '@lit/context';
import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { en } from '../../words/en.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';

const words = en.sources;
/** What browsers decode, and WAV by our own reader; a file of another kind may still be dropped. */
const ACCEPTED = 'audio/*,.wav,.wave,.m4a,.mp3,.flac,.ogg,.opus,.webm';

@customElement('take-sources')
export class TakeSources extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-8) var(--space-16);
      }
      .open {
        position: relative;
        display: inline-flex;
        align-items: center;
      }
      .open label {
        align-content: center;
      }
      .open input {
        position: absolute;
        inset: 0;
        inline-size: 100%;
        opacity: 0;
        cursor: pointer;
        font-size: 0;
      }
      .open:focus-within {
        outline: var(--focus-ring);
        outline-offset: var(--focus-gap);
      }
      @media (max-width: 59.99rem) {
        :host {
          display: grid;
          grid-template-columns: repeat(auto-fit, minmax(9.5rem, 1fr));
        }
        button.quiet {
          min-block-size: var(--target-size);
        }
        button.quiet,
        .open label {
          inline-size: 100%;
          border-color: var(--edge);
          text-decoration: none;
        }
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property({ type: Boolean, reflect: true }) quiet = false;

  override render() {
    return html`
      <button class=${this.quiet ? 'quiet' : ''} @click=${() => this.workbench.effects.playDemo()}>${words.demo}</button>
      <span class="open">
        <label class="button quiet" for="recording">${words.open}</label>
        <input id="recording" type="file" accept=${ACCEPTED} @change=${this.#chosen} />
      </span>
    `;
  }

  readonly #chosen = (event: Event) => {
    const input = event.currentTarget as HTMLInputElement;
    const [file] = input.files ?? [];
    input.value = ''; // the same file may be opened again
    if (file) void this.workbench.effects.openRecording(file);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'take-sources': TakeSources;
  }
}
