/** Shows how far long work has come: a bar that moves on a terminal, a line a step elsewhere, nothing when quiet. */
export interface Progress {
  /** Says what is being done and how much of it is done, from 0 to 1; `detail` may say more, such as rows so far. */
  readonly show: (step: string, share: number, detail?: string) => void;
  /** Clears the bar. */
  readonly end: () => void;
}

const barWidth = 24;

/** A progress display on the error stream. */
export function startProgress(quiet: boolean): Progress {
  if (quiet) return { show: () => {}, end: () => {} };
  const stream = process.stderr;
  const started = Date.now();
  let lastStep = '';
  let lastShown = 0;
  return {
    show: (step, share, detail = '') => {
      const now = Date.now();
      if (!stream.isTTY) {
        if (step !== lastStep) stream.write(`${step}\n`);
        lastStep = step;
        return;
      }
      if (step === lastStep && share < 1 && now - lastShown < 80) return;
      lastStep = step;
      lastShown = now;
      const full = Math.round(Math.min(1, Math.max(0, share)) * barWidth);
      const seconds = (now - started) / 1000;
      const left = share > 0.05 && share < 1 ? `, about ${Math.ceil((seconds / share) * (1 - share))} s left` : '';
      const line = `${'█'.repeat(full)}${'░'.repeat(barWidth - full)} ${step}${detail && ` ${detail}`}${left}`;
      stream.write(`\r\x1b[2K${line.slice(0, (stream.columns ?? 100) - 1)}`);
    },
    end: () => {
      if (stream.isTTY) stream.write('\r\x1b[2K');
    },
  };
}
