/** Watches the blocks of an open microphone for what no event tells: a stream of zeros, a clock that stands, a recorder that is not called. */

import type { SoundBlock } from '../core/samples/block.ts';
import type { Troubles } from './troubles.ts';

/** A live microphone never gives the same number this long, a muted one gives nothing else. */
export const SILENT_AFTER_S = 2;

/** Longer than any hiccup of a busy machine; a browser that lost its sound device stands for good. */
export const STALLED_AFTER_S = 2;

export class SoundWatch {
  readonly #troubles: Troubles;
  readonly #sampleRateHz: number;
  #constantSamples = 0;
  #constant: number | undefined;
  #blockAtS: number;
  #clockS = -1;
  #clockMovedAtS: number;

  /** @param nowS  now, in seconds of any steady clock; `look` and `hear` are told the time of the same clock */
  constructor({ troubles, sampleRateHz, nowS }: { readonly troubles: Troubles; readonly sampleRateHz: number; readonly nowS: number }) {
    this.#troubles = troubles;
    this.#sampleRateHz = sampleRateHz;
    this.#blockAtS = nowS;
    this.#clockMovedAtS = nowS;
  }

  /** A block came in. */
  hear({ samples }: SoundBlock, nowS: number): void {
    this.#blockAtS = nowS;
    this.#clockMovedAtS = nowS;
    const first = samples[0];
    if (samples.every((sample) => sample === first)) {
      this.#constantSamples = first === this.#constant ? this.#constantSamples + samples.length : samples.length;
      this.#constant = first;
    } else {
      this.#constantSamples = 0;
    }
    this.#troubles.note('digital-silence', this.#constantSamples >= SILENT_AFTER_S * this.#sampleRateHz);
    this.#troubles.note('no-blocks', false);
    this.#troubles.note('clock-stalled', false);
  }

  /** To be called now and then: a clock that stands sends no blocks. */
  look({ isRunning, clockS, nowS }: { readonly isRunning: boolean; readonly clockS: number; readonly nowS: number }): void {
    const moved = clockS !== this.#clockS;
    this.#clockS = clockS;
    if (!isRunning) {
      this.#clockMovedAtS = nowS; // a pause is told by the context itself, and is no stall
      this.#blockAtS = nowS;
      this.#troubles.note('clock-stalled', false);
      return;
    }
    if (moved) this.#clockMovedAtS = nowS;
    this.#troubles.note('clock-stalled', nowS - this.#clockMovedAtS >= STALLED_AFTER_S);
    if (moved) this.#troubles.note('no-blocks', nowS - this.#blockAtS >= SILENT_AFTER_S); // while the clock stands none is due
  }
}
