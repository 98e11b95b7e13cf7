import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root } from '../command/run.js';

/** A place in a file; lines and columns count from 0. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** One change to one place of one file. */
export interface Change {
  readonly id: string;
  /** `Ignored` where the tool left it out. */
  readonly status?: string;
  /** The file's whole path in the copy. */
  readonly fileName: string;
  readonly replacement: string;
  readonly location: { readonly start: Place; readonly end: Place };
}

interface Written {
  readonly name: string;
  readonly content: string;
  readonly mutate: true;
}

/** What of the tool is used: it gives each file with all changes in it, each behind a switch, and says what they are. */
interface Tool {
  readonly Instrumenter: new (
    logger: Readonly<Record<string, () => unknown>>,
  ) => {
    instrument(
      files: readonly Written[],
      options: object,
    ): Promise<{ readonly files: readonly Written[]; readonly mutants: readonly Change[] }>;
  };
}

// The tool is asked for a few times a year: it is installed beside a copy of the checkout, not in it.
const version = '9.6.1';
const home = join(tmpdir(), 'rampbook-mutation');

/** Where the copy stands. */
export const copy = join(home, 'copy');

async function installedTool(): Promise<Tool> {
  const folder = join(home, 'tool');
  const entry = join(folder, 'node_modules/@stryker-mutator/instrumenter/dist/src/index.js');
  if (!existsSync(entry)) {
    console.error(`Installing the tool into ${folder} …`);
    mkdirSync(folder, { recursive: true });
    const words = ['install', '--prefix', folder, '--ignore-scripts', '--no-audit', '--no-fund'];
    execFileSync('npm', [...words, `@stryker-mutator/instrumenter@${version}`], { stdio: 'ignore' });
  }
  return (await import(pathToFileURL(entry).href)) as Tool;
}

/** A fresh copy of what the tests read. Earlier changes are gone from it. */
export function takeCopy(): void {
  rmSync(copy, { recursive: true, force: true });
  mkdirSync(copy, { recursive: true });
  for (const name of ['src', 'tests', 'datasets', 'notebooks', 'bin', 'package.json', 'tsconfig.json']) {
    cpSync(join(root, name), join(copy, name), { recursive: true });
  }
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
}

/**
 * The files below src/ that a name stands for: a folder with all below it (`statistic/survival`), the files of a folder
 * alone (`formula/*`), or one file (`statistic/quantile`). Throws where there are none.
 */
export function filesOf(name: string): readonly string[] {
  const loose = name.endsWith('/*');
  const path = join('src', loose ? name.slice(0, -2) : name);
  if (existsSync(join(root, `${path}.ts`))) return [`${path}.ts`];
  if (!existsSync(join(root, path))) throw new Error(`nothing below src/ is called ${name}`);
  return readdirSync(join(root, path), { recursive: !loose, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .sort()
    .map((file) => join(path, file));
}

/** Puts every change to these files into the copy, each switched off, and tells them. Strings are not changed. */
export async function changesTo(files: readonly string[]): Promise<readonly Change[]> {
  const { Instrumenter } = await installedTool();
  const quiet = () => false;
  const tool = new Instrumenter({ debug: quiet, info: quiet, warn: quiet, isDebugEnabled: quiet });
  const plain = files.map((file) => {
    return { name: join(copy, file), content: readFileSync(join(root, file), 'utf8'), mutate: true as const };
  });
  const options = { plugins: null, excludedMutations: ['StringLiteral'], ignorers: [] };
  const { files: changed, mutants } = await tool.instrument(plain, options);
  for (const { name, content } of changed) writeFileSync(name, content);
  return mutants.filter(({ status }) => status !== 'Ignored');
}
