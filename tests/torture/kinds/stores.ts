import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openBook } from '../../../src/finding/book.js';
import { importExports } from '../../../src/intake/import-exports.js';
import { computeNotebook } from '../../../src/notebook/compute-notebook.js';
import { readDocument } from '../../../src/notebook/read-document.js';
import { readPast } from '../../../src/store/read-past.js';
import { readStore } from '../../../src/store/read-store.js';
import { writeStore } from '../../../src/store/write-store.js';
import { stationCrosswalk, stationFiles, testKey } from '../../intake/small-import.js';
import { spoilBytes } from '../spoil.js';
import { hold, type Kind, oneOf } from '../trial.js';

const notebook = `| figure | formula |
|---|---|
| a | count(inspections) |
| b | rate(count(inspections where outcome is "intercepted"), a) |
| c | count(checks where state is "clean") |
`;

interface SoundStore {
  readonly folder: string;
  readonly store: string;
  /** Its files by name, in base64. */
  readonly files: string;
  readonly figures: string;
}

let sound: Promise<SoundStore> | null = null;

function filesOf(store: string): string {
  return JSON.stringify(
    readdirSync(store)
      .sort()
      .map((name) => [name, readFileSync(join(store, name), 'base64')]),
  );
}

/** The import that follows whatever a store still tells of the one before. */
async function followedImport(folder: string, store: string) {
  const past = await readPast(store);
  const crosswalks = [join(folder, 'c.yaml')];
  return importExports({
    crosswalks,
    from: folder,
    key: testKey,
    keyIsKept: true,
    progress: () => {},
    program: 'p',
    past,
  });
}

async function figuresOf(store: string): Promise<string | null> {
  const read = await readStore(store);
  if ('problems' in read) return null;
  const { notebook: computed } = computeNotebook(readDocument('n.md', notebook), openBook(read.records, read.sum), '');
  return JSON.stringify([...computed.figures.values()].map(({ result }) => result));
}

async function soundStore(): Promise<SoundStore> {
  const folder = mkdtempSync(join(tmpdir(), 'torture-stores-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  const inspections = Array.from(
    { length: 60 },
    (_, row) => `${row},L1,2025-05-${10 + (row % 20)} 0${row % 10}:00,,P,H${row},${row % 9 ? 'C' : 'I'},`,
  );
  const checks = Array.from({ length: 50 }, (_, row) => `${row},gear,none,${row % 3 ? 'clean' : 'oops'},`);
  const files = { ...stationFiles({ inspections, checks }), 'c.yaml': stationCrosswalk };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  const store = join(folder, 'sound');
  await writeStore(store, await followedImport(folder, store));
  return { folder, store, files: filesOf(store), figures: (await figuresOf(store))! };
}

/** A store with a file spoilt, cut, emptied, taken away or exchanged: it is refused, or says what it said before. */
export const storesKind: Kind = {
  name: 'stores',
  counted: 'stores healed',
  patience: 60,
  pace: 25,
  run: async (random) => {
    sound ??= soundStore();
    const { folder, store, files, figures } = await sound;
    const spoilt = join(folder, 'spoilt');
    rmSync(spoilt, { recursive: true, force: true });
    cpSync(store, spoilt, { recursive: true });
    const names = readdirSync(spoilt).sort();
    const name = oneOf(random, names);
    const path = join(spoilt, name);
    oneOf(random, [
      () => writeFileSync(path, spoilBytes(readFileSync(path), random)),
      () => {
        // The same length, so that only what is inside tells.
        const bytes = readFileSync(path);
        for (let left = 1 + random.below(4); left > 0; left--) bytes[random.below(bytes.length)] = random.below(256);
        writeFileSync(path, bytes);
      },
      () => writeFileSync(path, ''),
      () => unlinkSync(path),
      () => writeFileSync(path, readFileSync(join(spoilt, oneOf(random, names)))),
    ])();
    const seen = await figuresOf(spoilt);
    hold(seen === null || seen === figures, () => `${name} was spoilt, and figures changed in silence`);
    const result = await followedImport(folder, spoilt);
    hold(result.problems.length === 0, () => JSON.stringify(result.problems));
    if (!result.isNew) {
      hold(filesOf(spoilt) === files, () => `${name} was spoilt, and the next import called it nothing new`);
      return { ended: seen === null ? 'refused' : 'taken in', accounted: 1 };
    }
    const problems = await writeStore(spoilt, result);
    if (problems.length > 0) {
      // Without a description that says so the folder is no store, and nothing in it is touched.
      hold(name === 'store.json', () => JSON.stringify(problems));
      return { ended: 'refused', accounted: 0 };
    }
    hold(filesOf(spoilt) === files, () => `${name} was spoilt, and the next import did not heal it`);
    return { ended: seen === null ? 'refused' : 'taken in', accounted: 1 };
  },
};
