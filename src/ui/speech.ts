/** Reads a sentence aloud for someone with their head in the machine, where the browser can; tells when it begins and ends. */

/** Where a browser does not tell the end, a sentence takes about so long for each letter. */
const MS_PER_LETTER = 90;
const LONGEST_WAIT_MS = 15_000;

export class Speech {
  #isOn = false;
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #onSpeaking: (isSpeaking: boolean) => void;
  readonly #lang: string;

  constructor({ onSpeaking, lang }: { onSpeaking: (isSpeaking: boolean) => void; lang: string }) {
    this.#onSpeaking = onSpeaking;
    this.#lang = lang;
  }

  static get isSupported(): boolean {
    return 'speechSynthesis' in globalThis && 'SpeechSynthesisUtterance' in globalThis;
  }

  get isOn(): boolean {
    return this.#isOn;
  }

  turn(on: boolean): void {
    this.#isOn = on && Speech.isSupported;
    if (!this.#isOn) this.quiet();
  }

  /** The last sentence goes before one that is still being said. */
  say(sentence: string): void {
    if (!this.#isOn || sentence === '') return;
    speechSynthesis.cancel();
    const utterance = new SpeechSynthesisUtterance(sentence);
    utterance.lang = this.#lang;
    const over = () => this.#over();
    utterance.addEventListener('end', over);
    utterance.addEventListener('error', over);
    this.#onSpeaking(true);
    clearTimeout(this.#timer);
    this.#timer = setTimeout(over, Math.min(LONGEST_WAIT_MS, 1000 + MS_PER_LETTER * sentence.length));
    speechSynthesis.speak(utterance);
  }

  quiet(): void {
    if (Speech.isSupported) speechSynthesis.cancel();
    this.#over();
  }

  #over(): void {
    clearTimeout(this.#timer);
    this.#onSpeaking(false);
  }
}
