/** Serves the built page on this machine. Node built-ins only; answers GET and HEAD for files of the build and nothing else. */
import { createReadStream, realpathSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import { extname, join, normalize, sep } from 'node:path';
import { pipeline } from 'node:stream';

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wav': 'audio/wav',
};

const HEADERS = {
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy': 'microphone=(self), camera=(), geolocation=()',
  'Cache-Control': 'no-cache',
};

/** Path and size of the file that a request's path names inside the folder; undefined where it names none, or tries to leave. */
function fileOf(folder, requestUrl) {
  let path;
  try {
    path = decodeURIComponent(new URL(requestUrl, 'http://localhost').pathname);
  } catch {
    return undefined;
  }
  if (path.includes('\0')) return undefined;
  const file = join(folder, normalize(path.endsWith('/') ? `${path}index.html` : path));
  try {
    const real = realpathSync(file);
    const found = statSync(real);
    return real.startsWith(realpathSync(folder) + sep) && found.isFile() ? { path: real, bytes: found.size } : undefined;
  } catch {
    return undefined;
  }
}

function refuse(response) {
  response.writeHead(404, { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8' }).end('Not found\n');
}

/** Starts to serve `folder`; port 0 takes a free one, `tls` (key and cert) makes it https. Resolves to the server once it listens. */
export function serve({ folder, host = 'localhost', port = 0, tls }) {
  const answer = (request, response) => {
    const method = request.method ?? '';
    if (method !== 'GET' && method !== 'HEAD') {
      response.writeHead(405, { ...HEADERS, Allow: 'GET, HEAD' }).end();
      return;
    }
    const file = fileOf(folder, request.url ?? '/');
    if (!file) return refuse(response);
    const head = { ...HEADERS, 'Content-Type': TYPES[extname(file.path)] ?? 'application/octet-stream', 'Content-Length': file.bytes };
    if (method === 'HEAD') {
      response.writeHead(200, head).end();
      return;
    }
    // A new build may take the file away at any moment, and whoever asked may leave: neither is a reason to stop serving.
    const content = createReadStream(file.path);
    const refused = () => refuse(response);
    content.once('error', refused);
    content.once('open', () => {
      content.off('error', refused);
      response.writeHead(200, head);
      pipeline(content, response, () => {});
    });
  };
  const server = tls ? createSecureServer(tls, answer) : createServer(answer);
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => resolve(server));
  });
}
