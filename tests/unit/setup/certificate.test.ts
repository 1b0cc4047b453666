/** The certificate for the network: for the right names, kept and made anew in time, its key for its owner alone; and which addresses are told. */

import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { certificateFor } from '../../../src/setup/certificate.mjs';
import { lanAddresses } from '../../../src/setup/lan-addresses.mjs';

const NAMES = ['192.168.7.20', 'workbench', 'localhost'];
const DAY_MS = 86_400_000;

describe('certificate', () => {
  let folder: string;
  beforeEach(() => {
    folder = join(mkdtempSync(join(tmpdir(), 'lan-')), 'kept');
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('is for every name and address, and for a year', async () => {
    const { cert, fingerprint } = await certificateFor({ names: NAMES, folder });
    const read = new X509Certificate(cert);
    expect(read.checkIP('192.168.7.20')).toBe('192.168.7.20');
    expect(read.checkHost('workbench')).toBe('workbench');
    expect(read.checkHost('elsewhere')).toBeUndefined();
    expect(read.ca).toBe(false);
    const days = (Date.parse(read.validTo) - Date.parse(read.validFrom)) / DAY_MS;
    expect(days).toBeGreaterThan(360);
    expect(days).toBeLessThanOrEqual(397); // what browsers accept of a server (CA/Browser Forum, Baseline Requirements 6.3.2)
    expect(fingerprint).toMatch(/^(?:[0-9A-F]{2}:){31}[0-9A-F]{2}$/u);
  });

  it('is kept, so that the phone has to be told once', async () => {
    const first = await certificateFor({ names: NAMES, folder });
    const second = await certificateFor({ names: NAMES, folder });
    expect([first.isNew, second.isNew]).toEqual([true, false]);
    expect(second.cert).toBe(first.cert);
    expect(statSync(join(folder, 'key.pem')).mode & 0o077).toBe(0);
    expect(readFileSync(join(folder, 'key.pem'), 'utf8')).toContain('PRIVATE KEY');
  });

  it('is made anew for another address, shortly before its end, and where the file is damaged', async () => {
    const first = await certificateFor({ names: NAMES, folder });
    const moved = await certificateFor({ names: ['10.0.0.5', ...NAMES], folder });
    expect(moved.isNew).toBe(true);
    expect(moved.cert).not.toBe(first.cert);
    const late = new Date(Date.now() + 355 * DAY_MS);
    expect((await certificateFor({ names: NAMES, folder, now: late })).isNew).toBe(true);
    writeFileSync(join(folder, 'certificate.pem'), 'spilt coffee');
    expect((await certificateFor({ names: NAMES, folder })).isNew).toBe(true);
  });
});

describe('addresses', () => {
  const at = (address: string, more: object = {}) => ({
    address,
    family: 'IPv4' as const,
    internal: false,
    netmask: '255.255.255.0',
    mac: '00:00:00:00:00:00',
    cidr: null,
    ...more,
  });

  it('are those that other devices reach, a home network’s first', () => {
    const addresses = lanAddresses({
      lo: [at('127.0.0.1', { internal: true })],
      bridge: [at('172.17.0.1')],
      wired: [at('203.0.113.9')],
      adrift: [at('169.254.3.4')],
      wireless: [at('192.168.7.20'), at('fe80::1', { family: 'IPv6', scopeid: 2 })],
    });
    expect(addresses).toEqual(['192.168.7.20', '172.17.0.1', '203.0.113.9']);
  });

  it('are none without a network', () => {
    expect(lanAddresses({ lo: [at('127.0.0.1', { internal: true })] })).toEqual([]);
  });
});
