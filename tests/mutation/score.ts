/** What of the tool's report is read: every change made to every file, and what became of it. */
export interface Mutants {
  readonly files: Readonly<
    Record<
      string,
      {
        readonly source: string;
        readonly mutants: readonly {
          readonly status: string;
          readonly replacement: string;
          readonly location: Readonly<Record<'start' | 'end', { readonly line: number; readonly column: number }>>;
        }[];
      }
    >
  >;
}

/** How many changes were made, and how many of them the tests noticed; those of code that runs before any test are left out. */
export interface Score {
  readonly all: number;
  readonly noticed: number;
  /** A change after which a test does not end is noticed, too. */
  readonly tooLong: number;
  readonly missed: number;
}

/** Adds up a report. */
export function scoreOf({ files }: Mutants): Score {
  const statuses = Object.values(files).flatMap(({ mutants }) => mutants.map(({ status }) => status));
  const count = (...wanted: readonly string[]) => statuses.filter((status) => wanted.includes(status)).length;
  const [noticed, tooLong, missed] = [count('Killed'), count('Timeout'), count('Survived', 'NoCoverage')];
  return { all: noticed + tooLong + missed, noticed, tooLong, missed };
}

/** The changes that no test noticed, as `file:line before → after`. */
export function survivorsOf({ files }: Mutants): readonly string[] {
  return Object.entries(files).flatMap(([file, { source, mutants }]) => {
    const lines = source.split('\n');
    return mutants
      .filter(({ status }) => status === 'Survived' || status === 'NoCoverage')
      .map(({ location: { start, end }, replacement }) => {
        const before = lines[start.line - 1]!.slice(
          start.column - 1,
          start.line === end.line ? end.column - 1 : undefined,
        );
        return `${file}:${start.line} ${before} → ${replacement.replace(/\s+/g, ' ').slice(0, 100)}`;
      });
  });
}
