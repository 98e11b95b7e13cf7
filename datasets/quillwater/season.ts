import { existsSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { importCommand } from '../../src/command/import.js';
import { reportCommand } from '../../src/command/report.js';
import { writeExports } from './generate.js';

const here = (path: string): string => relative(process.cwd(), fileURLToPath(new URL(path, import.meta.url)));

const exportsFolder = here('exports');
const store = here('../../store');
const reports = here('../../reports');
const notebooks = ['season', 'season-public', 'record-quality', 'training-focus', 'budget-request', 'board-brief'].map(
  (name) => here(`../../notebooks/${name}.md`),
);

console.log('The Quillwater Basin is invented: its seasons 2023 to 2025 are written by a seeded generator.\n');
await writeExports(exportsFolder);
const crosswalks = ['lakes', 'roads', 'office'].map((name) => here(`${name}.crosswalk.yaml`));
const imported = await importCommand({ crosswalks, from: exportsFolder, store });
if (imported !== 0) process.exit(imported);
console.log();
const reported = await reportCommand({ notebooks: notebooks.filter((path) => existsSync(path)), store, to: reports });
if (reported === 0) console.log(`\nOpen ${reports}/season.html in a browser.`);
process.exitCode = reported;
