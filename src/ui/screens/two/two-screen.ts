/** Two positions: guided, hands free. Plucks at one length, then at another; together they tell the force about twice as well. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { answerOf, type Take } from '../../../core/answer.ts';
import { LOWEST_HEARD_HZ } from '../../../core/machine/plan.ts';
import { type PlannedSecond, pays } from '../../../core/machine/second-position.ts';
import type { TwoPositions } from '../../../core/machine/two-positions.ts';
import { USUAL_REACH } from '../../../core/machine/zones.ts';
import { formatNumber, type ParsedQuantity, parseQuantity } from '../../../core/quantity.ts';
import { en } from '../../../words/en.ts';
import { plannerEn } from '../../../words/planner-en.ts';
import { reasonRemedy, reasonSentence } from '../../../words/reasons-en.ts';
import { Figures, together } from '../../format.ts';
import '../../parts/force-ruler.ts';
import type { RulerInterval } from '../../parts/force-ruler.ts';
import '../../parts/grade-mark.ts';
import '../../parts/place-layout.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { Selected } from '../../state/selected.ts';
import { type HeardPluck, soundsOf } from '../../state/take.ts';
import { shareText, spanText } from '../planner/planner-view.ts';
import { faultText } from '../setup-words.ts';
import { twoScreenStyles } from './two-screen-styles.ts';
import {
  ENOUGH_PLUCKS,
  expectedSecondHz,
  fittingPlucks,
  nextPosition,
  outcomeOf,
  type Step,
  stepOf,
  type TwoSession,
} from './two-session.ts';

const words = plannerEn.two;
const OWNER = 'two-positions';
const REST_MS = 250;

@customElement('two-screen')
export class TwoScreen extends LitElement {
  static override styles = [shared, quantityInputStyles, twoScreenStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() first = '';
  @state() second = '';
  @state() session: TwoSession = {};
  @state() outcome: TwoPositions | undefined;
  @state() planned: PlannedSecond | undefined;

  readonly #figures = new Figures();
  /** From one position to the next: what was heard at the one must not count at the other. */
  #changing = false;
  #askedKey = '';
  #asking: AbortController | undefined;
  #resting: ReturnType<typeof setTimeout> | undefined;
  readonly #state = new Selected(
    this,
    () => this.workbench.store,
    (state) => state,
  );

  override connectedCallback(): void {
    super.connectedCallback();
    const { entered, understood, take, errand } = this.workbench.store.state;
    if (errand || this.first !== '') return;
    this.first = entered.spanLength;
    // Whoever comes from a reading has the first position already.
    if (take && take.source !== 'demo' && take.plucks.length >= ENOUGH_PLUCKS && understood.setup.spanLengthM) {
      this.session = { first: soundsOf(take, understood.setup) };
    }
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#resting);
    this.#asking?.abort();
    void this.workbench.effects.endErrand();
  }

  override willUpdate(): void {
    this.#hear();
    this.#ask();
  }

  get #isOurs(): boolean {
    return this.#state.value.errand?.owner === OWNER;
  }

  get #isListening(): boolean {
    const { activity } = this.#state.value;
    return this.#isOurs && activity.kind !== 'idle';
  }

  get #setupBefore() {
    const { errand, entered } = this.#state.value;
    return errand?.waiting.entered ?? entered;
  }

  #lengthM(text: string): ParsedQuantity {
    return parseQuantity(text, { kind: 'length', defaultUnit: 'mm', toothPitchM: this.#state.value.understood.setup.belt?.toothPitchM });
  }

  #expectedHz(): number | undefined {
    const { first } = this.session;
    const second = this.#lengthM(this.second);
    return first && second.ok ? expectedSecondHz(first, answerOf(first).reading?.forceN?.value, second.value) : undefined;
  }

  #plucks(): readonly HeardPluck[] {
    const { take } = this.#state.value;
    if (!this.#isOurs || !take) return [];
    const { first } = this.session;
    return first
      ? fittingPlucks(take.plucks, { expectedHz: this.#expectedHz(), firstHz: answerOf(first).reading?.frequencyHz.value })
      : take.plucks;
  }

  /** Takes a position over once it is heard well enough, and goes on by itself. */
  #hear(): void {
    const { take, activity, understood } = this.#state.value;
    if (!this.#isOurs || !take || this.outcome || this.#changing) return;
    const plucks = this.#plucks();
    const isWhole = take.source === 'recording' && activity.kind === 'idle' && plucks.length > 0;
    if (plucks.length < ENOUGH_PLUCKS && !isWhole) return;
    const heard: Take = soundsOf({ ...take, plucks }, understood.setup);
    if (nextPosition(this.session) === 'first') {
      this.session = { first: heard };
      if (take.source === 'microphone') void this.#listen();
      else void this.workbench.effects.endErrand();
      return;
    }
    this.session = { ...this.session, second: heard };
    this.outcome = outcomeOf(this.session);
    void this.workbench.effects.endErrand();
  }

  /** What both lengths would give, reckoned before anything is plucked. */
  #ask(): void {
    const { understood } = this.#state.value;
    const [first, second] = [this.#lengthM(this.first), this.#lengthM(this.second)];
    const read = this.session.first && answerOf(this.session.first).reading?.forceN?.value;
    const forceN = read === undefined ? understood.setup.targetForceN : { lowN: read, highN: read };
    const { belt } = understood.setup;
    const asked =
      first.ok && belt && forceN
        ? {
            question: { setup: understood.setup, forceN, lowestHz: LOWEST_HEARD_HZ },
            firstM: first.value,
            secondM: second.ok ? second.value : undefined,
            reach: USUAL_REACH,
          }
        : undefined;
    const key = asked ? JSON.stringify([asked.firstM, asked.secondM, forceN, belt]) : '';
    if (key === this.#askedKey) return;
    this.#askedKey = key;
    clearTimeout(this.#resting);
    this.#asking?.abort();
    this.planned = undefined;
    if (!asked) return;
    const asking = new AbortController();
    this.#asking = asking;
    this.#resting = setTimeout(async () => {
      const planned = await this.workbench.effects.planner.second(asked, { signal: asking.signal }).catch(() => undefined);
      if (asking.signal.aborted) return;
      this.planned = planned;
      if (planned && this.second === '') this.second = this.#figures.typed(Math.round(planned.secondM * 1000));
    }, REST_MS);
  }

  override render() {
    return html`<place-layout .label=${words.title}>
      <div slot="rail" class="fields">
        <h2>${words.title}</h2>
        <p class="note">${words.lead}</p>
        ${this.#field('first', words.first)} ${this.#field('second', words.second)}
        <p class="note" role="status">${this.#gain()}</p>
      </div>
      ${this.#sheet()}
    </place-layout>`;
  }

  #field(id: 'first' | 'second', label: string) {
    const parsed = this.#lengthM(this[id]);
    const fault = parsed.ok || parsed.why === 'empty' ? '' : faultText(parsed);
    return html`<div>
      <label for=${id}>${label}</label>
      ${quantityInput({ id, value: this[id], unit: 'mm', unreadable: fault !== '', describedBy: fault ? `${id}-note` : undefined, onTyped: (text) => this.#typed(id, text) })}
      ${fault ? html`<p class="note" id=${`${id}-note`}>${fault}</p>` : nothing}
    </div>`;
  }

  /** Another length makes what was heard there void. */
  #typed(id: 'first' | 'second', text: string): void {
    if (text === this[id]) return;
    this[id] = text;
    if (id === 'first') this.session = {};
    else this.session = { first: this.session.first };
    this.outcome = undefined;
    if (this.#isListening) void this.workbench.effects.endErrand();
  }

  #gain(): string {
    const { planned } = this;
    if (!this.#state.value.understood.setup.belt || !this.#lengthM(this.first).ok) return words.needs;
    if (!planned) return this.#lengthM(this.second).ok ? '' : words.needs;
    const share = (value: number) => shareText(value, this.#figures);
    const gain = words.gain(share(planned.firstAlone), share(planned.secondAlone), share(planned.together));
    return pays(planned) ? gain : `${gain} ${words.noGain}`;
  }

  #sheet() {
    const { outcome } = this;
    const step = stepOf(this.session, { isListening: this.#isListening, fitting: this.#plucks().length });
    return html`<p class="over">${this.#over()}</p>
      <div role="status" aria-label=${words.title}>${outcome ? this.#verdict(outcome) : this.#instruction(step)}</div>
      ${this.#acts(step)} ${this.#ruler(outcome)}`;
  }

  #over(): string {
    const [first, second] = [this.#lengthM(this.first), this.#lengthM(this.second)];
    return first.ok && second.ok ? words.over(spanText(first.value, this.#figures), spanText(second.value, this.#figures)) : words.title;
  }

  #instruction(step: Step) {
    const [what, then] = this.#say(step);
    const { activity } = this.#state.value;
    const ear = activity.kind === 'listening' ? activity.ear : undefined;
    const count = this.#plucks().length;
    const expected = step === 'move' || step === 'second' ? this.#expectedHz() : undefined;
    return html`<h1 class="instruction">${what}</h1>
      <p class="then">${then}</p>
      <p class="state">
        ${ear === 'waiting' ? html`<span>${en.reading.waiting[0]}</span>` : ear === 'ringing' ? html`<span>${en.reading.ringing[0]}</span>` : nothing}
        ${this.#isListening ? html`<span>${words.count(count)}</span>` : nothing}
        ${expected === undefined ? nothing : html`<span>${words.expectHz(this.#figures.whole(expected, 'Hz'))}</span>`}
      </p>`;
  }

  #say(step: Step): readonly [string, string] {
    const [first, second] = [this.#lengthM(this.first), this.#lengthM(this.second)];
    const at = (length: ParsedQuantity) => (length.ok ? spanText(length.value, this.#figures) : '');
    const { notice } = this.#state.value;
    if (this.#isOurs && notice?.kind === 'capture-failure') return pair(en.failures[notice.failure.why]);
    switch (step) {
      case 'first':
        return words.steps.first(at(first));
      case 'move':
        return words.steps.move(at(second));
      case 'second':
        return words.steps.second(at(second));
      case 'done':
        return pair(words.steps.done);
      default:
        return this.session.first ? words.steps.move(at(second)) : pair(words.steps.start);
    }
  }

  #verdict(outcome: TwoPositions) {
    const figures = this.#figures;
    if (outcome.kind === 'not-two') {
      const [what, then] = words.notTwo[outcome.why];
      return html`<h1 class="instruction">${what}</h1><p class="then">${then}</p>`;
    }
    const { low, high } = outcome.ratio;
    const ratio = `${formatNumber(low, { decimals: 2, format: figures.format })}–${formatNumber(high, { decimals: 2, format: figures.format })}`;
    if (outcome.kind === 'not-one-force') {
      return html`<h1 class="instruction">${words.refused}</h1><p class="then">${words.refusedUnder(ratio)}</p>`;
    }
    const { forceN, grade, reasons, alone } = outcome;
    const figure = figures.force(forceN);
    const alonText = alone[0].forceN && figures.force(alone[0].forceN);
    return html`<h1 class="instruction figure">
        <span>${figure ? `${figure.value}\u00a0N` : ''}</span> <small>${figure ? `±\u00a0${figure.doubt}\u00a0N` : ''}</small>
      </h1>
      <p class="then"><grade-mark .grade=${grade} .word=${plannerEn.grades[grade]} size="large"></grade-mark></p>
      <p>${words.combinedUnder(ratio)} ${alonText ? words.sureAs(together(alonText, 'N')) : ''}</p>
      ${reasons.length > 0 ? html`<ul class="verdict">${reasons.map((reason) => html`<li>${reasonSentence(reason, figures.format)} ${reasonRemedy(reason, figures.format)}</li>`)}</ul>` : nothing}`;
  }

  #acts(step: Step) {
    const ready = this.#lengthM(this.first).ok && this.#lengthM(this.second).ok && this.#state.value.understood.setup.belt !== undefined;
    const main = this.#isListening
      ? html`<button class="main" @click=${() => this.workbench.effects.stop()}>${words.stop}</button>`
      : step === 'done'
        ? html`<a class="button main solid" href=${hrefOf('listen')}>${words.back}</a>`
        : html`<button class="main solid" ?disabled=${!ready} @click=${this.#listen}>${words.listen}</button>`;
    const started = this.session.first !== undefined;
    return html`<div class="acts">
      ${main}
      ${ready && step !== 'done' && !this.#isListening ? this.#fileButton() : nothing}
      ${started ? html`<button class="quiet" @click=${this.#startOver}>${words.startOver}</button>` : nothing}
      ${step === 'done' ? nothing : html`<a class="button quiet" href=${hrefOf('listen')}>${words.back}</a>`}
    </div>`;
  }

  #fileButton() {
    return html`<label class="button quiet file">${en.sources.open}<input type="file" accept="audio/*" aria-label=${en.sources.open} @change=${this.#opened} /></label>`;
  }

  #ruler(outcome: TwoPositions | undefined) {
    const target = this.#state.value.understood.setup.targetForceN;
    const heard =
      outcome && 'alone' in outcome ? outcome.alone : [this.session.first].flatMap((take) => (take ? [answerOf(take).reading] : []));
    const plucks = heard.flatMap((reading, i): RulerInterval[] => {
      const force = reading?.forceN;
      return force
        ? [{ lowN: force.low, highN: force.high, valueN: force.value, label: words.names[i]!, shortLabel: words.names[i]! }]
        : [];
    });
    if (plucks.length === 0) return nothing;
    const combined = outcome?.kind === 'combined' ? outcome.forceN : undefined;
    const sentence = plucks.map(
      ({ label, lowN, highN }) => `${label}: ${this.#figures.bounds({ value: 0, low: lowN, high: highN })}\u00a0N.`,
    );
    const together = combined ? `${words.names[2]}: ${this.#figures.bounds(combined)}\u00a0N.` : '';
    return html`<force-ruler
      .target=${target}
      .targetLabel=${target ? en.ruler.target(this.#figures.forceRange(target)) : ''}
      .targetShortLabel=${en.ruler.targetShort}
      .plucks=${plucks}
      .reading=${combined && { lowN: combined.low, highN: combined.high, valueN: combined.value, label: words.names[2]! }}
      .label=${[words.plot, ...sentence, together].join(' ')}
      .locale=${this.#figures.locale}
    ></force-ruler>`;
  }

  /** The setup of Listen with the length of the position that comes next. */
  get #enteredNext() {
    const text = nextPosition(this.session) === 'first' ? this.first : this.second;
    return { ...this.#setupBefore, spanLength: text };
  }

  readonly #listen = async (): Promise<void> => {
    this.#changing = true;
    await this.workbench.effects.listenFor(OWNER, this.#enteredNext);
    this.#changing = false;
  };

  readonly #opened = (event: Event): void => {
    const input = event.currentTarget as HTMLInputElement;
    const [file] = input.files ?? [];
    input.value = '';
    if (file) void this.workbench.effects.openRecordingFor(OWNER, this.#enteredNext, file);
  };

  readonly #startOver = (): void => {
    this.session = {};
    this.outcome = undefined;
    void this.workbench.effects.endErrand();
  };
}

const pair = ([what = '', then = '']: readonly string[]): readonly [string, string] => [what, then];

declare global {
  interface HTMLElementTagNameMap {
    'two-screen': TwoScreen;
  }
}
