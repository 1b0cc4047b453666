/** A certificate made on this computer, so that a phone's browser may use its microphone; kept, so that the phone has to be told once only. */
import { X509Certificate } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { join } from 'node:path';

/** Browsers of phones refuse certificates that hold for longer than 825 days; a year is plenty. */
const DAYS = 365;
const RENEW_WITH_DAYS_LEFT = 14;
const DAY_MS = 86_400_000;

/** Fits when it is for every name, and will hold for a while. */
function fits(cert, names, now) {
  try {
    const read = new X509Certificate(cert);
    const isFor = (name) => (isIP(name) ? read.checkIP(name) : read.checkHost(name)) !== undefined;
    const holds = new Date(read.validFrom) <= now && new Date(read.validTo).getTime() - now.getTime() > RENEW_WITH_DAYS_LEFT * DAY_MS;
    return holds && names.every(isFor);
  } catch {
    return false;
  }
}

function kept(folder) {
  try {
    return { key: readFileSync(join(folder, 'key.pem'), 'utf8'), cert: readFileSync(join(folder, 'certificate.pem'), 'utf8') };
  } catch {
    return undefined;
  }
}

/**
 * Key and certificate for the names, from the folder or made anew and kept there; the key is readable by its owner alone.
 *
 * @param folder  must not be served
 * @returns `fingerprint`: SHA-256, as browsers show it
 */
export async function certificateFor({ names, folder, now = new Date() }) {
  const old = kept(folder);
  if (old && fits(old.cert, names, now)) return { ...old, fingerprint: new X509Certificate(old.cert).fingerprint256, isNew: false };
  const { generate } = await import('selfsigned');
  const made = await generate([{ name: 'commonName', value: 'Spanwright on this computer' }], {
    keyType: 'ec',
    algorithm: 'sha256',
    notBeforeDate: new Date(now.getTime() - DAY_MS), // phones' clocks may be behind
    notAfterDate: new Date(now.getTime() + DAYS * DAY_MS),
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      { name: 'subjectAltName', altNames: names.map((name) => (isIP(name) ? { type: 7, ip: name } : { type: 2, value: name })) },
    ],
  });
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  writeFileSync(join(folder, 'key.pem'), made.private, { mode: 0o600 });
  writeFileSync(join(folder, 'certificate.pem'), made.cert);
  return { key: made.private, cert: made.cert, fingerprint: new X509Certificate(made.cert).fingerprint256, isNew: true };
}
