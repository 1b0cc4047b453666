/**
 * What a person keeps, in the page: to be read, changed by pure functions, and followed. A change counts as kept only once the store says so;
 * where it cannot be kept the page goes on with it, says so, and tries again with the next change or when asked.
 */

import { EMPTY_DOCUMENT, type KeptDocument, VERSIONED_SECTIONS } from '../../../shared/document.ts';
import { type Item as ItemVersion, withAncestry } from '../../core/logbook/versions.ts';
import type { DamagedItem, DocumentArchive, KeepingFailure, OpenedDocument } from '../../ports.ts';
import { nowAt } from './new-item.ts';

export type DocumentChange = (document: KeptDocument) => KeptDocument;

export interface Keeping {
  /** Until it is opened, the document is empty and nobody knows yet. */
  readonly isOpen: boolean;
  /** Why what was changed last is not on the disk, or what stands in the way of the next change. */
  readonly failure?: KeepingFailure | undefined;
  /** Changes that are in the page only. */
  readonly unkept: number;
  readonly damaged: readonly DamagedItem[];
}

/** What follows from a change within the same change, such as answers that are computed again. */
export type Following = (before: KeptDocument, after: KeptDocument, now: string) => KeptDocument;

export interface KeptOptions {
  readonly archive: DocumentArchive;
  readonly now?: (() => string) | undefined;
  readonly follow?: Following | undefined;
}

export class Kept extends EventTarget {
  readonly #archive: DocumentArchive;
  readonly #now: () => string;
  readonly #follow: Following;
  #document: KeptDocument = EMPTY_DOCUMENT;
  #keeping: Keeping = { isOpen: false, unkept: 0, damaged: [] };
  #unkept: readonly DocumentChange[] = [];
  #askedToPersist = false;
  readonly opened: Promise<void>;

  constructor({ archive, now = nowAt, follow = (_, after) => after }: KeptOptions) {
    super();
    this.#follow = follow;
    this.#archive = archive;
    this.#now = now;
    archive.onNews((news) => this.#take(news));
    this.opened = archive.open().then((news) => this.#take(news));
  }

  get document(): KeptDocument {
    return this.#document;
  }

  get keeping(): Keeping {
    return this.#keeping;
  }

  get archive(): DocumentArchive {
    return this.#archive;
  }

  /**
   * Changes what is kept. The function may be called more than once, so that ids are made before it, and sees what other tabs have written; items that it changes get the time
   * of the change and the version that they were made from.
   *
   * @param options.asTheyAre  items come from elsewhere with times and versions of their own
   * @returns whether it is on the disk
   */
  async change(change: DocumentChange, { asTheyAre = false }: { readonly asTheyAre?: boolean | undefined } = {}): Promise<boolean> {
    const now = this.#now();
    const whole: DocumentChange = asTheyAre ? change : (document) => stamped(document, this.#follow(document, change(document), now), now);
    const waiting = this.#unkept;
    const all = [...waiting, whole];
    const news = await this.#archive.change((document) => all.reduce((after, each) => each(after), document)).catch(notKept);
    if (news.kind === 'opened') {
      this.#unkept = this.#unkept.filter((each) => !waiting.includes(each));
      this.#take(news);
      this.#persist();
      return true;
    }
    if (news.why === 'not-fitting') {
      this.#show(this.#document, { ...this.#keeping, failure: news });
      return false;
    }
    this.#unkept = [...this.#unkept, whole];
    this.#show(whole(this.#document), { ...this.#keeping, failure: news });
    return false;
  }

  /** Once more, where something could not be kept. */
  retry(): Promise<boolean> {
    return this.change((document) => document);
  }

  #take(news: OpenedDocument | KeepingFailure): void {
    if (news.kind === 'keeping-failure') {
      this.#show(this.#document, { ...this.#keeping, failure: news });
      return;
    }
    const document = this.#unkept.reduce((after, each) => each(after), news.document);
    this.#show(document, {
      isOpen: true,
      failure: this.#unkept.length > 0 ? this.#keeping.failure : undefined,
      unkept: 0,
      damaged: news.damaged,
    });
  }

  #show(document: KeptDocument, keeping: Keeping): void {
    this.#document = document;
    this.#keeping = { ...keeping, unkept: this.#unkept.length };
    this.dispatchEvent(new Event('change'));
  }

  /** There is something worth it now. Browsers answer by their own rules; Settings shows what came of it. */
  #persist(): void {
    if (this.#askedToPersist) return;
    this.#askedToPersist = true;
    void this.#archive.askToPersist();
  }
}

/** A change that makes something which cannot be kept is left out: it would stand in the way of all that come after it. */
const notKept = (fault: unknown): KeepingFailure => ({
  kind: 'keeping-failure',
  why: 'not-fitting',
  detail: fault instanceof Error ? fault.message : String(fault),
});

/** Each item that was changed gets the time, unless it brought a new one, and the version that it was made from. */
function stamped(before: KeptDocument, after: KeptDocument, now: string): KeptDocument {
  const sections = VERSIONED_SECTIONS.filter((name) => before[name] !== after[name]).map((name) => {
    const old = new Map<string, { readonly changedAt: string }>(before[name].map((item) => [item.id, item]));
    const timed = after[name].map((item): ItemVersion => {
      const was = old.get(item.id);
      return was && was !== item && was.changedAt === item.changedAt ? { ...item, changedAt: now } : item;
    });
    return [name, withAncestry<ItemVersion>(before[name], timed)];
  });
  return { ...after, ...Object.fromEntries(sections) };
}
