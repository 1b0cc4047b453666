/** The spectrum of the last pluck, and while it listens the sound of the moment under it. */

import { consume } from '@lit/context';
import { css, html, LitElement } from 'lit';
import { customElement, query } from 'lit/decorators.js';
import { en } from '../../words/en.ts';
import { Figures } from '../format.ts';
import '../parts/spectrum-plot.ts';
import type { SpectrumPlot } from '../parts/spectrum-plot.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';
import { expectedPlaces, foundPeaks, leftOutTones, partialsTable } from './spectrum-view.ts';

const words = en.spectrum;

@customElement('live-spectrum')
export class LiveSpectrum extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
  `;

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @query('spectrum-plot') plot!: SpectrumPlot | null;

  readonly #figures = new Figures();
  #unfollow: (() => void) | undefined;
  readonly #answer = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.answer,
  );

  override connectedCallback(): void {
    super.connectedCallback();
    this.#unfollow = this.workbench.live.follow((moment) => this.plot?.showLive(moment));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#unfollow?.();
  }

  override render() {
    const { state } = this.workbench.store;
    const pluck = state.take?.plucks.at(-1);
    const expected = expectedPlaces(state);
    return html`<spectrum-plot
      .spectrum=${pluck?.spectrum}
      .expected=${expected}
      .peaks=${pluck ? foundPeaks(pluck, this.#figures) : []}
      .leftOut=${pluck ? leftOutTones(pluck) : []}
      .floorLabel=${words.room}
      .label=${pluck ? words.label(this.#heard()) : words.live}
      .table=${pluck && partialsTable(pluck, expected, this.#figures)}
      .locale=${this.#figures.locale}
    ></spectrum-plot>`;
  }

  #heard(): string {
    const sound = this.#answer.value.plucks.at(-1)?.sound;
    return (sound?.partials ?? []).map(({ frequencyHz }) => this.#figures.typed(frequencyHz.value, 'Hz')).join(', ');
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'live-spectrum': LiveSpectrum;
  }
}
