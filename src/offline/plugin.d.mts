import type { Plugin } from 'vite';

export const WORKER_FILE: string;
export function offline(options: { readonly publicDir: string }): Plugin;
