/** One gauge: its answer in a line, and its pages. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import { noCalibrationText, rangeText } from '../../../words/gauge-en.ts';
import { gaugesEn as words } from '../../../words/gauges-en.ts';
import '../../parts/answer-line.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { proofOf, withGauge } from '../../state/gauge-proof.ts';
import './about-gauge.ts';
import { beltLabel } from './belt-label.ts';
import './chart-page.ts';
import './check-page.ts';
import './cross-page.ts';
import type { EditGauge } from './gauge-editing.ts';
import './prove-page.ts';

const TABS = ['prove', 'chart', 'cross', 'check'] as const;
type Tab = (typeof TABS)[number];

@customElement('gauge-sheet')
export class GaugeSheet extends LitElement {
  static override styles = [
    shared,
    css`
      nav {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-24);
        margin-block-end: var(--space-24);
        border-block-end: var(--stroke-line) solid var(--line);
      }
      nav a {
        min-block-size: var(--target-size);
        align-content: center;
        color: var(--ink-2);
        text-decoration: none;
      }
      nav a[aria-current] {
        margin-block-end: calc(-1 * var(--stroke-line));
        border-block-end: var(--stroke-place) solid var(--ink);
        font-weight: var(--weight-strong);
        color: var(--ink);
      }
      @media (max-width: 59.99rem) {
        nav {
          justify-content: space-between;
          gap: 0 var(--space-8);
        }
      }
      @media (max-width: 22rem) {
        nav {
          font-size: var(--note-size);
        }
      }
      @media print {
        nav,
        answer-line,
        about-gauge {
          display: none;
        }
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property({ attribute: false }) document!: KeptDocument;
  @property({ attribute: false }) gauge!: KeptGauge;
  @property() tab = '';

  override render() {
    const { gauge, document } = this;
    const tab = TABS.find((one) => one === this.tab) ?? 'prove';
    const proof = proofOf(gauge, document.belts);
    const told = { document, gauge, proof, edit: this.#edit };
    // What is wanted of it comes first while nothing was read: loads are proposed from it.
    const isNew = tab === 'prove' && (gauge.readings?.length ?? 0) === 0;
    const about = (open: boolean) =>
      html`<about-gauge .document=${document} .gauge=${gauge} .edit=${this.#edit} ?open=${open}></about-gauge>`;
    return html`<answer-line>
        <span slot="over">${words.overBelt(gauge.name, beltLabel(gauge, document))}</span>${this.#answer(proof)}
      </answer-line>
      <nav aria-label=${words.tabsLabel}>
        ${TABS.map((one) => html`<a href=${hrefOf('gauges', gauge.id, ...(one === 'prove' ? [] : [one]))} aria-current=${one === tab ? 'page' : nothing}>${words.tabs[one]}</a>`)}
      </nav>
      ${isNew ? about(true) : nothing}${this.#page(tab, told)}${isNew ? nothing : about(false)}`;
  }

  #answer({ calibration }: ReturnType<typeof proofOf>) {
    if (calibration.kind === 'no-calibration') {
      const under = (this.gauge.readings?.length ?? 0) > 0 ? noCalibrationText(calibration.why) : '';
      return html`${words.notYet[0]}<b>${words.notYet[1]}</b>${under ? html`<span slot="under">${under}</span>` : nothing}`;
    }
    const { verified } = calibration;
    return verified.kind === 'verified'
      ? html`${words.verifiedFrom[0]}<b>${rangeText(verified)}</b>`
      : html`${words.verifiedNowhere[0]}<b>${words.verifiedNowhere[1]}</b>`;
  }

  #page(
    tab: Tab,
    { document, gauge, proof, edit }: { document: KeptDocument; gauge: KeptGauge; proof: ReturnType<typeof proofOf>; edit: EditGauge },
  ) {
    switch (tab) {
      case 'prove':
        return html`<prove-page .gauge=${gauge} .proof=${proof} .edit=${edit}></prove-page>`;
      case 'chart':
        return html`<chart-page .document=${document} .gauge=${gauge} .proof=${proof} .edit=${edit}></chart-page>`;
      case 'cross':
        return html`<cross-page .document=${document} .gauge=${gauge} .proof=${proof} .edit=${edit}></cross-page>`;
      case 'check':
        return html`<check-page .gauge=${gauge} .proof=${proof} .edit=${edit}></check-page>`;
    }
  }

  readonly #edit: EditGauge = (edit) => {
    const { id } = this.gauge;
    void this.workbench.kept.change((document) => withGauge(document, id, edit));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'gauge-sheet': GaugeSheet;
  }
}
