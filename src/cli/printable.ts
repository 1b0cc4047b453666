/** Text from outside, such as a file's name, made fit for one line of a terminal. */

/** Control characters, line and paragraph separators, and marks that turn the direction of what follows. */
const UNPRINTABLE = /[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu;

export const printable = (text: string): string =>
  text.replace(UNPRINTABLE, (character) => `\\u{${character.codePointAt(0)?.toString(16)}}`);
