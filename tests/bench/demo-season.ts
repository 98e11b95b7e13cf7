import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { measuredRun } from './measured-run.js';

const demo = (name: string): string => fileURLToPath(new URL(`../../datasets/quillwater/${name}`, import.meta.url));

/** Three seasons of the invented basin make some 100,000 inspections at this scale. */
const scale = '1.36';

/** Writes the invented basin in the size of a large program and imports it with a built program; gives back the store. */
export async function writeDemoSeason(folder: string, program: string, tsx: readonly string[]): Promise<string> {
  const exports = join(folder, 'basin');
  const store = join(folder, 'basin-store');
  await measuredRun([...tsx, demo('generate.ts'), exports, '--scale', scale]);
  const crosswalks = ['lakes', 'roads', 'office'].map((name) => demo(`${name}.crosswalk.yaml`));
  await measuredRun([program, 'import', ...crosswalks, '--from', exports, '--store', store, '--quiet']);
  return store;
}
