import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** The folders of src/ from left to right; imports point left only. */
export const folderLine = [
  'problem',
  'record',
  'intake',
  'store',
  'statistic',
  'finding',
  'formula',
  'notebook',
  'chart',
  'report',
  'command',
  'library',
];

/** A source file with what it imports. */
export interface Source {
  /** The path below src/. */
  readonly path: string;
  readonly folder: string;
  readonly text: string;
  /** Paths below src/ of its own imports, and the names of packages. */
  readonly imports: readonly string[];
  readonly packages: readonly string[];
}

const importing =
  /(?:^|\n)\s*(?:import|export)\s[^;'"]*?from\s+'([^']+)'|(?:^|\n)\s*import\s+'([^']+)'|import\('([^']+)'\)/g;

/** Every source file of the program. */
export function readSources(): readonly Source[] {
  return readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts'))
    .sort()
    .map((path) => {
      const text = readFileSync(join(root, 'src', path), 'utf8');
      const targets = [...text.matchAll(importing)].map((match) => match[1] ?? match[2] ?? match[3]!);
      const own = targets.filter((target) => target.startsWith('.'));
      return {
        path,
        folder: path.split('/')[0]!,
        text,
        imports: own.map((target) => normalize(join(dirname(path), target)).replace(/\.js$/, '.ts')),
        packages: targets.filter((target) => !target.startsWith('.')),
      };
    });
}

/** A source's text without comments, and without what stands in quotes. */
export function bareCode(text: string): string {
  return text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/(^|[^:'"`\\])\/\/[^\n]*/g, '$1')
    .replace(/'(?:[^'\\\n]|\\.)*'/g, "''")
    .replace(/`(?:[^`\\]|\\.)*`/g, '``');
}
