/** Where other devices of the same network find this computer. Node built-ins only. */
import { networkInterfaces } from 'node:os';

/** Ranges that home and workshop networks use, the usual ones first (RFC 1918); 172.16/12 last, since containers use it too. */
const PRIVATE = [/^192\.168\./u, /^10\./u, /^172\.(?:1[6-9]|2\d|3[01])\./u];
const rank = (address) => {
  const found = PRIVATE.findIndex((range) => range.test(address));
  return found < 0 ? PRIVATE.length : found;
};

/** IPv4 addresses of this computer in its networks, likeliest first. @param interfaces  as `os.networkInterfaces()` gives them */
export const lanAddresses = (interfaces = networkInterfaces()) =>
  Object.values(interfaces)
    .flatMap((list) => list ?? [])
    .filter(({ family, internal, address }) => family === 'IPv4' && !internal && !address.startsWith('169.254.'))
    .map(({ address }) => address)
    .sort((a, b) => rank(a) - rank(b));
