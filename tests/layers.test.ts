/** The dependency rule of DEVELOPERS.md, read from the import lines: arrows point inwards, and the guide names every folder. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

const filesBelow = (folder: string): string[] =>
  readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesBelow(path) : [path];
  });

const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s[^;'"]*?from\s*['"]([^'"]+)['"]|(?:^|\n)\s*import\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/g;

const importsOf = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(IMPORT)].map((match) => (match[1] ?? match[2] ?? match[3])!.replace(/\?.*$/, ''));

/** Each import of a source file: `from` relative to the root, `to` likewise or the name of a package. */
const arrows = ['src', 'shared'].flatMap((top) =>
  filesBelow(join(root, top))
    .filter((file) => /\.m?ts$/.test(file) && !file.endsWith('.d.ts') && !file.endsWith('.d.mts'))
    .flatMap((file) =>
      importsOf(file).map((target) => ({
        from: relative(root, file),
        to: target.startsWith('.') ? relative(root, resolve(dirname(file), target)) : target,
        isPackage: !target.startsWith('.'),
      })),
    ),
);

/** The chain, inner first: a folder may import any folder before it. */
const CHAIN = ['math', 'vibration', 'samples', 'spectrum', 'pluck', 'partials', 'frequency', 'force', 'verdict'];
/** Beside the chain: may import all of it, and are imported by none of it. */
const AROUND_THE_CHAIN = ['belt', 'gauge', 'inspection', 'logbook', 'machine', 'synthesis', 'validation'];
/** Files of core that join the chain. */
const JOINING = ['src/core/measure.ts', 'src/core/listening.ts', 'src/core/answer.ts'];
/** Types that everything in core may import; they import only math and samples. */
const COMMON = ['src/core/outcome.ts', 'src/core/setup.ts'];
const EDGES = ['capture', 'analysis', 'archive', 'cli', 'export', 'offline', 'ui', 'words'];

const coreFolder = (path: string) => /^src\/core\/([^/]+)\//.exec(path)?.[1];
const edgeOf = (path: string) => /^src\/([^/]+)\//.exec(path)?.[1];
const shown = (list: typeof arrows) => list.map(({ from, to }) => `${from} → ${to}`);

describe('dependency rule', () => {
  it('finds the import lines at all', () => {
    expect(arrows.length).toBeGreaterThan(100);
    expect(shown(arrows)).toContain('src/core/measure.ts → src/core/listening.ts');
  });

  it('lets core import nothing but itself and the FFT library, in one file', () => {
    const outside = arrows.filter(({ from, to }) => from.startsWith('src/core/') && !to.startsWith('src/core/'));
    expect(shown(outside)).toEqual(['src/core/math/fft.ts → fft.js']);
  });

  it('lets the chain point only to what stands before', () => {
    const wrong = arrows.filter(({ from, to }) => {
      const [source, target] = [coreFolder(from), coreFolder(to)];
      if (!source || !CHAIN.includes(source) || !to.startsWith('src/core/')) return false;
      if (!target) return !COMMON.includes(to) && !isLeafFile(to);
      return !CHAIN.includes(target) || CHAIN.indexOf(target) > CHAIN.indexOf(source);
    });
    expect(shown(wrong)).toEqual([]);
  });

  it('keeps what stands around the chain out of it', () => {
    const folders = new Set(arrows.map(({ from }) => coreFolder(from)).filter((folder) => folder !== undefined));
    const known = [...CHAIN, ...AROUND_THE_CHAIN, ...LEAF_FOLDERS];
    expect([...folders].filter((folder) => !known.includes(folder))).toEqual([]);
    const wrong = arrows.filter(({ from, to }) => JOINING.includes(from) && AROUND_THE_CHAIN.includes(coreFolder(to) ?? ''));
    expect(shown(wrong)).toEqual([]);
  });

  it('keeps the common types free of the chain', () => {
    const wrong = arrows.filter(({ from, to }) => COMMON.includes(from) && !/^src\/core\/(math|samples)\//.test(to));
    expect(shown(wrong)).toEqual([]);
  });

  it('lets the synthesiser share only the physics of the span with the estimator', () => {
    const shared = /^src\/core\/(synthesis|vibration|math)\/|^src\/core\/samples\/recording\.ts$|^src\/core\/setup\.ts$/;
    const wrong = arrows.filter(({ from, to }) => coreFolder(from) === 'synthesis' && !shared.test(to));
    expect(shown(wrong)).toEqual([]);
  });

  it('keeps the edges apart', () => {
    const wrong = arrows.filter(({ from, to }) => {
      const [source, target] = [edgeOf(from), edgeOf(to)];
      if (!source || !EDGES.includes(source) || target === undefined || !to.startsWith('src/')) return false;
      return EDGES.includes(target) && target !== source && target !== 'words';
    });
    expect(shown(wrong)).toEqual([]);
  });

  it('lets only main join the edges', () => {
    const wrong = arrows.filter(
      ({ from, to }) => /^src\/[^/]+\.ts$/.test(from) && from !== 'src/main.ts' && EDGES.includes(edgeOf(to) ?? ''),
    );
    expect(shown(wrong)).toEqual([]);
  });

  it('lets shared import nothing but schemas', () => {
    const wrong = arrows.filter(({ from, to }) => from.startsWith('shared/') && to !== 'zod' && !to.startsWith('shared/'));
    expect(shown(wrong)).toEqual([]);
  });
});

/** Quantities and tables: files of core that only know themselves and their folder. */
const LEAF_FOLDERS = ['quantity'];
function isLeafFile(path: string): boolean {
  return /^src\/core\/(quantity|table)\.ts$/.test(path);
}

describe('contributor guide', () => {
  const guide = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
  const folders = (top: string) => readdirSync(join(root, top)).filter((name) => statSync(join(root, top, name)).isDirectory());

  it('names every folder of src, of core and of tests', () => {
    const named = [
      ...folders('src').map((name) => `src/${name}`),
      ...folders('src/core').map((name) => `core/${name}`),
      ...folders('tests').map((name) => `tests/${name}`),
    ];
    expect(named.filter((name) => !guide.includes(`\`${name}\``))).toEqual([]);
  });

  it('names no folder or file that is not there', () => {
    const paths = [...guide.matchAll(/`((?:src|core|tests|shared|fixtures)\/[\w./-]+)`/g)].map(([, path]) =>
      path!.replace(/^core\//, 'src/core/'),
    );
    const missing = paths.filter((path) => !exists(join(root, path)));
    expect(paths.length).toBeGreaterThan(20);
    expect(missing).toEqual([]);
  });

  it('states the chain in its order', () => {
    expect(guide).toContain(CHAIN.join(' ← '));
  });
});

function exists(path: string): boolean {
  try {
    return statSync(path) !== undefined;
  } catch {
    return false;
  }
}
