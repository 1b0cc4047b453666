/** Adjusting a pair or a group: one Listen, then hands free until done. The screen asks for a belt or a turn, and takes the next plucks as the answer. */

import { consume } from '@lit/context';
import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, queryAll, state } from 'lit/decorators.js';
import type { LiveMoment } from '../../../ports.ts';
import { adjustEn as words } from '../../../words/adjust-en.ts';
import { en } from '../../../words/en.ts';
import { Figures } from '../../format.ts';
import { isTyping } from '../../listen-keys.ts';
import { Narrow } from '../../narrow.ts';
import '../../parts/grade-mark.ts';
import '../../parts/group-ruler.ts';
import '../../parts/letter-tile.ts';
import '../../parts/level-meter.ts';
import type { LevelMeter } from '../../parts/level-meter.ts';
import '../../parts/step-path.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { Speech } from '../../speech.ts';
import { type AdjustGroupState, adjustGroup } from '../../state/adjust-group.ts';
import { Adjusting } from '../../state/adjusting.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { busyView, noticeView } from '../reading-states.ts';
import { adjustScreenStyles } from './adjust-screen-styles.ts';
import { beltItem } from './belt-item.ts';
import { beltRows, pathView, rulerLanes } from './belt-rows.ts';
import { matchView, screwLines, screwTitle } from './learned-view.ts';
import { missingPage } from './missing-page.ts';
import { amountText, type NextStepView, nextStepView } from './next-step-view.ts';

@customElement('adjust-screen')
export class AdjustScreen extends LitElement {
  static override styles = [shared, adjustScreenStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property() machineId = '';
  @property() groupId = '';
  @property({ type: Boolean, reflect: true }) far = false;
  @state() speaks = false;
  @state() isSpeaking = false;
  @queryAll('level-meter') meters!: NodeListOf<LevelMeter>;

  readonly #figures = new Figures();
  readonly #narrow = new Narrow(this);
  readonly #document = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document, keeping }) => (keeping.isOpen ? document : undefined),
  );
  readonly #speech = new Speech({
    lang: 'en',
    onSpeaking: (isSpeaking) => {
      this.isSpeaking = isSpeaking;
      if (this.#adjusting) this.#adjusting.isSpeaking = isSpeaking;
    },
  });
  #adjusting: Adjusting | undefined;
  #found: AdjustGroupState | undefined;
  #said = '';
  #unfollow: (() => void) | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.#key);
    this.#unfollow = this.workbench.live.follow((moment) => this.#show(moment));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('keydown', this.#key);
    this.#unfollow?.();
    this.#speech.quiet();
    this.#leave();
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('machineId') || changed.has('groupId')) this.#leave();
    const document = this.#document.value;
    if (this.#adjusting || document === undefined) return;
    this.#found = adjustGroup(document, this.machineId, this.groupId);
    if (this.#found.kind !== 'ready') return;
    const { workbench } = this;
    this.#adjusting = new Adjusting({
      workbench,
      group: this.#found,
      words: {
        moved: (group, advice) => {
          const amount = amountText(group, advice, this.#figures.format);
          const tightens = (advice.kind === 'turn' ? advice.turns : advice.way) > 0;
          return words.moved(
            group.members[advice.belt]!.belt.name,
            [tightens ? words.tightened : words.loosened, amount].filter(Boolean).join(' '),
          );
        },
        begun: (group) => words.begun(group.members.map(({ belt }) => belt.name)),
      },
    });
    this.#adjusting.connect();
    this.#adjusting.addEventListener('change', this.#changed);
  }

  override render() {
    const adjusting = this.#adjusting;
    if (adjusting === undefined) return missingPage(this.#document.value === undefined ? undefined : this.#found);
    const listening = adjusting.isListening;
    const view = nextStepView(adjusting, { listening, format: this.#figures.format });
    return html`<main>
      ${this.#header(adjusting, view)}
      <div class="sheet">
        ${this.#next(adjusting, view)}
        <div class="block">${this.#belts(adjusting, view)}</div>
        ${
          this.far
            ? nothing
            : html`<div class="block">${this.#ruler(adjusting)}</div>
              <div class="wide-line"></div>
              <section class="block way" aria-labelledby="way">${this.#way(adjusting)}</section>
              <div class="block learned matters">${this.#learned(adjusting)}</div>`
        }
      </div>
      <div class="foot">
        ${this.#narrow.matches ? html`<div>${this.#ear(adjusting, view)}</div><button ?disabled=${adjusting.steps.length === 0} @click=${() => adjusting.undo()}>${words.undo}</button>` : nothing}
      </div>
    </main>`;
  }

  override updated(): void {
    const adjusting = this.#adjusting;
    if (!adjusting?.isListening) return;
    const { spoken } = nextStepView(adjusting, { listening: true, format: this.#figures.format });
    if (spoken === this.#said) return;
    this.#said = spoken;
    this.#speech.say(spoken);
  }

  #header(adjusting: Adjusting, view: NextStepView) {
    const { machine, members, group } = adjusting.group;
    const narrow = this.#narrow.matches;
    const speak = this.speaks ? (narrow ? words.speakOnShort : words.speakOn) : narrow ? words.speakOffShort : words.speakOff;
    return html`<header>
      <h1>${words.title(machine.name)}</h1>
      <span class="over">${words.over(
        members.map(({ belt }) => belt.name),
        group?.crossed ?? false,
      )}</span>
      ${narrow ? nothing : html`<div class="ear">${this.#ear(adjusting, view)}</div>`}
      <button class="undo" ?disabled=${adjusting.steps.length === 0} @click=${() => adjusting.undo()} title=${en.listen.keyHint('U')} aria-keyshortcuts="U">${words.undo}</button>
      ${Speech.isSupported ? html`<button aria-pressed=${this.speaks} @click=${this.#toggleSpeech}>${speak}</button>` : nothing}
      <a class="button" href=${hrefOf('machines', machine.id)}>${words.leave}</a>
    </header>`;
  }

  #ear(adjusting: Adjusting, view: NextStepView) {
    const { activity } = this.workbench.store.state;
    const listening = adjusting.isListening;
    const name = view.belt === undefined ? undefined : adjusting.group.members[view.belt]?.belt.name;
    const heading = !listening
      ? words.paused
      : this.isSpeaking
        ? words.speaking
        : activity.kind === 'listening' && activity.ear === 'waiting'
          ? words.hearingRoom
          : name
            ? words.listeningTo(name)
            : words.listening;
    const meter = html`<level-meter compact .label=${en.listen.level} .valueText=${en.listen.silence} .locale=${this.#figures.locale} ?hidden=${!listening}></level-meter>`;
    const said = html`<div class="words"><strong>${heading}</strong>${view.count && listening ? html`<span>${view.count}</span>` : nothing}</div>`;
    return this.#narrow.matches ? html`${said}${meter}` : html`${meter}${said}`;
  }

  #next(adjusting: Adjusting, view: NextStepView) {
    const state = this.workbench.store.state;
    const own = state.errand?.owner === adjusting.owner;
    const obstacle = own ? (noticeView(state) ?? busyView(state)) : undefined;
    const [heavy, light] = view.say;
    const listening = adjusting.isListening;
    return html`<section class="next">
      <div role="status" aria-label=${en.reading.name}>
        ${
          obstacle?.large.kind === 'sentence'
            ? html`<p class="say"><b>${obstacle.large.text}</b></p><p class="after">${obstacle.lead}</p>`
            : html`<p class=${view.done ? 'say done' : 'say'}><b>${heavy}</b><span>${light}</span></p><p class="after">${view.after}</p>`
        }
      </div>
      <div class="acts">
        ${
          listening
            ? html`<button @click=${() => adjusting.stop()} title=${en.listen.keyHint('L')} aria-keyshortcuts="L">${words.stop}</button>`
            : html`<button class=${view.done ? 'listen' : 'listen solid'} @click=${() => adjusting.listen()} title=${en.listen.keyHint('L')} aria-keyshortcuts="L">${words.listen}</button>`
        }
        ${this.#mixUps(adjusting)}
        ${adjusting.steps.length > 0 ? html`<button class="quiet" @click=${() => adjusting.startAnew()}>${words.startAnew}</button>` : nothing}
        <button class="quiet" @click=${this.#toggleFar} title=${words.farHint('F')} aria-keyshortcuts="F">${this.far ? words.near : words.far}</button>
      </div>
      ${adjusting.steps.length === 0 ? html`<p class="note care">${words.care}</p>` : nothing}
    </section>`;
  }

  /** The last pluck was of another belt than was asked for. */
  #mixUps(adjusting: Adjusting) {
    const last = adjusting.steps.at(-1);
    if (last?.kind !== 'reading') return nothing;
    return adjusting.group.members.map(({ belt }, i) =>
      i === last.belt ? nothing : html`<button @click=${() => adjusting.give(i)}>${words.thatWas(belt.name)}</button>`,
    );
  }

  #belts(adjusting: Adjusting, view: NextStepView) {
    return html`<ul class="belts">${beltRows(adjusting, this.#figures).map((row, i) => beltItem(row, { look: i, asked: i === view.belt }))}</ul>`;
  }

  #ruler(adjusting: Adjusting) {
    const range = this.#figures.forceRange(adjusting.group.plan.targetForceN);
    const rows = beltRows(adjusting, this.#figures).map(({ name, figure, says }) =>
      words.ruler.belt(name, figure ? `${figure.value} N ± ${figure.doubt} N, ${says}` : says),
    );
    return html`<group-ruler
      .target=${adjusting.group.plan.targetForceN}
      .targetLabel=${words.ruler.target(range)}
      .targetShortLabel=${words.ruler.targetShort}
      .lanes=${rulerLanes(adjusting)}
      .label=${words.ruler.label(range, rows)}
      .locale=${this.#figures.locale}
    ></group-ruler>`;
  }

  #way(adjusting: Adjusting) {
    const path = pathView(adjusting, this.#figures);
    return html`<h2 id="way" ?hidden=${path === undefined}>${words.path.title}</h2>
      ${
        path
          ? html`<step-path
              .names=${adjusting.group.members.map(({ belt }) => belt.name)}
              .steps=${path.steps}
              .next=${path.next}
              .target=${adjusting.group.plan.targetForceN}
              .targetLabel=${words.path.target}
              .label=${words.path.label(path.steps.length - 1)}
              .table=${path.table}
              .locale=${this.#figures.locale}
            ></step-path>`
          : nothing
      }`;
  }

  #learned(adjusting: Adjusting) {
    const match = matchView(adjusting, this.#figures);
    const lines = screwLines(adjusting, this.#figures);
    return html`${
      match
        ? html`<section aria-labelledby="match"><h2 id="match">${words.match.title}</h2>
          <p class="headline">${match.headline}</p>
          ${match.lines.map((line) => (line ? html`<p>${line}</p>` : nothing))}</section>`
        : nothing
    }
    ${
      lines.length > 0
        ? html`<section aria-labelledby="screw"><h2 id="screw">${screwTitle(adjusting)}</h2>
          ${lines.map((line) => html`<p>${line}</p>`)}</section>`
        : nothing
    }`;
  }

  #leave(): void {
    this.#adjusting?.removeEventListener('change', this.#changed);
    this.#adjusting?.disconnect();
    this.#adjusting = undefined;
  }

  readonly #changed = (): void => this.requestUpdate();

  readonly #toggleSpeech = (): void => {
    this.speaks = !this.speaks;
    this.#speech.turn(this.speaks);
    this.#said = '';
  };

  readonly #toggleFar = (): void => {
    this.far = !this.far;
  };

  readonly #key = (event: KeyboardEvent): void => {
    const adjusting = this.#adjusting;
    if (!adjusting || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.repeat || isTyping(event)) return;
    switch (event.key.toLowerCase()) {
      case 'l':
        if (adjusting.isListening) adjusting.stop();
        else adjusting.listen();
        break;
      case 'u':
        adjusting.undo();
        break;
      case 'f':
        this.#toggleFar();
        break;
      case 'escape':
        if (this.far) this.far = false;
        else location.hash = hrefOf('machines', this.machineId);
        break;
    }
  };

  #show(moment: LiveMoment | undefined): void {
    if (!moment || !this.#adjusting?.isListening) return;
    for (const meter of this.meters) meter.showLevel(moment.peakDbfs, moment.roomDbfs, moment.clipped);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'adjust-screen': AdjustScreen;
  }
}
