import { appendFileSync, renameSync, unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { importExports } from '../../src/intake/import-exports.js';
import { inFolder, stationCrosswalk, stationFiles, testKey } from '../intake/small-import.js';

const inspections = ['1,L1,2025-05-01 08:00,,P,,C,', '2,L1,2025-05-01 09:00,,P,,C,'];

/** Imports while something is done to the files as soon as the last of them is being read. */
async function importWhile(change: (folder: string) => void, threads: number) {
  const files = { ...stationFiles({ inspections }), 'c.yaml': stationCrosswalk };
  return inFolder(files, async (folder) => {
    let isDone = false;
    const result = await importExports({
      crosswalks: [join(folder, 'c.yaml')],
      from: folder,
      key: testKey,
      threads,
      progress: ({ file }) => {
        if (file !== 'checks.csv' || isDone) return;
        isDone = true;
        change(folder);
      },
    });
    expect(isDone).toBe(true);
    return result.problems.map(({ code, place }) => `${code} ${place.file}`);
  });
}

test.each([1, 2])(
  'a file that is added to, replaced or taken away while %i threads read stops the import, though its rows were read already',
  async (threads) => {
    expect(await importWhile(() => {}, threads)).toEqual([]);
    const file = (folder: string) => join(folder, 'inspections.csv');
    const changes = [
      (folder: string) => appendFileSync(file(folder), '3,L1,2025-05-01 10:00,,P,,C,\n'),
      (folder: string) => {
        writeFileSync(`${file(folder)}.new`, stationFiles({ inspections })['inspections.csv']!);
        renameSync(`${file(folder)}.new`, file(folder));
      },
      (folder: string) => unlinkSync(file(folder)),
    ];
    for (const change of changes) expect(await importWhile(change, threads)).toEqual(['file-changed inspections.csv']);
  },
);
