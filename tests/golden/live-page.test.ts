import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { writeExports } from '../../datasets/quillwater/generate.js';
import { openSeason } from '../../src/command/open-season.js';
import { restrictedBook } from '../../src/finding/book/restricted-book.js';
import { watchedBook } from '../../src/finding/book/watched-book.js';
import { withChangedInputs } from '../../src/notebook/changed-inputs.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { Memory } from '../../src/notebook/memory.js';
import { type ReadNotebook, readDocument } from '../../src/notebook/read-document.js';
import type { Book } from '../../src/record/book.js';
import { packSeason } from '../../src/report/carried/pack-season.js';
import { filterOffers, notRecorded, seasonsIn } from '../../src/report/choice/filter-offers.js';
import { newFolder, rampbook, root } from '../command/run.js';
import { bundleScript } from '../report/bundle-script.js';
import type { HandedChoice } from '../report/carried/count-outside.js';

let book: Book;
let runner: string;
const folder = newFolder();

const runBundle = `
const { readFileSync } = require('node:fs');
const [season, choices] = process.argv.slice(2).map((file) => readFileSync(file));
process.stdout.write(JSON.stringify(globalThis.countOutside(season, JSON.parse(choices))));
`;

beforeAll(async () => {
  const store = join(folder, 'store');
  await writeExports(join(folder, 'exports'));
  const crosswalks = ['lakes', 'roads', 'office'].map((name) =>
    join(root, `datasets/quillwater/${name}.crosswalk.yaml`),
  );
  expect(
    rampbook(['import', ...crosswalks, '--from', join(folder, 'exports'), '--store', store, '--quiet']).exitCode,
  ).toBe(0);
  const season = await openSeason(store);
  if ('problems' in season) throw new Error('the demo’s store did not open');
  book = season.book;
  runner = join(folder, 'runner.cjs');
  writeFileSync(runner, (await bundleScript('tests/report/carried/count-outside.ts')) + runBundle);
});

/** Other values for inputs of the budget's pages, which let nobody choose records. */
const otherInputs: readonly HandedChoice[] = [
  { only: [], inputs: [] },
  {
    only: [],
    inputs: [
      ['wage', '31'],
      ['extra_hours', '900'],
      ['reached', '75'],
    ],
  },
  {
    only: [],
    inputs: [
      ['portable_price', '7,500'],
      ['unit_station', 'heron-point'],
      ['discount', '5'],
    ],
  },
];

/** Some choices a reader of the demo might make; the same ones in every run. */
function choices(count: number): readonly HandedChoice[] {
  const fields = filterOffers(book, ['station', 'month', 'watercraft_type', 'last_waterbody']);
  const one = fc.record({
    only: fc
      .tuple(
        ...fields.map(({ field, values }) => {
          const value = fc.constantFrom(...values.map(({ value }) => (value === notRecorded ? null : value)));
          return fc.option(
            value.map((chosen) => [field, chosen] as const),
            { freq: 2, nil: undefined },
          );
        }),
      )
      .map((pairs) => pairs.filter((pair) => pair !== undefined)),
    inputs: fc
      .subarray(['this_season', 'last_season', 'first_season', 'release_target'])
      .chain((names) =>
        fc.tuple(
          ...names.map((name) =>
            fc
              .constantFrom(...(name === 'release_target' ? ['60', '120'] : seasonsIn(book)))
              .map((value) => [name, value] as const),
          ),
        ),
      ),
  });
  return fc.sample(one, { numRuns: count, seed: 8 });
}

/** The notebook as the command computes it for a choice. */
function byCommand(read: ReadNotebook, { only, inputs }: HandedChoice): unknown {
  const document = withChangedInputs(read.document, new Map(inputs));
  const { notebook } = computeNotebook({ ...read, document }, restrictedBook(book, new Map(only)), 'fingerprint');
  const { selections, figures, sheets } = notebook;
  return JSON.parse(JSON.stringify({ selections: [...selections], figures: [...figures], sheets: [...sheets] }));
}

describe('a page counts what the command counts, to the last digit, where no text can become code', () => {
  test.each(['season', 'training-focus'])('%s, for choices drawn at random', (name) => {
    const drawn: readonly HandedChoice[] = [{ only: [], inputs: [] }, ...choices(5)];
    hold(name, readNotebook(name), drawn);
  });

  test.each([
    ['budget-request', otherInputs],
    ['board-brief', otherInputs.slice(0, 2)],
  ])('%s, for other inputs', (name, drawn) => {
    const read = readNotebook(name);
    const settings = { ...read.document.settings, resamples: 200 };
    hold(name, { ...read, document: { ...read.document, settings } }, drawn);
  });
});

function readNotebook(name: string): ReadNotebook {
  const file = join(root, `notebooks/${name}.md`);
  return readDocument(file, readFileSync(file, 'utf8'));
}

/** Holds what the bundle of a page gives for choices against what the command gives. */
function hold(name: string, read: ReadNotebook, drawn: readonly HandedChoice[]): void {
  const memory = new Memory();
  const watched = watchedBook(book, () => memory.making ?? '');
  const packed = packSeason(computeNotebook(read, watched.book, 'fingerprint', memory), watched.asked);
  const season = join(folder, `${name}.season`);
  writeFileSync(season, packed!);
  const asked = join(folder, `${name}.json`);
  writeFileSync(asked, JSON.stringify(drawn));
  const flags = ['--disallow-code-generation-from-strings', runner, season, asked];
  const counted: readonly Record<string, unknown>[] = JSON.parse(
    execFileSync(process.execPath, flags, { encoding: 'utf8', maxBuffer: 256 * 1024 * 1024 }),
  );
  drawn.forEach((choice, at) => {
    const { letters, accounts, ...values } = counted[at]!;
    expect(letters, 'the parts were written').toBeGreaterThan(10_000);
    expect(accounts, 'cells tell how they were made').toBeGreaterThan(10);
    expect(sorted(values), JSON.stringify(choice)).toEqual(sorted(byCommand(read, choice)));
  });
}

/** Values by name: a page computes them in another order. */
function sorted(values: unknown): unknown {
  const lists = values as Readonly<Record<string, readonly (readonly [string, unknown])[]>>;
  return Object.fromEntries(
    Object.entries(lists).map(([kind, named]) => [
      kind,
      Object.fromEntries([...named].sort(([a], [b]) => (a < b ? -1 : 1))),
    ]),
  );
}
