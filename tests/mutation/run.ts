// npm run mutation -- FOLDER...: changes src/FOLDER piece by piece and counts how many changes the tests notice.
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from '../command/run.js';
import { type Mutants, scoreOf, survivorsOf } from './score.js';

const folders = process.argv.slice(2);
if (folders.length === 0) {
  console.error('Name folders below src/, such as statistic/proportion or formula/unit.');
  process.exit(2);
}

// The tool weighs 60 MB and is asked for a few times a year: it is installed beside a copy of the checkout, not in it.
const tool = '9.6.1';
const copy = join(tmpdir(), 'rampbook-mutation');
const npm = (...words: string[]) =>
  execFileSync('npm', [...words, '--no-audit', '--no-fund'], { cwd: copy, stdio: 'ignore' });

mkdirSync(copy, { recursive: true });
for (const name of [
  'src',
  'tests',
  'datasets',
  'notebooks',
  'bin',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
]) {
  rmSync(join(copy, name), { recursive: true, force: true });
  cpSync(join(root, name), join(copy, name), { recursive: true });
}
if (!existsSync(join(copy, 'node_modules/@stryker-mutator/vitest-runner'))) {
  console.log(`Installing the tool and the packages into ${copy} …`);
  npm('ci', '--ignore-scripts');
  npm(
    'install',
    '--no-save',
    '--ignore-scripts',
    `@stryker-mutator/core@${tool}`,
    `@stryker-mutator/vitest-runner@${tool}`,
  );
}

/** The tests that must notice: those of the folder itself, and for statistics the worked cases made elsewhere. */
function testsOf(folder: string): readonly string[] {
  const own = `tests/${folder.split('/')[0]}/**/*.test.ts`;
  return folder.startsWith('statistic') ? [own, 'tests/reference/reference.test.ts'] : [own];
}

console.log('| src/ | changes | noticed | by running too long | not noticed | score |');
console.log('|---|---|---|---|---|---|');
const survivors: string[] = [];
for (const folder of folders) {
  const settings = { include: testsOf(folder), testTimeout: 20_000 };
  const vitest = `import { defineConfig } from 'vitest/config';\nexport default defineConfig({ test: ${JSON.stringify(settings)} });\n`;
  writeFileSync(join(copy, 'vitest.mutation.ts'), vitest);
  const configuration = {
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'vitest.mutation.ts' },
    // Its rewriting of a TypeScript configuration asks for an interface that TypeScript 7 no longer has, and is not needed.
    tsconfigFile: 'none.json',
    mutate: [existsSync(join(root, 'src', folder)) ? `src/${folder}/**/*.ts` : `src/${folder}.ts`],
    mutator: { excludedMutations: ['StringLiteral'] },
    ignoreStatic: true,
    coverageAnalysis: 'perTest',
    concurrency: 1,
    timeoutMS: 6000,
    reporters: ['json'],
    jsonReporter: { fileName: 'mutation.json' },
    tempDirName: '.trial',
  };
  writeFileSync(join(copy, 'stryker.config.json'), JSON.stringify(configuration));
  const { status } = spawnSync('npx', ['stryker', 'run'], { cwd: copy, stdio: ['ignore', 'ignore', 'inherit'] });
  if (status !== 0) throw new Error(`the tool ended with ${status} in ${folder}`);
  const mutants = JSON.parse(readFileSync(join(copy, 'mutation.json'), 'utf8')) as Mutants;
  const { all, noticed, tooLong, missed } = scoreOf(mutants);
  console.log(
    `| ${[folder, all, noticed, tooLong, missed, `${((100 * (all - missed)) / all).toFixed(1)} %`].join(' | ')} |`,
  );
  survivors.push(...survivorsOf(mutants));
}
console.log(`\nNot noticed:\n${survivors.join('\n')}`);
