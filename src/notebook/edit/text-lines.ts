/** A text's lines without their ends, and the end that its lines have: what an edit of some lines leaves alone stays as it was. */
export interface TextLines {
  readonly lines: readonly string[];
  /** The end of each line, the last line's included (empty where the text ends without one). */
  readonly ends: readonly string[];
  /** What ends a line that is added. */
  readonly end: string;
}

/** The lines of a text. */
export function linesOf(text: string): TextLines {
  const lines: string[] = [];
  const ends: string[] = [];
  for (const [, line = '', end = ''] of text.matchAll(/([^\r\n]*)(\r\n|\n|\r|$)/g)) {
    if (line === '' && end === '') break;
    lines.push(line);
    ends.push(end);
  }
  return { lines, ends, end: ends.find((end) => end !== '') ?? '\n' };
}

/** Some lines, from the first to the last (from 1, both included), as one text with `\n` between. */
export function linesBetween({ lines }: TextLines, first: number, last: number): string {
  return lines.slice(first - 1, last).join('\n');
}

/** The text in which lines from `first` to `last` are replaced by others; with `last` one less than `first` they are put in before it. */
export function withLines(text: TextLines, first: number, last: number, replacement: readonly string[]): string {
  const { lines, ends, end } = text;
  const before = lines.slice(0, first - 1).map((line, at) => line + (ends[at] === '' ? end : ends[at]!));
  const after = lines.slice(last).map((line, at) => line + ends[last + at]!);
  const kept = replacement.map((line, at) => {
    const own = first - 1 + at < last ? ends[first - 1 + at]! : end;
    return line + (own === '' && (at < replacement.length - 1 || after.length > 0) ? end : own);
  });
  // A text that ended without a line's end is given back without one.
  const whole = [...before, ...kept, ...after].join('');
  return ends.at(-1) === '' && after.length === 0 && whole.endsWith(end) && lines.length > 0
    ? whole.slice(0, -end.length)
    : whole;
}
