import { barLine, type Reached, saidOf } from './bar-line.js';

/** Shows how far long work has come: a bar that moves on a terminal, plain lines elsewhere, nothing when quiet. */
export interface Progress {
  /** Says what is being done, how much of all is done, from 0 to 1, and how many rows this step has read. */
  readonly show: (step: string, share: number, rows?: number) => void;
  /** Clears the bar. */
  readonly end: () => void;
}

/** Where progress is shown, and by which clock. */
export interface ProgressView {
  readonly stream: { readonly isTTY?: boolean; readonly columns?: number; readonly write: (text: string) => unknown };
  /** Milliseconds. */
  readonly now: () => number;
}

/** Milliseconds between two pictures of the bar, and between two plain lines of one step. */
const barPause = 80;
const linePause = 5000;

/** A progress display on the error stream. */
export function startProgress(
  quiet: boolean,
  { stream, now }: ProgressView = { stream: process.stderr, now: Date.now },
): Progress {
  if (quiet) return { show: () => {}, end: () => {} };
  const started = now();
  let step = '';
  let shown = 0;
  let rowsBefore = 0;
  let rowsOfStep = 0;
  let counts = false;
  return {
    show: (name, share, rows) => {
      const time = now();
      const isNew = name !== step;
      if (isNew) rowsBefore += rowsOfStep;
      step = name;
      rowsOfStep = rows ?? 0;
      counts ||= rows !== undefined;
      const pause = stream.isTTY === true ? barPause : linePause;
      if (!isNew && time - shown < pause && (share < 1 || stream.isTTY !== true)) return;
      shown = time;
      const counted = counts ? rowsBefore + rowsOfStep : null;
      const reached: Reached = { step, share, rows: counted, seconds: (time - started) / 1000 };
      if (stream.isTTY === true) stream.write(`\r\x1b[2K${barLine(reached, (stream.columns ?? 100) - 1)}`);
      else stream.write(isNew ? `${step}\n` : `${step}: ${saidOf(reached)}\n`);
    },
    end: () => {
      if (stream.isTTY === true) stream.write('\r\x1b[2K');
    },
  };
}
