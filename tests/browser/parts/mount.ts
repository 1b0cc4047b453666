/** Puts one part into a page of a given width with the real tokens, and takes it out again after the test. */

import type { LitElement } from 'lit';
import { afterEach } from 'vitest';
import '../../../src/ui/tokens.css';

afterEach(() => {
  document.body.replaceChildren();
});

/** Lets sizes be observed and what follows from them be drawn. */
export const settled = async (part: LitElement): Promise<void> => {
  await part.updateComplete;
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  await part.updateComplete;
};

export const mounted = async <Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  properties: Partial<HTMLElementTagNameMap[Tag]>,
  widthPx = 720,
): Promise<HTMLElementTagNameMap[Tag] & LitElement> => {
  const place = document.createElement('div');
  place.style.width = `${widthPx}px`;
  place.style.background = 'var(--paper)';
  const part = Object.assign(document.createElement(tag), properties) as HTMLElementTagNameMap[Tag] & LitElement;
  place.append(part);
  document.body.append(place);
  await settled(part);
  return part;
};

/** All elements of a part that match, in document order. */
export const all = (part: LitElement, selector: string): Element[] => [...part.renderRoot.querySelectorAll(selector)];

export const one = (part: LitElement, selector: string): Element => {
  const [element, ...more] = all(part, selector);
  if (!element || more.length > 0) throw new Error(`${selector} matches ${element ? more.length + 1 : 0} elements`);
  return element;
};

/** A number in an SVG attribute. */
export const figure = (element: Element, attribute: string): number => {
  const text = element.getAttribute(attribute);
  if (text === null) throw new Error(`no ${attribute}`);
  return Number.parseFloat(text);
};

export const texts = (part: LitElement, selector = 'text'): string[] => all(part, selector).map((text) => (text.textContent ?? '').trim());

/** Where an element really stands on the screen, relative to its part. */
export const boxIn = (part: LitElement, element: Element): DOMRect => {
  const outer = part.getBoundingClientRect();
  const box = element.getBoundingClientRect();
  return new DOMRect(box.x - outer.x, box.y - outer.y, box.width, box.height);
};

/** Texts that leave the part's width, by more than a pixel. */
export const textsOutside = (part: LitElement): string[] =>
  all(part, 'text, span, th, td, p')
    .filter((element) => element.closest('.spoken') === null)
    .filter((element) => {
      const { left, right } = boxIn(part, element);
      return left < -1 || right > part.clientWidth + 1;
    })
    .map((element) => element.textContent ?? '');
