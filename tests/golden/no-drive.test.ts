import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { writeExports } from '../../datasets/quillwater/generate.js';
import { newFolder, rampbook, root } from '../command/run.js';

const training = join(root, 'notebooks/training-focus.md');

/** Fouled craft of one type over the seasons that the training page draws, by part, whatever their drive. */
const byDrive = `
# By drive

Sheet sites: fouling sites of checks where season between 2023 and 2025 and extent is "full" and watercraft_type is "open motorboat", by drive.
`;

interface Evaluated {
  readonly sheets: Readonly<Record<string, { readonly rows: readonly Readonly<Record<string, { value: unknown }>>[] }>>;
}

const folder = newFolder();
const dataset = join(root, 'datasets/quillwater');
const exported = join(folder, 'exports');

/** A store of the small basin, by crosswalks that may be changed before they are read. */
function storeOf(name: string, change: (crosswalk: string) => string): string {
  const crosswalks = ['lakes', 'roads', 'office'].map((file) => {
    const path = join(folder, `${name}-${file}.crosswalk.yaml`);
    writeFileSync(path, change(readFileSync(join(dataset, `${file}.crosswalk.yaml`), 'utf8')));
    return path;
  });
  const store = join(folder, name);
  expect(rampbook(['import', ...crosswalks, '--from', exported, '--store', store, '--json']).exitCode).toBe(0);
  return store;
}

/** Fouled craft by part in the rows of a sheet that a test picks, over all of them. */
function fouled(
  { sheets }: Evaluated,
  sheet: string,
  picked: (row: Readonly<Record<string, { value: unknown }>>) => boolean,
): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const row of sheets[sheet]!.rows.filter(picked)) {
    const part = String(row.component!.value);
    sums.set(part, (sums.get(part) ?? 0) + Number(row.fouled!.value));
  }
  return sums;
}

beforeAll(() => writeExports(exported, { scale: 0.3 }));

test('a program whose forms never ask the drive has its craft drawn, and counted as those by drive together', () => {
  const told = storeOf('told', (crosswalk) => crosswalk);
  const untold = storeOf('untold', (crosswalk) => {
    return crosswalk.replace(/^( +(?:engine|drive)): \{ field: drive,.*$/gm, '$1: { private: drop }');
  });
  const to = join(folder, 'reports');
  const reported = rampbook(['report', training, '--store', untold, '--to', to, '--quiet']);
  expect(reported.err).toBe('');
  expect(reported.exitCode).toBe(0);
  const page = readFileSync(join(to, 'training-focus.html'), 'utf8');
  const drawn = [...page.matchAll(/<summary>([^<]*); drive not recorded<\/summary>/g)].map(([, caption]) => caption!);
  const types = ['Open motorboat', 'Cabin motorboat', 'Pontoon boat', 'Houseboat', 'Sailboat with an engine'];
  const starts = types.flatMap((type) => [type, `Handout, one page: Where to look: ${type[0]!.toLowerCase()}`]);
  for (const start of starts)
    expect(drawn.filter((caption) => caption.startsWith(start)).length, start).toBeGreaterThan(0);
  expect(page).not.toMatch(/<summary>[^<]*; drive: /);

  const notebook = join(folder, 'by-drive.md');
  writeFileSync(notebook, byDrive);
  const evaluate = (file: string, store: string): Evaluated =>
    JSON.parse(rampbook(['evaluate', file, '--store', store, '--json']).out);
  const together = fouled(evaluate(notebook, told), 'sites', () => true);
  const whole = fouled(
    evaluate(training, untold),
    'by_build',
    (row) => row.watercraft_type!.value === 'open motorboat',
  );
  expect([...whole].sort()).toEqual([...together].sort());
  expect(whole.get('hull below waterline')).toBeGreaterThan(5);
  expect(whole.get('outdrive lower unit')).toBeGreaterThan(0);
});
