/** Builds the page once and serves it for the tests of project `page`, as `npm start` does. */

import { spawnSync } from 'node:child_process';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { serve } from '../../src/setup/serve.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built page, with the closing slash. */
    pageAddress: string;
  }
}

const root = fileURLToPath(new URL('../..', import.meta.url));

export default async function setup(project: TestProject) {
  const built = spawnSync(process.execPath, ['node_modules/vite/bin/vite.js', 'build', '--logLevel', 'warn'], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, NODE_ENV: 'production' }, // the test runner sets its own, which would build a page for developers
  });
  if (built.status !== 0) throw new Error(`the page could not be built:\n${built.stdout}${built.stderr}`);
  const server = await serve({ folder: `${root}dist/app` });
  project.provide('pageAddress', `http://localhost:${(server.address() as AddressInfo).port}/`);
  return () => new Promise<void>((resolve) => server.close(() => resolve()));
}
