import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { serve } from '../../../src/setup/serve.mjs';

/** A build that is made anew meanwhile: this file is gone when it is to be read, though it was there when it was asked for. */
const GONE = 'gone.txt';
vi.mock(import('node:fs'), async (load) => {
  const fs = await load();
  const createReadStream: typeof fs.createReadStream = (path, ...more) => {
    if (String(path).endsWith(GONE)) fs.rmSync(path);
    return fs.createReadStream(path, ...more);
  };
  return { ...fs, createReadStream };
});

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

const SECRET = 'not for the page';

let place: string;
let server: Server;

/** Sends a path as it stands, without the tidying that browsers and `fetch` do. */
const ask = (path: string, method = 'GET'): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const { address, port } = server.address() as AddressInfo;
    const sent = request({ host: address, port, path, method }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('error', reject);
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(chunks).toString('utf8') }),
      );
    });
    sent.on('error', reject);
    sent.end();
  });

beforeAll(async () => {
  place = realpathSync(mkdtempSync(join(tmpdir(), 'serve-')));
  const folder = join(place, 'app');
  for (const path of [folder, join(folder, 'assets'), join(place, 'app-other')]) mkdirSync(path);
  writeFileSync(join(folder, 'index.html'), '<p>höme</p>');
  writeFileSync(join(folder, 'assets', 'main.js'), 'export {};');
  writeFileSync(join(folder, 'with space.txt'), 'spaced');
  writeFileSync(join(place, 'secret.txt'), SECRET);
  writeFileSync(join(place, 'app-other', 'secret.txt'), SECRET);
  symlinkSync(join(place, 'secret.txt'), join(folder, 'link-out.txt'));
  symlinkSync(place, join(folder, 'folder-out'));
  symlinkSync(join(folder, 'index.html'), join(folder, 'link-in.html'));
  server = await serve({ folder });
});

afterAll(async () => {
  await new Promise((resolve) => server.close(resolve));
  rmSync(place, { recursive: true });
});

describe('files of the folder', () => {
  it('are given with their type, and what a folder opens with for its name', async () => {
    for (const path of ['/', '/index.html', '/?any=thing', '/link-in.html']) {
      const { status, headers, body } = await ask(path);
      expect([status, headers['content-type'], body]).toEqual([200, 'text/html; charset=utf-8', '<p>höme</p>']);
      expect(headers['content-length']).toBe('12');
    }
    expect((await ask('/assets/main.js')).headers['content-type']).toMatch(/^text\/javascript/u);
    expect((await ask('/with%20space.txt')).body).toBe('spaced');
  });

  it('are never guessed at by their content, nor kept without asking', async () => {
    for (const path of ['/', '/missing']) {
      const { headers } = await ask(path);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['cache-control']).toBe('no-cache');
      expect(headers['permissions-policy']).toContain('microphone=(self)');
    }
  });

  it('are told of to HEAD without their content', async () => {
    const [head, got] = [await ask('/', 'HEAD'), await ask('/')];
    expect(head.body).toBe('');
    const { date: _, ...headers } = head.headers;
    expect(got.headers).toMatchObject(headers);
  });
});

describe('nothing beyond the folder', () => {
  it.each([
    ['up', '/../secret.txt'],
    ['up from below', '/assets/../../secret.txt'],
    ['up, encoded', '/%2e%2e/secret.txt'],
    ['up, with an encoded stroke', '/..%2fsecret.txt'],
    ['up, all encoded', '/%2e%2e%2fsecret.txt'],
    ['up from below, encoded', '/assets%2f..%2f..%2fsecret.txt'],
    ['up, encoded twice', '/%252e%252e%252fsecret.txt'],
    ['up with backslashes', '/..\\secret.txt'],
    ['up with encoded backslashes', '/..%5csecret.txt'],
    ['up into a neighbour of the same beginning', '/..%2fapp-other/secret.txt'],
    ['a link to a file outside', '/link-out.txt'],
    ['a link to a folder outside', '/folder-out/secret.txt'],
    ['a whole path', '/etc/passwd'],
    ['a whole path behind two strokes', '//etc/passwd'],
    ['another host', 'http://elsewhere.example/../secret.txt'],
    ['a zero byte', '/index.html%00'],
    ['a zero byte before a harmless ending', '/..%2fsecret.txt%00.html'],
    ['a broken encoding', '/%e0%a4%a'],
    ['an address that is none', 'http://['],
    ['a folder', '/assets'],
    ['a folder without a page of its own', '/assets/'],
    ['the folder itself, from below', '/assets%2f..'],
    ['what is not there', '/missing.html'],
    ['a file as if it were a folder', '/index.html/'],
    ['a path of excess', `/${'a/'.repeat(3000)}`],
  ])('%s', async (_, path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body).toBe('Not found\n');
  });

  it.each(['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS'])('%s is not answered, and what is allowed is said', async (method) => {
    const { status, headers, body } = await ask('/', method);
    expect([status, headers.allow, body]).toEqual([405, 'GET, HEAD', '']);
  });

  it('nor a file that is taken away at that very moment', async () => {
    writeFileSync(join(place, 'app', GONE), 'a part of the old build');
    expect((await ask(`/${GONE}`, 'HEAD')).status).toBe(200);
    expect((await ask(`/${GONE}`)).status).toBe(404);
  });

  it('still serves after all that', async () => {
    expect((await ask('/')).status).toBe(200);
  });
});

describe('the place where it listens', () => {
  it('is this machine alone, unless told otherwise', () => {
    expect(['127.0.0.1', '::1']).toContain((server.address() as AddressInfo).address);
  });

  it('is told as a fault where it is taken', async () => {
    const { address, port } = server.address() as AddressInfo;
    await expect(serve({ folder: place, host: address, port })).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });
});
