import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { importExports } from '../../../src/intake/import-exports.js';
import { readStore } from '../../../src/store/read-store.js';
import { writeStore } from '../../../src/store/write-store.js';
import { inFolder, testKey } from '../../intake/small-import.js';
import { mark } from '../../privacy/planted-exports.js';
import { cellsThatRun } from '../../privacy/spreadsheet-cells.js';
import { holdImport, plantedCrosswalk, plantedFiles } from '../planted-season.js';
import { hold, type Kind } from '../trial.js';

/** Exports with hostile cells, giant fields and broken places, imported, stored, and read back. */
export const exportsKind: Kind = {
  name: 'exports',
  counted: 'rows',
  patience: 60,
  pace: 12,
  run: (random) => {
    const giant = random.below(12) === 0 ? 10 ** (4 + random.below(3)) : 0;
    const files = plantedFiles(random, giant);
    const texts = Object.fromEntries([...files].map(([name, { text }]) => [name, text]));
    return inFolder({ ...texts, 'c.yaml': plantedCrosswalk }, async (folder) => {
      const chunk = 16 + random.below(400);
      const crosswalks = [join(folder, 'c.yaml')];
      const progress = () => {};
      const result = await importExports({
        crosswalks,
        from: folder,
        key: testKey,
        progress,
        ...(giant > 0 ? {} : { chunk }),
      });
      const accounted = holdImport(result, files);
      if (result.problems.length > 0) return { ended: 'refused', accounted };
      const store = join(folder, 'store');
      const problems = await writeStore(store, result);
      hold(problems.length === 0, () => `not stored: ${JSON.stringify(problems)}`);
      for (const name of readdirSync(store)) {
        const bytes = readFileSync(join(store, name));
        hold(!bytes.includes(mark), () => `${name} holds a mark`);
        if (name.endsWith('.csv')) {
          const run = cellsThatRun(bytes.toString('utf8'));
          hold(
            run.length === 0,
            () => `${name} holds cells that a spreadsheet runs: ${JSON.stringify(run).slice(0, 200)}`,
          );
        }
      }
      const read = await readStore(store);
      if ('problems' in read) throw new Error(JSON.stringify(read.problems));
      for (const [name, { rowCount }] of Object.entries(read.records)) {
        const kept = result.records[name as keyof typeof result.records].rowCount;
        hold(rowCount === kept, () => `${name}: ${rowCount} rows stored of ${kept}`);
      }
      return { ended: 'taken in', accounted };
    });
  },
};
