/** A store in memory, for tests of what stands in front of it. `failure` makes it fail. */

import { EMPTY_DOCUMENT, type KeptDocument } from '../../shared/document.ts';
import type { DocumentArchive, KeepingFailure, OpenedDocument, RecordingArchive } from '../../src/ports.ts';

export class MemoryArchive implements DocumentArchive {
  document: KeptDocument;
  failure: KeepingFailure | undefined;
  persistAsked = 0;
  readonly #listeners = new Set<(news: OpenedDocument | KeepingFailure) => void>();

  constructor(document: KeptDocument = EMPTY_DOCUMENT) {
    this.document = document;
  }

  readonly open = async () => this.failure ?? this.#opened();

  readonly change = async (change: (document: KeptDocument) => KeptDocument) => {
    if (this.failure) return this.failure;
    this.document = change(this.document);
    return this.#opened();
  };

  readonly onNews = (listener: (news: OpenedDocument | KeepingFailure) => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly space = async () => ({ isPersistent: false });

  readonly askToPersist = async () => {
    this.persistAsked += 1;
    return false;
  };

  /** As if another tab had changed it. */
  elsewhere(document: KeptDocument): void {
    this.document = document;
    for (const listener of this.#listeners) listener(this.#opened());
  }

  readonly #opened = (): OpenedDocument => ({ kind: 'opened', document: this.document, damaged: [] });
}

/** No sounds are kept. */
export class NoRecordings implements RecordingArchive {
  readonly isOn = false;
  readonly setOn = () => {};
  readonly keep = async () => true;
  readonly list = async () => [];
  readonly clips = async () => [];
  readonly drop = async () => {};
}
