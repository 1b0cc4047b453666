/** Which of our source files a page called functions of: the browser's own counts, led back to the sources by the maps of the build. */

import { SourceMap, type SourceMapPayload } from 'node:module';
import type { Page } from 'playwright';

/** Paths below `src`, such as `core/answer.ts`, of the functions that the page's main thread calls while `act` runs. */
export async function sourcesCalled(page: Page, act: () => Promise<void>): Promise<ReadonlySet<string>> {
  await page.coverage.startJSCoverage({ resetOnNavigation: false });
  await act();
  const scripts = await page.coverage.stopJSCoverage();
  const called = new Set<string>();
  for (const { url, source = '', functions } of scripts) {
    const map = new SourceMap((await (await fetch(`${url}.map`)).json()) as SourceMapPayload);
    for (const { functionName, ranges } of functions) {
      const range = ranges[0]!; // the whole function; the others are parts of it
      const isWholeScript = functionName === '' && range.startOffset === 0;
      if (range.count === 0 || isWholeScript) continue;
      const path = sourceAt(map, source, range.startOffset);
      if (path) called.add(path);
    }
  }
  return called;
}

function sourceAt(map: SourceMap, source: string, offset: number): string | undefined {
  const before = source.slice(0, offset).split('\n');
  const entry = map.findEntry(before.length - 1, before.at(-1)!.length);
  const path = 'originalSource' in entry ? entry.originalSource : '';
  return /(?:^|\/)src\/(.+)$/u.exec(path)?.[1];
}
