/** How wide a text will be, so that labels in a drawing can make room for one another. */

let context: CanvasRenderingContext2D | null = null;

/**
 * Measures texts in the family of an element.
 *
 * @param element  in the page
 * @param size     of the text, relative to the element's own
 * @returns function from text to px; a twentieth is added, because the family that is drawn may differ from the one that is measured
 */
export const textWidth = (element: Element, size = 1, weight = 400): ((text: string) => number) => {
  context ??= document.createElement('canvas').getContext('2d');
  const { fontSize, fontFamily } = getComputedStyle(element);
  const px = Number.parseFloat(fontSize) * size;
  const font = `${weight} ${px}px ${fontFamily}`;
  return (text) => {
    if (!context) return text.length * px * 0.6;
    context.font = font;
    return context.measureText(text).width * 1.05;
  };
};

/** A text broken at its spaces into lines, none wider than the given width unless one word is. */
export const wrapped = (text: string, maxWidthPx: number, widthOf: (text: string) => number): string[] => {
  const lines: string[] = [];
  for (const word of text.split(' ').filter(Boolean)) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && widthOf(longer) <= maxWidthPx) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
};

/** A text in at most two lines, as even as they can be. */
export const inTwoLines = (text: string, widthOf: (text: string) => number): string[] => {
  const words = text.split(' ').filter(Boolean);
  const ways = words.slice(1).map((_, index) => [words.slice(0, index + 1).join(' '), words.slice(index + 1).join(' ')]);
  const widest = (lines: readonly string[]) => Math.max(...lines.map(widthOf));
  // A later break of the same width wins nothing: the second line may be the longer one, as after a comma.
  return ways.reduce<string[]>((best, lines) => (widest(lines) < widest(best) ? lines : best), words.length > 0 ? [words.join(' ')] : []);
};
