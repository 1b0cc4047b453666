/** The root: the frame with its places, keys, dropped files, and the workbench that every screen shares. */

import { provide } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { en } from '../words/en.ts';
import { placesEn } from '../words/places-en.ts';
import './screens/caution-dialog.ts';
import type { CautionDialog } from './screens/caution-dialog.ts';
import './screens/keeping-notice.ts';
import './screens/listen-screen.ts';
import './screens/listening-elsewhere.ts';
import './screens/menu-dialog.ts';
import './screens/update-notice.ts';
import { appStyles } from './app-styles.ts';
import { listenKey } from './listen-keys.ts';
import { Narrow } from './narrow.ts';
import { PageLoader } from './page-loader.ts';
import './parts/place-bar.ts';
import { PLACE_ICONS } from './place-icons.ts';
import { places, type Shown, shownAt } from './places.ts';
import { CurrentRoute, hrefOf } from './route.ts';
import type { MenuDialog } from './screens/menu-dialog.ts';
import { shared } from './shared-styles.ts';
import { type Workbench, workbenchContext } from './state/context.ts';

@customElement('spanwright-app')
export class SpanwrightApp extends LitElement {
  static override styles = [shared, appStyles];

  @provide({ context: workbenchContext }) workbench!: Workbench;
  @query('caution-dialog') cautionDialog!: CautionDialog;
  @query('menu-dialog') menuDialog!: MenuDialog | null;
  @state() dropping = false;
  readonly #narrow = new Narrow(this);
  readonly #loader = new PageLoader(this);
  readonly #route = new CurrentRoute(this, () => this.#arrived());

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

  override willUpdate(): void {
    document.title = placesEn.title(placesEn.names[this.#shown.place.id]);
  }

  override render() {
    const shown = this.#shown;
    if (shown.page.whole) return html`${this.#page(shown)}${this.#dialogs()}`;
    return html`
      <header>
        <span class="brand">${mark} ${en.productName}</span>
        ${this.#narrow.matches ? nothing : this.#bar(shown)}
        <listening-elsewhere class="elsewhere" ?hidden=${shown.place.id === 'listen'}></listening-elsewhere>
        ${
          this.#narrow.matches
            ? html`<button class="aside" aria-haspopup="dialog" @click=${this.#menu}>${placesEn.menu}</button>`
            : html`<button class="aside" @click=${this.#cautions}>${en.cautionsLink}</button>
                <a class="aside button" href=${hrefOf('settings')} aria-current=${shown.place.id === 'settings' ? 'page' : nothing}>${placesEn.names.settings}</a>`
        }
      </header>
      <keeping-notice></keeping-notice>
      <update-notice></update-notice>
      ${this.#page(shown)} ${this.#narrow.matches ? this.#bar(shown) : nothing} ${this.#dialogs()}
    `;
  }

  get #shown(): Shown {
    return shownAt(this.#route.value);
  }

  #bar({ place }: Shown) {
    const links = places
      .filter(({ aside }) => !aside)
      .map(({ id }) => ({ id, name: placesEn.names[id], href: hrefOf(id), icon: PLACE_ICONS[id] }));
    return html`<place-bar .label=${placesEn.navigation} .places=${links} .current=${place.id} ?thumb=${this.#narrow.matches}></place-bar>`;
  }

  #page({ page, params }: Shown) {
    const { query } = this.#route.value;
    switch (this.#loader.stateOf(page)) {
      case 'ready':
        return html`<div class="page" @cautions-wanted=${this.#cautions}>${page.draw(params, query)}</div>`;
      case 'failed':
        return html`<main class="not-opened" role="alert">
          <h1>${placesEn.notOpened[0]}</h1>
          <p>${placesEn.notOpened[1]}</p>
          <button class="solid" @click=${() => location.reload()}>${placesEn.reload}</button>
        </main>`;
      default:
        return html`<main class="page" aria-busy="true"></main>`;
    }
  }

  #dialogs() {
    return html`<caution-dialog></caution-dialog>
      <menu-dialog>
        <a class="button" href=${hrefOf('listen', 'far')}>${placesEn.far.open}</a>
        <button @click=${this.#cautions}>${en.cautionsLink}</button>
        <a class="button" href=${hrefOf('settings')}>${placesEn.names.settings}</a>
      </menu-dialog>
      ${this.dropping ? html`<div class="drop">${en.sources.drop}</div>` : nothing}`;
  }

  /** A place is read from its top, and by its own heading. */
  #arrived(): void {
    this.menuDialog?.close();
    this.#loader.forgetFailures();
    window.scrollTo({ top: 0, behavior: 'instant' });
  }

  readonly #menu = () => this.menuDialog?.show();

  readonly #cautions = () => {
    this.menuDialog?.close();
    this.cautionDialog.show();
  };

  readonly #key = (event: KeyboardEvent) => {
    if (this.#shown.place.id === 'listen') listenKey(event, this.workbench, this.#route.value);
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
    location.hash = hrefOf('listen');
    void this.workbench.effects.openRecording(file);
  };
}

const mark = html`<svg viewBox="0 0 24 16" width="24" height="16" aria-hidden="true">
  <path d="M1.5,1 V15 M22.5,1 V15 M4,8 H20 M8,4 L4,8 L8,12 M16,4 L20,8 L16,12" fill="none" stroke="currentColor" stroke-width="2" />
</svg>`;

declare global {
  interface HTMLElementTagNameMap {
    'spanwright-app': SpanwrightApp;
  }
}
