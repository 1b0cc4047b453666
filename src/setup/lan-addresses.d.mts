import type { NetworkInterfaceInfo } from 'node:os';
export function lanAddresses(interfaces?: NodeJS.Dict<NetworkInterfaceInfo[]>): string[];
