/** Who is writing to a store, as its lock tells: a process of a machine, since a moment. */
export interface Holder {
  readonly process: number;
  readonly host: string;
  /** When it began, as ISO 8601. */
  readonly since: string;
}

/** The holder of this run, and what it knows of other processes of its machine. */
export interface OwnHolder extends Holder {
  readonly isRunning: (process: number) => boolean;
}

/** The text of a lock. */
export function holderText({ process, host, since }: Holder): string {
  return `${JSON.stringify({ process, host, since })}\n`;
}

/** Whom a lock's text names; null where it is none. */
export function readHolder(text: string): Holder | null {
  try {
    const { process, host, since } = JSON.parse(text) as Partial<Holder>;
    const isWhole = typeof process === 'number' && typeof host === 'string' && typeof since === 'string';
    return isWhole ? { process, host, since } : null;
  } catch {
    return null;
  }
}
