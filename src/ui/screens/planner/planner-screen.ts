/** The span planner: where to park the carriage so that sound can be trusted, what the span in hand is worth, and whether it will work here. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { MicrophoneLimit } from '../../../core/machine/microphone-limit.ts';
import { formatPercent } from '../../../core/quantity.ts';
import type { EnteredSetup } from '../../../ports.ts';
import { betweenText } from '../../../words/plan-en.ts';
import { plannerEn as words } from '../../../words/planner-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/answer-line.ts';
import '../../parts/grade-mark.ts';
import '../../parts/place-layout.ts';
import { quantityInputStyles } from '../../parts/quantity-input.ts';
import { selectFieldStyles } from '../../parts/select-field.ts';
import '../../parts/span-plan.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { Selected } from '../../state/selected.ts';
import { enteredForSpan, placeOn } from '../../state/span-of-machine.ts';
import { beltName } from '../setup-words.ts';
import { askedPlan, hearsOf, type PlannerFields } from './plan-question.ts';
import { plannerRail, plannerRailStyles } from './planner-rail.ts';
import { plannerScreenStyles } from './planner-screen-styles.ts';
import { type Planned, PlannerTask } from './planner-task.ts';
import { cyclesAt, hertzAt, plannerView, shareText, sinksFromM, spanText } from './planner-view.ts';
import './park-plan.ts';
import './room-trial.ts';
import type { MicrophoneMeasured } from './room-trial.ts';
import './what-to-do.ts';

const TYPED_DIGITS_M = 1e-4;

@customElement('planner-screen')
export class PlannerScreen extends LitElement {
  static override styles = [shared, quantityInputStyles, selectFieldStyles, plannerRailStyles, plannerScreenStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  /** The machine whose page this is; empty: the setup of Listen. */
  @property() machineId = '';
  @state() fields: PlannerFields = { hearsFrom: '', longest: '' };

  readonly #figures = new Figures();
  readonly #task = new PlannerTask(this, () => this.workbench.effects.planner);
  readonly #state = new Selected(
    this,
    () => this.workbench.store,
    (state) => state,
  );
  readonly #document = new KeptPart(
    this,
    () => this.workbench.kept,
    (kept) => kept.document,
  );

  override willUpdate(): void {
    this.#takeMachine();
    this.#task.ask(askedPlan(this.#state.value, this.fields));
  }

  /** A machine's page shows a belt of that machine, whatever stood on Listen before. */
  #takeMachine(): void {
    const { entered } = this.#state.value;
    if (this.machineId === '' || entered.on?.machineId === this.machineId) return;
    const machine = this.#document.value.machines.find(({ id }) => id === this.machineId);
    const belt = machine?.belts[0];
    if (machine && belt) this.#enter(enteredForSpan({ machine, belt, span: belt.spans[0] }));
  }

  override render() {
    const state = this.#state.value;
    const hears = hearsOf(state, this.fields);
    const { kind } = this.#task.state;
    const planned = this.#planned;
    const onceKnownM = planned?.answer.trustedOnceKnownM;
    const rail = {
      state,
      document: this.#document.value,
      fields: this.fields,
      hears,
      figures: this.#figures,
      onceKnown: onceKnownM === undefined ? '' : this.#figures.whole(Math.ceil(1000 * onceKnownM), 'mm'),
      enter: this.#enter,
      tell: this.#tell,
    };
    return html`<place-layout .label=${words.title} .fold=${words.title}>
      <div slot="rail">${plannerRail(rail)}</div>
      <div aria-busy=${kind === 'reckoning'}>${planned ? this.#sheet(planned) : this.#waiting()}</div>
    </place-layout>`;
  }

  get #planned(): Planned | undefined {
    const { state } = this.#task;
    return state.kind === 'planned' ? state : state.kind === 'reckoning' ? state.last : undefined;
  }

  get #what(): string {
    const { entered, understood } = this.#state.value;
    const place = placeOn(this.#document.value, entered.on);
    return place ? `${place.machine.name}, ${place.belt.name}` : beltName(entered, understood);
  }

  #waiting() {
    const { kind } = this.#task.state;
    const { setup } = this.#state.value.understood;
    if (kind === 'reckoning') return html`<p class="note" role="status">${words.reckoning}</p>`;
    if (kind === 'broken') return html`<p role="status">${words.broken}</p>`;
    const [what, then] = setup.belt ? words.needsForce : words.needsBelt;
    return html`<answer-line><span slot="over">${words.over(this.#what)}</span><b>${what}</b><span slot="under">${then}</span></answer-line>`;
  }

  #sheet(planned: Planned) {
    const { asked, answer } = planned;
    const figures = this.#figures;
    const view = plannerView(asked, answer, figures);
    const { spans } = answer.plan;
    const sinksM = sinksFromM(asked, spans);
    const rows = [
      { name: words.plot.frequencies, at: (spanM: number) => hertzAt(spans, spanM, figures) },
      { name: words.plot.cycles, at: (spanM: number) => cyclesAt(spans, spanM, figures) },
    ];
    return html`${this.#head(planned)}
      <h2 class="plot-title"><b>${words.plot.title[0]}</b> ${words.plot.title[1]}</h2>
      <span-plan
        .points=${view.points}
        .zones=${view.zones}
        .reach=${view.reach}
        .most=${view.most}
        .tolerance=${view.tolerance}
        .toleranceLabel=${words.plot.tolerance(shareText(view.tolerance, figures))}
        .curveLabels=${view.curveLabels}
        .now=${view.now}
        .park=${view.park}
        .rows=${rows}
        .axisLabel=${words.plot.axis}
        .figure=${(spanM: number) => figures.typed(Math.round(1000 * spanM))}
        .figureWithUnit=${(spanM: number) => figures.typed(Math.round(1000 * spanM), 'mm')}
        .percent=${(share: number) => formatPercent(share, { format: figures.format })}
        .label=${view.label}
        .table=${view.table}
      ></span-plan>
      <ul class="notes">
        ${view.notes.map(
          ({ zone, where, why }) =>
            html`<li><grade-mark .grade=${zone.grade} .word=${where}></grade-mark> <span>${why.join(' ')}</span></li>`,
        )}
        ${sinksM === undefined ? nothing : html`<li class="note">${words.plot.sinks(spanText(sinksM, figures), figures.whole(asked.question.lowestHz, 'Hz'))}</li>`}
      </ul>
      ${this.#parkPlan(planned)}
      ${answer.whatToDo && answer.now ? html`<what-to-do class="block" .now=${answer.now} .what=${answer.whatToDo}></what-to-do>` : nothing}
      <room-trial class="block" .asked=${asked} .answer=${answer} @microphone-measured=${this.#measured}></room-trial>`;
  }

  #head({ asked, answer }: Planned) {
    const { park, plan } = answer;
    const figures = this.#figures;
    const trusted = plan.zones.find(({ grade }) => grade === 'trusted');
    const low = figures.typed(asked.question.forceN.lowN, 'N');
    return html`<answer-line>
      <span slot="over">${words.over(this.#what)}</span>
      ${park ? html`${words.park[0]} <b>${spanText(park.spanLengthM, figures)}</b>` : html`<b>${words.noSpan}</b>`}
      <span slot="under">${trusted && plan.shortestTrustedM !== undefined ? this.#trustedText(plan.shortestTrustedM, trusted.toM, asked.reach.toM) : this.#noneText(answer.trustedOnceWeighedM)}</span>
      <div slot="actions" class="actions">
        ${
          park
            ? html`<dl>
                <div><dt>${words.expect(low)}</dt><dd>${words.doubt(shareText(park.atLow.forceU95Relative ?? 0, figures))}</dd></div>
                <div><dt>${words.partialOne}</dt><dd>${betweenText(park.atLow.frequencyHz, park.atHigh.frequencyHz, 'Hz', figures.format)}</dd></div>
              </dl>`
            : nothing
        }
        <button class="solid" @click=${() => this.#listen(park?.spanLengthM)}>${park ? words.listenThere : words.listenHere}</button>
      </div>
    </answer-line>`;
  }

  /** On a machine with a layout: where the carriage makes that length; without a trusted span, that of now. */
  #parkPlan({ answer: { park, now } }: Planned) {
    const { entered, understood } = this.#state.value;
    const place = placeOn(this.#document.value, entered.on);
    const spanLengthM = (park ?? now)?.spanLengthM;
    if (!place?.span?.place || spanLengthM === undefined) return nothing;
    return html`<park-plan class="block" .place=${place} .spanLengthM=${spanLengthM} .toothPitchM=${understood.setup.belt?.toothPitchM}></park-plan>`;
  }

  #noneText(onceWeighedM: number | undefined): string {
    if (onceWeighedM === undefined || this.#state.value.understood.setup.belt?.densityFrom !== 'catalogue') return words.noneBecause;
    return words.onceWeighed(this.#figures.whole(Math.ceil(1000 * onceWeighedM), 'mm'));
  }

  #trustedText(fromM: number, toM: number, reachM: number): string {
    const from = spanText(fromM, this.#figures);
    return toM < reachM ? words.trustedFromTo(from, spanText(toM, this.#figures)) : words.trustedFrom(from);
  }

  #listen(spanLengthM: number | undefined): void {
    if (spanLengthM !== undefined) {
      const typed = this.#figures.typed(Math.round(spanLengthM / TYPED_DIGITS_M) * TYPED_DIGITS_M * 1000);
      this.#enter({ spanLength: typed });
    }
    location.hash = hrefOf('listen');
  }

  readonly #enter = (change: Partial<EnteredSetup>): void => this.workbench.store.dispatch({ kind: 'setup-entered', change });
  readonly #tell = (change: Partial<PlannerFields>): void => {
    this.fields = { ...this.fields, ...change };
  };
  readonly #measured = ({ limit }: MicrophoneMeasured): void =>
    this.#tell({ measured: limit satisfies MicrophoneLimit | undefined, hearsFrom: '' });
}

declare global {
  interface HTMLElementTagNameMap {
    'planner-screen': PlannerScreen;
  }
}
