import type { Server } from 'node:http';
export function serve(options: { folder: string; host?: string; port?: number }): Promise<Server>;
