/** Do two belts match? Plucked in turn, A, B, A, B, so that a drift of both cancels; it stops as soon as yes or no is certain. */

import { consume } from '@lit/context';
import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { beltToMove } from '../../../core/machine/pair-test.ts';
import { formatNumber, formatPercent } from '../../../core/quantity.ts';
import { adjustEn } from '../../../words/adjust-en.ts';
import { en } from '../../../words/en.ts';
import { matchEn as words } from '../../../words/match-en.ts';
import { Figures } from '../../format.ts';
import { isTyping } from '../../listen-keys.ts';
import '../../parts/grade-mark.ts';
import '../../parts/group-ruler.ts';
import '../../parts/letter-tile.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type AdjustGroupState, adjustGroup } from '../../state/adjust-group.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { MatchChecking } from '../../state/match-checking.ts';
import { busyView, noticeView } from '../reading-states.ts';
import { adjustScreenStyles } from './adjust-screen-styles.ts';
import { beltItem } from './belt-item.ts';
import { beltRow } from './belt-rows.ts';
import { differenceText } from './learned-view.ts';
import { missingPage } from './missing-page.ts';

/** 95 % of a normal distribution, half width in standard deviations. */
const HALF_SD = 1.959964;

@customElement('match-screen')
export class MatchScreen extends LitElement {
  static override styles = [shared, adjustScreenStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property() machineId = '';
  @property() groupId = '';

  readonly #figures = new Figures();
  readonly #document = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document, keeping }) => (keeping.isOpen ? document : undefined),
  );
  #checking: MatchChecking | undefined;
  #found: AdjustGroupState | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.#key);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('keydown', this.#key);
    this.#leave();
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('machineId') || changed.has('groupId')) this.#leave();
    const document = this.#document.value;
    if (this.#checking || document === undefined) return;
    this.#found = adjustGroup(document, this.machineId, this.groupId);
    if (this.#found.kind !== 'ready' || this.#found.members.length < 2) return;
    this.#checking = new MatchChecking({ workbench: this.workbench, group: this.#found });
    this.#checking.connect();
    this.#checking.addEventListener('change', this.#changed);
  }

  override render() {
    const checking = this.#checking;
    if (checking === undefined) return missingPage(this.#document.value === undefined ? undefined : this.#found);
    const { machine, members, id } = checking.group;
    const names = members.map(({ belt }) => belt.name);
    return html`<main>
      <header>
        <h1>${words.title(machine.name)}</h1>
        <span class="over">${adjustEn.over(names, checking.group.group?.crossed ?? false)}</span>
        <button ?disabled=${checking.plucks.length === 0} @click=${() => checking.undo()} title=${en.listen.keyHint('U')} aria-keyshortcuts="U">${adjustEn.undo}</button>
        <a class="button" href=${hrefOf('machines', machine.id)}>${adjustEn.leave}</a>
      </header>
      <div class="sheet">
        ${this.#next(checking, names, hrefOf('machines', machine.id, 'adjust', id))}
        <div class="block">${this.#belts(checking, names)}</div>
        <div class="block">${this.#ruler(checking, names)}</div>
        <div class="wide-line"></div>
        <section class="block learned whole" aria-labelledby="ratio">${this.#ratio(checking, names)}</section>
      </div>
    </main>`;
  }

  #next(checking: MatchChecking, names: readonly string[], adjustHref: string) {
    const state = this.workbench.store.state;
    const listening = checking.isListening;
    const obstacle = state.errand?.owner === checking.owner ? (noticeView(state) ?? busyView(state)) : undefined;
    const { verdict } = checking.check.test;
    const [heavy, light] = obstacle?.large.kind === 'sentence' ? [obstacle.large.text, ''] : this.#say(checking, names, listening);
    const after = obstacle ? obstacle.lead : this.#after(checking, names);
    const open = verdict === 'more';
    return html`<section class="next">
      <div role="status" aria-label=${en.reading.name}>
        <p class=${open ? 'say' : 'say done'}><b>${heavy}</b><span>${light}</span></p>
        <p class="after">${after}</p>
      </div>
      <div class="acts">
        ${
          listening
            ? html`<button @click=${() => checking.stop()} title=${en.listen.keyHint('L')} aria-keyshortcuts="L">${adjustEn.stop}</button>`
            : html`<button class=${verdict === 'not-matched' ? 'listen' : 'listen solid'} @click=${() => checking.listen()} title=${en.listen.keyHint('L')} aria-keyshortcuts="L">${adjustEn.listen}</button>`
        }
        ${this.#mixUp(checking, names)}
        ${verdict === 'not-matched' ? html`<a class=${listening ? 'button' : 'button solid'} href=${adjustHref}>${words.adjust}</a>` : nothing}
        ${checking.plucks.length > 0 ? html`<button class="quiet" @click=${() => checking.startAnew()}>${adjustEn.startAnew}</button>` : nothing}
      </div>
      ${checking.plucks.length === 0 ? html`<p class="note care">${adjustEn.care}</p>` : nothing}
    </section>`;
  }

  #say({ check, plucks }: MatchChecking, [a = '', b = '']: readonly string[], listening: boolean): readonly string[] {
    if (!listening && plucks.length === 0) return [adjustEn.say.ready, ''];
    switch (check.test.verdict) {
      case 'more':
        return adjustEn.say.pluckOne(check.test.next === 0 ? a : b);
      case 'matched':
        return words.matched(a, b);
      case 'not-matched':
        return words.notMatched(a, b);
      case 'cannot-tell':
        return words.cannotTell;
    }
  }

  #after({ check, plucks, group }: MatchChecking, names: readonly string[]): string {
    const { verdict } = check.test;
    if (verdict === 'more') return words.inTurn;
    if (verdict === 'cannot-tell') return group.plan.likeness === 'two-rolls' ? adjustEn.after.stuckRolls : words.cannotTellWhy;
    const certain = words.after(plucks.length);
    if (verdict === 'matched') return certain;
    const [a, b] = check.readings.map((reading) => reading?.forceN?.value);
    if (a === undefined || b === undefined) return certain;
    const belt = beltToMove([a, b], group.plan.targetForceN);
    return `${certain} ${belt === undefined ? words.moveBoth : words.move(names[belt] ?? '')}`;
  }

  #mixUp(checking: MatchChecking, names: readonly string[]) {
    const last = checking.plucks.at(-1);
    return last
      ? html`<button @click=${() => checking.swapLast()}>${adjustEn.thatWas(names[last.belt === 0 ? 1 : 0] ?? '')}</button>`
      : nothing;
  }

  #rows({ check, group }: MatchChecking, names: readonly string[]) {
    return ([0, 1] as const).map((belt) => {
      const reading = check.readings[belt];
      const name = names[belt] ?? '';
      return reading
        ? beltRow(name, reading, { target: group.plan.targetForceN, figures: this.#figures })
        : { name, says: adjustEn.reading.none };
    });
  }

  #belts(checking: MatchChecking, names: readonly string[]) {
    const { verdict, next } = checking.check.test;
    return html`<ul class="belts">${this.#rows(checking, names).map((row, i) => beltItem(row, { look: i, asked: verdict === 'more' && next === i }))}</ul>`;
  }

  #ruler(checking: MatchChecking, names: readonly string[]) {
    const { targetForceN } = checking.group.plan;
    const range = this.#figures.forceRange(targetForceN);
    const lanes = checking.check.readings.map((reading, i) => {
      const forceN = reading?.forceN;
      return { name: names[i] ?? '', found: forceN && { valueN: forceN.value, lowN: forceN.low, highN: forceN.high } };
    });
    const said = this.#rows(checking, names).map((row) =>
      adjustEn.ruler.belt(row.name, 'figure' in row && row.figure ? `${row.figure.value} N ± ${row.figure.doubt} N` : row.says),
    );
    return html`<group-ruler
      .target=${targetForceN}
      .targetLabel=${adjustEn.ruler.target(range)}
      .targetShortLabel=${adjustEn.ruler.targetShort}
      .lanes=${lanes}
      .label=${adjustEn.ruler.label(range, said)}
      .locale=${this.#figures.locale}
    ></group-ruler>`;
  }

  #ratio({ check, group }: MatchChecking, [a = '', b = '']: readonly string[]) {
    const { ratio } = check.test;
    const { format } = this.#figures;
    const print = (value: number): string => formatNumber(value, { decimals: 3, format });
    const percent = (relativeU: number): string => formatPercent(HALF_SD * relativeU, { format });
    const { plan } = group;
    return html`<h2 id="ratio">${words.ratio}</h2>
      <p class="headline">${ratio ? differenceText({ a, b, value: ratio.value - 1, standardUncertainty: ratio.value * ratio.relativeU }, this.#figures) : adjustEn.match.open}</p>
      ${ratio ? html`<p>${words.ratioIs(a, b, print(ratio.value), print(ratio.low), print(ratio.high))}</p>` : nothing}
      <p>${adjustEn.match.wanted(formatPercent(plan.matchRelative ?? 0, { format }))} ${adjustEn.match.why[plan.likeness]}</p>
      ${ratio?.onEqualSpansRelativeU === undefined ? nothing : html`<p>${words.lengths(percent(ratio.relativeU), percent(ratio.onEqualSpansRelativeU))}</p>`}`;
  }

  #leave(): void {
    this.#checking?.removeEventListener('change', this.#changed);
    this.#checking?.disconnect();
    this.#checking = undefined;
  }

  readonly #changed = (): void => this.requestUpdate();

  readonly #key = (event: KeyboardEvent): void => {
    const checking = this.#checking;
    if (!checking || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.repeat || isTyping(event)) return;
    switch (event.key.toLowerCase()) {
      case 'l':
        if (checking.isListening) checking.stop();
        else checking.listen();
        break;
      case 'u':
        checking.undo();
        break;
      case 'escape':
        location.hash = hrefOf('machines', this.machineId);
        break;
    }
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'match-screen': MatchScreen;
  }
}
