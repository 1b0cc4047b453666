/** What the accessibility checker objects to in the page as it stands; rules of whole pages are left to the tests of screens. */

import axeSource from 'axe-core/axe.min.js?raw';

interface AxeViolation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

declare global {
  var axe: { run(context: Element, options: object): Promise<{ violations: AxeViolation[] }> } | undefined;
}

export const objections = async (): Promise<string[]> => {
  if (!globalThis.axe) {
    const script = document.createElement('script');
    script.textContent = axeSource;
    document.head.append(script);
  }
  const result = await globalThis.axe?.run(document.body, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    rules: { region: { enabled: false }, 'page-has-heading-one': { enabled: false }, 'heading-order': { enabled: false } },
  });
  if (!result) throw new Error('the checker did not load');
  return result.violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html} ${node.failureSummary ?? ''}`));
};
