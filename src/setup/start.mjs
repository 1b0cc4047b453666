/** `npm start`: installs what is missing, builds the page, serves it on this machine and prints the address. PORT and HOST may be set. */
import { installPackages, root, runTool } from './install.mjs';
import { serve } from './serve.mjs';

const WANTED_PORT = 4180;

installPackages();
if (runTool('vite/bin/vite.js', ['build', '--logLevel', 'warn']) !== 0) process.exit(1);

const host = process.env.HOST || 'localhost';
const start = (port) => serve({ folder: `${root}dist/app`, host, port });
const chosen = process.env.PORT ? Number(process.env.PORT) : undefined;
if (chosen !== undefined && !(Number.isInteger(chosen) && chosen >= 0 && chosen <= 65535)) {
  process.stderr.write(`PORT must be a whole number from 0 to 65535, not ${process.env.PORT}.\n`);
  process.exit(2);
}
try {
  const server = await start(chosen ?? WANTED_PORT).catch((fault) => {
    if (chosen === undefined && fault.code === 'EADDRINUSE') return start(0);
    throw fault;
  });
  process.stdout.write(`Spanwright is ready: http://${host}:${server.address().port}/\nStop it with Ctrl+C.\n`);
} catch (fault) {
  process.stderr.write(`The page could not be served: ${fault.message}. Set PORT to another number and try again.\n`);
  process.exit(1);
}
