/** What must hold of every answer, whatever came in: no figure that is none, no sentence with a hole in it. */

const DEEPEST = 60;

/**
 * Path of the first NaN in an answer; undefined where there is none. Typed arrays and maps are looked through as well.
 *
 * @param skipped  names that hold what came in, as it came in
 */
export function notANumberIn(answer: unknown, skipped: readonly string[] = [], path = '', depth = 0): string | undefined {
  if (typeof answer === 'number') return Number.isNaN(answer) ? path || 'answer' : undefined;
  if (typeof answer !== 'object' || answer === null || depth > DEEPEST) return undefined;
  if (ArrayBuffer.isView(answer)) {
    const numbers = answer as unknown as ArrayLike<number>;
    for (let index = 0; index < numbers.length; index++) if (Number.isNaN(numbers[index])) return `${path}[${index}]`;
    return undefined;
  }
  const entries = answer instanceof Map ? [...answer.entries()] : Object.entries(answer);
  for (const [name, value] of entries) {
    if (skipped.includes(String(name))) continue;
    const found = notANumberIn(value, skipped, `${path}.${String(name)}`, depth + 1);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** A fault of the program that a case brought to light. */
class Broken extends Error {
  override readonly name = 'Broken';
}

export function wantNoNaN(answer: unknown, skipped: readonly string[] = []): void {
  const found = notANumberIn(answer, skipped);
  if (found !== undefined) throw new Broken(`not a number at ${found}`);
}

/**
 * A sentence says something, in words and figures that a person can read.
 *
 * @param options.quoted  what it repeats of the input, as it came in
 */
export function wantSentence(text: string, { quoted = [] }: { readonly quoted?: readonly string[] | undefined } = {}): void {
  const own = quoted.reduce((left, one) => (one === '' ? left : left.replaceAll(one, '')), text);
  if (own.trim().length < 5) throw new Broken(`says nothing: ${JSON.stringify(text)}`);
  const hole = /\bNaN\b|\bundefined\b|\[object/u.exec(own);
  if (hole) throw new Broken(`has a hole: ${JSON.stringify(text.slice(0, 200))}`);
}

export function want(holds: boolean, what: string): void {
  if (!holds) throw new Broken(what);
}
