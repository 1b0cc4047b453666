/** Writes the service worker beside the built page, with the version and the files of this build in it. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const template = fileURLToPath(new URL('./offline-worker.js', import.meta.url));
/** In the folder of the page, so that it may serve all of it. */
export const WORKER_FILE = 'offline.js';

const contentOf = (file) => ('code' in file ? file.code : file.source);

/** @param options.publicDir  folder whose files are copied into the build as they are */
export const offline = ({ publicDir }) => ({
  name: 'offline',
  apply: 'build',
  enforce: 'post',
  generateBundle(_options, bundle) {
    const copied = readdirSync(publicDir);
    const built = Object.keys(bundle).filter((name) => !name.endsWith('.map'));
    const worker = readFileSync(template, 'utf8');
    const hash = createHash('sha256').update(worker);
    for (const name of built) hash.update(name).update(contentOf(bundle[name]));
    for (const name of copied) hash.update(name).update(readFileSync(join(publicDir, name)));
    const version = hash.digest('hex').slice(0, 12);
    const files = ['./', ...[...built, ...copied].filter((name) => name !== 'index.html').map((name) => `./${name}`)];
    const source = worker.replace('%VERSION%', version).replace('%FILES%', JSON.stringify(files));
    this.emitFile({ type: 'asset', fileName: WORKER_FILE, source });
  },
});
