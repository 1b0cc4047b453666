import type { Server } from 'node:http';
export function serve(options: { folder: string; host?: string; port?: number; tls?: { key: string; cert: string } }): Promise<Server>;
