import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type ImportResult, importExports } from '../../src/intake/import-exports.js';
import { writeLoad } from './load.js';

const seed = 20_250_401;
const crosswalk = fileURLToPath(new URL('load.crosswalk.yaml', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'load-'));

/** A place as the load's list of spoilt places names it, with the kind of slip. */
type Slip = readonly [file: string, line: string, column: string, kind: string];
let slips: readonly Slip[];
/** The line on which each row of inspections begins, with the key it came by before it was spoilt, and the key it has. */
let inspections: readonly { readonly line: number; readonly own: string; readonly key: string }[];
let result: ImportResult;

const lines = (file: string): readonly string[] => readFileSync(join(folder, file), 'latin1').split('\n').slice(0, -1);

beforeAll(async () => {
  writeLoad(20_000, folder, seed);
  slips = lines('truth.csv')
    .slice(1)
    .map((line) => line.split(',') as [string, string, string, string]);
  inspections = lines('inspections.csv')
    .flatMap((text, index) => (index === 0 || text.startsWith('line two') ? [] : [{ text, line: index + 1 }]))
    .map(({ text, line }, index) => ({
      line,
      own: `I${String(index + 1).padStart(9, '0')}`,
      key: text.slice(0, text.indexOf(',')),
    }));
  result = await importExports({
    crosswalks: [crosswalk],
    from: folder,
    key: new Uint8Array(16).fill(7),
    progress: () => {},
  });
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The lines of inspections that are repeats of a row which is kept; a row whose earlier twin was spoilt is none. */
function trueRepeats(): ReadonlySet<number> {
  const ofInspections = slips.filter(([file]) => file === 'inspections.csv');
  const repeats = new Set(ofInspections.filter(([, , , kind]) => kind === 'duplicate').map(([, line]) => Number(line)));
  const spoilt = new Set(ofInspections.filter(([, , , kind]) => kind !== 'duplicate').map(([, line]) => Number(line)));
  const kept = new Set<string>();
  const found = new Set<number>();
  for (const { line, key } of inspections) {
    if (spoilt.has(line)) continue;
    if (repeats.has(line) && kept.has(key)) found.add(line);
    else kept.add(key);
  }
  return found;
}

/** Places set aside beyond the load's own list: rows that follow their inspection, which is set aside or lost its key. */
const isFollowing = (code: string, seen: string, lostKeys: ReadonlySet<string>): boolean =>
  code === 'parent-set-aside' || (code === 'unknown-reference' && lostKeys.has(seen));

test('what is set aside of the load is what was spoilt: none missing, none extra', () => {
  const repeats = trueRepeats();
  const expected = slips
    .filter(([, line, , kind]) => kind !== 'duplicate' || repeats.has(Number(line)))
    .map(([file, line, column]) => `${file}:${line} ${column}`);
  const keys = new Set(inspections.map(({ key }) => key));
  const lostKeys = new Set(inspections.flatMap(({ own }) => (keys.has(own) ? [] : [own])));
  const places = result.setAside
    .filter(({ code, seen }) => !isFollowing(code, seen, lostKeys))
    .map(({ file, line, column }) => `${file}:${line} ${column}`);
  expect(places.length).toBeGreaterThan(2000);
  expect([...places].sort()).toEqual([...expected].sort());
});

test('every look and wash of an inspection that is set aside follows it, and no other', () => {
  const gone = new Set(result.setAside.filter(({ file }) => file === 'inspections.csv').map(({ line }) => line));
  const kept = new Set(inspections.flatMap(({ line, key }) => (gone.has(line) ? [] : [key])));
  const met = new Set(inspections.map(({ key }) => key));
  const follows = (key: string) => met.has(key) && !kept.has(key);
  const expected = [
    ...lines('component_checks.csv').flatMap((text, index) =>
      follows(text.split(',')[0]!) && text.split(',').length === 6 ? [`component_checks.csv:${index + 1}`] : [],
    ),
    ...lines('decontaminations.csv').flatMap((text, index) =>
      follows(text.split(',')[1]!) ? [`decontaminations.csv:${index + 1}`] : [],
    ),
  ];
  const following = result.setAside.filter(({ code }) => code === 'parent-set-aside');
  expect(expected.length).toBeGreaterThan(1000);
  expect(following.map(({ file, line }) => `${file}:${line}`).sort()).toEqual(expected.sort());
});

test('rows read are rows kept and rows set aside, and every row set aside is told with its text', () => {
  for (const { file, read, kept, setAside } of result.sum.files) {
    expect(kept + setAside, file).toBe(read);
    const told = result.setAsideRows.filter((row) => row.file === file);
    expect(told, file).toHaveLength(setAside);
    const text = lines(file);
    const ragged = new Set(slips.flatMap((slip) => (slip[0] === file && slip[2] === '' ? [Number(slip[1])] : [])));
    for (const { line, row } of told) {
      expect(row.split('\n')[0], `${file}:${line}`).toBe(maskedAs(file, text[line - 1]!, ragged.has(line)));
    }
  }
});

/** The row as a ledger may show it: private cells withheld, and ragged rows of a file that has any withheld altogether. */
function maskedAs(file: string, text: string, isRagged: boolean): string {
  const place = file === 'inspections.csv' ? 17 : file === 'decontaminations.csv' ? 6 : null;
  if (place === null) return text;
  return isRagged ? 'withheld' : text.split(',').with(place, 'withheld').join(',');
}
