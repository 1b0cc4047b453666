export function findChromium(): string | undefined;
export function chromiumArguments(options?: { microphoneWav?: string; grant?: boolean }): string[];
