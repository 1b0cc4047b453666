export function lanWords(options: { addresses: readonly string[]; port: number; code: string; fingerprint: string }): string;
export const noNetwork: string;
