import { type Problem, wholeFile } from '../problem/problem.js';
import { pathPattern } from './path-pattern.js';
import { holdsFiles, isWorkbookName } from './source/container.js';
import { membersOf } from './source/members.js';
import { SourceError } from './source/text-source.js';

function whichOne(file: string, held: readonly string[]): Problem {
  const names = held.map((path) => path.slice(file.length + 1));
  return {
    code: 'which-member',
    severity: 'stops',
    place: wholeFile(file),
    seen: names.length === 0 ? 'nothing' : names.slice(0, 20).join(', '),
    wanted: 'one file or sheet, or its name',
    remedy: names.length === 0 ? 'Export it again.' : `Name it in the crosswalk, as in ${file}/${names[0]}.`,
  };
}

/** Of those within each file named, the only one; a problem for a file that holds more, or none. */
function onlyOnes(files: Iterable<string>, held: readonly string[], problems: Problem[]): readonly string[] {
  return [...files].flatMap((file) => {
    const within = held.filter((path) => path.startsWith(`${file}/`));
    if (within.length === 1) return within;
    problems.push(whichOne(file, within));
    return [];
  });
}

/**
 * The files within archives and workbooks that a pattern names, such as `lakes/2025.zip/forms-*.csv` or `book.xlsx/Season*`.
 * An archive or workbook named without what is in it stands for its only file or sheet.
 */
export async function heldFiles(
  pattern: string,
  from: string,
  below: readonly string[],
  problems: Problem[],
): Promise<readonly string[]> {
  const names = pattern.split('/');
  const holder = names.findIndex(holdsFiles);
  if (holder < 0) return [];
  const outer = pathPattern(names.slice(0, holder + 1).join('/'));
  const expression = pathPattern(pattern);
  const found: string[] = [];
  for (const file of below.filter((path) => outer.test(path))) {
    const held = await membersOf(from, file).catch((error: unknown) => {
      if (!(error instanceof SourceError)) throw error;
      problems.push({ ...error.fault, severity: 'stops', place: wholeFile(file) });
      return null;
    });
    if (held === null) continue;
    const matching = held.filter((path) => expression.test(path));
    if (matching.length > 0) found.push(...matching);
    else if (holder === names.length - 1) found.push(...onlyOnes([file], held, problems));
    else if (isWorkbookName(names.at(-1)!)) {
      const books = new Set(
        held.map((path) => path.slice(0, path.lastIndexOf('/'))).filter((path) => expression.test(path)),
      );
      found.push(...onlyOnes(books, held, problems));
    }
  }
  return found;
}
