// The benchmark: whole processes, several runs, medians, the program and a general database side by side in one sitting.
// Words: --large for ten million inspections too, --runs N, --small to stop at 100,000, --pages for pages alone.
// Prints Markdown.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { availableParallelism, cpus, loadavg, tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeDemoSeason } from './demo-season.js';
import { writeLoad } from './load.js';
import { type MeasuredRun, measuredRun, median } from './measured-run.js';
import { pageLines } from './pages.js';

const words = process.argv.slice(2);
const root = fileURLToPath(new URL('../..', import.meta.url));
const crosswalk = fileURLToPath(new URL('load.crosswalk.yaml', import.meta.url));
const runs = words.includes('--runs') ? Number(words[words.indexOf('--runs') + 1]) : 3;
const largest = words.includes('--small') ? 100_000 : words.includes('--large') ? 10_000_000 : 1_000_000;
const sizes = [10_000, 100_000, 1_000_000, 10_000_000].filter((size) => size <= largest);
const folder = mkdtempSync(join(tmpdir(), 'rampbook-bench-'));
// Within the project, so that the built program finds its packages.
const built = join(root, 'dist/bench/src');
const program = join(built, 'command/main.js');
const tsx = ['--import', import.meta.resolve('tsx/esm')];
const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

function build(): void {
  rmSync(join(built, '..'), { recursive: true, force: true });
  mkdirSync(built, { recursive: true });
  // Types are checked by the tests; here only the built files are wanted.
  const words = ['-p', join(root, 'src/tsconfig.build.json'), '--outDir', built, '--noCheck', '--declaration', 'false'];
  execFileSync(join(root, 'node_modules/.bin/tsc'), words, { stdio: 'inherit' });
  execFileSync('cp', [join(root, 'package.json'), join(built, '..')]);
}

const hasPeer = existsSync(join(root, 'node_modules/@duckdb/node-api'));

interface Row {
  readonly name: string;
  readonly measured: readonly MeasuredRun[];
}

async function sideBySide(processes: Readonly<Record<string, () => readonly string[]>>): Promise<readonly Row[]> {
  const rows = Object.keys(processes).map((name) => ({ name, measured: [] as MeasuredRun[] }));
  for (let run = 0; run < runs; run++) {
    for (const row of rows) row.measured.push(await measuredRun(processes[row.name]!()));
  }
  return rows;
}

const two = (number: number): string => number.toPrecision(number >= 100 ? 3 : 2);
const grouped = (number: number): string => String(number).replace(/\B(?=(\d{3})+$)/g, ',');
const say = (line: string): void => void process.stdout.write(`${line}\n`);

async function imports(count: number): Promise<void> {
  const exports = join(folder, String(count));
  const { bytes, rows } = writeLoad(count, exports, 42);
  const store = `${exports}-store`;
  const starting = (start: readonly string[]) => () => {
    rmSync(store, { recursive: true, force: true });
    return [...start, 'import', crosswalk, '--from', exports, '--store', store, '--quiet'];
  };
  const measured = await sideBySide({
    'read, check and link alone': () => [here('import-alone.mjs'), built, crosswalk, exports],
    '`rampbook import`, built': starting([program]),
    '`rampbook import`, from a checkout': starting([join(root, 'bin/rampbook')]),
    ...(hasPeer
      ? { 'DuckDB, 2 threads: read, join, count; no checks': () => [here('peer-database.mjs'), exports] }
      : {}),
  });
  const peer = measured.find(({ name }) => name.startsWith('DuckDB'));
  const wallOf = (row: Row) => median(row.measured.map(({ seconds }) => seconds));
  const peakOf = (row: Row) => median(row.measured.map(({ peakMegabytes }) => peakMegabytes));
  for (const row of measured) {
    const wall = wallOf(row);
    const walls = row.measured.map(({ seconds }) => seconds);
    const ratio = (of: (one: Row) => number) => (peer === undefined || row === peer ? '1' : two(of(row) / of(peer)));
    say(
      `| ${[
        grouped(count),
        `${Math.round(bytes / 1e6)}`,
        row.name,
        `${two(wall)} (${two(Math.min(...walls))}–${two(Math.max(...walls))})`,
        two(median(row.measured.map(({ cpuSeconds }) => cpuSeconds))),
        Math.round(peakOf(row)),
        two((wall * 1e6) / rows),
        Math.round((peakOf(row) * 2 ** 20) / count),
        peer === undefined ? '' : ratio(wallOf),
        peer === undefined ? '' : ratio(peakOf),
      ].join(' | ')} |`,
    );
  }
}

function timed(part: string, store: string): string {
  const script = here('timed-parts.ts');
  const done = spawnSync(process.execPath, [...tsx, script, built, store, part], { encoding: 'utf8' });
  if (done.status !== 0) throw new Error(done.stderr);
  return two(Number(done.stdout));
}

/** All notebooks as pages of a stored season of the invented basin, and those pages in a browser. */
async function pages(): Promise<void> {
  const store = await writeDemoSeason(folder, program, tsx);
  const to = join(folder, 'pages');
  const notebooks = readdirSync(join(root, 'notebooks')).map((name) => join(root, 'notebooks', name));
  const measured = await sideBySide({
    whole: () => [program, 'report', ...notebooks, '--store', store, '--to', to, '--quiet'],
    computing: () => [here('compute-alone.mjs'), built, store, ...notebooks],
  });
  const [whole, computing] = measured.map((row) => median(row.measured.map(({ cpuSeconds }) => cpuSeconds)));
  const wall = median(measured[0]!.measured.map(({ seconds }) => seconds));
  const share = Math.round((100 * (whole! - computing!)) / whole!);
  say('');
  say('Of a stored season of 100,000 inspections of the invented basin, and in a browser (file://, 1280 × 800):');
  say('');
  say('| what | took | wanted |');
  say('|---|---|---|');
  say(
    `| all ${notebooks.length} notebooks as pages, cold process | ${two(wall)} s, ${two(whole!)} s CPU | 3 s for five |`,
  );
  say(`| of which drawing, packing and writing | ${share} % of CPU | under half |`);
  say('');
  for (const line of await pageLines(to)) say(line);
}

function others(count: number): void {
  const store = join(folder, `${count}-store`);
  say('');
  say(`Of a stored season of ${grouped(count)} inspections of the load:`);
  say('');
  say('| what | took |');
  say('|---|---|');
  say(`| reading the store, warm | ${timed('reading', store)} ms |`);
  say(`| 2,000 resamples of the ranks of 30 parts over 50,000 craft, warm | ${timed('ranks', store)} ms |`);
}

try {
  build();
  const [processor] = cpus();
  const memory = Math.round(totalmem() / 2 ** 30);
  say(
    `${processor?.model.trim()}, ${availableParallelism()} processors, ${memory} GB, Node ${process.version}, ` +
      `${new Date().toISOString().slice(0, 10)}; medians of ${runs} runs (least–most); load average ${loadavg()[0]!.toFixed(1)} at the start.`,
  );
  if (!hasPeer) say('DuckDB is not installed here: nothing to compare with.');
  say('');
  if (!words.includes('--pages')) await importing();
  await pages();
} finally {
  rmSync(folder, { recursive: true, force: true });
  rmSync(join(built, '..'), { recursive: true, force: true });
}

/** Imports of all sizes beside the database, and what is asked of the store of one. */
async function importing(): Promise<void> {
  say(
    '| inspections | MB | program | wall s | CPU s | peak MB | µs a row | bytes an inspection | wall ÷ DuckDB | memory ÷ DuckDB |',
  );
  say('|---|---|---|---|---|---|---|---|---|---|');
  for (const count of sizes) await imports(count);
  others(100_000);
}
