/** `npm start`: installs what is missing, builds the page, serves it and prints the address: for this computer, with `--lan` for its network. */
import { hostname } from 'node:os';
import { installPackages, root, runTool } from './install.mjs';
import { lanAddresses } from './lan-addresses.mjs';
import { lanWords, noNetwork } from './lan-words.mjs';
import { serve } from './serve.mjs';

const WANTED_PORT = { local: 4180, lan: 4443 };

const complain = (text, status) => {
  process.stderr.write(text);
  process.exit(status);
};

const argumentList = process.argv.slice(2);
const unknown = argumentList.find((argument) => argument !== '--lan');
if (unknown !== undefined)
  complain(`npm start does not know ${unknown}. It knows --lan, which serves the page to the devices of your network.\n`, 2);
const isLan = argumentList.includes('--lan');
const chosen = process.env.PORT ? Number(process.env.PORT) : undefined;
if (chosen !== undefined && !(Number.isInteger(chosen) && chosen >= 0 && chosen <= 65535)) {
  complain(`PORT must be a whole number from 0 to 65535, not ${process.env.PORT}.\n`, 2);
}
const addresses = isLan ? lanAddresses() : [];
if (isLan && addresses.length === 0 && !process.env.HOST) complain(noNetwork, 1);

installPackages();
if (runTool('vite/bin/vite.js', ['build', '--logLevel', 'warn']) !== 0) process.exit(1);

/** On the wanted port, or on a free one where another program holds it and nobody asked for this very port. */
async function serving(options, wanted) {
  const start = (port) => serve({ folder: `${root}dist/app`, ...options, port });
  return start(chosen ?? wanted).catch((fault) => {
    if (chosen === undefined && fault.code === 'EADDRINUSE') return start(0);
    throw fault;
  });
}

async function serveHere() {
  const host = process.env.HOST || 'localhost';
  const server = await serving({ host }, WANTED_PORT.local);
  process.stdout.write(`Spanwright is ready: http://${host}:${server.address().port}/\nStop it with Ctrl+C.\n`);
}

/** This computer's own name, where a certificate can hold it. */
const hostNames = () => [hostname()].filter((name) => /^[\w-]+(?:\.[\w-]+)*$/u.test(name));

async function serveNetwork() {
  const { certificateFor } = await import('./certificate.mjs');
  const { renderUnicodeCompact } = await import('uqr'); // both after the packages were installed
  const shown = process.env.HOST ? [process.env.HOST] : addresses;
  const { key, cert, fingerprint } = await certificateFor({ names: [...shown, ...hostNames(), 'localhost'], folder: `${root}.cache/lan` });
  const server = await serving({ host: process.env.HOST || '0.0.0.0', tls: { key, cert } }, WANTED_PORT.lan);
  const { port } = server.address();
  const plain = renderUnicodeCompact(`https://${shown[0]}:${port}/`, { border: 2 });
  // White on black whatever the terminal's own colours are: not every camera reads a code the other way round.
  const code = process.stdout.isTTY ? plain.replace(/^.*$/gmu, '\u001b[40;97m$&\u001b[0m') : plain;
  process.stdout.write(lanWords({ addresses: shown, port, code, fingerprint }));
}

try {
  await (isLan ? serveNetwork() : serveHere());
} catch (fault) {
  complain(`The page could not be served: ${fault.message}. Set PORT to another number and try again.\n`, 1);
}
