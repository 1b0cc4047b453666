export interface Certificate {
  readonly key: string;
  readonly cert: string;
  readonly fingerprint: string;
  readonly isNew: boolean;
}
export function certificateFor(options: { names: readonly string[]; folder: string; now?: Date }): Promise<Certificate>;
