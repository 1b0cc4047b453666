/** The page's build, and the test projects: `unit` in Node, `browser` in Chromium with recordings as its microphone. */
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { offline } from './src/offline/plugin.mjs';
import { chromiumArguments, findChromium } from './src/setup/chromium.mjs';

const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Puts the policy into the built page only: the development server needs inline scripts for its reloads. */
const strictPolicy = {
  name: 'strict-content-security-policy',
  apply: 'build' as const,
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: contentSecurityPolicy }, injectTo: 'head-prepend' as const },
  ],
};

export default defineConfig(({ mode }) => ({
  base: './',
  publicDir: mode === 'program' ? false : 'src/static',
  build: {
    target: 'es2023',
    outDir: 'dist/app',
    sourcemap: true,
    assetsInlineLimit: 0,
    ...(mode === 'program' ? { rollupOptions: { output: { entryFileNames: 'main.js' } } } : {}),
  },
  worker: { format: 'es' },
  optimizeDeps: { include: ['lit', 'lit/decorators.js', 'lit/directives/class-map.js', '@lit/context', 'zod', 'fft.js', 'idb', 'uqr'] },
  plugins: [strictPolicy, ...(mode === 'program' ? [] : [offline({ publicDir: 'src/static' })])],
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          testTimeout: 60_000,
          include: ['tests/*.test.ts', 'tests/{unit,reference,property,recordings,cli}/**/*.test.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({
              launchOptions: { executablePath: findChromium() ?? '', chromiumSandbox: false, args: chromiumArguments() },
            }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
      {
        extends: true,
        test: {
          name: 'page',
          environment: 'node',
          include: ['tests/page/**/*.test.ts'],
          globalSetup: 'tests/support/built-page.ts',
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
}));
