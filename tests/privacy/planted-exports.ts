import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { writeExports } from '../../datasets/quillwater/generate.js';

/** What every private cell begins with; nothing else in exports, notebooks or pages does. */
export const mark = 'Zqmark';

interface FileSection {
  readonly files: string | readonly string[];
  readonly dialect: { readonly delimiter: 'comma' | 'semicolon' };
  readonly columns: Readonly<Record<string, { readonly private?: 'drop' | 'hash' }>>;
}

/** The private columns that the demo's crosswalks declare, by a pattern of file names. */
function privateColumns(crosswalks: readonly string[]) {
  return crosswalks.flatMap((path) => {
    const { files } = parse(readFileSync(path, 'utf8')) as { files: readonly FileSection[] };
    return files.flatMap(({ files: patterns, dialect, columns }) => {
      const names = Object.entries(columns).flatMap(([name, column]) => (column.private === undefined ? [] : [name]));
      const delimiter = dialect.delimiter === 'comma' ? ',' : ';';
      return names.length === 0 ? [] : [{ patterns: [patterns].flat(), delimiter, names }];
    });
  });
}

/** One physical line cut at delimiters outside of quotes; an open quote runs to its end. */
function cut(line: string, delimiter: string): string[] {
  const cells = [''];
  let isQuoted = false;
  for (const letter of line) {
    if (letter === '"') isQuoted = !isQuoted;
    if (letter === delimiter && !isQuoted) cells.push('');
    else cells[cells.length - 1] += letter;
  }
  return cells;
}

/**
 * Writes a small basin with its honest dirt, and puts a mark of its own into every private cell of every line, sound or
 * spoilt, empty or not. Says how many were planted in each column.
 */
export async function plantExports(
  folder: string,
  crosswalks: readonly string[],
): Promise<ReadonlyMap<string, number>> {
  await writeExports(folder, { scale: 0.05 });
  const planted = new Map<string, number>();
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.csv'));
  for (const { patterns, delimiter, names } of privateColumns(crosswalks)) {
    const expressions = patterns.map((pattern) => new RegExp(`^${pattern.replaceAll('*', '[^/]*')}$`));
    for (const file of files.filter((name) => expressions.some((expression) => expression.test(name)))) {
      const [header, ...lines] = readFileSync(join(folder, file), 'utf8').split('\n');
      const headings = cut(header!.trim().replace('\uFEFF', ''), delimiter);
      const changed = lines.map((line, index) => {
        const cells = cut(line, delimiter);
        for (const name of names) {
          const at = headings.indexOf(name);
          if (at < 0 || at >= cells.length || cells.length < 3) continue;
          const end = cells[at]!.endsWith('\r') ? '\r' : '';
          cells[at] = `${mark} ${name} ${index % 50}${end}`;
          planted.set(`${file} ${name}`, (planted.get(`${file} ${name}`) ?? 0) + 1);
        }
        return cells.join(delimiter);
      });
      writeFileSync(join(folder, file), [header, ...changed].join('\n'));
    }
  }
  return planted;
}
