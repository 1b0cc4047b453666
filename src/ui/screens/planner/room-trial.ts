/** 'Will it work here?': hears the room, mixes plucks of the planned spans into it, and shows how many the estimator reads right. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { AskedPlan, PlanAnswer } from '../../../core/machine/ask-plan.ts';
import { type MicrophoneLimit, microphoneLimit } from '../../../core/machine/microphone-limit.ts';
import { roomSpectrum } from '../../../core/machine/room-spectrum.ts';
import { type TrialRow, UNHEARD_PEAK_DBFS } from '../../../core/machine/trial.ts';
import type { Recording } from '../../../core/samples/recording.ts';
import { en } from '../../../words/en.ts';
import { plannerEn } from '../../../words/planner-en.ts';
import { Figures } from '../../format.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { spanText } from './planner-view.ts';

const words = plannerEn.here;

/** Sent when the room has shown what the microphone hears from. */
export class MicrophoneMeasured extends Event {
  readonly limit: MicrophoneLimit | undefined;

  constructor(limit: MicrophoneLimit | undefined) {
    super('microphone-measured', { bubbles: true, composed: true });
    this.limit = limit;
  }
}

type Trial =
  | { readonly kind: 'none' }
  | { readonly kind: 'hearing' | 'trying'; readonly share: number; readonly aborting: AbortController }
  | { readonly kind: 'tried'; readonly rows: readonly TrialRow[]; readonly loudness: 'assumed' | 'heard' }
  | { readonly kind: 'failed'; readonly text: string };

const ROOM_SECONDS = 4;
const PLUCKS_EACH = 12;
const SEED = 1;
const FEWEST_LOUD = 1;
/** Lengths closer than this would be tried twice. */
const ALIKE_UP_TO = 1.05;

@customElement('room-trial')
export class RoomTrial extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      .lead {
        max-inline-size: 44rem;
        margin-block: var(--space-4) var(--space-12);
        color: var(--ink-2);
      }
      .running {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-8) var(--space-16);
      }
      progress {
        flex: 1 1 8rem;
        max-inline-size: 24rem;
        block-size: 8px;
        accent-color: var(--ink);
      }
      .result {
        font-weight: var(--weight-strong);
      }
      table {
        margin-block: var(--space-12);
        border-collapse: collapse;
      }
      th,
      td {
        padding: var(--space-4) var(--space-24) var(--space-4) 0;
        border-block-end: var(--stroke-line) solid var(--line);
        font-weight: var(--weight-text);
        text-align: start;
      }
      thead th {
        font-size: var(--note-size);
        color: var(--ink-2);
      }
      .bar {
        inline-size: 9rem;
        block-size: 10px;
        vertical-align: middle;
        margin-inline-end: var(--space-12);
      }
      .bar .all {
        fill: none;
        stroke: var(--edge);
      }
      .bar .right {
        fill: var(--ink);
      }
      @media (max-width: 30rem) {
        .bar {
          display: none;
        }
        th,
        td {
          padding-inline-end: var(--space-12);
        }
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property({ attribute: false }) asked!: AskedPlan;
  @property({ attribute: false }) answer!: PlanAnswer;
  @state() trial: Trial = { kind: 'none' };
  readonly #figures = new Figures();
  #of: AskedPlan | undefined;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#giveUp();
  }

  /** What was tried holds for the belt and the forces it was tried with; the microphone's own limit came out of it. */
  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('asked') || this.#of === undefined || this.trial.kind !== 'tried') return;
    const key = ({ question }: AskedPlan) => JSON.stringify([question.setup, question.forceN]);
    if (key(this.asked) !== key(this.#of)) this.trial = { kind: 'none' };
  }

  override render() {
    return html`<h2>${words.title}</h2>
      <p class="lead">${words.lead}</p>
      <div role="status">${this.#state()}</div>`;
  }

  #state() {
    const { trial } = this;
    switch (trial.kind) {
      case 'hearing':
      case 'trying':
        return html`<div class="running">
          <span>${trial.kind === 'hearing' ? words.hearing : words.trying}</span>
          <progress max="1" .value=${trial.share} aria-label=${words.progress}></progress>
          <button class="quiet" @click=${this.#giveUp}>${words.cancel}</button>
        </div>`;
      case 'tried':
        return html`${this.#result(trial.rows)}
          <p class="note">${words.loudness[trial.loudness]}</p>
          <button @click=${this.#start}>${words.again}</button>`;
      default:
        return html`${trial.kind === 'failed' ? html`<p>${trial.text}</p>` : nothing}
          <button @click=${this.#start}>${words.start}</button>`;
    }
  }

  #result(rows: readonly TrialRow[]) {
    const sum = (of: (row: TrialRow) => number) => rows.reduce((total, row) => total + of(row), 0);
    const right = sum((row) => row.right);
    const all = sum((row) => row.plucks);
    return html`<p class="result">${words.result(right, all)}</p>
      <table aria-label=${words.label}>
        <thead>
          <tr>${words.columns.map((column) => html`<th scope="col">${column}</th>`)}</tr>
        </thead>
        <tbody>
          ${rows.map(
            (row) => html`<tr>
              <th scope="row">${spanText(row.spanLengthM, this.#figures)}</th>
              <td>
                <svg class="bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
                  <rect class="right" width=${(100 * row.right) / row.plucks} height="10" />
                  <rect class="all" x="0.5" y="0.5" width="99" height="9" vector-effect="non-scaling-stroke" />
                </svg>${words.row(row.right, row.plucks)}
              </td>
              <td>${row.wrong}</td>
              <td>${row.plucks - row.right - row.wrong}</td>
            </tr>`,
          )}
        </tbody>
      </table>`;
  }

  readonly #start = async () => {
    const aborting = new AbortController();
    const { signal } = aborting;
    const { asked } = this;
    this.#of = asked;
    const show = (kind: 'hearing' | 'trying') => (share: number) => {
      if (!signal.aborted) this.trial = { kind, share, aborting };
    };
    show('hearing')(0);
    try {
      const room = await this.workbench.effects.recordRoom({ seconds: ROOM_SECONDS, onProgress: show('hearing'), signal });
      if ('kind' in room) {
        this.trial = { kind: 'failed', text: en.failures[room.why].join('. ') };
        return;
      }
      const limit = microphoneLimit(roomSpectrum(room));
      this.dispatchEvent(new MicrophoneMeasured(limit));
      const { rows, loudness } = await this.#tried(room, limit, show('trying'), signal);
      if (!signal.aborted) this.trial = { kind: 'tried', rows, loudness };
    } catch {
      if (!signal.aborted) this.trial = { kind: 'failed', text: words.broken };
    }
  };

  async #tried(room: Recording, microphone: MicrophoneLimit | undefined, onProgress: (share: number) => void, signal: AbortSignal) {
    const { question } = this.asked;
    const peak = this.#peakDbfs();
    const rows = await this.workbench.effects.planner.tryHere(
      {
        ...question,
        room,
        microphone,
        peakDbfs: peak ?? UNHEARD_PEAK_DBFS,
        spansM: this.#spansM(),
        plucksEach: PLUCKS_EACH,
        seed: SEED,
      },
      { onProgress, signal },
    );
    return { rows, loudness: peak === undefined ? ('assumed' as const) : ('heard' as const) };
  }

  /** As loud as the plucks of the last take through the microphone: partial 1 carries most of it. */
  #peakDbfs(): number | undefined {
    const { take } = this.workbench.store.state;
    if (take?.source !== 'microphone' || take.plucks.length < FEWEST_LOUD) return undefined;
    return Math.max(...take.plucks.flatMap(({ sound }) => sound.partials.map(({ levelDbfs }) => levelDbfs)));
  }

  /** The span in hand, the shortest trusted one, the one to park at, and two longer ones. */
  #spansM(): readonly number[] {
    const { now, park, plan } = this.answer;
    const from = plan.shortestTrustedM ?? this.asked.reach.fromM * 2;
    const rounded = (spanM: number) => Math.round(spanM * 1000) / 1000;
    const wanted = [now?.spanLengthM, from, park?.spanLengthM, 1.6 * from, 2.5 * from].filter((spanM) => spanM !== undefined).map(rounded);
    const inReach = [...new Set(wanted)].filter((spanM) => spanM <= this.asked.reach.toM).toSorted((a, b) => a - b);
    return inReach.filter((spanM, i) => i === 0 || spanM > ALIKE_UP_TO * inReach[i - 1]!);
  }

  readonly #giveUp = () => {
    const { trial } = this;
    if (trial.kind !== 'hearing' && trial.kind !== 'trying') return;
    this.trial = { kind: 'none' };
    trial.aborting.abort();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'room-trial': RoomTrial;
  }
  interface HTMLElementEventMap {
    'microphone-measured': MicrophoneMeasured;
  }
}
